package lsp

import (
	"context"
	"sync"
	"time"

	"github.com/sourcegraph/jsonrpc2"
)

// inbox holds what the loop is to do, in the order it came in. Putting in
// never waits.
type inbox struct {
	mu    sync.Mutex
	tasks []func()
	more  chan struct{} // holds one token while there may be tasks
}

func newInbox() *inbox { return &inbox{more: make(chan struct{}, 1)} }

func (b *inbox) put(task func()) {
	b.mu.Lock()
	b.tasks = append(b.tasks, task)
	b.mu.Unlock()
	select {
	case b.more <- struct{}{}:
	default:
	}
}

// take is all that came in since the last time.
func (b *inbox) take() []func() {
	b.mu.Lock()
	defer b.mu.Unlock()
	tasks := b.tasks
	b.tasks = nil
	return tasks
}

// calls are the requests of the client that have not been answered, so that
// they can be cancelled, whether they run already or wait for their turn.
type calls struct {
	ctx  context.Context
	mu   sync.Mutex
	open map[jsonrpc2.ID]context.CancelFunc
	wg   sync.WaitGroup
}

func newCalls(ctx context.Context) *calls {
	return &calls{ctx: ctx, open: map[jsonrpc2.ID]context.CancelFunc{}}
}

// begin is the context of a request that came in.
func (c *calls) begin(id jsonrpc2.ID) context.Context {
	ctx, cancel := context.WithCancel(c.ctx)
	c.mu.Lock()
	c.open[id] = cancel
	c.mu.Unlock()
	return ctx
}

// run starts the work on a request beside the loop.
func (c *calls) run(work func()) { c.wg.Go(work) }

// wait gives running requests, whose context has ended, some time to notice.
func (c *calls) wait(most time.Duration) {
	done := make(chan struct{})
	go func() { c.wg.Wait(); close(done) }()
	select {
	case <-done:
	case <-time.After(most):
	}
}

// end forgets a request that has been answered.
func (c *calls) end(id jsonrpc2.ID) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if cancel := c.open[id]; cancel != nil {
		cancel()
		delete(c.open, id)
	}
}

// cancel asks a request to stop. One that was answered already is not known.
func (c *calls) cancel(id jsonrpc2.ID) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if cancel := c.open[id]; cancel != nil {
		cancel()
	}
}
