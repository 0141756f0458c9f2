package drill_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules"
	"wickrule/rules/drill"
	"wickrule/schema"
)

// today is a day on which the demo shop's recipes are sound.
const today = "2026-10-20"

func demoSchool(t testing.TB) (*lint.Shop, *drill.School) {
	t.Helper()
	shop, errs := lint.Load(examples.Shop(), ".", nil)
	require.Empty(t, errs)
	return shop, drill.NewSchool(shop, rules.For(shop), today)
}

// faultsIn is what a check of the whole demo shop, with the text in the place
// of its recipe, finds in that file that must or should be put right, by rule.
func faultsIn(t testing.TB, shop *lint.Shop, key, text string) (rulesSaid []string, report *lint.Report) {
	t.Helper()
	own := shop.Find("recipe", key)
	require.NotNil(t, own, key)
	file, err := schema.Apply(own.File.Text.String(), []schema.Edit{{File: own.File, Span: own.Span, Text: text}}) // burns may stand beside it
	require.NoError(t, err)
	laid := shop.With(schema.Read(own.File.Name, []byte(file)))
	report = lint.RunFor(laid, rules.For(laid), today, func(file string) bool { return file == own.File.Name })
	require.Empty(t, report.Faults)
	for _, f := range report.Findings {
		if f.Level >= lint.Should {
			rulesSaid = append(rulesSaid, f.Rule.Name)
		}
	}
	slices.Sort(rulesSaid)
	return slices.Compact(rulesSaid), report
}

// An exercise never contains a fault that it does not name afterwards: over
// many seeds, a check of the whole shop finds exactly the rules that are named,
// nothing uncheckable that was not before, and nothing in the recipe without
// its slips; what is told of the changes is all that was changed; and the same
// seed makes the same bytes.
func TestExercisesNameEveryFault(t *testing.T) {
	shop, school := demoSchool(t)
	seeds, each := 25, 12
	if testing.Short() {
		seeds, each = 3, 8
	}
	reached, wanted := map[string]int{}, [4]int{}
	for s := range seeds {
		seed := fmt.Sprintf("seed %d", s)
		series := school.Series(seed, "")
		for range each {
			e, err := series.Next()
			require.NoError(t, err)
			name := fmt.Sprintf("%s, exercise %d, %s", seed, e.Number, e.Recipe)
			wanted[len(e.Faults)]++
			var named []string
			for _, p := range e.Faults {
				named = append(named, p.Rule.Name)
				reached[p.Rule.Name]++
				assert.NotEmpty(t, p.Lines(), name)
				assert.GreaterOrEqual(t, p.Level(), lint.Should, name)
				assert.NotEmpty(t, p.Slip, name)
			}
			slices.Sort(named)
			said, report := faultsIn(t, shop, e.Recipe, e.Text)
			assert.Equal(t, named, said, name+"\n"+e.Text)
			none, before := faultsIn(t, shop, e.Recipe, e.Sound)
			assert.Empty(t, none, name)
			assert.Equal(t, needs(before), union(needs(before), needs(report)), name)
			assert.Equal(t, plain(e.Sound), undone(e), name)
		}
	}
	t.Logf("%d rules reached, exercises of one, two and three slips: %v", len(reached), wanted[1:])
	if !testing.Short() {
		assert.GreaterOrEqual(t, len(reached), 60, slices.Sorted(maps.Keys(reached)))
		own := 0
		for _, rule := range shop.Rules() {
			if reached[rule.Label] > 0 {
				own++
			}
		}
		assert.GreaterOrEqual(t, own, 7, "rules of the shop's own")
	}
}

func needs(r *lint.Report) (all []string) {
	for _, u := range r.Unchecked {
		all = append(all, u.Needs)
	}
	return all
}

func union(a, b []string) []string {
	for _, s := range b {
		if !slices.Contains(a, s) {
			a = append(slices.Clip(a), s)
		}
	}
	return a
}

// plain is a text without what does not matter to what it says.
func plain(text string) (lines []string) {
	for line := range strings.Lines(text) {
		lines = append(lines, strings.Join(strings.Fields(line), " "))
	}
	return lines
}

