package editors

import (
	"bufio"
	"encoding/binary"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// neovims are the commands to be tried: those of the variable, or nvim.
func neovims(t *testing.T) []string { return commands(t, "EDITORS_NEOVIM", "nvim") }

func commands(t *testing.T, variable, usual string) []string {
	t.Helper()
	list := filepath.SplitList(os.Getenv(variable))
	if len(list) == 0 {
		list = []string{usual}
	}
	for _, command := range list {
		if _, err := exec.LookPath(command); err != nil {
			missing(t, command+" is not installed")
		}
	}
	return list
}

func TestNeovim(t *testing.T) {
	for _, command := range neovims(t) {
		t.Run(versionOf(t, command), func(t *testing.T) {
			bin, recordings := recorded(t)
			shop := prepared(t)
			n := startNeovim(t, command, bin)
			work(t, shop, n)
			n.sheetOfLens(filepath.Join(shop, tide))
			n.quit()
			valid(t, recordings)
		})
	}
}

// The words of a finding stand beside the line while the person still types.
func TestNeovimShowsFindings(t *testing.T) {
	for _, command := range neovims(t) {
		t.Run(versionOf(t, command), func(t *testing.T) {
			shop := prepared(t)
			n := startNeovim(t, command, filepath.Dir(program(t)))
			n.open(filepath.Join(shop, tide))
			n.replace("5 % of wax", "7 % of wax")
			eventually(t, "the words of the finding", func() (any, bool) {
				shown := n.lua(`
					local words = ""
					for space = 1, vim.api.nvim_create_namespace("") do -- some have no name
						for _, mark in ipairs(vim.api.nvim_buf_get_extmarks(0, space, 0, -1, { details = true })) do
							for _, chunk in ipairs(mark[4].virt_text or {}) do words = words .. chunk[1] end
						end
					end
					return words`)
				return shown, strings.Contains(shown, "7 % of wax is over what Northlight paraffin")
			})
			n.inserting(true)
		})
	}
}

func versionOf(t *testing.T, command string) string {
	t.Helper()
	out, err := exec.Command(command, "--version").Output()
	require.NoError(t, err)
	first, _, _ := strings.Cut(string(out), "\n")
	return first
}

// From a key to the finding it makes, in one process: from the moment the key is
// handed to the editor to the moment the editor has the finding.
func TestNeovimFromKeyToFinding(t *testing.T) {
	for _, command := range neovims(t) {
		t.Run(versionOf(t, command), func(t *testing.T) {
			shop := prepared(t)
			n := startNeovim(t, command, filepath.Dir(program(t)))
			n.open(filepath.Join(shop, tide))
			n.lua(`
				vim.api.nvim_create_autocmd("DiagnosticChanged", { callback = function()
					for _, d in ipairs(vim.diagnostic.get(0)) do
						if d.code == "fragrance-over-limit" and not seen then seen = vim.loop.hrtime() end
					end
				end })`)
			var took []float64
			for range 40 {
				n.cursor("5 % of wax", 0)
				n.lua(`seen = nil; pressed = vim.loop.hrtime(); vim.api.nvim_input("r7")`)
				var ms float64
				eventually(t, "the finding", func() (any, bool) {
					require.NoError(t, json.Unmarshal([]byte(n.lua(`return vim.fn.json_encode(seen and (seen - pressed) / 1e6 or 0)`)), &ms))
					return n.findings(), ms > 0
				})
				took = append(took, ms)
				n.cursor("7 % of wax", 0)
				n.input("r5")
				eventually(t, "no finding", func() (any, bool) { f := n.findings(); return f, len(f) == 0 })
			}
			slices.Sort(took)
			t.Logf("from key to finding: median of %d %.1f ms, fastest %.1f ms, slowest %.1f ms", len(took), took[len(took)/2], took[0], took[len(took)-1])
		})
	}
}

// neovim is one that is spoken to over its standard input and output.
type neovim struct {
	t      *testing.T
	in     io.WriteCloser
	out    *bufio.Reader
	mu     sync.Mutex
	id     uint32
	cmd    *exec.Cmd
	stderr strings.Builder
}

// startNeovim starts one that has the plugin of this folder where a maker
// would copy it to, the lines given in its init file, and nothing else.
func startNeovim(t *testing.T, command, bin string, init ...string) *neovim {
	t.Helper()
	home := t.TempDir()
	require.NoError(t, os.CopyFS(home+"/data/nvim/site/pack/wickrule/start/wickrule", os.DirFS("neovim")))
	require.NoError(t, os.MkdirAll(home+"/config/nvim", 0o755))
	require.NoError(t, os.WriteFile(home+"/config/nvim/init.lua", []byte(strings.Join(init, "\n")), 0o644))
	var err error
	n := &neovim{t: t, cmd: exec.Command(command, "--embed", "--headless", "-n", "-i", "NONE")}
	n.cmd.Env = append(os.Environ(), "HOME="+home, "XDG_CONFIG_HOME="+home+"/config", "XDG_DATA_HOME="+home+"/data",
		"XDG_STATE_HOME="+home+"/state", "XDG_CACHE_HOME="+home+"/cache", "PATH="+bin+string(os.PathListSeparator)+os.Getenv("PATH"))
	n.cmd.Stderr = &n.stderr
	n.in, err = n.cmd.StdinPipe()
	require.NoError(t, err)
	out, err := n.cmd.StdoutPipe()
	require.NoError(t, err)
	n.out = bufio.NewReader(out)
	require.NoError(t, n.cmd.Start())
	t.Cleanup(func() {
		n.cmd.Process.Kill()
		n.cmd.Wait()
		if t.Failed() && n.stderr.Len() > 0 {
			t.Log(n.stderr.String())
		}
	})
	n.lua(`
		vim.o.columns, vim.o.lines, vim.o.more, vim.o.hidden = 200, 60, false, true
		vim.o.shortmess = vim.o.shortmess .. "atIcF"
		vim.ui.select = function(items, opts, chosen) -- a person who knows what to choose
			titles = {}
			for _, item in ipairs(items) do
				local title = opts.format_item and opts.format_item(item) or tostring(item)
				table.insert(titles, title)
				if wanted and title:sub(1, #wanted) == wanted then wanted = nil; chosen(item, _) end
			end
		end`)
	return n
}

func (n *neovim) quit() {
	n.request("nvim_input", ":qa!\r")
	done := make(chan error, 1)
	go func() { done <- n.cmd.Wait() }()
	select {
	case <-done:
	case <-time.After(10 * time.Second):
		require.Fail(n.t, "the editor does not end")
	}
}

// lua runs a piece of Lua, which may return a text.
func (n *neovim) lua(code string, args ...any) string {
	n.t.Helper()
	if args == nil {
		args = []any{}
	}
	result, failed := n.request("nvim_exec_lua", code, args)
	require.Nil(n.t, failed, code)
	text, _ := result.(string)
	return text
}

func (n *neovim) list(code string) (list []string) {
	n.t.Helper()
	text := n.lua(code)
	require.NoError(n.t, json.Unmarshal([]byte(strings.Replace(text, "{}", "[]", 1)), &list), text)
	return list
}

// input types keys, one after the other.
func (n *neovim) input(keys ...string) {
	n.t.Helper()
	for _, key := range keys {
		_, failed := n.request("nvim_input", key)
		require.Nil(n.t, failed)
		time.Sleep(3 * time.Millisecond)
	}
}

func each(text string) (keys []string) {
	for _, r := range text {
		keys = append(keys, strings.NewReplacer("<", "<lt>", "\n", "<CR>").Replace(string(r)))
	}
	return keys
}

func (n *neovim) open(path string) {
	n.t.Helper()
	n.lua(`vim.cmd("edit " .. ...)`, path)
	eventually(n.t, "the server", func() (any, bool) {
		got := n.lua(`
			local clients = vim.lsp.get_clients and vim.lsp.get_clients({ bufnr = 0 }) or vim.lsp.buf_get_clients(0)
			for _, client in pairs(clients) do if client.initialized then return "yes" end end`)
		return n.lua(`return vim.fn.execute("messages")`), got == "yes"
	})
}

func (n *neovim) text() string {
	n.t.Helper()
	return n.lua(`return table.concat(vim.api.nvim_buf_get_lines(0, 0, -1, false), "\n") .. (vim.bo.endofline and "\n" or "")`)
}

func (n *neovim) cursor(piece string, further int) {
	n.t.Helper()
	found := n.lua(`
		vim.fn.cursor(1, 1)
		local piece, further = ...
		local line = vim.fn.search("\\V" .. vim.fn.escape(piece, "\\"), "cW")
		if further > 0 then vim.cmd("normal! " .. further .. "l") end
		return line > 0 and "yes" or "no"`, piece, further)
	require.Equal(n.t, "yes", found, piece)
}

func (n *neovim) replace(old, new string) {
	n.t.Helper()
	n.cursor(old, 0)
	n.input(fmt.Sprint(len([]rune(old))), "x", "i")
	n.input(each(new)...)
	eventually(n.t, "the typed text", func() (any, bool) { text := n.text(); return text, strings.Contains(text, new) })
	// The finding is to be there while the person is still typing.
	n.inserting(true)
}

func (n *neovim) inserting(is bool) {
	n.t.Helper()
	eventually(n.t, "the mode", func() (any, bool) {
		mode := n.lua(`return vim.fn.mode()`)
		return mode, strings.HasPrefix(mode, "i") == is
	})
}

func (n *neovim) normal() {
	n.t.Helper()
	n.input("<Esc>")
	n.inserting(false)
}

func (n *neovim) findings() []finding {
	n.t.Helper()
	var list []finding
	text := n.lua(`
		local list = {}
		for _, d in ipairs(vim.diagnostic.get(0)) do
			local text = table.concat(vim.api.nvim_buf_get_text(0, d.lnum, d.col, d.end_lnum, d.end_col, {}), "\n")
			table.insert(list, { text = text, line = d.lnum + 1, code = d.code, message = d.message, severity = d.severity })
		end
		return #list == 0 and "[]" or vim.fn.json_encode(list)`)
	require.NoError(n.t, json.Unmarshal([]byte(text), &list), text)
	return list
}

func (n *neovim) hover() string {
	n.t.Helper()
	n.normal()
	n.cursor(`"7 % of wax"`, 3)
	time.Sleep(100 * time.Millisecond) // the editor closes a hover when it hears that the cursor moved
	n.input("K")
	var text string
	eventually(n.t, "the hover", func() (any, bool) {
		text = n.lua(`
			for _, window in ipairs(vim.api.nvim_list_wins()) do
				if vim.api.nvim_win_get_config(window).relative ~= "" then
					return table.concat(vim.api.nvim_buf_get_lines(vim.api.nvim_win_get_buf(window), 0, -1, false), "\n")
				end
			end`)
		return n.lua(`return vim.fn.execute("messages") .. vim.fn.mode() .. vim.fn.getline(".") .. vim.fn.col(".")`), text != ""
	})
	n.input("h") // moving on closes it
	return text
}

func (n *neovim) complete(after, typed string) (offers []string) {
	n.t.Helper()
	n.cursor(after, 0)
	n.input("o")
	n.input(each(typed)...)
	n.input("<C-x>", "<C-o>")
	eventually(n.t, "the offers", func() (any, bool) {
		offers = n.list(`return vim.fn.json_encode(vim.tbl_map(function(item) return item.abbr ~= "" and item.abbr or item.word end, vim.fn.complete_info({ "items" }).items))`)
		return n.text(), len(offers) > 0
	})
	n.input("<C-y>")
	n.normal()
	return offers
}

func (n *neovim) undo() { n.t.Helper(); n.input("u"); time.Sleep(50 * time.Millisecond) }

func (n *neovim) act(title string) []string {
	n.t.Helper()
	n.lua(`titles, wanted = {}, ...`, title)
	n.input("gra")
	var titles []string
	eventually(n.t, "the actions", func() (any, bool) {
		titles = n.list(`return vim.fn.json_encode(titles)`)
		return titles, len(titles) > 0
	})
	return titles
}

func (n *neovim) rename(to string) {
	n.t.Helper()
	n.lua(`vim.lsp.buf.rename(...)`, to)
}

func (n *neovim) layOut() { n.t.Helper(); n.input(":Wickrule format\r") }

func (n *neovim) hints() ([]string, bool) {
	n.t.Helper()
	if n.lua(`return vim.lsp.inlay_hint and "yes" or "no"`) == "no" {
		return nil, false
	}
	var list []string
	eventually(n.t, "the hints", func() (any, bool) {
		list = n.list(`
			local list = {}
			for _, hint in ipairs(vim.lsp.inlay_hint.get({ bufnr = 0 })) do
				local at = hint.inlay_hint.position -- in bytes by now
				local line = vim.api.nvim_buf_get_lines(0, at.line, at.line + 1, false)[1]
				table.insert(list, vim.trim(line:sub(1, at.character)) .. " [" .. hint.inlay_hint.label .. "]")
			end
			return vim.fn.json_encode(list)`)
		return list, len(list) > 0
	})
	return list, true
}

func (n *neovim) lenses() ([]string, bool) {
	n.t.Helper()
	var list []string
	eventually(n.t, "the lenses", func() (any, bool) {
		list = n.list(`
			local list = {}
			for _, lens in ipairs(vim.fn.has("nvim-0.12") == 1 and vim.lsp.codelens.get({ bufnr = 0 }) or vim.lsp.codelens.get(0)) do
				lens = lens.lens or lens
				if lens.command then table.insert(list, lens.command.title) end
			end
			return vim.fn.json_encode(list)`)
		return list, len(list) > 0
	})
	return list, true
}

func (n *neovim) symbols() []string {
	n.t.Helper()
	n.lua(`vim.lsp.buf.document_symbol()`)
	var list []string
	eventually(n.t, "the outline", func() (any, bool) {
		list = n.list(`
			local items = vim.fn.getqflist()
			if #items == 0 then items = vim.fn.getloclist(0) end
			return vim.fn.json_encode(vim.tbl_map(function(item) return item.text end, items))`)
		return list, len(list) > 0
	})
	n.lua(`vim.cmd("cclose"); vim.cmd("lclose")`)
	return list
}

func (n *neovim) save() { n.t.Helper(); n.lua(`vim.cmd("silent wall")`) }

// sheetOfLens runs the line above a recipe: its batch sheet opens.
func (n *neovim) sheetOfLens(path string) {
	n.t.Helper()
	n.open(path)
	n.lenses()
	n.cursor(`recipe "tide-pillar"`, 0)
	n.lua(`wanted = "2 pillars"`)
	n.input("grl")
	eventually(n.t, "the batch sheet", func() (any, bool) {
		text := n.text()
		return text, strings.Contains(text, "Larkspur Quay Candleworks") && n.lua(`return vim.bo.filetype`) == "markdown"
	})
}

// request asks over MessagePack's remote calls, which is what the editor
// speaks (neovim's manual, api.txt).
func (n *neovim) request(method string, params ...any) (result, failed any) {
	n.t.Helper()
	n.mu.Lock()
	defer n.mu.Unlock()
	n.id++
	_, err := n.in.Write(packed(nil, []any{0, int(n.id), method, params}))
	require.NoError(n.t, err)
	for {
		message, err := unpacked(n.out)
		require.NoError(n.t, err)
		if list := message.([]any); list[0] == int64(1) && list[1] == int64(n.id) {
			return list[3], list[2]
		}
	}
}

// packed appends a value as MessagePack (its specification, the part used
// here).
func packed(out []byte, value any) []byte {
	switch v := value.(type) {
	case int:
		return binary.BigEndian.AppendUint64(append(out, 0xd3), uint64(v))
	case string:
		return append(binary.BigEndian.AppendUint32(append(out, 0xdb), uint32(len(v))), v...)
	case []any:
		out = binary.BigEndian.AppendUint32(append(out, 0xdd), uint32(len(v)))
		for _, item := range v {
			out = packed(out, item)
		}
		return out
	}
	panic(fmt.Sprintf("%T", value))
}

// unpacked reads a value of MessagePack: whole numbers as int64, texts and
// bytes as string.
func unpacked(in *bufio.Reader) (any, error) {
	kind, err := in.ReadByte()
	if err != nil {
		return nil, err
	}
	number := func(size int) uint64 {
		var buf [8]byte
		_, err = io.ReadFull(in, buf[8-size:])
		return binary.BigEndian.Uint64(buf[:])
	}
	text := func(size uint64) (any, error) {
		buf := make([]byte, size)
		_, err = io.ReadFull(in, buf)
		return string(buf), err
	}
	array := func(size uint64) (any, error) {
		list := make([]any, size)
		for i := range list {
			if list[i], err = unpacked(in); err != nil {
				return nil, err
			}
		}
		return list, nil
	}
	table := func(size uint64) (any, error) {
		list, err := array(2 * size)
		return list, err
	}
	switch {
	case kind < 0x80:
		return int64(kind), nil
	case kind < 0x90:
		return table(uint64(kind & 0x0f))
	case kind < 0xa0:
		return array(uint64(kind & 0x0f))
	case kind < 0xc0:
		return text(uint64(kind & 0x1f))
	case kind >= 0xe0:
		return int64(int8(kind)), nil
	}
	switch kind {
	case 0xc0:
		return nil, nil
	case 0xc2, 0xc3:
		return kind == 0xc3, nil
	case 0xc4, 0xd9:
		return text(number(1))
	case 0xc5, 0xda:
		return text(number(2))
	case 0xc6, 0xdb:
		return text(number(4))
	case 0xca:
		return float64(math.Float32frombits(uint32(number(4)))), err
	case 0xcb:
		return math.Float64frombits(number(8)), err
	case 0xcc, 0xd0:
		return int64(number(1)), err
	case 0xcd, 0xd1:
		return int64(number(2)), err
	case 0xce, 0xd2:
		return int64(number(4)), err
	case 0xcf, 0xd3:
		return int64(number(8)), err
	case 0xd4, 0xd5, 0xd6, 0xd7, 0xd8: // a handle of a window or buffer
		return text(1 + 1<<(kind-0xd4))
	case 0xc7:
		return text(1 + number(1))
	case 0xdc:
		return array(number(2))
	case 0xdd:
		return array(number(4))
	case 0xde:
		return table(number(2))
	case 0xdf:
		return table(number(4))
	}
	return nil, fmt.Errorf("a byte that MessagePack does not have here: %#x", kind)
}
