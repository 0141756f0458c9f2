package editors

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"
)

// Words to this test program itself, as environment variables.
const (
	noSkip     = "EDITORS_MUST_RUN" // not empty: an editor that is not installed fails its test
	recordInto = "EDITORS_RECORD"   // a folder: this program is the language server, and writes down what is said
	realServer = "EDITORS_PROGRAM"  // the program that is the language server then
)

func TestMain(m *testing.M) {
	if folder := os.Getenv(recordInto); folder != "" {
		os.Exit(between(folder, os.Getenv(realServer), os.Args[1:]))
	}
	code := m.Run()
	os.RemoveAll(built.folder)
	os.Exit(code)
}

// built is the program, built once for all tests.
var built struct {
	once   sync.Once
	folder string
	err    error
}

// program is the path of the built program.
func program(t *testing.T) string {
	t.Helper()
	built.once.Do(func() {
		if built.folder, built.err = os.MkdirTemp("", "wickrule-"); built.err != nil {
			return
		}
		out, err := exec.Command("go", "build", "-o", built.folder+"/wickrule", "wickrule").CombinedOutput()
		if err != nil {
			built.err = fmt.Errorf("%w: %s", err, out)
		}
	})
	require.NoError(t, built.err)
	return built.folder + "/wickrule"
}

// recorded makes a folder with a program named wickrule that is the real one
// with an ear on its language server, and a folder where recordings go: a file
// for each server that was started, with a message a line.
func recorded(t *testing.T) (bin, recordings string) {
	t.Helper()
	self, err := os.Executable()
	require.NoError(t, err)
	bin, recordings = t.TempDir(), t.TempDir()
	script := fmt.Sprintf("#!/bin/sh\nexport %s='%s' %s='%s'\nexec '%s' \"$@\"\n", recordInto, recordings, realServer, program(t), self)
	require.NoError(t, os.WriteFile(filepath.Join(bin, "wickrule"), []byte(script), 0o755))
	return bin, recordings
}

// between runs the program and passes on what is said to it and by it, writing
// each message down. What is passed on is not changed by a byte.
func between(folder, program string, args []string) int {
	record, err := os.Create(filepath.Join(folder, strconv.Itoa(os.Getpid())+".jsonl"))
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 2
	}
	defer record.Close()
	cmd := exec.Command(program, args...)
	cmd.Stderr = os.Stderr
	in, _ := cmd.StdinPipe()
	out, _ := cmd.StdoutPipe()
	if err := cmd.Start(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 2
	}
	var mu sync.Mutex
	go func() {
		pass(os.Stdin, in, &ear{from: "client", mu: &mu, out: record})
		in.Close()
	}()
	pass(out, os.Stdout, &ear{from: "server", mu: &mu, out: record})
	_ = cmd.Wait()
	return cmd.ProcessState.ExitCode()
}

func pass(from io.Reader, to io.Writer, heard *ear) {
	buf := make([]byte, 1<<16)
	for {
		n, err := from.Read(buf)
		heard.hear(buf[:n])
		if _, failed := to.Write(buf[:n]); failed != nil || err != nil {
			return
		}
	}
}

// ear takes the bytes of one side and writes a line for each message.
type ear struct {
	from string
	mu   *sync.Mutex
	out  io.Writer
	rest []byte
}

func (e *ear) hear(data []byte) {
	e.rest = append(e.rest, data...)
	for {
		head, body, ok := bytes.Cut(e.rest, []byte("\r\n\r\n"))
		if !ok {
			return
		}
		length := -1
		for _, line := range bytes.Split(head, []byte("\r\n")) {
			if name, value, _ := bytes.Cut(line, []byte(":")); bytes.EqualFold(name, []byte("content-length")) {
				length, _ = strconv.Atoi(string(bytes.TrimSpace(value)))
			}
		}
		if length < 0 || len(body) < length {
			return
		}
		line, err := json.Marshal(struct {
			From    string          `json:"from"`
			Message json.RawMessage `json:"message"`
		}{e.from, body[:length]})
		if err != nil {
			line, _ = json.Marshal(map[string]string{"from": e.from, "message": "not JSON: " + string(body[:length])})
		}
		e.mu.Lock()
		e.out.Write(append(line, '\n'))
		e.mu.Unlock()
		e.rest = append([]byte(nil), body[length:]...)
	}
}
