package lsp

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"sync/atomic"
	"time"

	"github.com/sourcegraph/jsonrpc2"

	"wickrule/lint"
)

// Config is what the server is given from outside.
type Config struct {
	Disk    fs.FS                                       // the file system from its root
	Folder  func(path string) (fs.FS, io.Closer, error) // a folder of Disk, with no way out of it
	Rules   func(*lint.Shop) []*lint.Rule               // every rule that a shop is checked by
	Today   func() string                               // the local date, "2026-10-04"
	Alive   func(process int) bool                      // whether a process still runs
	Log     func(format string, values ...any)          // to a person at the terminal, never to the client
	Version string                                      // of this program
}

// Exit statuses of Serve.
const (
	Ended = 0 // the client said shutdown before it left
	Lost  = 1 // it left without
)

// server is one connection to one client. Its fields belong to the goroutine
// that runs loop, but for wire, conn, now, inbox and calls, which may be used
// from any.
type server struct {
	Config
	wire  *wire
	conn  *jsonrpc2.Conn
	now   atomic.Pointer[snapshot]
	inbox *inbox
	calls *calls

	state   state
	status  int
	methods map[string]request
	notes   map[string]notified
	can     *client
	enc     encoding
	wants   settings
	folders []string              // workspace folders, as paths
	docs    map[string]*document  // open documents, by key
	shops   map[string]*shopState // by root
	waiting refreshing            // what the client is to be asked to fetch again
}

// state is where in its life the connection is.
type state uint8

const (
	fresh   state = iota // before initialize
	serving              // between initialize and shutdown
	closing              // after shutdown
	ended
)

// Serve speaks the protocol until the client leaves, ctx ends, or the process
// that the client says it belongs to is gone, and returns the exit status.
func Serve(ctx context.Context, in io.Reader, out io.Writer, config Config) int {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	s := &server{
		Config: config, status: Lost, can: &client{}, enc: utf16, wants: defaultSettings,
		methods: requests(), notes: notifications(),
		docs: map[string]*document{}, shops: map[string]*shopState{}, inbox: newInbox(), calls: newCalls(ctx),
	}
	s.wire = newWire(in, out, config.Log)
	s.renew()
	s.conn = jsonrpc2.NewConn(ctx, s.wire, s, jsonrpc2.SetLogger(quiet{}))
	s.loop(ctx)
	stop()
	s.calls.wait(time.Second)
	s.wire.finish(time.Second)
	return s.status
}

// quiet is where the connection's own remarks about its insides go.
type quiet struct{}

func (quiet) Printf(string, ...any) {}

// loop does one thing after the other until the connection ends. Checking
// again what an edit has touched waits while there is anything to do.
func (s *server) loop(ctx context.Context) {
	paused := time.NewTimer(pause)
	defer paused.Stop()
	for s.state != ended {
		tasks := s.inbox.take()
		for _, task := range tasks {
			if s.state == ended {
				return
			}
			task()
		}
		if len(tasks) > 0 || s.settle() {
			continue
		}
		select {
		case <-s.inbox.more:
			paused.Reset(pause)
		case <-paused.C:
			s.atPause()
		case <-s.conn.DisconnectNotify():
			for _, task := range s.inbox.take() {
				task()
			}
			s.end()
		case <-ctx.Done():
			s.end()
		}
	}
}

// end is the last thing the loop does.
func (s *server) end() {
	if s.state == closing {
		s.status = Ended
	}
	s.state = ended
}

// Handle takes a message as it comes in. It must not wait: the next one, or the
// answer to a question of ours, is behind it.
func (s *server) Handle(_ context.Context, _ *jsonrpc2.Conn, r *jsonrpc2.Request) {
	if r.Method == "$/cancelRequest" {
		if id, ok := cancelled(paramsOf(r)); ok {
			s.calls.cancel(id)
		}
		return
	}
	if r.Notif {
		s.inbox.put(func() { s.note(r) })
		return
	}
	ctx := s.calls.begin(r.ID)
	s.inbox.put(func() { s.ask(ctx, r) })
}

func paramsOf(r *jsonrpc2.Request) json.RawMessage {
	if r.Params == nil {
		return nil
	}
	return *r.Params
}

