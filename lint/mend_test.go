package lint_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/schema"
)

// retitle is a rule that flags a word in a recipe's title; its fix puts
// another in its place. Safe by its fix, at a level of its own.
func retitle(name string, level lint.Level, safe bool, from, to string) *lint.Rule {
	return &lint.Rule{Name: name, Levels: lint.Every(level), Check: func(p *lint.Pass) {
		title := p.Recipe.Get("title")
		if !strings.Contains(title.Text(), from) {
			return
		}
		p.Report(lint.Finding{At: lint.AtValue(title), Message: from + " in the title", Fixes: func() []schema.Fix {
			text := strings.ReplaceAll(title.Written(), from, to)
			return []schema.Fix{{Title: "write " + to, Safe: safe, Edits: []schema.Edit{{File: p.Recipe.File, Span: title.Span(), Text: text}}}}
		}})
	}}
}

func shopOf(t *testing.T, texts map[string]string) *lint.Shop {
	t.Helper()
	fsys := fstest.MapFS{lint.ShopFileName: &fstest.MapFile{Data: []byte("shop \"s\" {\n}\n")}}
	for name, text := range texts {
		fsys[name] = &fstest.MapFile{Data: []byte(text)}
	}
	shop, errs := lint.Load(fsys, ".", nil)
	require.Empty(t, errs)
	return shop
}

func titled(key, title string) string {
	return "recipe \"" + key + "\" {\n  title = \"" + title + "\"\n}\n"
}

func mend(shop *lint.Shop, o lint.MendOptions, rules ...*lint.Rule) *lint.Mended {
	return lint.Mend(shop, func(*lint.Shop) []*lint.Rule { return rules }, "2026-10-20", o)
}

func titles(list []lint.Repair) []string {
	var out []string
	for _, r := range list {
		out = append(out, r.Title)
	}
	return out
}

func TestMendMakesSafeFixesOnly(t *testing.T) {
	shop := shopOf(t, map[string]string{"a.candle.hcl": titled("a", "teh old tide")})
	rules := []*lint.Rule{retitle("spelling", lint.Consider, true, "teh", "the"), retitle("age", lint.Must, false, "old", "new")}

	done := mend(shop, lint.MendOptions{}, rules...)
	require.Len(t, done.Changed, 1)
	assert.Equal(t, titled("a", "the old tide"), done.Changed[0].Text)
	assert.Same(t, shop.Files()[0], done.Changed[0].File)
	assert.Equal(t, []string{"write the"}, titles(done.Applied))
	assert.Equal(t, []string{"write new"}, titles(done.Withheld))
	assert.Empty(t, done.Skipped)
	require.Len(t, done.Report.Findings, 1, "the report is of the shop as it is now")
	assert.Equal(t, "age", done.Report.Findings[0].Rule.Name)

	done = mend(shop, lint.MendOptions{All: true}, rules...)
	assert.Equal(t, titled("a", "the new tide"), done.Changed[0].Text)
	assert.Empty(t, done.Withheld)
	assert.Equal(t, titled("a", "teh old tide"), shop.Files()[0].Text.String(), "the shop handed in is unchanged")
}

// Two fixes of the same characters are made one after the other.
func TestMendOverlap(t *testing.T) {
	shop := shopOf(t, map[string]string{"a.candle.hcl": titled("a", "teh tide!")})
	done := mend(shop, lint.MendOptions{}, retitle("spelling", lint.Consider, true, "teh", "the"), retitle("shouting", lint.Consider, true, "!", "."))
	assert.Equal(t, titled("a", "the tide."), done.Changed[0].Text)
	assert.Len(t, done.Applied, 2)
}

// A fix that brings a must is left out, and only that one, however many stand
// beside it.
func TestMendRefusesWhatMakesItWorse(t *testing.T) {
	texts := map[string]string{}
	for _, key := range []string{"a", "b", "c", "d", "e"} {
		texts[key+".candle.hcl"] = titled(key, "teh tide "+key)
	}
	texts["c.candle.hcl"] = titled("c", "teh fogbank")
	shop := shopOf(t, texts)
	bad := retitle("fog", lint.Must, true, "the fogbank", "the fogbank and more fogbank")
	done := mend(shop, lint.MendOptions{}, retitle("spelling", lint.Consider, true, "teh", "the"), bad)
	var changed []string
	for _, c := range done.Changed {
		changed = append(changed, c.File.Name)
	}
	assert.Equal(t, []string{"a.candle.hcl", "b.candle.hcl", "d.candle.hcl", "e.candle.hcl"}, changed)
	require.Len(t, done.Skipped, 1)
	assert.Equal(t, "c.candle.hcl", done.Skipped[0].At.File.Name)
	assert.Equal(t, "it would leave more that must be put right than before", done.Skipped[0].Why)
}

// A must may be mended into another must; only more of them is refused.
func TestMendCountsMusts(t *testing.T) {
	shop := shopOf(t, map[string]string{"a.candle.hcl": titled("a", "one")})
	done := mend(shop, lint.MendOptions{}, retitle("r-one", lint.Must, true, "one", "two"), retitle("r-two", lint.Must, true, "two", "three"))
	assert.Equal(t, titled("a", "three"), done.Changed[0].Text)
}

func TestMendEnds(t *testing.T) {
	shop := shopOf(t, map[string]string{"a.candle.hcl": titled("a", "tick")})
	done := mend(shop, lint.MendOptions{}, retitle("r-tick", lint.Consider, true, "tick", "tock"), retitle("r-tock", lint.Consider, true, "tock", "tick"))
	assert.Len(t, done.Applied, 8)
	assert.Empty(t, done.Changed, "after eight rounds it is back where it was")
	require.Len(t, done.Skipped, 1)
	assert.Contains(t, done.Skipped[0].Why, "has no end")
}

