package editors

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// client is an editor with the language server, as a person at its keys has
// it. It works on one document at a time, the one opened last.
type client interface {
	open(path string)
	text() string
	cursor(piece string, further int)               // on the first place where piece stands, and so many characters on
	replace(old, new string)                        // by deleting old and typing new, character by character
	findings() []finding                            // of this document, as the editor shows them
	hover() string                                  // at the cursor
	complete(after, typed string) (offers []string) // types in a line of its own after a piece, asks, and takes the first offer
	undo()                                          // what complete has done
	act(title string) (titles []string)             // does what can be done at the cursor under a title
	rename(to string)                               // what stands at the cursor
	layOut()                                        // formats the document
	hints() (at []string, can bool)                 // the line to which a hint is attached up to it, and the hint in brackets
	lenses() (texts []string, can bool)             // texts above blocks
	symbols() []string                              // the outline's names
	save()                                          // all that is open
}

// finding is one as an editor shows it.
type finding struct {
	Text     string `json:"text"` // what the editor marks
	Line     int    `json:"line"` // from 1
	Code     string `json:"code"`
	Message  string `json:"message"`
	Severity int    `json:"severity"` // 1 error, 2 warning, 3 information
}

// before stands before the load in its line: what a place costs in bytes, in
// UTF-16 units and in characters differs from there on.
const before = "/* 🕯 at 183 °F */ "

const (
	tide  = "recipes/tide-pillar.candle.hcl"
	waxes = "stock/waxes.candle.hcl"
)

// prepared is a copy of the demo shop whose pillar has that before its load.
func prepared(t *testing.T) string {
	t.Helper()
	shop := shopIn(t, filepath.Join(t.TempDir(), "shop"))
	shop, err := filepath.EvalSymlinks(shop)
	require.NoError(t, err)
	text := read(t, shop, tide)
	changed := strings.Replace(text, `    load = "5 % of wax"`, "    "+before+`load = "5 % of wax"`, 1)
	require.NotEqual(t, text, changed)
	require.NoError(t, os.WriteFile(filepath.Join(shop, tide), []byte(changed), 0o644))
	return shop
}

func read(t *testing.T, shop, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(shop, name))
	require.NoError(t, err)
	return string(text)
}

// texts is every recipe file of a shop by its name.
func texts(t *testing.T, shop string) map[string]string {
	t.Helper()
	all := map[string]string{}
	require.NoError(t, filepath.WalkDir(shop, func(path string, d os.DirEntry, err error) error {
		if err == nil && strings.HasSuffix(path, ".candle.hcl") {
			name, _ := filepath.Rel(shop, path)
			all[filepath.ToSlash(name)] = read(t, shop, name)
		}
		return err
	}))
	return all
}

// eventually waits until something holds, and fails with what was last seen.
func eventually(t *testing.T, what string, holds func() (seen any, ok bool)) {
	t.Helper()
	end := time.Now().Add(20 * time.Second)
	for {
		seen, ok := holds()
		if ok {
			return
		}
		if time.Now().After(end) {
			require.FailNow(t, "waited in vain for "+what, "%.2000s", fmt.Sprintf("%+v", seen))
		}
		time.Sleep(20 * time.Millisecond)
	}
}

func codes(list []finding) []string {
	names := []string{}
	for _, f := range list {
		names = append(names, f.Code)
	}
	return names
}