// cancelled reads the id of a request that is to be cancelled. The library's
// own type loses it.
func cancelled(params json.RawMessage) (jsonrpc2.ID, bool) {
	var p struct {
		ID any `json:"id"`
	}
	if json.Unmarshal(params, &p) != nil {
		return jsonrpc2.ID{}, false
	}
	switch id := p.ID.(type) {
	case string:
		return jsonrpc2.ID{Str: id, IsString: true}, true
	case float64:
		return jsonrpc2.ID{Num: uint64(int64(id))}, true
	}
	return jsonrpc2.ID{}, false
}

// note does what a notification says. One that is not known is passed over, as
// is any that comes out of its time.
func (s *server) note(r *jsonrpc2.Request) {
	if r.Method == "exit" {
		s.end()
		return
	}
	act := s.notes[r.Method]
	if act == nil || s.state != serving {
		return
	}
	defer func() {
		if reason := recover(); reason != nil {
			s.Log("%s met a fault: %v", r.Method, reason)
		}
	}()
	if err := act(s, paramsOf(r)); err != nil {
		s.Log("%s: %v", r.Method, err)
	}
}

// ask answers a request, or has it answered.
func (s *server) ask(ctx context.Context, r *jsonrpc2.Request) {
	params := paramsOf(r)
	switch {
	case r.Method == "initialize" && s.state == fresh:
		s.answer(ctx, r.ID, func() (any, error) { return s.initialize(params) })
	case s.state == fresh:
		s.answer(ctx, r.ID, func() (any, error) {
			return nil, &jsonrpc2.Error{Code: serverNotInitialized, Message: "initialize comes first"}
		})
	case r.Method == "initialize" || s.state != serving:
		s.answer(ctx, r.ID, func() (any, error) {
			return nil, &jsonrpc2.Error{Code: jsonrpc2.CodeInvalidRequest, Message: "not at this time: " + r.Method}
		})
	case r.Method == "shutdown":
		s.state = closing
		s.answer(ctx, r.ID, func() (any, error) { return nil, nil })
	case r.Method == "textDocument/diagnostic":
		s.afterReading(ctx, r.Method, params, func() { s.answer(ctx, r.ID, func() (any, error) { return s.pull(params) }) })
	case s.methods[r.Method] == nil:
		s.answer(ctx, r.ID, func() (any, error) {
			return nil, &jsonrpc2.Error{Code: jsonrpc2.CodeMethodNotFound, Message: "this server has no " + r.Method}
		})
	default:
		serve := s.methods[r.Method]
		s.afterReading(ctx, r.Method, params, func() {
			now := s.now.Load()
			s.calls.run(func() {
				s.answer(ctx, r.ID, func() (any, error) { return serve(ctx, s, now, params) })
			})
		})
	}
}

// afterReading does something on the loop, at once or when the shop has been
// read that a request is about. One that is cancelled does not wait for that.
func (s *server) afterReading(ctx context.Context, method string, params json.RawMessage, act func()) {
	reading := s.reading(method, params)
	if len(reading) == 0 {
		act()
		return
	}
	s.calls.run(func() {
		for _, ready := range reading {
			select {
			case <-ready:
			case <-ctx.Done():
			}
		}
		s.inbox.put(act)
	})
}

// answer works out an answer and sends it. A fault in the work is the answer
// to this request only.
func (s *server) answer(ctx context.Context, id jsonrpc2.ID, work func() (any, error)) {
	defer s.calls.end(id)
	result, err := contained(work)
	if ctx.Err() != nil || errors.Is(err, context.Canceled) {
		err = &jsonrpc2.Error{Code: requestCancelled, Message: "cancelled"}
	}
	if err == nil && s.wire.answer(id, result) == nil {
		return
	}
	s.wire.fail(id, err)
}

func contained(work func() (any, error)) (result any, err error) {
	defer func() {
		if reason := recover(); reason != nil {
			result, err = nil, &jsonrpc2.Error{Code: jsonrpc2.CodeInternalError, Message: fmt.Sprintf("a fault of the server, which is worth a report: %v", reason)}
		}
	}()
	return work()
}

// renew makes the snapshot that the next request sees.
func (s *server) renew() {
	now := &snapshot{
		enc: s.enc, can: s.can, wants: s.wants, today: s.Today(), rules: s.Rules,
		shops: make(map[string]*lint.Shop, len(s.shops)), docs: make(map[string]opened, len(s.docs)),
	}
	for root, shop := range s.shops {
		if shop.live != nil {
			now.shops[root] = shop.live.Shop()
		}
	}
	for key, doc := range s.docs {
		now.docs[key] = opened{doc.uri, doc.version, doc.root, doc.name}
	}
	s.now.Store(now)
}
