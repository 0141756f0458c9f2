package lsp

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"io/fs"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
)

// The statements are those of the Language Server Protocol, 3.17 ("Base
// Protocol", "Lifecycle Messages") and of JSON-RPC 2.0.

// raw is a client that writes its bytes itself.
type raw struct {
	t      *testing.T
	in     io.WriteCloser
	out    *bufio.Reader
	exited chan int
}

func startRaw(t *testing.T, change ...func(*Config)) *raw {
	toServer, fromClient := io.Pipe()
	toClient, fromServer := io.Pipe()
	config := testConfig(t, fstest.MapFS{})
	config.Log = func(string, ...any) {}
	for _, c := range change {
		c(&config)
	}
	r := &raw{t: t, in: fromClient, out: bufio.NewReader(toClient), exited: make(chan int, 1)}
	go func() {
		r.exited <- Serve(context.Background(), toServer, fromServer, config)
		fromServer.Close()
		toServer.Close()
	}()
	t.Cleanup(func() { fromClient.Close(); toClient.Close() })
	return r
}

func (r *raw) write(text string) {
	r.t.Helper()
	done := make(chan error, 1)
	go func() { _, err := io.WriteString(r.in, text); done <- err }()
	select {
	case err := <-done:
		require.NoError(r.t, err)
	case <-time.After(60 * time.Second):
		require.Fail(r.t, "the server does not read")
	}
}

// say sends one body behind the usual header.
func (r *raw) say(body string) {
	r.t.Helper()
	r.write(fmt.Sprintf("Content-Length: %d\r\n\r\n%s", len(body), body))
}

// answer is the next message that is an answer.
type answer struct {
	ID     any             `json:"id"`
	Method string          `json:"method"`
	Result json.RawMessage `json:"result"`
	Error  *struct {
		Code    int
		Message string
	} `json:"error"`
}

func (r *raw) answer() answer {
	r.t.Helper()
	for {
		got := make(chan []byte, 1)
		go func() {
			header, err := r.out.ReadString('\n')
			if err != nil {
				close(got)
				return
			}
			n, _ := strconv.Atoi(strings.TrimSpace(strings.TrimPrefix(header, "Content-Length:")))
			r.out.Discard(2)
			body := make([]byte, n)
			io.ReadFull(r.out, body)
			got <- body
		}()
		select {
		case body, ok := <-got:
			require.True(r.t, ok, "the server closed its end")
			require.True(r.t, json.Valid(body), "%s", body)
			var a answer
			require.NoError(r.t, json.Unmarshal(body, &a))
			if a.Method == "" {
				return a
			}
		case <-time.After(20 * time.Second):
			require.Fail(r.t, "no answer came")
		}
	}
}

// code is the error code of the next answer, 0 where it is a result.
func (r *raw) code() int {
	r.t.Helper()
	if a := r.answer(); a.Error != nil {
		return a.Error.Code
	}
	return 0
}

func (r *raw) status() int {
	r.t.Helper()
	select {
	case status := <-r.exited:
		return status
	case <-time.After(60 * time.Second):
		require.Fail(r.t, "the server does not end")
		return -1
	}
}

const hello = `{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"processId":null,"rootUri":null,"capabilities":{}}}`

func (r *raw) hello() {
	r.t.Helper()
	r.say(hello)
	require.Equal(r.t, 0, r.code())
	r.say(`{"jsonrpc":"2.0","method":"initialized","params":{}}`)
}

// works shows that the connection still serves.
func (r *raw) works() {
	r.t.Helper()
	r.say(`{"jsonrpc":"2.0","id":"still","method":"workspace/symbol","params":{"query":""}}`)
	a := r.answer()
	assert.Equal(r.t, "still", a.ID)
	assert.Nil(r.t, a.Error)
}

func TestWireRefusesAndGoesOn(t *testing.T) {
	for _, c := range []struct {
		about, body string
		code        int
	}{
		{"no JSON", `{"jsonrpc":"2.0","id":2,"method":`, -32700},
		{"empty body", ``, -32700},
		{"bytes that are no UTF-8 outside text", "\xff\xfe", -32700},
		{"neither method nor result", `{"jsonrpc":"2.0","id":5}`, -32600},
		{"a batch, which the protocol does not have", `[{"jsonrpc":"2.0","id":2,"method":"shutdown"}]`, -32600},
		{"a fraction as id", `{"jsonrpc":"2.0","id":1.5,"method":"workspace/symbol","params":{"query":""}}`, -32600},
		{"a method that is no text", `{"jsonrpc":"2.0","id":2,"method":7}`, -32600},
		{"a text", `"hello"`, -32600},
		{"a method that does not exist", `{"jsonrpc":"2.0","id":2,"method":"textDocument/none"}`, -32601},
		{"an optional one that does not exist", `{"jsonrpc":"2.0","id":2,"method":"$/none"}`, -32601},
		{"initialize once more", hello, -32600},
		{"no parameters", `{"jsonrpc":"2.0","id":2,"method":"textDocument/hover"}`, -32602},
		{"parameters of another shape", `{"jsonrpc":"2.0","id":2,"method":"textDocument/hover","params":[1]}`, -32602},
		{"a document nobody knows", `{"jsonrpc":"2.0","id":2,"method":"textDocument/hover","params":{"textDocument":{"uri":"file:///none.candle.hcl"},"position":{"line":0,"character":0}}}`, -32803},
	} {
		t.Run(c.about, func(t *testing.T) {
			r := startRaw(t)
			r.hello()
			r.say(c.body)
			assert.Equal(t, c.code, r.code())
			r.works()
		})
	}
}

