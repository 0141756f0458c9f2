package editors

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// eachNeovim runs a test in every Neovim there is, on a shop of its own.
func eachNeovim(t *testing.T, try func(t *testing.T, command, shop string)) {
	for _, command := range neovims(t) {
		t.Run(versionOf(t, command), func(t *testing.T) { try(t, command, prepared(t)) })
	}
}

// told waits until the editor has told something.
func (n *neovim) told(words string) {
	n.t.Helper()
	eventually(n.t, "a message", func() (any, bool) {
		said := n.lua(`return vim.fn.execute("messages")`)
		return said, strings.Contains(strings.Join(strings.Fields(said), " "), words)
	})
	n.lua(`vim.cmd("messages clear")`)
}

// do types a command.
func (n *neovim) do(command string) {
	n.t.Helper()
	n.input(":")
	n.input(each(command)...)
	n.input("<CR>")
}

// page waits until the window in front shows a page of a name, and is its text.
func (n *neovim) page(name, words string) (text string) {
	n.t.Helper()
	eventually(n.t, name, func() (any, bool) {
		text = n.text()
		return text, n.lua(`return vim.api.nvim_buf_get_name(0)`) == "wickrule://"+name && strings.Contains(text, words)
	})
	assert.Equal(n.t, "markdown", n.lua(`return vim.bo.filetype`))
	return text
}

func TestNeovimShowsSheets(t *testing.T) {
	eachNeovim(t, func(t *testing.T, command, shop string) {
		n := startNeovim(t, command, filepath.Dir(program(t)))
		n.open(filepath.Join(shop, tide))
		n.cursor(`step "melt"`, 0)
		n.do("Wickrule sheet")
		text := n.page("batch sheet/tide-pillar", "Tide and thyme pillar")
		assert.Contains(t, text, "183 °F")
		n.input("q") // closes it
		eventually(t, "the recipe", func() (any, bool) {
			name := n.lua(`return vim.api.nvim_buf_get_name(0)`)
			return name, name == filepath.Join(shop, tide)
		})
		// Another one by its key, over what is being typed and not saved.
		n.replace(`Tide and thyme pillar`, `Thyme at low tide`)
		n.normal()
		n.do("Wickrule sheet tide-pillar")
		n.page("batch sheet/tide-pillar", "Thyme at low tide")
		n.input("q")
		n.do("Wickrule sheet kelp-jar")
		n.told(`there is no recipe "kelp-jar" in this shop`)
		n.open(filepath.Join(shop, waxes))
		n.do("Wickrule sheet")
		n.told("There is no recipe in this file.")
	})
}

// The examples of a rule hold recipes that are none of the shop's.
func TestNeovimShowsNoSheetOfAnExample(t *testing.T) {
	eachNeovim(t, func(t *testing.T, command, shop string) {
		n := startNeovim(t, command, filepath.Dir(program(t)))
		rules, err := filepath.Glob(filepath.Join(shop, "rules/*.candle.hcl"))
		require.NoError(t, err)
		require.NotEmpty(t, rules)
		n.open(rules[0])
		n.cursor(`recipe "`, 0)
		n.do("Wickrule sheet")
		n.told("There is no recipe in this file.")
	})
}

func TestNeovimExplainsRules(t *testing.T) {
	eachNeovim(t, func(t *testing.T, command, shop string) {
		// What opens pages writes down what it was to open.
		bin := t.TempDir()
		require.NoError(t, os.Symlink(program(t), bin+"/wickrule"))
		require.NoError(t, os.WriteFile(bin+"/xdg-open", []byte("#!/bin/sh\necho \"$1\" > '"+bin+"/opened'\n"), 0o755))
		n := startNeovim(t, command, bin)
		n.open(filepath.Join(shop, tide))
		n.do("Wickrule explain")
		n.told("There is no finding here: put the cursor on one, or name a rule.")
		n.replace("5 % of wax", "7 % of wax")
		n.normal()
		eventually(t, "the finding", func() (any, bool) { f := n.findings(); return f, len(f) > 0 })
		n.cursor("7 % of wax", 2)
		n.do("Wickrule explain")
		n.page("rule/fragrance-over-limit", "To put it right")
		n.input("q")
		n.do("Wickrule explain lead-core")
		n.page("rule/lead-core", "lead")
		n.input("q")
		n.do("Wickrule explain lead-cor")
		n.told(`there is no rule "lead-cor"`)

		for from, to := range map[string]string{"Wickrule handbook": "rule-fragrance-over-limit.html", "Wickrule handbook fresh-putty-for-hot-pours": "own-fresh-putty-for-hot-pours.html"} {
			n.cursor("7 % of wax", 2)
			n.do(from)
			eventually(t, "the page", func() (any, bool) {
				opened, _ := os.ReadFile(bin + "/opened")
				page := strings.TrimSpace(string(opened))
				_, err := os.Stat(strings.TrimPrefix(page, "file://"))
				return page + n.lua(`return vim.fn.execute("messages")`), err == nil && filepath.Base(page) == to
			})
		}
	})
}

