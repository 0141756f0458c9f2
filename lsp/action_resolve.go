package lsp

import (
	"context"
	"encoding/json"

	"github.com/sourcegraph/jsonrpc2"
	protocol "github.com/tliron/glsp/protocol_3_16"
)

// chosenAction is a code action that comes back to have its edits made. What
// is not looked at goes back as it came.
type chosenAction struct {
	raw  map[string]json.RawMessage
	data actionData
}

func (c *chosenAction) UnmarshalJSON(data []byte) error {
	if err := json.Unmarshal(data, &c.raw); err != nil {
		return err
	}
	if c.raw["data"] == nil {
		return nil
	}
	return json.Unmarshal(c.raw["data"], &c.data)
}

// resolveAction makes the edits of an action that was listed without.
func (s *snapshot) resolveAction(_ context.Context, c *chosenAction) (map[string]json.RawMessage, error) {
	if c.data.URI == "" {
		return c.raw, nil // it has all it needs
	}
	h, ok := s.at(c.data.URI)
	if !ok {
		return nil, noDocument(c.data.URI)
	}
	if doc, ok := s.docs[keyOf(c.data.URI)]; !ok || doc.version != c.data.Version {
		return nil, &jsonrpc2.Error{Code: contentModified, Message: c.data.URI + " has changed since: ask again"}
	}
	edit := protocol.WorkspaceEdit{Changes: map[string][]protocol.TextEdit{}}
	if edits := h.mend(h.file.Name).edits; len(edits) > 0 {
		edit = h.workspaceEdit(edits)
	}
	text, err := json.Marshal(edit)
	if err != nil {
		return nil, err
	}
	c.raw["edit"] = text
	return c.raw, nil
}