// undone is the exercise's text with everything put back that is told of its
// changes.
func undone(e *drill.Exercise) []string {
	var all []drill.Change
	for _, p := range e.Faults {
		all = append(all, p.Changes...)
	}
	slices.SortStableFunc(all, func(a, b drill.Change) int { return b.Line - a.Line })
	lines := plain(e.Text)
	for _, c := range all {
		var was []string
		for _, line := range c.Was {
			was = append(was, strings.Join(strings.Fields(line), " "))
		}
		lines = slices.Replace(lines, c.Line-1, c.Line-1+len(c.Is), was...)
	}
	return lines
}

func TestSameSeedSameBytes(t *testing.T) {
	_, one := demoSchool(t)
	_, other := demoSchool(t)
	for _, seed := range []string{"spring", "autumn"} {
		a, err := one.SetOut("Larkspur Quay Candleworks", seed, "", 8)
		require.NoError(t, err)
		b, err := other.SetOut("Larkspur Quay Candleworks", seed, "", 8)
		require.NoError(t, err)
		assert.Equal(t, a, b)
		set, err := drill.ReadSet([]byte(a[drill.SetName]))
		require.NoError(t, err)
		// Each is the same made alone, and from the shelf that is given away.
		var files []*schema.File
		for name, text := range a {
			if rest, ok := strings.CutPrefix(name, drill.ShelfName+"/"); ok {
				files = append(files, schema.Read(rest, []byte(text)))
			}
		}
		shelf := lint.NewShop("", files)
		assert.Empty(t, shelf.Recipes(), "the answers are not given away")
		for _, item := range set.Exercises {
			assert.NotContains(t, a[drill.SetName], "slips", "the answers cannot be read at a glance")
			opened, err := drill.NewSchool(shelf, rules.For(shelf), set.Day).Open(set, item)
			require.NoError(t, err)
			made := nth(t, one, seed, "", item.Number)
			assert.Equal(t, a[item.File], opened.Text)
			head := strings.TrimSuffix(opened.Text, made.Text)
			assert.Equal(t, head+made.Sound, opened.Sound)
			below := strings.Count(head, "\n")
			for i := range made.Faults {
				for n, c := range made.Faults[i].Changes {
					c.Line += below
					assert.Equal(t, c, opened.Faults[i].Changes[n], "lines as in the file")
				}
				assert.Equal(t, made.Faults[i].Slip, opened.Faults[i].Slip)
			}
		}
		third := nth(t, one, seed, "", 3)
		assert.Equal(t, set.Exercises[2].Text, drill.Digest(third.Text))
		assert.True(t, strings.HasSuffix(a["exercise-03.hcl"], "\n\n"+third.Text))
	}
	different := nth(t, one, "winter", "", 1)
	same := nth(t, one, "spring", "", 1)
	assert.NotEqual(t, same.Text, different.Text)
}

// Rules that a shop takes from a folder beside it are given away inside of the
// shelf, and speak there.
func TestShelfHoldsWhatIsTaken(t *testing.T) {
	shop, _ := demoSchool(t)
	house := `rule "house-trim" {
  title   = "Every wick is trimmed to 1/4 in"
  about   = "trim_wick"
  require = trim_wick.to == amount("1/4 in")
  message = "It is ${show(trim_wick.to)}."

  faulty {
    recipe "long" {
      step "trim wick" { to = "3/8 in" }
    }
  }
}
`
	shop = shop.With(schema.Read("../house/trim.candle.hcl", []byte(house)))
	school := drill.NewSchool(shop, rules.For(shop), today)
	files, err := school.SetOut("Larkspur Quay", "spring", "house-trim", 2)
	require.NoError(t, err)
	assert.Equal(t, house, files["shelf/beside/house/trim.candle.hcl"])
	var shelf []*schema.File
	for name, text := range files {
		assert.NotContains(t, name, "..")
		if rest, ok := strings.CutPrefix(name, drill.ShelfName+"/"); ok {
			shelf = append(shelf, schema.Read(rest, []byte(text)))
		}
	}
	set, err := drill.ReadSet([]byte(files[drill.SetName]))
	require.NoError(t, err)
	beside := lint.NewShop("", shelf)
	e, err := drill.NewSchool(beside, rules.For(beside), set.Day).Open(set, set.Exercises[0])
	require.NoError(t, err)
	assert.True(t, slices.ContainsFunc(e.Faults, func(p drill.Planted) bool { return p.Rule.Name == "house-trim" }))
}