func TestNeovimMends(t *testing.T) {
	eachNeovim(t, func(t *testing.T, command, shop string) {
		n := startNeovim(t, command, filepath.Dir(program(t)))
		n.open(filepath.Join(shop, tide))
		was := n.text()
		n.replace(`"trim base"`, `"trim bsae"`)
		n.normal()
		eventually(t, "the finding", func() (any, bool) { f := n.findings(); return f, len(f) > 0 })
		n.do("Wickrule mend")
		eventually(t, "the slip to go", func() (any, bool) { text := n.text(); return text, text == was })
		n.undo()
		eventually(t, "the slip to come back", func() (any, bool) { text := n.text(); return text, strings.Contains(text, `"trim bsae"`) })
		n.do("Wickrule mend shop")
		eventually(t, "the slip to go", func() (any, bool) { text := n.text(); return text, text == was })
		n.do("Wickrule mend all")
		n.told(":Wickrule mend takes file or shop, not all.")
	})
}

// What is offered after the command is what can be written there.
func TestNeovimCompletesItsCommand(t *testing.T) {
	eachNeovim(t, func(t *testing.T, command, shop string) {
		n := startNeovim(t, command, filepath.Dir(program(t)))
		n.open(filepath.Join(shop, tide))
		offers := func(typed string) string {
			return n.lua(`return table.concat(vim.fn.getcompletion(..., "cmdline"), " ")`, typed)
		}
		assert.Equal(t, "explain format handbook mend restart sheet", offers("Wickrule "))
		assert.Equal(t, "sheet", offers("Wickrule sh"))
		assert.Equal(t, "tide-pillar tideline-layers tidepool-gel", offers("Wickrule sheet tid"))
		assert.Equal(t, "lead-core lead-statement-missing", offers("Wickrule explain lead"))
		assert.Equal(t, "fresh-putty-for-hot-pours", offers("Wickrule handbook fresh"))
		assert.Equal(t, "file shop", offers("Wickrule mend "))
		assert.Empty(t, offers("Wickrule mend file "))
		assert.Empty(t, offers("Wickrule restart "))
		n.do("Wickrule pour")
		n.told("there are explain, format, handbook, mend, restart, sheet.")
		n.do("Wickrule restart now")
		n.told(":Wickrule restart takes nothing more.")
	})
}

func TestNeovimRestarts(t *testing.T) {
	eachNeovim(t, func(t *testing.T, command, shop string) {
		n := startNeovim(t, command, filepath.Dir(program(t)))
		n.open(filepath.Join(shop, tide))
		n.replace("5 % of wax", "6 % of wax")
		n.normal()
		both := []string{"fragrance-near-limit", "test-burn-stale"} // the first is worth considering
		eventually(t, "the findings", func() (any, bool) { f := codes(n.findings()); return f, assert.ObjectsAreEqual(both, f) })
		n.lua(`was = require("wickrule.client").of(0).id
			vim.g.wickrule = { level = "must" }`)
		n.do("Wickrule restart")
		eventually(t, "the must alone", func() (any, bool) {
			f := codes(n.findings())
			another := n.lua(`local now = require("wickrule.client").of(0); return now and now.id ~= was and "yes"`)
			return f, assert.ObjectsAreEqual([]string{"test-burn-stale"}, f) && another == "yes"
		})
	})
}

func TestNeovimTakesSettings(t *testing.T) {
	eachNeovim(t, func(t *testing.T, command, shop string) {
		n := startNeovim(t, command, filepath.Dir(program(t)), `vim.g.wickrule = { level = "must", hints = false, lenses = false, keys = false }`)
		n.open(filepath.Join(shop, tide))
		n.replace("5 % of wax", "6 % of wax") // worth considering, and nothing more
		eventually(t, "the must alone", func() (any, bool) {
			f := codes(n.findings())
			return f, assert.ObjectsAreEqual([]string{"test-burn-stale"}, f)
		})
		assert.Equal(t, "none", n.lua(`
			for _, map in ipairs(vim.api.nvim_buf_get_keymap(0, "n")) do if map.lhs == "grl" then return "keys" end end
			local client = require("wickrule.client").of(0)
			for _, method in ipairs({ "textDocument/codeLens", "textDocument/inlayHint" }) do
				local answer = vim.lsp.buf_request_sync(0, method, { textDocument = { uri = vim.uri_from_bufnr(0) }, range = { start = { line = 0, character = 0 }, ["end"] = { line = 99, character = 0 } } }, 5000)
				if #answer[client.id].result > 0 then return method end
			end
			return "none"`))
	})
}