// A fix that would spoil the text is refused whatever it would silence.
func TestMendKeepsTheTextWhole(t *testing.T) {
	shop := shopOf(t, map[string]string{"a.candle.hcl": titled("a", "teh tide")})
	require.True(t, shop.Files()[0].Whole)
	done := mend(shop, lint.MendOptions{}, retitle("quote", lint.Must, true, "teh", `"`))
	assert.Empty(t, done.Changed)
	assert.Len(t, done.Skipped, 1)
}

// A fix in two files is made in both or in neither; files not asked for are
// not touched.
func TestMendWholeOrNotAtAll(t *testing.T) {
	shop := shopOf(t, map[string]string{"a.candle.hcl": titled("a", "tide"), "b.candle.hcl": titled("b", "quay")})
	both := func(bSpan schema.Span) *lint.Rule {
		return &lint.Rule{Name: "both", Levels: lint.Every(lint.Consider), Check: func(p *lint.Pass) {
			title := p.Recipe.Get("title")
			if title.Text() != "tide" {
				return
			}
			p.Report(lint.Finding{At: lint.AtValue(title), Message: "tide", Fixes: func() []schema.Fix {
				other := p.Shop().Find("recipe", "b").File
				return []schema.Fix{{Title: "write ebb in both", Safe: true, Edits: []schema.Edit{
					{File: p.Recipe.File, Span: title.Span(), Text: `"ebb"`}, {File: other, Span: bSpan, Text: "# ebb\n"},
				}}}
			}})
		}}
	}
	done := mend(shop, lint.MendOptions{}, both(schema.Span{}))
	require.Len(t, done.Changed, 2)
	assert.Equal(t, "# ebb\n"+titled("b", "quay"), done.Changed[1].Text)

	done = mend(shop, lint.MendOptions{}, both(schema.Span{Start: 9000, End: 9001}))
	assert.Empty(t, done.Changed, "one edit that does not fit takes the other with it")

	onlyA := func(file string) bool { return file == "a.candle.hcl" }
	done = mend(shop, lint.MendOptions{Covers: onlyA}, both(schema.Span{}))
	assert.Empty(t, done.Changed)
	require.Len(t, done.Skipped, 1)
	assert.Equal(t, "it would change b.candle.hcl, which was not asked for", done.Skipped[0].Why)
}

func TestMendOnlyWhatIsAskedFor(t *testing.T) {
	shop := shopOf(t, map[string]string{"a.candle.hcl": titled("a", "teh"), "b.candle.hcl": titled("b", "teh")})
	done := mend(shop, lint.MendOptions{Covers: func(file string) bool { return file == "b.candle.hcl" }}, retitle("spelling", lint.Consider, true, "teh", "the"))
	require.Len(t, done.Changed, 1)
	assert.Equal(t, "b.candle.hcl", done.Changed[0].File.Name)
	assert.Empty(t, done.Report.Findings)
}

// Bytes that no fix is about stay as they are: line ends, a byte order mark,
// a last line without an end.
func TestMendKeepsTheOtherBytes(t *testing.T) {
	text := "\uFEFFrecipe \"a\" {\r\n\ttitle   =   \"teh tide\" # kept\r\n}"
	shop := shopOf(t, map[string]string{"a.candle.hcl": text})
	done := mend(shop, lint.MendOptions{}, retitle("spelling", lint.Consider, true, "teh", "the"))
	require.Len(t, done.Changed, 1)
	assert.Equal(t, strings.Replace(text, "teh", "the", 1), done.Changed[0].Text)
}

// Lines that a fix adds end as those of the file do.
func TestMendKeepsLineEnds(t *testing.T) {
	shop := shopOf(t, map[string]string{"a.candle.hcl": "recipe \"a\" {\r\n  step \"pour\" { at = \"176 °F\" }\r\n}\r\n"})
	unsealed := &lint.Rule{Name: "unsealed", Levels: lint.Every(lint.Must), Check: func(p *lint.Pass) {
		for step := range p.Recipe.Each("step") {
			if step.Label == "pour" {
				p.Report(lint.Finding{At: lint.AtLabel(step), Message: "m", Fixes: func() []schema.Fix {
					return []schema.Fix{{Title: "melt first", Safe: true, Edits: []schema.Edit{schema.InsertBlockBefore(step, "step \"melt\" {\n  to   = \"180 °F\"\n  hold = \"10 min\"\n}")}}}
				}})
			}
			return
		}
	}}
	done := mend(shop, lint.MendOptions{}, unsealed)
	require.Len(t, done.Changed, 1)
	assert.Equal(t, "recipe \"a\" {\r\n  step \"melt\" {\r\n    to   = \"180 °F\"\r\n    hold = \"10 min\"\r\n  }\r\n  step \"pour\" { at = \"176 °F\" }\r\n}\r\n", done.Changed[0].Text)
}

// A rule whose fix stops on a fault spoils neither its finding nor the others.
func TestMendOutlivesAFault(t *testing.T) {
	shop := shopOf(t, map[string]string{"a.candle.hcl": titled("a", "teh")})
	faulty := &lint.Rule{Name: "faulty", Levels: lint.Every(lint.Consider), Check: func(p *lint.Pass) {
		p.Report(lint.Finding{At: lint.AtHeader(p.Recipe), Message: "m", Fixes: func() []schema.Fix { panic("no fix today") }})
	}}
	done := mend(shop, lint.MendOptions{}, faulty, retitle("spelling", lint.Consider, true, "teh", "the"))
	assert.Len(t, done.Changed, 1)
	assert.Len(t, done.Report.Findings, 1)
}
