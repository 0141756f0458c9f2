package lsp

import (
	"encoding/json"
	"hash/fnv"
	"math"
	"path"
	"slices"
	"strconv"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/lint"
)

// slice is how many recipes are checked before the loop looks whether there
// is something else to do.
const slice = 32

// refreshing is what the client should fetch again, since something it shows
// has changed without an edit of its own.
type refreshing struct{ diagnostics, hints, lenses bool }

// checkOpen checks what an edit of a document has touched among the open
// documents, and sends that; the rest is left to settle.
func (s *server) checkOpen(shop *shopState, edited *document) {
	touched := s.settleOpen(shop)
	s.publish(shop, edited.name, true)
	for _, name := range touched {
		if name != edited.name {
			s.publish(shop, name, false)
		}
	}
}

// settleOpen checks what has to be checked again in the open documents of a
// shop.
func (s *server) settleOpen(shop *shopState) (touched []string) {
	touched, _ = shop.live.Settle(func(name string) bool { return s.isOpen(shop, name) }, math.MaxInt)
	return touched
}

// settle does a part of the checking that edits have left to do. False: there
// was nothing to do.
func (s *server) settle() bool {
	worked := false
	for _, shop := range s.shops {
		if shop.live == nil {
			continue
		}
		open := s.settleOpen(shop)
		touched, more := shop.live.Settle(nil, slice)
		touched = append(open, touched...)
		for _, name := range touched {
			s.publish(shop, name, false)
		}
		worked = worked || more || len(touched) > 0
	}
	if !worked {
		s.refresh()
	}
	return worked
}

// refresh asks the client to fetch again what may have changed.
func (s *server) refresh() {
	var methods []string
	if s.waiting.diagnostics && s.can.pulls() && s.can.Workspace.Diagnostics.RefreshSupport {
		methods = append(methods, "workspace/diagnostic/refresh")
	}
	if s.waiting.hints && s.can.Workspace.InlayHint.RefreshSupport {
		methods = append(methods, "workspace/inlayHint/refresh")
	}
	if s.waiting.lenses && s.can.Workspace.CodeLens.RefreshSupport {
		methods = append(methods, "workspace/codeLens/refresh")
	}
	s.waiting = refreshing{}
	if len(methods) == 0 {
		return
	}
	s.calls.run(func() {
		for _, method := range methods {
			s.question(method, nil)
		}
	})
}

// publish sends the findings of a file, where they are others than those last
// sent, or where they are of a new version of an open document.
func (s *server) publish(shop *shopState, name string, newVersion bool) {
	if lint.IsTaken(name) && !s.speaksFor(shop, name) {
		return
	}
	doc := s.docOf(shop, name)
	list := []diagnostic{} // a client wants an empty list, not null
	if f := shop.live.Shop().File(name); f != nil {
		report := shop.live.Of(name)
		for _, fault := range report.Faults {
			s.Log("the rule %s met a fault of its own: %s", fault.Rule, fault.Reason)
		}
		list = s.now.Load().of(shop.live.Shop(), f).diagnostics(report)
	}
	sum := sumOf(list)
	last, sent := shop.sent[name]
	changed := sum != last || !sent && len(list) > 0
	if !changed && !newVersion {
		return
	}
	shop.sent[name] = sum
	if changed && !newVersion {
		s.waiting.hints, s.waiting.lenses = true, true
	}
	if doc != nil && s.can.pulls() {
		s.waiting.diagnostics = s.waiting.diagnostics || !newVersion
		return
	}
	p := publishDiagnosticsParams{URI: s.uriOf(shop, name), Diagnostics: list}
	if doc != nil {
		p.Version = &doc.version
	}
	s.wire.notify("textDocument/publishDiagnostics", p)
}

// clear has the client forget what was said about a file.
func (s *server) clear(shop *shopState, name string) {
	s.wire.notify("textDocument/publishDiagnostics", publishDiagnosticsParams{URI: s.uriOf(shop, name), Diagnostics: []diagnostic{}})
	delete(shop.sent, name)
}