// What a learner may do with an exercise, and how it is marked.
func TestMarks(t *testing.T) {
	_, school := demoSchool(t)
	seeds := 12
	if testing.Short() {
		seeds = 3
	}
	for s := range seeds {
		series := school.Series(fmt.Sprintf("marks %d", s), "")
		for range 6 {
			e, err := series.Next()
			require.NoError(t, err)
			name := fmt.Sprintf("marks %d, exercise %d, %s", s, e.Number, e.Recipe)

			untouched := school.Mark(e, e.Text)
			assert.False(t, untouched.Good(), name)
			assert.Empty(t, untouched.Broken, name)
			for _, slip := range untouched.Slips {
				assert.Equal(t, drill.Still, slip.Outcome, name+" "+slip.Rule.Name)
			}
			assert.True(t, school.Mark(e, e.Sound).Good(), name)
			assert.True(t, school.Mark(e, "# my own words\n\n"+e.Sound).Good(), name)

			assert.True(t, school.Mark(e, "").NoRecipe, name)
			assert.False(t, school.Mark(e, "").Good(), name)
			assert.False(t, school.Mark(e, "recipe \""+e.Recipe+"\" {\n}\n").Good(), name+": all taken out")

			// What is set aside: a block that turns a rule down, another purpose.
			var tunes strings.Builder
			tunes.WriteString("shop \"mine\" {\n")
			for _, p := range e.Faults {
				fmt.Fprintf(&tunes, "  tune %q {\n    level = \"off\"\n  }\n", p.Rule.Name)
			}
			tunes.WriteString("}\n")
			tuned := school.Mark(e, e.Text+tunes.String())
			assert.Equal(t, outcomes(untouched), outcomes(tuned), name)
			if whole(e.Text) {
				assert.Equal(t, []string{`shop "mine"`}, tuned.SetAside, name)
			}
			for _, made := range []string{`"sale"`, `"class"`} {
				if at := "made_for = " + made; strings.Contains(e.Text, at) && whole(e.Text) {
					own := school.Mark(e, strings.Replace(e.Text, at, `made_for = "own use"`, 1))
					assert.Equal(t, outcomes(untouched), outcomes(own), name)
					assert.Equal(t, []string{"made_for"}, own.Restored, name)
				}
			}
		}
	}
}

func whole(text string) bool { return schema.Read("a.candle.hcl", []byte(text)).Whole }

func outcomes(m *drill.Mark) (all []drill.Outcome) {
	for _, s := range m.Slips {
		all = append(all, s.Outcome)
	}
	return all
}

// nth is the exercise of a seed that has the number.
func nth(t *testing.T, school *drill.School, seed, about string, number int) *drill.Exercise {
	t.Helper()
	series := school.Series(seed, about)
	for {
		e, err := series.Next()
		require.NoError(t, err)
		if e.Number == number {
			return e
		}
	}
}

// find is the first exercise with a slip of a rule and no other.
func find(t *testing.T, school *drill.School, rule string) *drill.Exercise {
	t.Helper()
	series := school.Series("find", rule)
	for range 20 {
		e, err := series.Next()
		require.NoError(t, err)
		if len(e.Faults) == 1 {
			return e
		}
	}
	require.Failf(t, "no exercise", "of %s", rule)
	return nil
}

// without takes a block of an exercise out by the words it begins with.
func without(t *testing.T, text, begins string) string {
	t.Helper()
	file := schema.Read("a.candle.hcl", []byte(text))
	for _, b := range file.Blocks[0].Blocks() {
		if strings.HasPrefix(drill.Header(b), begins) {
			changed, err := schema.Apply(text, []schema.Edit{schema.RemoveBlock(b)})
			require.NoError(t, err)
			return changed
		}
	}
	require.Failf(t, "no block", "%s in\n%s", begins, text)
	return ""
}

