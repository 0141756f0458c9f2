package shoprule

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/schema"
)

// asker makes questions at random of the names that there are.
type asker struct {
	*rand.Rand
	about *kind
}

// one is a kind that the rule is about, or another one that blocks of nearly
// every recipe are of.
func (a *asker) one() *kind {
	if a.IntN(3) > 0 {
		return a.about
	}
	return table.byName[[]string{"recipe", "batch", "wax", "fragrance", "melt", "pour", "shop"}[a.IntN(7)]]
}

// named is a name of a type that fits, led to by way of another thing now and
// then. "" where the dice found none.
func (a *asker) named(fits func(Type) bool) (string, Type) {
	for range 40 {
		k := a.one()
		path := k.Name
		n := k.Names[a.IntN(len(k.Names))]
		if n.Type.Kind == Thing {
			path += "." + n.Name
			k = table.byName[n.Type.Of]
			n = k.Names[a.IntN(len(k.Names))]
		}
		if n.Type.Kind != Thing && fits(n.Type) {
			return path + "." + n.Name, n.Type
		}
	}
	return "", Type{}
}

func (a *asker) question(depth int) string {
	if depth > 0 {
		switch a.IntN(5) {
		case 0:
			return "(" + a.question(depth-1) + " && " + a.question(depth-1) + ")"
		case 1:
			return "(" + a.question(depth-1) + " || " + a.question(depth-1) + ")"
		case 2:
			return "!(" + a.question(depth-1) + ")"
		}
	}
	path, t := a.named(func(t Type) bool { return t.Kind != Mixed && t.Kind != Thing })
	switch {
	case path == "":
		return "true"
	case t.Kind == YesNo && a.IntN(3) == 0:
		return path + " == option.on"
	case t.Kind == YesNo:
		return path
	case t.Kind == Text:
		if len(t.Choices) > 0 {
			return fmt.Sprintf("%s %s %q", path, []string{"==", "!="}[a.IntN(2)], t.Choices[a.IntN(len(t.Choices))])
		}
		other, _ := a.named(func(o Type) bool { return o.Kind == Text })
		return path + " == " + other
	case t.Kind == List:
		word := "none"
		if len(t.Choices) > 0 {
			word = t.Choices[a.IntN(len(t.Choices))]
		}
		return fmt.Sprintf("includes(%s, %q)", path, word)
	}
	other, _ := a.named(func(o Type) bool { return o.same(t) })
	sign := []string{"<", "<=", ">", ">=", "==", "!="}[a.IntN(6)]
	switch {
	case t.isTemperature() && a.IntN(3) == 0:
		other = "option.heat"
	case t.isTemperature() && a.IntN(3) == 0:
		other = `amount("170 to 182 °F")`
	case t.isTemperature() && a.IntN(3) == 0:
		path += " - option.less"
	case t.isTemperature() && a.IntN(2) == 0:
		path += ` - degrees("5 °F")`
	case t.Kind == Number && a.IntN(3) == 0:
		other = "option.few"
	case t.Kind == Number && a.IntN(2) == 0:
		other = "2"
	case a.IntN(3) == 0 && !t.isTemperature():
		path += " + " + other
	case a.IntN(4) == 0:
		path += ".high"
	}
	return path + " " + sign + " " + other
}

// tunable is options for the rules at random, and tunedTo a tune that sets them.
const (
	tunable = "  option \"on\" {\n    is = true\n  }\n  option \"heat\" {\n    is = amount(\"170 to 182 °F\")\n  }\n" +
		"  option \"less\" {\n    is = degrees(\"5 °F\")\n  }\n  option \"few\" {\n    is = 2\n  }\n"
	tunedTo = "tune \"tried\" {\n  option \"on\" {\n    is = false\n  }\n  option \"heat\" {\n    is = \"176 °F\"\n  }\n" +
		"  option \"less\" {\n    is = \"20 °C\"\n  }\n  option \"few\" {\n    is = 1\n  }\n}\n"
)

