package lsp

import (
	"fmt"
	"sync/atomic"
	"time"
)

// progress tells the client how far the reading of a shop has come, where that
// takes long enough to be worth telling and the client shows it. The reading
// never waits for the client.
type progress struct {
	server  *server
	token   string
	title   string
	begun   time.Time
	shown   time.Time
	asked   bool
	granted atomic.Bool // the client has a place to show it
	open    bool
}

// slow is after how long a reading is worth telling of.
const slow = 300 * time.Millisecond

// tokens numbers the progress of this process: no two share one.
var tokens atomic.Int64

func (s *server) progress(title string) *progress {
	return &progress{server: s, title: title, begun: time.Now(), token: fmt.Sprintf("wickrule-%d", tokens.Add(1))}
}

type progressParams struct {
	Token string `json:"token"`
	Value any    `json:"value"`
}

type progressValue struct {
	Kind       string  `json:"kind"` // "begin", "report", "end"
	Title      string  `json:"title,omitempty"`
	Message    string  `json:"message,omitempty"`
	Percentage *uint32 `json:"percentage,omitempty"`
}

// files says that so many files are read.
func (p *progress) files(done, total int) {
	now := time.Now()
	if !p.server.now.Load().can.Window.WorkDoneProgress || now.Sub(p.begun) < slow || now.Sub(p.shown) < slow/3 {
		return
	}
	p.shown = now
	if !p.asked {
		p.asked = true
		p.server.calls.run(func() {
			err := p.server.conn.Call(p.server.calls.ctx, "window/workDoneProgress/create", map[string]string{"token": p.token}, nil)
			p.granted.Store(err == nil)
		})
	}
	if !p.granted.Load() {
		return
	}
	percent := uint32(100 * done / total)
	value := progressValue{Kind: "report", Message: fmt.Sprintf("%d of %d files", done, total), Percentage: &percent}
	if !p.open {
		p.open, value.Kind, value.Title = true, "begin", p.title
	}
	p.server.wire.notify("$/progress", progressParams{p.token, value})
}

func (p *progress) end() {
	if p.open {
		p.server.wire.notify("$/progress", progressParams{p.token, progressValue{Kind: "end"}})
	}
}
