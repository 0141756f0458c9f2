package editors

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/sourcegraph/jsonrpc2"
	"github.com/stretchr/testify/require"
)

// server is a language server that is spoken to without an editor.
type server struct {
	t          *testing.T
	cmd        *exec.Cmd
	conn       *jsonrpc2.Conn
	complaints screen // its standard error

	mu       sync.Mutex
	settings any               // what it is told when it asks for its settings
	edits    []json.RawMessage // what it had applied
	messages []string          // what it had shown
	findings map[string][]string
}

// startServer starts one in a folder, with the built program on the PATH.
func startServer(t *testing.T, folder, command string, args ...string) *server {
	t.Helper()
	if command == "wickrule" {
		command = program(t)
	}
	s := &server{t: t, cmd: exec.Command(command, args...), findings: map[string][]string{}}
	s.cmd.Dir = folder
	s.cmd.Stderr = &s.complaints
	in, err := s.cmd.StdinPipe()
	require.NoError(t, err)
	out, err := s.cmd.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, s.cmd.Start())
	stream := jsonrpc2.NewBufferedStream(pipes{out, in}, jsonrpc2.VSCodeObjectCodec{})
	s.conn = jsonrpc2.NewConn(context.Background(), stream, jsonrpc2.AsyncHandler(jsonrpc2.HandlerWithError(s.asked)))
	t.Cleanup(func() {
		s.conn.Close()
		if s.cmd.ProcessState == nil {
			s.cmd.Process.Kill()
			s.cmd.Wait()
		}
		if t.Failed() {
			t.Logf("%.3000s", s.complaints.String())
		}
	})
	return s
}

type pipes struct {
	io.Reader
	io.WriteCloser
}

// asked answers what the server wants of its client.
func (s *server) asked(_ context.Context, _ *jsonrpc2.Conn, r *jsonrpc2.Request) (any, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	var p struct {
		URI         string `json:"uri"`
		Message     string `json:"message"`
		Diagnostics []struct {
			Code string `json:"code"`
		} `json:"diagnostics"`
	}
	if r.Params != nil {
		_ = json.Unmarshal(*r.Params, &p) // others have other parameters
	}
	switch r.Method {
	case "workspace/configuration":
		return []any{s.settings}, nil
	case "workspace/applyEdit":
		s.edits = append(s.edits, *r.Params)
		return map[string]any{"applied": true}, nil
	case "window/showMessage":
		s.messages = append(s.messages, p.Message)
	case "textDocument/publishDiagnostics":
		names := []string{}
		for _, d := range p.Diagnostics {
			names = append(names, d.Code)
		}
		s.findings[p.URI] = names
	}
	return nil, nil
}

// ask sends a request and reads its answer into result.
func (s *server) ask(method string, params, result any) error {
	ctx, cancel := context.WithTimeout(context.Background(), 20*time.Second)
	defer cancel()
	return s.conn.Call(ctx, method, params, result)
}

func (s *server) tell(method string, params any) {
	s.t.Helper()
	require.NoError(s.t, s.conn.Notify(context.Background(), method, params))
}

// begin says hello for a folder, with initialization options or nil and the
// client's capabilities as JSON, and returns the server's.
func (s *server) begin(folder string, options any, can string) (capabilities map[string]json.RawMessage) {
	s.t.Helper()
	var hello struct {
		Capabilities map[string]json.RawMessage `json:"capabilities"`
	}
	require.NoError(s.t, s.ask("initialize", map[string]any{
		"processId": os.Getpid(), "rootUri": uriOf(folder), "capabilities": json.RawMessage(can), "initializationOptions": options,
	}, &hello))
	s.tell("initialized", map[string]any{})
	return hello.Capabilities
}

// open opens a file with a text of its own and returns its URI.
func (s *server) open(path, language, text string) string {
	s.t.Helper()
	uri := uriOf(path)
	s.tell("textDocument/didOpen", map[string]any{"textDocument": map[string]any{"uri": uri, "languageId": language, "version": 1, "text": text}})
	return uri
}

// finds waits until the findings sent for a file are those.
func (s *server) finds(uri string, want ...string) {
	s.t.Helper()
	eventually(s.t, "the findings", func() (any, bool) {
		s.mu.Lock()
		defer s.mu.Unlock()
		got, sent := s.findings[uri]
		return got, sent && len(got) == len(want) && bytes.Equal(asJSON(got), asJSON(append([]string{}, want...)))
	})
}

// end says goodbye as the protocol asks, and is the exit status.
func (s *server) end() int {
	s.t.Helper()
	require.NoError(s.t, s.ask("shutdown", nil, nil))
	s.tell("exit", nil)
	_ = s.cmd.Wait()
	return s.cmd.ProcessState.ExitCode()
}

func asJSON(value any) []byte {
	data, _ := json.Marshal(value)
	return data
}

func uriOf(path string) string {
	return (&url.URL{Scheme: "file", Path: filepath.ToSlash(path)}).String()
}
