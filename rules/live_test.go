package rules_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules"
	"wickrule/schema"
)

// said is a report in full, without its fixes.
func said(r *lint.Report) string {
	var s strings.Builder
	place := func(p lint.Place) string {
		if p.File == nil {
			return "-"
		}
		return fmt.Sprintf("%s %d %d", p.File.Name, p.Span.Start, p.Span.End)
	}
	finding := func(f lint.Found) {
		fmt.Fprintf(&s, "%s %s %s: %s\n", f.Rule.Name, f.Level, place(f.At), f.Message)
		for _, n := range f.Notes {
			fmt.Fprintf(&s, "    %s: %s\n", place(n.Place), n.Message)
		}
	}
	for _, f := range r.Findings {
		finding(f)
	}
	for _, c := range r.Conceded {
		s.WriteString("conceded ")
		finding(c.Found)
	}
	for _, u := range r.Unchecked {
		fmt.Fprintf(&s, "unchecked %s %s %s %s %s\n", u.Needs, u.Level, place(u.At), u.Message, u.Rules)
	}
	for _, f := range r.Faults {
		fmt.Fprintf(&s, "fault %s %s %s\n", f.Rule, place(f.At), f.Reason)
	}
	return s.String()
}

// otherLines are the lines in which two texts differ.
func otherLines(want, got string) (other []string) {
	a, b := strings.Split(want, "\n"), strings.Split(got, "\n")
	for _, line := range a {
		if !slices.Contains(b, line) {
			other = append(other, "fresh only: "+line)
		}
	}
	for _, line := range b {
		if !slices.Contains(a, line) {
			other = append(other, "live only: "+line)
		}
	}
	if len(other) == 0 && want != got {
		other = append(other, "the same lines, in another order or number")
	}
	return other
}

// edited is a shop under random edits: the texts as they are, and as they were
// at first.
type edited struct {
	*rand.Rand
	first, texts map[string]string
	names        []string // of first, sorted
	words        []string // words of the texts, to be put where others stand
}

func newEdited(files []*schema.File, seed uint64) *edited {
	e := &edited{Rand: rand.New(rand.NewPCG(seed, 1)), first: map[string]string{}, texts: map[string]string{}}
	for _, f := range files {
		e.first[f.Name], e.texts[f.Name] = f.Text.String(), f.Text.String()
		e.names = append(e.names, f.Name)
		for b := range every(f.Blocks) {
			if b.Label != "" {
				e.words = append(e.words, b.Label)
			}
			for v := range b.Attrs() {
				e.words = append(e.words, strings.Trim(v.Written(), `"`))
			}
		}
	}
	slices.Sort(e.words)
	return e
}

func every(blocks []*schema.Block) func(func(*schema.Block) bool) {
	return func(yield func(*schema.Block) bool) {
		for _, b := range blocks {
			if !yield(b) {
				return
			}
			for inner := range every(b.Blocks()) {
				if !yield(inner) {
					return
				}
			}
		}
	}
}

// next makes one edit and says of which file; out says that the file is gone.
func (e *edited) next() (name string, out bool) {
	name = e.names[e.IntN(len(e.names))]
	text, there := e.texts[name]
	switch n := e.IntN(20); {
	case !there || n < 5: // as it was at first
		e.texts[name] = e.first[name]
		return name, false
	case n == 5:
		delete(e.texts, name)
		return name, true
	case n == 6: // a copy of another file beside it: keys repeat
		other := e.names[e.IntN(len(e.names))]
		name = strings.Replace(name, ".candle.hcl", "-too.candle.hcl", 1)
		if _, there := e.texts[name]; there {
			delete(e.texts, name)
			return name, true
		}
		e.texts[name] = e.first[other]
		return name, false
	}
	e.texts[name] = e.mangle(text)
	return name, false
}