// asTunedTo writes the figures of the tune into a rule.
var asTunedTo = strings.NewReplacer("is = true", "is = false", `amount("170 to 182 °F")`+"\n  }", `amount("176 °F")`+"\n  }", `is = degrees("5 °F")`, `is = degrees("20 °C")`, "is = 2", "is = 1")

// A tuned rule says what it would say if its author had written the figures of
// the tune: rules at random, of every demo recipe.
func TestTunedRulesSayWhatTheirFiguresSay(t *testing.T) {
	a := &asker{Rand: rand.New(rand.NewPCG(3, 4))}
	shop := demo(t)
	rules, others, spoke := 0, 0, 0
	for range 3000 {
		a.about = table.kinds[a.IntN(len(table.kinds))]
		text := ruleText("tried", fmt.Sprintf("%q", a.about.Name), a.question(2), "  message = \"${show(option.heat)}, ${show(option.less)}\"\n"+tunable)
		p := compileWording(wording{rule: text, tune: tunedTo})
		if !p.runs() || !strings.Contains(strings.Split(text, "\n")[3], "option.") {
			continue
		}
		rules++
		asWritten, asMeant := compileWritten(text), compileWritten(asTunedTo.Replace(text))
		require.True(t, asMeant.runs(), "%v", asMeant.problems)
		for _, recipe := range shop.Recipes() {
			view := lint.NewView(shop, recipe, today)
			got := p.outcome(view)
			require.Equal(t, asMeant.outcome(view), got, text)
			if got.spoke {
				spoke++
			}
			if asWritten.outcome(view) != got {
				others++
			}
		}
	}
	t.Logf("%d rules, which spoke of %d recipes; the tune made a difference in %d", rules, spoke, others)
	require.Greater(t, rules, 200)
	require.Greater(t, others, 100)
}

// What the quick form of a rule says is what the whole form says: questions at
// random, of every demo recipe as it is and with a piece of it gone.
func TestQuickFormsSayTheSame(t *testing.T) {
	a := &asker{Rand: rand.New(rand.NewPCG(1, 2))}
	base := demo(t)
	var views []*lint.View
	for _, recipe := range base.Recipes() {
		views = append(views, lint.NewView(base, recipe, today))
		text := recipe.File.Text.String()
		for range 2 {
			at := a.IntN(len(text))
			end := min(at+1+a.IntN(60), len(text))
			shop := base.With(schema.Read(recipe.File.Name, []byte(text[:at]+text[end:])))
			for _, changed := range shop.Recipes() {
				if changed.File.Name == recipe.File.Name {
					views = append(views, lint.NewView(shop, changed, today))
				}
			}
		}
	}
	rules, combinations, quick, known := 0, 0, 0, 0
	for range 3000 {
		a.about = table.kinds[a.IntN(len(table.kinds))]
		p := compileWritten(ruleText("tried", fmt.Sprintf("%q", a.about.Name), a.question(2), "  when = "+a.question(1)+"\n"+tunable))
		if a.IntN(2) == 0 {
			p = compileWording(wording{rule: p.block.File.Text.String(), tune: tunedTo})
		}
		if !p.runs() || p.when == nil {
			continue
		}
		rules++
		view := views[a.IntN(len(views))]
		s := sceneOf.In(view)
		r, over := p.begin(s)
		if over {
			continue
		}
		for r.next() {
			combinations++
			for _, e := range []*expr{p.when, p.require} {
				got, want := e.tests()(s), e.eval(s)
				if want.known() {
					known++
				}
				switch {
				case got == unsure:
				case !want.known() || want.yes != (got == itHolds):
					t.Fatalf("%s: the quick form says %v, the whole one %+v", p.block.File.Text.String(), got, want)
				default:
					quick++
				}
			}
			verdict, _ := p.judge(s)
			require.True(t, !p.holdsQuickly(s) || verdict == holds || verdict == notMeant, p.block.File.Text.String())
		}
	}
	t.Logf("%d rules, %d combinations, %d of %d known values found quickly", rules, combinations, quick, known)
	require.Greater(t, rules, 1000)
	require.Greater(t, combinations, 1000)
	require.Greater(t, quick, known*9/10)
}
