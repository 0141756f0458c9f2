package cli

import (
	"fmt"
	"io"
	"sync"
	"time"
)

// How long a check runs before its progress is shown, and how often it is
// shown anew.
const (
	quietFor = 500 * time.Millisecond
	newEvery = 100 * time.Millisecond
)

// progress is one line on a terminal while a check lasts.
type progress struct {
	out     io.Writer
	watched bool
	now     func() time.Time
	mu      sync.Mutex
	started time.Time
	last    time.Time
	shown   bool
}

// start begins the wait after which progress is shown.
func (p *progress) start() {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.started = p.now()
}

// files shows how many files were read.
func (p *progress) files(done, total int) {
	if !p.watched {
		return
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	now := p.now()
	if now.Sub(p.started) < quietFor || now.Sub(p.last) < newEvery {
		return
	}
	p.last, p.shown = now, true
	fmt.Fprintf(p.out, "\r\x1b[Kreading file %d of %d", done, total)
}

// erase takes the line away.
func (p *progress) erase() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.shown {
		fmt.Fprint(p.out, "\r\x1b[K")
		p.shown = false
	}
}