func (e *edited) mangle(text string) string {
	if text == "" {
		return "x"
	}
	at := e.IntN(len(text))
	lines := strings.SplitAfter(text, "\n")
	line := e.IntN(len(lines))
	switch e.IntN(9) {
	case 0: // a character out
		return text[:at] + text[at+1:]
	case 1: // a character in
		return text[:at] + string("\"{}=# \n0a°"[e.IntN(10)]) + text[at:]
	case 2: // a line out
		return strings.Join(slices.Delete(lines, line, line+1), "")
	case 3: // a line twice
		return strings.Join(slices.Insert(lines, line, lines[line]), "")
	case 4: // a line elsewhere
		moved := lines[line]
		lines = slices.Delete(lines, line, line+1)
		return strings.Join(slices.Insert(lines, e.IntN(len(lines)+1), moved), "")
	case 5: // everything further down
		return "# moved\n" + text
	}
	// One word in the place of another: keys, amounts, units, choices.
	from, to := e.words[e.IntN(len(e.words))], e.words[e.IntN(len(e.words))]
	return strings.Replace(text, from, to, 1)
}

// After each of many edits to any file of the shop, what was checked again and
// what was kept are together what a fresh check says, byte for byte.
func TestLiveEqualsFresh(t *testing.T) {
	edits := 10_000
	if testing.Short() {
		edits = 500
	}
	base, errs := lint.Load(examples.Shop(), ".", nil)
	require.Empty(t, errs)
	all := rules.All()
	liveAgainstFresh(t, base, newEdited(base.Files(), 7), edits, func(*lint.Shop) []*lint.Rule { return all })
}

// The same while the shop's own rules, the trials they rest on and the shop file
// are edited, some of them in a folder that the shop takes rules from.
func TestLiveEqualsFreshWithOwnRules(t *testing.T) {
	edits := 2000
	if testing.Short() {
		edits = 150
	}
	base, errs := lint.Load(examples.Shop(), ".", nil)
	require.Empty(t, errs)
	beside := 0
	for _, f := range base.Files() {
		if strings.HasPrefix(f.Name, "rules/") && beside < 2 {
			beside++
			base = base.Edit([]*schema.File{schema.Read("../house-"+f.Name, []byte(f.Text.String()))}, []string{f.Name})
		}
	}
	require.Equal(t, 2, beside)
	config := base.Config.File
	tuned := strings.Replace(config.Text.String(), `"15 °F"`, `"120 °F"`, 1) // so much that recipes are spoken against
	require.NotEqual(t, config.Text.String(), tuned)
	base = base.With(schema.Read(config.Name, []byte(tuned)))
	e := newEdited(base.Files(), 8)
	e.words = append(e.words, "in_hand", "5 °F", "120 °F", "10 g", "option", "fresh-putty-for-hot-pours", "tune")
	slices.Sort(e.words)
	e.names = slices.DeleteFunc(e.names, func(name string) bool {
		return !strings.Contains(name, "rules/") && !strings.HasPrefix(name, "trials/") && name != "shop.candle.hcl" && !strings.Contains(name, "tide")
	})
	require.Greater(t, len(e.names), 5)
	liveAgainstFresh(t, base, e, edits, func(shop *lint.Shop) []*lint.Rule { return append(rules.All(), rules.Own(shop)...) })
}