func TestNeovimTellsOfBadSettings(t *testing.T) {
	eachNeovim(t, func(t *testing.T, command, shop string) {
		n := startNeovim(t, command, filepath.Dir(program(t)), `vim.g.wickrule = { level = "loud", hint = true, lenses = "no" }`)
		n.open(filepath.Join(shop, tide))
		n.told(`level in vim.g.wickrule is "loud": it can be consider, should or must`)
		n.do("checkhealth wickrule")
		eventually(t, "the report", func() (any, bool) { text := n.text(); return text, strings.Contains(text, "which is no setting") })
		assert.Regexp(t, `lenses in vim.g.wickrule has to be true or false`, n.text())
		assert.Regexp(t, `settings: hints = true, keys = true, lenses = true, level = "consider", program = "wickrule"`, n.text())
	})
}

func TestNeovimHealth(t *testing.T) {
	eachNeovim(t, func(t *testing.T, command, shop string) {
		n := startNeovim(t, command, filepath.Dir(program(t)))
		health := func(words string) string {
			n.do("checkhealth wickrule")
			eventually(t, "the report", func() (any, bool) { text := n.text(); return text, strings.Contains(text, words) })
			text := n.text()
			n.lua(`vim.cmd("bwipeout!")`)
			return text
		}
		assert.Contains(t, health("no recipe file is open"), filepath.Dir(program(t))+"/wickrule: wickrule ")
		n.open(filepath.Join(shop, tide))
		text := health("has its server")
		assert.Regexp(t, `tide-pillar.candle.hcl has its server; of the shop in `+regexp.QuoteMeta(shop), text)
		assert.NotContains(t, text, "ERROR")
		assert.NotContains(t, text, "WARN")
	})
}

// Where there is no program, it is said once what to do.
func TestNeovimWithoutTheProgram(t *testing.T) {
	eachNeovim(t, func(t *testing.T, command, shop string) {
		n := startNeovim(t, command, t.TempDir(), `vim.env.PATH = "/usr/bin:/bin"`)
		n.lua(`vim.cmd("edit " .. ...)`, filepath.Join(shop, tide))
		n.told("There is no program wickrule on the PATH. Put it there, or say where it is: vim.g.wickrule = { program = '/where/it/is' }.")
		n.lua(`vim.cmd("edit " .. ...)`, filepath.Join(shop, waxes))
		assert.NotContains(t, n.lua(`return vim.fn.execute("messages")`), "no program")
		n.do("Wickrule sheet tide-pillar")
		n.told("This file has no language server: :checkhealth wickrule tells why.")
		n.do("checkhealth wickrule")
		eventually(t, "the report", func() (any, bool) {
			text := n.text()
			return text, strings.Contains(text, "There is no program wickrule on the PATH") && strings.Contains(text, "has no server")
		})
		n.lua(`vim.cmd("bwipeout!"); vim.g.wickrule = { program = "/nowhere/wickrule" }`)
		n.do("Wickrule restart")
		n.told(`The setting program of vim.g.wickrule is "/nowhere/wickrule", and there is no program that can be run.`)
		// Put right without leaving the editor.
		n.lua(`vim.g.wickrule = { program = ... }`, program(t))
		n.do("Wickrule restart")
		n.open(filepath.Join(shop, tide))
	})
}

func TestNeovimKnowsRecipesByName(t *testing.T) {
	eachNeovim(t, func(t *testing.T, command, shop string) {
		n := startNeovim(t, command, filepath.Dir(program(t)))
		for name, is := range map[string]bool{"a.candle.hcl": true, "shop.candle.hcl": true, "a.hcl": false, "candle.hcl": false, "a.candle.hcl.txt": false} {
			n.lua(`vim.cmd("edit " .. ...)`, filepath.Join(t.TempDir(), name))
			assert.Equal(t, is, n.lua(`return vim.bo.filetype`) == "candle", name)
		}
		n.open(filepath.Join(shop, tide))
		assert.Equal(t, "# %s", n.lua(`return vim.bo.commentstring`))
	})
}