func TestWireReadsEveryHeader(t *testing.T) {
	body := `{"jsonrpc":"2.0","id":2,"method":"workspace/symbol","params":{"query":""}}`
	n := len(body)
	for about, message := range map[string]string{
		"small letters":          fmt.Sprintf("content-length: %d\r\n\r\n%s", n, body),
		"no space":               fmt.Sprintf("Content-Length:%d\r\n\r\n%s", n, body),
		"type before":            fmt.Sprintf("Content-Type: application/vscode-jsonrpc; charset=utf-8\r\nContent-Length: %d\r\n\r\n%s", n, body),
		"type behind":            fmt.Sprintf("Content-Length: %d\r\nContent-Type: application/vscode-jsonrpc; charset=utf-8\r\n\r\n%s", n, body),
		"line feeds alone":       fmt.Sprintf("Content-Length: %d\n\n%s", n, body),
		"white space behind":     fmt.Sprintf("Content-Length: %d\r\n\r\n%s%s", n+5000, body, strings.Repeat(" ", 5000)),
		"a line end left over":   fmt.Sprintf("Content-Length: %d\r\n\r\n%s\r\n", n, body),
		"a line that is no head": fmt.Sprintf("hello\r\nContent-Length: %d\r\n\r\n%s", n, body),
	} {
		t.Run(about, func(t *testing.T) {
			r := startRaw(t)
			r.hello()
			r.write(message)
			assert.Equal(t, 0, r.code())
			r.works()
		})
	}
	t.Run("no length at all", func(t *testing.T) {
		r := startRaw(t)
		r.hello()
		r.write("Content-Type: text\r\n\r\n")
		assert.Equal(t, -32700, r.code())
		r.works()
	})
	t.Run("a length that is no number", func(t *testing.T) {
		r := startRaw(t)
		r.hello()
		r.write("Content-Length: many\r\n\r\n")
		assert.Equal(t, -32700, r.code())
		r.works()
	})
	t.Run("more than is read", func(t *testing.T) {
		r := startRaw(t)
		r.hello()
		r.write(fmt.Sprintf("Content-Length: %d\r\n\r\n", largestMessage+1))
		r.write(strings.Repeat(" ", largestMessage+1))
		assert.Equal(t, -32600, r.code())
		r.works()
	})
}

// 50 MB in one message are read, and what is no recipe of that size is said.
func TestWireLargeMessage(t *testing.T) {
	if testing.Short() {
		t.Skip("takes seconds")
	}
	r := startRaw(t)
	r.hello()
	r.say(`{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":"untitled:big","languageId":"candle","version":1,"text":"` + strings.Repeat("# 0123456 \\n", 50<<20/12) + `"}}}`)
	r.works()
}

func TestWireKeepsIDs(t *testing.T) {
	r := startRaw(t)
	r.hello()
	for _, id := range []string{"-5", "0", "9007199254740991", `"a"`, `""`, `"7"`, "7"} {
		r.say(`{"jsonrpc":"2.0","id":` + id + `,"method":"workspace/symbol","params":{"query":""}}`)
		a := r.answer()
		got, err := json.Marshal(a.ID)
		require.NoError(t, err)
		if id == "9007199254740991" {
			assert.InDelta(t, 9007199254740991.0, a.ID, 0)
			continue
		}
		assert.Equal(t, id, string(got))
	}
}