// The same while the tune of a rule is written again and again, with figures of
// all sorts, and its rule beside it.
func TestLiveEqualsFreshWhileTuning(t *testing.T) {
	base, errs := lint.Load(examples.Shop(), ".", nil)
	require.Empty(t, errs)
	const config, sealing, recipe = "shop.candle.hcl", "rules/sealing.candle.hcl", "recipes/breakwater-block.candle.hcl"
	for _, r := range base.Recipes() {
		if r.File.Name != recipe && r.File.Name != "recipes/tideline-layers.candle.hcl" {
			base = base.Edit(nil, []string{r.File.Name})
		}
	}
	all := func(shop *lint.Shop) []*lint.Rule { return append(rules.All(), rules.Own(shop)...) }
	live := lint.NewLive(base, all, today)
	dice := rand.New(rand.NewPCG(9, 9))
	one := func(of ...string) string { return of[dice.IntN(len(of))] }
	option := func() string {
		return "    option \"" + one("in_hand", "in_hand", "in_hand", "in_hnd", "") + "\" {\n" +
			one("", "", "      # why\n") + "      is = " + one(`"60 °F"`, `"120 °F"`, `"15 °F"`, `"0 °F"`, `"10 g"`, `"40 °C"`, "5", "true", `""`, `degrees("5 °F")`) + "\n    }\n"
	}
	tune := func() string {
		text := "  tune \"" + one("fresh-putty-for-hot-pours", "fresh-putty-for-hot-pours", "fresh-putty-for-hot-pours", "tab-glue-in-hand", "heat-near-flash", "nobodys") + "\" {\n" + one("", "    level = \"consider\"\n", "    level = \"off\"\n")
		for range dice.IntN(3) {
			text += option()
		}
		return text + "  }\n"
	}
	first := map[string]string{}
	for _, name := range []string{config, sealing, recipe} {
		first[name] = base.File(name).Text.String()
	}
	seen := map[string]int{}
	for i := range 600 {
		name, text := config, ""
		switch dice.IntN(6) {
		case 0:
			name = sealing
			text = strings.Replace(first[name], `degrees("10 °F")`, one(`degrees("10 °F")`, `degrees("90 °F")`, `amount("1 g")`, `"soft"`, "2"), 1)
			text = strings.Replace(text, `option "in_hand"`, one(`option "in_hand"`, `option "in_hand"`, `option "spare"`), 1)
		case 1:
			name = recipe
			text = one("", "# moved\n") + first[name]
		default:
			text = one("", "# moved\n", "# further\n# moved\n") + "shop \"larkspur-quay\" {\n" + one("", "  units = \"metric\"\n")
			for range dice.IntN(3) {
				text += tune()
			}
			text += "}\n"
		}
		live.Edit([]*schema.File{schema.Read(name, []byte(text))}, nil)
		for more := i%4 > 0; more; {
			_, more = live.Settle(nil, 3)
		}
		if i%4 == 0 {
			continue
		}
		again := lint.NewShop(".", live.Shop().Files())
		fresh := lint.Run(again, all(again), today)
		require.Empty(t, otherLines(said(fresh), said(live.Report())), "edit %d, of %s: %s", i, name, text)
		for _, f := range fresh.Findings {
			seen[f.Rule.Name]++
			if f.Rule.Name == "fresh-putty-for-hot-pours" && len(f.Notes) > 0 {
				seen["a figure of the shop's own"]++
			}
		}
	}
	for _, name := range []string{"fresh-putty-for-hot-pours", "a figure of the shop's own", "tune-without-effect", "rule-example-fails"} {
		require.Greater(t, seen[name], 20, "%v", seen)
	}
}

func liveAgainstFresh(t *testing.T, base *lint.Shop, e *edited, edits int, all func(*lint.Shop) []*lint.Rule) {
	live := lint.NewLive(base, all, today)
	findings := 0
	for i := range edits {
		name, out := e.next()
		if out {
			live.Edit(nil, []string{name})
		} else {
			live.Edit([]*schema.File{schema.Read(name, []byte(e.texts[name]))}, nil)
		}
		if i%3 == 0 { // first where the maker looks, as an editor does
			live.Settle(func(file string) bool { return file == name }, 1<<30)
		}
		if i%7 == 0 { // further edits come before all is checked
			continue
		}
		for more := true; more; {
			_, more = live.Settle(nil, 1+i%5)
		}
		again := lint.NewShop(".", live.Shop().Files())
		fresh := lint.Run(again, all(again), today)
		findings += len(fresh.Findings)
		require.Empty(t, otherLines(said(fresh), said(live.Report())), "edit %d, of %s", i, name)
		if i%50 == 0 {
			parts := 0
			for _, f := range live.Shop().Files() {
				of := live.Of(f.Name)
				parts += len(of.Findings) + len(of.Unchecked) + len(of.Conceded)
				for _, found := range of.Findings {
					require.Same(t, f, found.At.File)
				}
			}
			require.Equal(t, len(fresh.Findings)+len(fresh.Unchecked)+len(fresh.Conceded), parts, "edit %d", i)
		}
	}
	require.Greater(t, findings, edits, "the edits hardly spoil anything")
}
