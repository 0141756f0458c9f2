package lsp

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
)

// The program itself, over the pipes of its standard input and output, in a
// shop of 10,000 recipes. Every figure stands beside its floor, taken in the
// same run: parsing the edited file as HCL, and an empty request there and
// back.
//
//	go test ./lsp -run '^$' -bench Pipe -benchtime 1x

const manyRecipes = 10_000

// process is the built program with somebody at the other end.
type process struct {
	b    testing.TB
	in   io.WriteCloser
	out  *bufio.Reader
	next int
}

func startProcess(b testing.TB, program, folder string) *process {
	cmd := exec.Command(program, "lsp")
	cmd.Dir = folder
	in, err := cmd.StdinPipe()
	require.NoError(b, err)
	out, err := cmd.StdoutPipe()
	require.NoError(b, err)
	cmd.Stderr = os.Stderr
	require.NoError(b, cmd.Start())
	p := &process{b: b, in: in, out: bufio.NewReaderSize(out, 1<<20)}
	b.Cleanup(func() { in.Close(); cmd.Wait() })
	return p
}

func (p *process) send(method string, id int, params any) {
	message := map[string]any{"jsonrpc": "2.0", "method": method, "params": params}
	if id > 0 {
		message["id"] = id
	}
	body, err := json.Marshal(message)
	require.NoError(p.b, err)
	_, err = fmt.Fprintf(p.in, "Content-Length: %d\r\n\r\n%s", len(body), body)
	require.NoError(p.b, err)
}

// until reads messages up to one that holds every one of the pieces of text.
func (p *process) until(pieces ...string) []byte {
	for {
		header, err := p.out.ReadString('\n')
		require.NoError(p.b, err)
		n, err := strconv.Atoi(strings.TrimSpace(strings.TrimPrefix(header, "Content-Length:")))
		require.NoError(p.b, err)
		_, err = p.out.Discard(2)
		require.NoError(p.b, err)
		body := make([]byte, n)
		_, err = io.ReadFull(p.out, body)
		require.NoError(p.b, err)
		has := func(piece string) bool { return bytes.Contains(body, []byte(piece)) }
		if !slices.ContainsFunc(pieces, func(piece string) bool { return !has(piece) }) {
			return body
		}
	}
}

func (p *process) ask(method string, params any) []byte {
	p.next++
	p.send(method, p.next, params)
	return p.until(fmt.Sprintf(`"id":%d,`, p.next))
}

// builtProgram builds the program into a folder of the test's own.
func builtProgram(b testing.TB) string {
	program := filepath.Join(b.TempDir(), "wickrule")
	build := exec.Command("go", "build", "-o", program, "wickrule")
	out, err := build.CombinedOutput()
	require.NoError(b, err, string(out))
	return program
}

func onDisk(b testing.TB, files fstest.MapFS) string {
	folder := b.TempDir()
	require.NoError(b, os.CopyFS(folder, files))
	return folder
}

func spread(times []time.Duration) (p50, p99 time.Duration) {
	slices.Sort(times)
	return times[len(times)/2], times[len(times)*99/100]
}

func us(d time.Duration) float64 { return float64(d.Nanoseconds()) / 1000 }

func BenchmarkPipe(b *testing.B) {
	files, err := examples.Many(manyRecipes)
	require.NoError(b, err)
	program, folder := builtProgram(b), onDisk(b, files)
	name := "recipes/00004.candle.hcl"
	text := string(files[name].Data)
	uri := fileURI(strings.TrimPrefix(filepath.ToSlash(filepath.Join(folder, name)), "/"))
	for b.Loop() {
		p := startProcess(b, program, folder)
		start := time.Now()
		p.ask("initialize", map[string]any{"processId": nil, "rootUri": "file://" + folder, "capabilities": json.RawMessage(able)})
		p.send("initialized", 0, struct{}{})
		p.send("textDocument/didOpen", 0, map[string]any{"textDocument": map[string]any{"uri": uri, "languageId": "candle", "version": 1, "text": text}})
		p.until("publishDiagnostics", `"version":1`)
		b.ReportMetric(float64(time.Since(start).Milliseconds()), "first-read-ms")

		at := strings.Index(text, `"`) + 1
		line, column := strings.Count(text[:at], "\n"), at-strings.LastIndex(text[:at], "\n")-1
		version := 1
		edit := func(from, to int, insert string) {
			version++
			p.send("textDocument/didChange", 0, map[string]any{
				"textDocument": map[string]any{"uri": uri, "version": version},
				"contentChanges": []any{map[string]any{"range": map[string]any{
					"start": map[string]any{"line": line, "character": from}, "end": map[string]any{"line": line, "character": to},
				}, "text": insert}},
			})
			p.until("publishDiagnostics", fmt.Sprintf(`"version":%d,`, version))
		}
		// The garbage of this end is collected between runs: it would stop the clock
		// of the other.
		runtime.GC()
		percent := debug.SetGCPercent(-1)
		var parses, edits, empties, hovers, completions []time.Duration
		timed := func(list *[]time.Duration, work func()) {
			start := time.Now()
			work()
			*list = append(*list, time.Since(start))
		}
		about := map[string]any{"textDocument": map[string]any{"uri": uri}, "position": map[string]any{"line": line, "character": column + 1}}
		for i := range 1000 {
			timed(&parses, func() { hclsyntax.ParseConfig([]byte(text), name, hcl.InitialPos) })
			timed(&empties, func() { p.ask("wickrule/nothing", struct{}{}) })
			if i%2 == 0 {
				timed(&edits, func() { edit(column, column, "x") })
			} else {
				timed(&edits, func() { edit(column, column+1, "") })
			}
			if i%10 == 0 {
				timed(&hovers, func() { p.ask("textDocument/hover", about) })
				timed(&completions, func() { p.ask("textDocument/completion", about) })
			}
		}
		debug.SetGCPercent(percent)
		parse, _ := spread(parses)
		for _, m := range []struct {
			name  string
			times []time.Duration
		}{{"empty", empties}, {"edit", edits}, {"hover", hovers}, {"completion", completions}} {
			p50, p99 := spread(m.times)
			b.ReportMetric(us(p50), m.name+"-p50-us")
			b.ReportMetric(us(p99), m.name+"-p99-us")
		}
		_, p99 := spread(edits)
		b.ReportMetric(us(parse), "parse-p50-us")
		b.ReportMetric((us(p99)-1000)/us(parse), "edit-p99-less-1ms-in-parses")
	}
}