func (s *server) uriOf(shop *shopState, name string) string {
	if doc := s.docOf(shop, name); doc != nil {
		return doc.uri
	}
	return fileURI(path.Join(shop.root, name))
}

// publishAll sends the findings of every file anew.
func (s *server) publishAll() {
	for _, shop := range s.shops {
		if shop.live == nil {
			continue
		}
		for _, f := range shop.live.Shop().Files() {
			s.publish(shop, f.Name, s.isOpen(shop, f.Name))
		}
	}
}

func sumOf(list []diagnostic) uint64 {
	sum := fnv.New64a()
	if err := json.NewEncoder(sum).Encode(list); err != nil {
		return 0
	}
	return sum.Sum64()
}

// pull answers a client that asks for the findings of a document itself. It
// is done on the loop: they are those of the text that stands now.
func (s *server) pull(params json.RawMessage) (any, error) {
	p, err := decode[documentDiagnosticParams](params)
	if err != nil {
		return nil, err
	}
	doc := s.docs[keyOf(p.TextDocument.URI)]
	if doc == nil || s.shops[doc.root] == nil || s.shops[doc.root].live == nil {
		return documentDiagnosticReport{Kind: "full", Items: &[]diagnostic{}}, nil
	}
	shop := s.shops[doc.root]
	for _, name := range s.settleOpen(shop) {
		if name != doc.name {
			s.publish(shop, name, false)
		}
	}
	list := s.now.Load().of(shop.live.Shop(), shop.live.Shop().File(doc.name)).diagnostics(shop.live.Of(doc.name))
	id := strconv.FormatUint(sumOf(list), 16)
	if id == p.PreviousResultID {
		return documentDiagnosticReport{Kind: "unchanged", ResultID: id}, nil
	}
	return documentDiagnosticReport{Kind: "full", ResultID: id, Items: &list}, nil
}

// diagnostics is what is said about the document, as the protocol has it: the
// findings, and what could not be checked. It is never nil.
func (h *here) diagnostics(r *lint.Report) []diagnostic {
	list := []diagnostic{}
	for i := range r.Findings {
		f := &r.Findings[i]
		if f.Level < h.wants.softest() {
			continue
		}
		d := diagnostic{
			Range: h.rangeOf(f.At.Span), Severity: severity(f.Level), Code: f.Rule.Name,
			Source: "wickrule", Message: f.Message, Data: diagnosticData{f.Rule.Name},
		}
		if f.Rule.Name == "unused-stock" && h.shows(protocol.DiagnosticTagUnnecessary) {
			d.Tags = []protocol.DiagnosticTag{protocol.DiagnosticTagUnnecessary}
		}
		if h.can.TextDocument.PublishDiagnostics.RelatedInformation {
			for _, n := range f.Notes {
				d.RelatedInformation = append(d.RelatedInformation, protocol.DiagnosticRelatedInformation{Location: h.location(n.Place), Message: n.Message})
			}
		}
		list = append(list, d)
	}
	for _, u := range r.Unchecked {
		if u.Level < h.wants.softest() {
			continue
		}
		list = append(list, diagnostic{
			Range: h.rangeOf(u.At.Span), Severity: severity(u.Level), Code: u.Needs,
			Source: "wickrule", Message: u.Message, Data: diagnosticData{u.Rules[0]},
		})
	}
	return list
}

// diagnosticData comes back with a request for code actions. The code alone
// gets lost in some clients.
type diagnosticData struct {
	Rule string `json:"rule"`
}

// shows says whether the client shows findings with such a tag.
func (h *here) shows(tag protocol.DiagnosticTag) bool {
	set := h.can.TextDocument.PublishDiagnostics.TagSupport
	return set != nil && slices.Contains(set.ValueSet, int(tag))
}

func severity(l lint.Level) protocol.DiagnosticSeverity {
	switch l {
	case lint.Must:
		return protocol.DiagnosticSeverityError
	case lint.Should:
		return protocol.DiagnosticSeverityWarning
	}
	return protocol.DiagnosticSeverityInformation
}
