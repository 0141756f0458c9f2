package editors

import (
	"bufio"
	"encoding/json"
	"io"
	"os"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The client library of the protocol's authors, on Node.
func TestProtocolLibrary(t *testing.T) {
	protocolLibrary(t)
	bin, recordings := recorded(t)
	shop := prepared(t)
	l := startLibrary(t, bin, shop)
	work(t, shop, l)
	var status int
	l.do(&status, "quit")
	require.Zero(t, status, "the server's exit status")
	valid(t, recordings)
}

// library is a client that is told on its standard input what to do.
type library struct {
	t   *testing.T
	in  io.Writer
	out *bufio.Reader
}

func startLibrary(t *testing.T, bin, shop string) *library {
	t.Helper()
	cmd := exec.Command("node", "maker.mjs", shop)
	cmd.Dir = "protocol"
	cmd.Env = append(os.Environ(), "PATH="+bin+string(os.PathListSeparator)+os.Getenv("PATH"))
	var complaints strings.Builder
	cmd.Stderr = &complaints
	in, err := cmd.StdinPipe()
	require.NoError(t, err)
	out, err := cmd.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, cmd.Start())
	t.Cleanup(func() {
		in.Close()
		cmd.Process.Kill()
		cmd.Wait()
		if t.Failed() {
			t.Log(complaints.String())
		}
	})
	return &library{t, in, bufio.NewReader(out)}
}

func (l *library) do(value any, word ...any) {
	l.t.Helper()
	line, err := json.Marshal(word)
	require.NoError(l.t, err)
	_, err = l.in.Write(append(line, '\n'))
	require.NoError(l.t, err)
	answer, err := l.out.ReadBytes('\n')
	require.NoError(l.t, err, word)
	var got struct{ Value json.RawMessage }
	require.NoError(l.t, json.Unmarshal(answer, &got), string(answer))
	if value != nil {
		require.NoError(l.t, json.Unmarshal(got.Value, value), string(answer))
	}
}

func (l *library) open(path string)    { l.t.Helper(); l.do(nil, "open", path) }
func (l *library) text() (text string) { l.t.Helper(); l.do(&text, "text"); return }
func (l *library) cursor(piece string, further int) {
	l.t.Helper()
	l.do(nil, "cursor", piece, further)
}
func (l *library) replace(old, new string)    { l.t.Helper(); l.do(nil, "replace", old, new) }
func (l *library) findings() (list []finding) { l.t.Helper(); l.do(&list, "findings"); return }
func (l *library) hover() (text string)       { l.t.Helper(); l.do(&text, "hover"); return }
func (l *library) undo()                      { l.t.Helper(); l.do(nil, "undo") }
func (l *library) rename(to string)           { l.t.Helper(); l.do(nil, "rename", to) }
func (l *library) layOut()                    { l.t.Helper(); l.do(nil, "layOut") }
func (l *library) symbols() (list []string)   { l.t.Helper(); l.do(&list, "symbols"); return }
func (l *library) save()                      { l.t.Helper(); l.do(nil, "save") }
func (l *library) hints() (list []string, can bool) {
	l.t.Helper()
	l.do(&list, "hints")
	return list, true
}
func (l *library) lenses() (list []string, can bool) {
	l.t.Helper()
	l.do(&list, "lenses")
	return list, true
}
func (l *library) complete(after, typed string) (offers []string) {
	l.t.Helper()
	l.do(&offers, "complete", after, typed)
	return offers
}
func (l *library) act(title string) (titles []string) {
	l.t.Helper()
	l.do(&titles, "act", title)
	return titles
}