// Taking out what was dangerous is no mending, nor is a concession.
func TestMarksWhatOnlyLooksMended(t *testing.T) {
	_, school := demoSchool(t)

	over := find(t, school, "fragrance-over-limit")
	m := school.Mark(over, without(t, without(t, over.Text, "fragrance"), `step "add fragrance"`))
	assert.Equal(t, drill.TakenOut, m.Slips[0].Outcome)
	assert.Equal(t, "the fragrance", m.Slips[0].What)
	assert.False(t, m.Good())

	hot := find(t, school, "pour-too-hot")
	conceded := strings.TrimSuffix(strings.TrimSpace(hot.Text), "}") + "  concession \"pour-too-hot\" {\n    reason = \"We always do it so.\"\n  }\n}\n"
	m = school.Mark(hot, conceded)
	assert.Equal(t, drill.Conceded, m.Slips[0].Outcome)
	assert.False(t, m.Good())

	// A seal taken out to be rid of a weak one breaks something else.
	weak := find(t, school, "seal-too-weak")
	m = school.Mark(weak, without(t, weak.Text, `step "seal wick hole"`))
	assert.Equal(t, drill.TakenOut, m.Slips[0].Outcome)
	require.Len(t, m.Broken, 1)
	assert.Equal(t, "wick-hole-unsealed", m.Broken[0].Rule.Name)

	// Half a text mends nothing.
	m = school.Mark(hot, hot.Sound[:len(hot.Sound)-3])
	assert.True(t, m.Unread)
	assert.Equal(t, drill.Unjudged, m.Slips[0].Outcome)
	assert.False(t, m.Good())

	// Another way to mend it counts as well as the shop's own.
	plug := find(t, school, "wick-hole-unsealed")
	way := strings.Replace(plug.Text, "  step \"", "  step \"seal wick hole\" {\n    with = \"foil-tape\"\n  }\n  step \"", 1)
	m = school.Mark(plug, way)
	assert.True(t, m.Good(), "%+v", m)
}

// A broken progress file is refused, and what was written is read again.
func TestProgressFile(t *testing.T) {
	_, school := demoSchool(t)
	e := nth(t, school, "spring", "", 2)
	p := &drill.Progress{}
	r := drill.NewRecord("larkspur-quay", today, e)
	p.Put(r)
	r.Slips[0].Outcome, r.Slips[0].Hints = "told", 4
	p.Put(r)
	require.Len(t, p.Exercises, 1)
	again, err := drill.ReadProgress(p.Bytes())
	require.NoError(t, err)
	assert.Equal(t, p, again)
	assert.Equal(t, []string{e.Faults[0].Rule.Name}, again.Again())
	assert.NotNil(t, again.Open("larkspur-quay"))
	assert.Nil(t, again.Open("elsewhere"))

	whole := string(p.Bytes())
	for end := range len(whole) - 1 {
		_, err := drill.ReadProgress([]byte(whole[:end]))
		assert.Errorf(t, err, "the first %d bytes of it", end)
	}
	for _, spoiled := range []string{whole + "{}", strings.Replace(whole, `"told"`, `"guessed"`, 1), strings.Replace(whole, `: 1,`, `: 2,`, 1), strings.Replace(whole, `"seed"`, `"sead"`, 1), "[]", "null"} {
		_, err := drill.ReadProgress([]byte(spoiled))
		assert.Error(t, err, spoiled)
	}
}

// A hint says more each time: what it is about, where, why, and the fix.
func TestHintsComeInOrder(t *testing.T) {
	_, school := demoSchool(t)
	e := find(t, school, "pour-too-hot")
	hints := drill.Hints(&e.Faults[0].Found[0])
	require.Len(t, hints, len(drill.HintWords))
	assert.Equal(t, "Heat", hints[0].Text)
	assert.Contains(t, hints[1].Text, fmt.Sprintf("line %d: at", e.Faults[0].Lines()[0]))
	assert.Equal(t, strings.TrimSpace(e.Faults[0].Rule.Why), hints[2].Text)
	assert.Contains(t, hints[3].Text, e.Faults[0].Found[0].Message)
	assert.NotContains(t, hints[0].Text+hints[1].Text+hints[2].Text, e.Faults[0].Rule.Name)
}