// A maker opens a recipe, types a fault, reads what is said about it, has it put
// right, renames a wax, lays a file out, and saves.
func work(t *testing.T, shop string, c client) {
	was := texts(t, shop)
	path := filepath.Join(shop, tide)
	c.open(path)
	require.Equal(t, was[tide], c.text())
	eventually(t, "a recipe without findings", func() (any, bool) { f := c.findings(); return f, len(f) == 0 })

	// The fault, on the exact characters.
	c.replace("5 % of wax", "7 % of wax")
	require.Equal(t, strings.Replace(was[tide], "5 % of wax", "7 % of wax", 1), c.text())
	eventually(t, "the finding", func() (any, bool) {
		f := c.findings()
		return f, len(f) == 2 && f[0].Text == `"7 % of wax"`
	})
	over := c.findings()[0]
	assert.Equal(t, "fragrance-over-limit", over.Code)
	assert.Equal(t, 1, over.Severity)
	assert.Equal(t, 12, over.Line)
	assert.Equal(t, "7 % of wax is over what Northlight paraffin, pillar grade holds (6 % of wax) by 12.4 g", over.Message)

	// What stands there, on both bases.
	c.cursor(`"7 % of wax"`, 3)
	said := c.hover()
	assert.Contains(t, said, "7 % of wax is over what Northlight paraffin, pillar grade holds (6 % of wax) by 12.4 g")
	assert.Contains(t, said, "7 % of wax")
	assert.Contains(t, said, "6.54 % of total") // 7/107

	// What can be written there.
	offers := c.complete(`step "trim base" {}`, `step "unm`)
	require.NotEmpty(t, offers)
	assert.Equal(t, "unmold", offers[0])
	assert.Contains(t, c.text(), "step \"trim base\" {}\n  step \"unmold")
	c.undo()
	require.Equal(t, strings.Replace(was[tide], "5 % of wax", "7 % of wax", 1), c.text())

	// The repair.
	c.cursor(`"7 % of wax"`, 3)
	titles := c.act("lower the load to 6 % of wax")
	assert.Contains(t, titles, "lower the load to 6 % of wax")
	eventually(t, "the load to be lowered", func() (any, bool) {
		text := c.text()
		return text, text == strings.Replace(was[tide], "5 % of wax", "6 % of wax", 1)
	})
	eventually(t, "the finding to go", func() (any, bool) {
		names := codes(c.findings())
		return names, assert.ObjectsAreEqual([]string{"fragrance-near-limit", "test-burn-stale"}, names)
	})

	// What stands beside and above.
	if _, can := c.hints(); can {
		eventually(t, "the hints", func() (any, bool) {
			hints, _ := c.hints()
			return hints, slices.Contains(hints, before+`load = "6 % of wax" [5.66 % of total · 2.62 oz (74.4 g) · at the limit]`) && // 6/106 of 1240 g
				slices.Contains(hints, `at   = "183 °F" [83.9 °C]`)
		})
	}
	lenses := []string{"2 pillars", "fragrance 6 % of wax (5.66 % of total)", "one must, one consider",
		"three candles burned and passed, but of another formulation or without saying which"}
	eventually(t, "the lines above the recipe", func() (any, bool) {
		now, can := c.lenses()
		return now, !can || assert.ObjectsAreEqual(lenses, now)
	})
	symbols := c.symbols()
	assert.Contains(t, strings.Join(symbols, "\n"), "Tide and thyme pillar")
	assert.Contains(t, strings.Join(symbols, "\n"), "step second pour")

	// A new name for a wax, wherever it is named.
	c.cursor(`"northlight-pillar"`, 3)
	c.rename("northlight-tall")
	eventually(t, "the new name", func() (any, bool) { text := c.text(); return text, strings.Contains(text, `wax "northlight-tall"`) })
	c.save()
	want := map[string]string{}
	for name, text := range was {
		text = strings.ReplaceAll(text, `"northlight-pillar"`, `"northlight-tall"`)
		want[name] = strings.ReplaceAll(text, `"wax northlight-pillar: 100 % of wax"`, `"wax northlight-tall: 100 % of wax"`)
	}
	want[tide] = strings.Replace(want[tide], "5 % of wax", "6 % of wax", 1)
	renamed := 0
	for name := range want {
		if want[name] != was[name] {
			renamed++
		}
	}
	assert.Equal(t, 7, renamed, "four recipes, the shelf, and the examples in two files of rules name the wax")
	eventually(t, "the files", func() (any, bool) { now := texts(t, shop); return now, sameButCodes(want, now) })
	// The codes of what was burned follow the name: no burn is of another candle now.
	var burned []string
	for name, text := range texts(t, shop) {
		if want[name] != text {
			burned = append(burned, name)
			want[name] = text
		}
		if name != tide {
			assert.Empty(t, checked(t, shop, name), name)
		}
	}
	assert.ElementsMatch(t, []string{tide, "recipes/tideline-layers.candle.hcl", "recipes/winter-blend.candle.hcl", "recipes/lantern-votive.candle.hcl"}, burned,
		"one of them by way of a house blend")

	// A file laid out.
	tin := filepath.Join(shop, "recipes/bosun-tin.candle.hcl")
	sound := want["recipes/bosun-tin.candle.hcl"]
	ragged := strings.NewReplacer("\n  title ", "\n      title ", " = \"", "=  \"").Replace(sound)
	require.NotEqual(t, sound, ragged)
	require.NoError(t, os.WriteFile(tin, []byte(ragged), 0o644))
	c.open(tin)
	require.Equal(t, ragged, c.text())
	c.layOut()
	eventually(t, "the layout", func() (any, bool) { text := c.text(); return text, text == sound })
	c.save()

	// What is shown is what a check prints.
	c.open(path)
	eventually(t, "what a check says", func() (any, bool) {
		shown, printed := c.findings(), checked(t, shop, tide)
		return [][]finding{shown, printed}, len(printed) == 2 && assert.ObjectsAreEqual(printed, shown)
	})
	assert.Equal(t, want, texts(t, shop))
}

// formulaCode is what a test burn says it is of.
var formulaCode = regexp.MustCompile(`"[0-9a-z]{7}-[0-9a-z]{6}"`)

func sameButCodes(want, now map[string]string) bool {
	for name, text := range want {
		if formulaCode.ReplaceAllString(text, "") != formulaCode.ReplaceAllString(now[name], "") {
			return false
		}
	}
	return len(want) == len(now)
}

// checked is what `wickrule check` says of a file of a shop.
func checked(t *testing.T, shop, name string) []finding {
	t.Helper()
	var out bytes.Buffer
	cmd := exec.Command(program(t), "check", "--report", "json", shop)
	cmd.Stdout = &out
	_ = cmd.Run() // 1 where something must be put right
	type place struct {
		Line int
		Byte int
	}
	var report struct {
		Findings []struct {
			Rule, Level, File, Message string
			Span                       struct{ Start, End place }
		}
		Unchecked []struct{ File string }
	}
	require.NoError(t, json.Unmarshal(out.Bytes(), &report))
	list := []finding{}
	text := read(t, shop, name)
	for _, f := range report.Findings {
		if f.File == name {
			level := map[string]int{"must": 1, "should": 2, "consider": 3}[f.Level]
			list = append(list, finding{text[f.Span.Start.Byte:f.Span.End.Byte], f.Span.Start.Line, f.Rule, f.Message, level})
		}
	}
	return list
}
