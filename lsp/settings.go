package lsp

import (
	"encoding/json"
	"errors"

	"github.com/sourcegraph/jsonrpc2"

	"wickrule/lint"
)

// settings is what the person at the editor chose, under "wickrule" in its
// configuration, or as initialization options.
type settings struct {
	Level  string `json:"level"`  // the softest findings shown: "consider", "should" or "must"
	Hints  *bool  `json:"hints"`  // figures beside the numbers; shown where not said
	Lenses *bool  `json:"lenses"` // figures above recipes and stock; shown where not said
}

var defaultSettings = settings{}

func (w settings) softest() lint.Level {
	if level, ok := lint.ParseLevel(w.Level); ok && level != lint.Silent {
		return level
	}
	return lint.Consider
}

func (w settings) hints() bool  { return w.Hints == nil || *w.Hints }
func (w settings) lenses() bool { return w.Lenses == nil || *w.Lenses }

// fetchSettings asks the client for its configuration, where it can be asked.
func (s *server) fetchSettings() {
	if !s.can.Workspace.Configuration {
		return
	}
	s.calls.run(func() {
		var sections []*settings
		params := map[string]any{"items": []map[string]string{{"section": "wickrule"}}}
		err := s.conn.Call(s.calls.ctx, "workspace/configuration", params, &sections)
		if err != nil || len(sections) != 1 || sections[0] == nil {
			return
		}
		s.inbox.put(func() { s.applySettings(*sections[0]) })
	})
}

type changedConfiguration struct {
	Settings json.RawMessage `json:"settings"`
}

// didChangeConfiguration takes the new settings, or where the client does not
// send them along asks for them.
func (s *server) didChangeConfiguration(p *changedConfiguration) error {
	var sent struct {
		Wickrule *settings `json:"wickrule"`
	}
	if json.Unmarshal(p.Settings, &sent) == nil && sent.Wickrule != nil {
		s.applySettings(*sent.Wickrule)
		return nil
	}
	s.fetchSettings()
	return nil
}

func (s *server) applySettings(wants settings) {
	s.wants = wants
	s.renew()
	s.publishAll()
	s.waiting.hints, s.waiting.lenses = true, true
}

// question asks the client something whose answer does not matter, and waits
// for that. Never on the loop.
func (s *server) question(method string, params any) {
	err := s.conn.Call(s.calls.ctx, method, params, nil)
	if err != nil && s.calls.ctx.Err() == nil && !errors.Is(err, jsonrpc2.ErrClosed) {
		s.Log("%s: %v", method, err)
	}
}
