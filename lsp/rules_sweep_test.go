package lsp

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/schema"
)

// everythingAt asks for all there is at a place of a rule file. No answer may
// lie outside of the text.
func everythingAt(t testing.TB, h *here, at int32) {
	itemsFit(t, h, at, h.completion(at).Items)
	size := int32(h.text.Len())
	inside := func(what string, r protocol.Range) {
		if span := h.span(r); span.Start > span.End || span.End > size || h.rangeOf(span) != r {
			require.Fail(t, "out of place", "%s at %d: %v", what, at, r)
		}
	}
	if s := h.subjectAt(at); s != nil {
		inside("hover", h.rangeOf(s.span))
		require.NotEmpty(t, s.says)
	}
	if help := h.signatureHelp(at); help != nil {
		require.Len(t, help.Signatures, 1)
		require.Less(t, int(*help.ActiveParameter), len(help.Signatures[0].Parameters))
	}
	for _, mark := range h.highlights(at) {
		inside("highlight", mark.Range)
	}
	if m, ok := h.mentionAt(at); ok {
		inside("mention", h.rangeOf(m.inside()))
		_, _ = h.renamed(&m)
	}
	h.definition(at)
}

// Every rule file of the demo shop, and the rule of these tests, at every byte:
// no panic, and nothing outside of the text.
func TestRulesAtEveryByte(t *testing.T) {
	texts := map[string]string{puttyFile: putty}
	for name, text := range exampleTexts(t) {
		if strings.HasPrefix(name, "rules/") || strings.HasPrefix(name, "trials/") {
			texts[name] = text
		}
	}
	require.Greater(t, len(texts), 4)
	for name, text := range texts {
		h := lookingAt(t, able, name, text)
		for at := int32(0); at <= int32(len(text)); at += stride(3, 17) {
			everythingAt(t, h, at)
		}
	}
}

// Half-typed rules: every beginning, as it is typed from the top, and with one
// line broken off.
func TestHalfTypedRules(t *testing.T) {
	text := putty
	look := func(text string, at int) {
		h := lookingAt(t, able, puttyFile, text)
		everythingAt(t, h, int32(at))
		_, err := h.codeLenses(context.Background(), nil)
		require.NoError(t, err)
		p := &codeActionParams{Range: h.rangeOf(schema.Span{Start: int32(at), End: int32(at)})}
		_, err = h.codeActions(context.Background(), p)
		require.NoError(t, err)
		_, err = h.semanticTokens(context.Background(), nil)
		require.NoError(t, err)
	}
	for at := 0; at <= len(text); at += int(stride(1, 13)) {
		look(text[:at], at)
	}
	for at := 0; at < len(text); at += int(stride(3, 31)) {
		if end := strings.IndexByte(text[at:], '\n'); end > 0 {
			look(text[:at]+text[at+end:], at)
		}
	}
}