func TestLifecycle(t *testing.T) {
	t.Run("before initialize", func(t *testing.T) {
		r := startRaw(t)
		r.say(`{"jsonrpc":"2.0","id":2,"method":"textDocument/hover","params":{}}`)
		assert.Equal(t, -32002, r.code())
		r.say(`{"jsonrpc":"2.0","id":2,"method":"shutdown"}`)
		assert.Equal(t, -32002, r.code())
		r.say(`{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{}}`) // dropped
		r.hello()
		r.works()
	})
	t.Run("after shutdown", func(t *testing.T) {
		r := startRaw(t)
		r.hello()
		r.say(`{"jsonrpc":"2.0","id":2,"method":"shutdown"}`)
		a := r.answer()
		assert.Nil(t, a.Error)
		assert.Equal(t, "null", string(a.Result))
		r.say(`{"jsonrpc":"2.0","id":3,"method":"workspace/symbol","params":{"query":""}}`)
		assert.Equal(t, -32600, r.code())
		r.say(`{"jsonrpc":"2.0","method":"exit"}`)
		assert.Equal(t, Ended, r.status())
	})
	t.Run("exit without shutdown", func(t *testing.T) {
		r := startRaw(t)
		r.hello()
		r.say(`{"jsonrpc":"2.0","method":"exit"}`)
		assert.Equal(t, Lost, r.status())
	})
	t.Run("exit before initialize", func(t *testing.T) {
		r := startRaw(t)
		r.say(`{"jsonrpc":"2.0","method":"exit"}`)
		assert.Equal(t, Lost, r.status())
	})
	t.Run("end of input", func(t *testing.T) {
		r := startRaw(t)
		r.hello()
		r.in.Close()
		assert.Equal(t, Lost, r.status())
	})
	t.Run("end of input after shutdown", func(t *testing.T) {
		r := startRaw(t)
		r.hello()
		r.say(`{"jsonrpc":"2.0","id":2,"method":"shutdown"}`)
		r.code()
		r.in.Close()
		assert.Equal(t, Ended, r.status())
	})
	t.Run("end of input amid a message", func(t *testing.T) {
		r := startRaw(t)
		r.hello()
		r.write("Content-Length: 100\r\n\r\n{")
		r.in.Close()
		assert.Equal(t, Lost, r.status())
	})
	t.Run("the parent is gone", func(t *testing.T) {
		r := startRaw(t, func(c *Config) { c.Alive = func(id int) bool { return id != 4711 } })
		r.say(strings.Replace(hello, `"processId":null`, `"processId":4711`, 1))
		assert.Equal(t, Lost, r.status())
	})
	t.Run("notifications nobody knows", func(t *testing.T) {
		r := startRaw(t)
		r.hello()
		r.say(`{"jsonrpc":"2.0","method":"$/setTrace","params":{"value":"compact"}}`)
		r.say(`{"jsonrpc":"2.0","method":"wickrule/none","params":{}}`)
		r.say(`{"jsonrpc":"2.0","method":"textDocument/didChange","params":{"textDocument":{"uri":"file:///x","version":2},"contentChanges":[]}}`)
		r.say(`{"jsonrpc":"2.0","method":"textDocument/didSave","params":[]}`)
		r.say(`{"jsonrpc":"2.0","id":77,"result":null}`) // an answer to nothing
		r.works()
	})
}

// A request that is cancelled is answered with −32800, whether it runs or
// waits; others are answered meanwhile.
func TestCancel(t *testing.T) {
	disk := demoShop(t)
	held := make(chan struct{})
	config := testConfig(t, disk)
	config.Log = func(string, ...any) {}
	open := config.Folder
	first := true
	config.Folder = func(path string) (fs.FS, io.Closer, error) {
		if first {
			first = false
			<-held // the shop is slow to be read
		}
		return open(path)
	}
	r := startRaw(t, func(c *Config) { *c = config })
	r.hello()
	r.say(`{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":"file:///` + tide + `","languageId":"candle","version":1,"text":"recipe \"a\" {}"}}}`)
	hover := `{"jsonrpc":"2.0","id":%s,"method":"textDocument/hover","params":{"textDocument":{"uri":"file:///` + tide + `"},"position":{"line":0,"character":1}}}`
	r.say(fmt.Sprintf(hover, "10"))
	r.say(fmt.Sprintf(hover, `"ten"`))
	r.say(fmt.Sprintf(hover, "-10"))
	r.say(`{"jsonrpc":"2.0","id":11,"method":"textDocument/none"}`)
	assert.Equal(t, -32601, r.code(), "is answered while others wait")
	for _, id := range []string{"10", `"ten"`, "-10"} {
		r.say(`{"jsonrpc":"2.0","method":"$/cancelRequest","params":{"id":` + id + `}}`)
		assert.Equal(t, -32800, r.code())
	}
	r.say(`{"jsonrpc":"2.0","method":"$/cancelRequest","params":{"id":10}}`) // answered already
	r.say(`{"jsonrpc":"2.0","method":"$/cancelRequest","params":{}}`)
	close(held)
	r.say(fmt.Sprintf(hover, "12"))
	assert.Equal(t, 0, r.code())
}

// A fault in answering one request is the answer to that request.
func TestFaultIsContained(t *testing.T) {
	_, err := contained(func() (any, error) { panic("wax on the floor") })
	require.ErrorContains(t, err, "wax on the floor")
	falls := &lint.Rule{Name: "falls", Check: func(*lint.Pass) { panic("wax on the floor") }}
	r := startRaw(t, func(c *Config) { c.Rules = func(*lint.Shop) []*lint.Rule { return []*lint.Rule{falls} } })
	r.hello()
	r.say(`{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":"untitled:1","languageId":"candle","version":1,"text":"recipe \"a\" {}"}}}`)
	r.works()
}