// What a piece is colored as, by the colors that need no server.
func TestNeovimColors(t *testing.T) {
	eachNeovim(t, func(t *testing.T, command, shop string) {
		n := startNeovim(t, command, t.TempDir(), `vim.g.wickrule = { program = "/nowhere" }`)
		path := filepath.Join(t.TempDir(), "colors.candle.hcl")
		require.NoError(t, os.WriteFile(path, []byte(`# a remark "here"
recipe "tide-pillar" { // and another
  title = "Tide \u00e9"
  made_for_candles = true
  /* long
     remark = "no" */
  mold "pillar-3x6" {
    count = 2
    fill  = "168 to 182 °F"
  }
  wax "northlight" { weight = "2 lb 8 oz" }
}
rule "own" {
  when    = mold.seal.kind == "putty"
  require = pour.at <= degrees("10 °F")
  because = <<-EOT
    Putty = "soft" # no remark
  EOT
  message = "It is ${show(pour.at)}."
}
`), 0o644))
		n.lua(`vim.cmd("syntax enable"); vim.cmd("edit " .. ...)`, path)
		for _, c := range []struct {
			piece   string
			further int
			as      string
		}{
			{`# a remark`, 0, "candleComment"}, {`"here"`, 1, "candleComment"}, {`// and`, 0, "candleComment"}, {`remark = "no"`, 0, "candleComment"},
			{`recipe "tide`, 0, "candleBlock"}, {`"tide-pillar"`, 2, "candleText"}, {`title`, 0, "candleAttribute"}, {`\u00e9`, 0, "candleEscape"},
			{`made_for_candles`, 3, "candleAttribute"}, {`true`, 0, "candleBoolean"}, {`count = 2`, 8, "candleNumber"},
			{`168 to`, 0, "candleAmount"}, {`182 °F`, 4, "candleAmount"}, {`wax "north`, 0, "candleBlock"}, {`weight =`, 0, "candleAttribute"}, {`8 oz`, 2, "candleAmount"},
			{`when  `, 0, "candleAttribute"}, {`"putty"`, 2, "candleText"}, {`degrees(`, 0, "candleFunction"}, {`10 °F`, 0, "candleAmount"},
			{`Putty = "soft"`, 0, "candleLongText"}, {`# no remark`, 0, "candleLongText"}, {`message`, 0, "candleAttribute"}, {`It is`, 0, "candleText"}, {`show(`, 0, "candleFunction"},
		} {
			n.cursor(c.piece, c.further)
			assert.Equal(t, c.as, n.lua(`return vim.fn.synIDattr(vim.fn.synID(vim.fn.line("."), vim.fn.col("."), 1), "name")`), c.piece)
		}
	})
}

// The help has a place for every word and setting, and its tags can be made.
func TestNeovimHelp(t *testing.T) {
	help, err := os.ReadFile("neovim/doc/wickrule.txt")
	require.NoError(t, err)
	for i, line := range strings.Split(string(help), "\n") {
		assert.LessOrEqual(t, len([]rune(line)), 80, "line %d", i+1)
	}
	eachNeovim(t, func(t *testing.T, command, shop string) {
		n := startNeovim(t, command, filepath.Dir(program(t)))
		n.lua(`vim.cmd("helptags ALL")`)
		for _, word := range strings.Fields(n.lua(`return table.concat(vim.fn.getcompletion("Wickrule ", "cmdline"), " ")`)) {
			n.lua(`vim.cmd("help :Wickrule-" .. ...)`, word)
			assert.Contains(t, n.lua(`return vim.fn.getline(".")`), ":Wickrule "+word)
		}
		for _, setting := range strings.Fields(n.lua(`return table.concat(vim.tbl_keys(require("wickrule.settings").usual), " ")`)) {
			assert.Regexp(t, `(?m)^    `+setting+` +\S`, string(help))
		}
		for _, link := range regexp.MustCompile(`\|([^|\s]+)\|`).FindAllStringSubmatch(string(help), -1) {
			n.lua(`vim.cmd("help " .. ...)`, link[1])
		}
	})
}

// The plugin parses in every Neovim, and none of its parts leaves names about.
func TestNeovimLeavesNoNames(t *testing.T) {
	eachNeovim(t, func(t *testing.T, command, shop string) {
		n := startNeovim(t, command, filepath.Dir(program(t)))
		n.lua(`before = {}; for name in pairs(_G) do before[name] = true end`)
		n.open(filepath.Join(shop, tide))
		n.lua(`require("wickrule.health")`)
		assert.Empty(t, n.lua(`
			local more = {}
			for name in pairs(_G) do if not before[name] and name ~= "before" then table.insert(more, tostring(name)) end end
			return table.concat(more, " ")`))
	})
}
