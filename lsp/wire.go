package lsp

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"sync"
	"time"

	"github.com/sourcegraph/jsonrpc2"
)

// largestMessage is the largest body that is read. A longer one is skipped and
// refused, and the messages behind it are served.
const largestMessage = 64 << 20

// wire is the base protocol: bodies of JSON-RPC behind headers that state their
// length. Reading takes exactly the length stated, whatever is in it, and
// answers what is no message itself, so that the connection goes on. Writing
// never waits: a client that does not read must not stop one that writes.
type wire struct {
	in    *bufio.Reader
	out   io.Writer
	log   func(format string, values ...any)
	mu    sync.Mutex
	queue [][]byte
	more  chan struct{} // holds one token while the queue may hold something
	quit  chan struct{} // closed: write what is queued, then stop
	gone  chan struct{} // closed when the writer has stopped
}

func newWire(in io.Reader, out io.Writer, log func(string, ...any)) *wire {
	w := &wire{
		in: bufio.NewReaderSize(in, 64<<10), out: out, log: log,
		more: make(chan struct{}, 1), quit: make(chan struct{}), gone: make(chan struct{}),
	}
	go w.write()
	return w
}

// Close is called by the connection when the client's end is reached. What is
// queued may still be wanted: finish ends the writing.
func (w *wire) Close() error { return nil }

// finish lets what is queued be written, and stops. A client that does not read
// is waited for no longer than most.
func (w *wire) finish(most time.Duration) {
	close(w.quit)
	select {
	case <-w.gone:
	case <-time.After(most):
	}
}

// WriteObject queues a message.
func (w *wire) WriteObject(message any) error {
	var body bytes.Buffer
	enc := json.NewEncoder(&body)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(message); err != nil {
		return err
	}
	data := bytes.TrimSuffix(body.Bytes(), []byte("\n"))
	w.mu.Lock()
	w.queue = append(w.queue, append(fmt.Appendf(nil, "Content-Length: %d\r\n\r\n", len(data)), data...))
	w.mu.Unlock()
	select {
	case w.more <- struct{}{}:
	default:
	}
	return nil
}

func (w *wire) write() {
	defer close(w.gone)
	for {
		if !w.flush() {
			return
		}
		select {
		case <-w.more:
		case <-w.quit:
			w.flush()
			return
		}
	}
}

// flush writes all that is queued. False: nobody reads any more.
func (w *wire) flush() bool {
	w.mu.Lock()
	queue := w.queue
	w.queue = nil
	w.mu.Unlock()
	for _, message := range queue {
		if _, err := w.out.Write(message); err != nil {
			w.log("the client can no longer be written to: %v", err)
			return false
		}
	}
	return true
}

// envelope is as much of a message as shows what it is.
type envelope struct {
	ID     json.RawMessage `json:"id"`
	Method *string         `json:"method"`
	Params json.RawMessage `json:"params"`
	Result json.RawMessage `json:"result"`
	Error  json.RawMessage `json:"error"`
}

// ReadObject reads the next message into v, which is the connection's own kind
// of message. What is not a message is answered here and passed over. The
// error io.EOF says that the client has ended.
func (w *wire) ReadObject(v any) error {
	for {
		body, err := w.body()
		if err != nil {
			return err
		}
		if body == nil {
			continue
		}
		if refusal := understand(body, v); refusal != nil {
			w.refuse(refusal)
			continue
		}
		return nil
	}
}

// body reads the header lines and the body behind them. Nil: there was none to
// be taken, and that has been answered.
func (w *wire) body() ([]byte, error) {
	length := int64(-1)
	for lines := 0; ; lines++ {
		line, err := w.in.ReadString('\n')
		if err != nil {
			return nil, err
		}
		line = strings.TrimRight(line, "\r\n")
		if line == "" {
			if lines == 0 { // a line end left over behind a body
				lines--
				continue
			}
			break
		}
		name, value, ok := strings.Cut(line, ":")
		if ok && strings.EqualFold(strings.TrimSpace(name), "Content-Length") {
			n, err := strconv.ParseInt(strings.TrimSpace(value), 10, 64)
			if err == nil && n >= 0 {
				length = n
			}
		}
	}
	switch {
	case length < 0:
		w.refuse(&jsonrpc2.Error{Code: jsonrpc2.CodeParseError, Message: "the header states no Content-Length"})
		return nil, nil
	case length > largestMessage:
		if _, err := io.CopyN(io.Discard, w.in, length); err != nil {
			return nil, err
		}
		w.refuse(&jsonrpc2.Error{Code: jsonrpc2.CodeInvalidRequest, Message: fmt.Sprintf("a message of %d bytes is longer than the %d that are read", length, largestMessage)})
		return nil, nil
	}
	body := make([]byte, length)
	if _, err := io.ReadFull(w.in, body); err != nil {
		return nil, err
	}
	return body, nil
}

// understand decodes a body, or says why it is no message.
func understand(body []byte, v any) *jsonrpc2.Error {
	if !json.Valid(body) {
		return &jsonrpc2.Error{Code: jsonrpc2.CodeParseError, Message: "this is not JSON"}
	}
	var e envelope
	if err := json.Unmarshal(body, &e); err != nil {
		return notAMessage("a message is one JSON object with its method as text")
	}
	switch {
	case e.Method == nil && e.Result == nil && e.Error == nil:
		return notAMessage("a message has a method, a result or an error")
	case e.Method == nil && e.ID == nil:
		return notAMessage("an answer has the id of what it answers")
	}
	if err := json.Unmarshal(body, v); err != nil {
		return notAMessage("its id is neither a whole number nor text, or its parts are of the wrong kind")
	}
	return nil
}

func notAMessage(why string) *jsonrpc2.Error {
	return &jsonrpc2.Error{Code: jsonrpc2.CodeInvalidRequest, Message: why}
}

// response is an answer. The connection's own writes every id unsigned, and a
// negative one would come back as another number.
type response struct {
	Version string           `json:"jsonrpc"`
	ID      any              `json:"id"`
	Result  *json.RawMessage `json:"result,omitempty"`
	Error   *jsonrpc2.Error  `json:"error,omitempty"`
}

// notification is a message that wants no answer.
type notification struct {
	Version string `json:"jsonrpc"`
	Method  string `json:"method"`
	Params  any    `json:"params"`
}

func (w *wire) notify(method string, params any) {
	if err := w.WriteObject(notification{"2.0", method, params}); err != nil {
		w.log("%s could not be written: %v", method, err)
	}
}

// refuse answers something whose id is not known.
func (w *wire) refuse(why *jsonrpc2.Error) {
	w.log("refused a message: %s", why.Message)
	if err := w.WriteObject(response{Version: "2.0", Error: why}); err != nil {
		w.log("an answer could not be written: %v", err)
	}
}

// answer replies to a request with a result.
func (w *wire) answer(id jsonrpc2.ID, result any) error {
	data, err := json.Marshal(result)
	if err != nil {
		return err
	}
	raw := json.RawMessage(data)
	return w.WriteObject(response{Version: "2.0", ID: idOf(id), Result: &raw})
}

// fail replies to a request with what kept it from being answered.
func (w *wire) fail(id jsonrpc2.ID, err error) {
	r := response{Version: "2.0", ID: idOf(id)}
	if !errors.As(err, &r.Error) {
		r.Error = &jsonrpc2.Error{Code: jsonrpc2.CodeInternalError, Message: fmt.Sprint(err)}
	}
	if err := w.WriteObject(r); err != nil {
		w.log("an answer could not be written: %v", err)
	}
}

func idOf(id jsonrpc2.ID) any {
	if id.IsString {
		return id.Str
	}
	return int64(id.Num)
}
