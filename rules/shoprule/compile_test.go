package shoprule

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/schema"
)

const today = "2026-10-20"

func demo(t testing.TB) *lint.Shop {
	t.Helper()
	shop, errs := lint.Load(examples.Shop(), ".", nil)
	require.Empty(t, errs)
	return shop
}

// ruleOf is a rule about pours with this expression as its require.
func ruleOf(require string) string { return ruleText("tried", `"pour"`, require, "") }

// told is what is said of an expression and the characters it is said of.
func told(t *testing.T, text string) (string, string) {
	t.Helper()
	p := compileWritten(text)
	if len(p.problems) == 0 {
		return "", ""
	}
	at := p.problems[0]
	return text[at.span.Start:at.span.End], at.message
}

// What cannot be read is told at its very characters. Dimensions are followed
// through sums, differences, products and quotients (the ten points of the
// format; of temperatures and differences NIST SP 811, 8.5).
func TestWhatCannotBeRead(t *testing.T) {
	for _, c := range []struct{ require, at, says string }{
		{`pour.at <= wax.weight`, `pour.at <= wax.weight`, "pour.at is a temperature and wax.weight is a weight"},
		{`mold.height + pour.after <= amount("1 h")`, `mold.height + pour.after`, "mold.height is a length and pour.after is a time"},
		{`pour.at + melt.to <= amount("180 °F")`, `pour.at + melt.to`, "two temperatures have no sum"},
		{`pour.at - melt.to <= amount("10 °F")`, `pour.at - melt.to <= amount("10 °F")`, "a temperature difference"},
		{`pour.at <= degrees("10 °F")`, `pour.at <= degrees("10 °F")`, "amount(\"182 °F\") is a temperature"},
		{`wax.weight * wax.weight > amount("1 kg")`, `wax.weight * wax.weight`, "multiplied by a number only"},
		{`wax.weight / mold.height > 2`, `wax.weight / mold.height`, "divided by a number"},
		{`wax.weight / mold.holds > amount("1 g")`, `wax.weight / mold.holds > amount("1 g")`, "is a density"},
		{`2 * pour.at > amount("1 °F")`, `2 * pour.at`, "cannot be multiplied"},
		{`pour.at / 2 > amount("1 °F")`, `pour.at / 2`, "cannot be divided"},
		{`fragrance.of_wax <= fragrance.of_total`, `fragrance.of_wax <= fragrance.of_total`, "take both of wax or both of total"},
		{`fragrance.load <= amount("5 % of wax")`, `fragrance.load`, "ask for of_wax or of_total"},
		{`pour.at <= "180 °F"`, `pour.at <= "180 °F"`, `an amount is written amount("…")`},
		{`pour.at <= 180`, `pour.at <= 180`, "a number needs its unit"},
		{`pour.heet <= amount("180 °F")`, `heet`, "a pour has no heet"},
		{`poor.at <= amount("180 °F")`, `poor`, "the nearest is pour"},
		{`pour.at <= amont("180 °F")`, `amont`, "the nearest is amount"},
		{`pour.at <= amount("180 °G")`, `"180 °G"`, ""},
		{`pour.at <= amount("180")`, `"180"`, ""},
		{`mold.seal.kind == "puty"`, `"puty"`, `the nearest is "putty"`},
		{`includes(wax.suits, "jar")`, `"jar"`, "is not among"},
		{`wax.suits == "pillar"`, `wax.suits == "pillar"`, "includes(list"},
		{`mold.wick == "flat-braid-24"`, `mold.wick`, "ask for something of it"},
		{`pour.at`, `pour.at`, "a question of yes or no"},
		{`pour.at == null`, `null`, "null is not for rules"},
		{`!pour.at`, `pour.at`, "turns yes or no round"},
		{`-1 < 2`, `-1`, "a minus in front"},
		{`7 % 2 == 1`, `7 % 2`, "this sign is not for rules"},
		{`[for w in wax: w] == 1`, `[for w in wax: w]`, "a `for`"},
		{`wax[0].weight > amount("1 g")`, `wax[0].weight`, ""},
		{`wax.*.weight == 1`, `wax.*.weight`, "a splat"},
		{`count("step", "curing") > 0`, `"curing"`, "there is no step curing"},
		{`count("wick") > 0`, `"wick"`, "no blocks called wick"},
		{`"${pour.at}" == "x"`, `"${pour.at}"`, "a text is filled in"},
		{`least(pour.at, wax.weight) > amount("1 g")`, `wax.weight`, "of the same sort"},
		{`option.hand > 2`, `hand`, "no option"},
		{`(true ? pour.at : wax.weight) > amount("1 g")`, `true ? pour.at : wax.weight`, "two of the same sort"},
		{`1e9 > 2`, `1e9`, "without an exponent"},
		{`1234567890123456 > 2`, `1234567890123456`, "up to 15 digits"},
		{`pour.at.mid > amount("1 °F")`, `mid`, ".low and .high"},
		{strings.Repeat("(", 40) + "true" + strings.Repeat(")", 40), "", "over 32 levels deep"},
		{"true" + strings.Repeat(" && true", 120), "", ""},
		{`file("x") == "y"`, `file`, "there is no function"},
	} {
		at, says := told(t, ruleOf(c.require))
		require.NotEmpty(t, says, c.require)
		if c.at != "" {
			assert.Equal(t, c.at, at, "%s: %s", c.require, says)
		}
		assert.Contains(t, says, c.says, c.require)
	}
}

// Where it is plain what was meant, it is offered, and the rule with it in its
// place can be read.
func TestWhatWasMeant(t *testing.T) {
	for _, c := range []struct{ require, put, instead string }{
		{`pour.att <= amount("180 °F")`, `att`, `at`},
		{`"°" != "x" && poor.at <= amount("180 °F")`, `poor`, `pour`},
		{`pour.at <= amont("180 °F")`, `amont`, `amount`},
		{`mold.seal.kind == "puty"`, `"puty"`, `"putty"`},
		{`count("waxs") > 1`, `"waxs"`, `"wax"`},
		{`count("step", "poor") > 1`, `"poor"`, `"pour"`},
		{`pour.at <= "180 °F"`, `"180 °F"`, `amount("180 °F")`},
		{`"180 °F" >= pour.at`, `"180 °F"`, `amount("180 °F")`},
		{`melt.to - pour.at <= "10 °F"`, `"10 °F"`, `degrees("10 °F")`},
		{`melt.to - pour.at <= amount("10 °F")`, `amount("10 °F")`, `degrees("10 °F")`},
		{`pour.at <= degrees("180 °F")`, ``, ``}, // nobody knows
		{`pour.at <= "180 g"`, ``, ``},
		{`fragrance.of_wax <= amount("5 % of total")`, ``, ``}, // another amount
		{`pour.at <= 180`, ``, ``},                             // of what scale
	} {
		text := ruleOf(c.require)
		p := compileWritten(text)
		require.NotEmpty(t, p.problems, c.require)
		got := p.problems[0]
		assert.Equal(t, c.instead, got.instead, c.require)
		if c.instead == "" {
			continue
		}
		assert.Equal(t, c.put, text[got.put.Start:got.put.End], c.require)
		assert.Empty(t, compileWritten(text[:got.put.Start]+got.instead+text[got.put.End:]).problems, c.require)
	}
}

// What can be read, and what comes of it on the demo shop's tide-pillar, whose
// figures stand in its own file: 1.24 kg of wax, 5 % of wax of fragrance,
// melted to 186 °F, poured at 176 °F and 182 °F, two candles of 3 by 6 in.
func TestWhatComesOfIt(t *testing.T) {
	shop := demo(t)
	view := lint.NewView(shop, shop.Find("recipe", "tide-pillar"), today)
	for _, c := range []struct {
		require string
		want    verdict
	}{
		{`pour.at == amount("80 °C")`, holds}, // 176 °F is 80 °C exactly
		{`pour.at < amount("80 °C")`, fails},
		{`melt.to - pour.at == degrees("10 °F")`, holds},
		{`pour.at + degrees("5 °C") == amount("185 °F")`, holds},
		{`second_pour.at - pour.at == degrees("6 °F")`, holds},
		{`second_pour.first.at == pour.at && pour.melt.to == amount("186 °F")`, holds},
		{`fragrance.of_wax == amount("5 % of wax")`, holds},
		{`fragrance.weight == amount("62 g")`, holds}, // 5 % of 1240 g
		{`fragrance.weight / batch.wax_weight == 0.05`, holds},
		{`wax.weight / 2 == amount("620 g")`, holds},
		{`3 * wax.weight == amount("3.72 kg")`, holds},
		{`mold.diameter == amount("76.2 mm")`, holds},                                     // 3 in
		{`pour.at >= wax.pour_at.low && pour.at <= wax.pour_at.high`, holds},              // 168 to 182 °F
		{`pour.at >= wax.pour_at`, fails},                                                 // not at the upper end
		{`wax.pour_at <= amount("182 °F")`, holds},                                        // at both ends
		{`wax.pour_at <= amount("181 °F")`, fails},                                        // only at one
		{`wax.pour_at.high - wax.pour_at.low == degrees("14 °F")`, holds},                 // a range's width
		{`abs(pour.at - second_pour.at) == degrees("6 °F")`, holds},                       //
		{`least(pour.at, second_pour.at, melt.to) == pour.at`, holds},                     //
		{`most(pour.at, second_pour.at, melt.to) == melt.to`, holds},                      //
		{`count("step", "pour") == 1 && count("mold") == 1 && batch.candles == 2`, holds}, //
		{`mold.seal.kind == "plug" && mold.seal.holds_to == amount("350 °F")`, holds},     //
		{`mold.wick.key == "flat-braid-24" && includes(mold.wick.families, "paraffin")`, holds},
		{`recipe.made_for == "sale" && includes(recipe.markets, "US")`, holds},
		{`shop.room == amount("70 °F") && recipe.room == shop.room`, holds},
		{`unmold.since_pour >= cooling.unmold.low`, holds},
		{`relief_holes.since_pour == amount("2 h")`, holds},
		{`pour.from_pour > amount("1 h")`, unknown},                   // not written
		{`false && pour.from_pour > amount("1 h")`, fails},            // false && unknown
		{`true || pour.from_pour > amount("1 h")`, holds},             // true || unknown
		{`true && pour.from_pour > amount("1 h")`, unknown},           //
		{`!(pour.from_pour > amount("1 h"))`, unknown},                //
		{`wax.weight / (wax.weight - wax.weight) > 1`, unknown},       // by nothing
		{`(pour.at > melt.to ? pour.at : melt.to) == melt.to`, holds}, //
		{`pour.say == "Keep a quarter of the batch warm for the second pour."`, holds},
	} {
		p := compileWritten(ruleOf(c.require))
		require.Empty(t, p.problems, c.require)
		s := sceneOf.In(view)
		r, over := p.begin(s)
		require.False(t, over)
		require.True(t, r.next(), c.require)
		got, v := p.judge(s)
		assert.Equal(t, c.want, got, "%s %+v", c.require, v)
		assert.False(t, r.next(), "%s: once", c.require)
	}
}

// A message shows what was written as it was written, and what is reckoned in
// the shop's units.
func TestMessages(t *testing.T) {
	shop := demo(t)
	view := lint.NewView(shop, shop.Find("recipe", "tide-pillar"), today)
	for message, want := range map[string]string{
		`"The pour is ${show(pour.at)}."`:                           "The pour is 176 °F",
		`"${show(melt.to - pour.at)} below the melt"`:               "10 °F below the melt",
		`"${show(wax.pour_at)}, at most ${show(wax.pour_at.high)}"`: "168 to 182 °F, at most 182 °F",
		`"${show(fragrance.load)} is ${show(fragrance.weight)}"`:    "5 % of wax is 2.19 oz",
		`"${mold.title}: ${batch.candles}"`:                         "Round pillar mold, 3 by 6 in: 2",
		`"${show(pour.from_pour)}"`:                                 "(not said)",
		`"limit ${show(amount("182 °F"))} for ${wax.suits}"`:        "limit 182 °F for pillar, votive",
	} {
		p := compileWritten(ruleText("tried", `"pour"`, "false", "  message = "+message+"\n"))
		require.Empty(t, p.problems, message)
		s := sceneOf.In(view)
		r, _ := p.begin(s)
		require.True(t, r.next())
		got := p.finding(s).Message
		if !strings.Contains(message, "mold.title") {
			assert.Equal(t, want, got, message)
		} else {
			assert.Equal(t, shop.Find("mold", "pillar-3x6").Title()+": 2", got)
		}
	}
}

// A rule that cannot be read never stops the others, and a shop rule is run
// once for each combination.
func TestCombinations(t *testing.T) {
	shop := demo(t)
	var own []string // the demo shop's own rules, which are not what is counted here
	for _, r := range shop.Rules() {
		own = append(own, r.File.Name)
	}
	shop = shop.Edit(nil, own)
	text := ruleText("each-pour", `"pour"`, `pour.at < amount("100 °F")`, "  point_at = pour.at\n") +
		ruleText("unreadable", `"pour"`, `pour.at < amount("100 g")`, "") +
		ruleText("each-step", `"step"`, `step.number < 4`, "")
	with := shop.With(schema.Read("rules.candle.hcl", []byte(text)))
	all := For(with)
	require.Len(t, all, 2)
	report := lint.Run(with, all, today)
	assert.Empty(t, report.Faults)
	said := map[string]int{}
	for _, f := range report.Findings {
		if f.Recipe.Label == "tideline-layers" {
			said[f.Rule.Name]++
			if f.Rule.Name == "each-pour" {
				assert.Contains(t, f.At.File.Text.Slice(f.At.Span), "°F")
			}
		}
	}
	recipe := shop.Find("recipe", "tideline-layers")
	pours, steps := 0, 0
	for b := range recipe.Each("step") {
		steps++
		if b.Label == "pour" {
			pours++
		}
	}
	assert.Greater(t, pours, 1)
	assert.Equal(t, map[string]int{"each-pour": pours, "each-step": steps - 3}, said)
}

// Over 256 combinations a rule is not checked, and that is told.
func TestTooManyCombinations(t *testing.T) {
	var recipe strings.Builder
	recipe.WriteString("recipe \"long\" {\n")
	for range 17 {
		recipe.WriteString("  step \"note\" {}\n  step \"cool\" {}\n")
	}
	recipe.WriteString("}\n")
	text := ruleText("pairs", `"note"`, `note.number < cool.number`, "") + recipe.String()
	shop := demo(t).With(schema.Read("rules.candle.hcl", []byte(text)))
	report := lint.Run(shop, append(Rules(), For(shop)...), today)
	var said []string
	for _, f := range report.Findings {
		if f.Rule.Name != untested && f.Rule.Name != restsOnNothing {
			said = append(said, f.Rule.Name+": "+f.At.File.Text.Slice(f.At.Span))
		}
	}
	assert.Equal(t, []string{`rule-unreadable: "long"`}, said)
}

// What is not written is asked for, once, by its name.
func TestWhatIsNotWrittenIsTold(t *testing.T) {
	shop := demo(t)
	text := ruleText("cool-seal", `"mold"`, `pour.at <= mold.seal.holds_to`, "") +
		"seal \"cork\" {\n  title = \"Cork\"\n  kind  = \"plug\"\n}\n" +
		"recipe \"corked\" {\n  mold \"pillar-3x6\" { count = 1 }\n  step \"seal wick hole\" { with = \"cork\" }\n  step \"pour\" { at = \"170 °F\" }\n}\n"
	with := shop.With(schema.Read("rules.candle.hcl", []byte(text)))
	report := lint.Run(with, For(with), today)
	assert.Empty(t, report.Findings)
	require.Len(t, report.Unchecked, 1)
	assert.Equal(t, "seal.holds_to", report.Unchecked[0].Needs)
	assert.Equal(t, []string{"cool-seal"}, report.Unchecked[0].Rules)
}

// Fixes lower and never raise; a step is put where the rule says.
func TestFixes(t *testing.T) {
	shop := demo(t)
	fixes := func(require, more string) []string {
		text := ruleText("tried", `"pour"`, require, more)
		p := compileWritten(text)
		if !assert.Empty(t, p.problems) {
			return nil
		}
		view := lint.NewView(shop, shop.Find("recipe", "tide-pillar"), today)
		s := sceneOf.In(view)
		r, _ := p.begin(s)
		assert.True(t, r.next())
		var said []string
		for _, f := range p.finding(s).Fixes() {
			said = append(said, f.Title+" -> "+strings.TrimSpace(f.Edits[0].Text))
		}
		return said
	}
	set := func(what, to string) string {
		return "  set \"put it right\" {\n    what = " + what + "\n    to   = " + to + "\n  }\n"
	}
	assert.Equal(t, []string{`put it right -> "170 °F"`}, fixes("false", set("pour.at", `amount("170.9 °F")`)))
	assert.Empty(t, fixes("false", set("pour.at", `amount("190 °F")`)))
	assert.Empty(t, fixes("false", set("pour.at", `pour.at`)))
	assert.Empty(t, fixes("false", set("fragrance.load", `amount("6 % of wax")`)))
	assert.Equal(t, []string{`put it right -> "4.5 % of wax"`}, fixes("false", set("fragrance.load", `amount("4.55 % of wax")`)))
	assert.Empty(t, fixes("false", set("fragrance.load", `amount("4.5 % of total")`)), "another basis")
	assert.Empty(t, fixes("false", set("pour.from_pour", `amount("1 h")`)), "what is not written is not made up")
	assert.Equal(t, []string{`put it right -> "square-braid-2"`}, fixes("false", set("mold.wick", `"square-braid-2"`)))
	assert.Empty(t, fixes("false", set("mold.wick", `"no-such-wick"`)))
	assert.Equal(t, []string{`note it -> step "note" { say = "Look at it." }`},
		fixes("false", "  insert \"note it\" {\n    after = \"pour\"\n    step \"note\" { say = \"Look at it.\" }\n  }\n"))
	_, says := told(t, ruleText("tried", `"pour"`, "false", set("wax.pour_at", `amount("170 °F")`)))
	assert.Contains(t, says, "the shelves are as the supplier says")
	_, says = told(t, ruleText("tried", `"pour"`, "false", "  insert \"melt it\" {\n    step \"melt\" { to = \"190 °F\" }\n  }\n"))
	assert.Contains(t, says, "never brings in a temperature")
}

// Options are figures of the rule by a name, and nothing of the recipe.
func TestOptions(t *testing.T) {
	text := ruleText("tried", `"pour"`, `melt.to - pour.at >= option.in_hand`, "  option \"in_hand\" {\n    is = degrees(\"10 °F\")\n  }\n")
	p := compileWritten(text)
	require.Empty(t, p.problems)
	shop := demo(t)
	assert.True(t, p.outcome(lint.NewView(shop, shop.Find("recipe", "tide-pillar"), today)).held)
	at, says := told(t, ruleText("tried", `"pour"`, `true`, "  option \"in_hand\" {\n    is = pour.at\n  }\n"))
	assert.Equal(t, "pour", at)
	assert.Contains(t, says, "cannot be named")
}

func TestReferenceIsCurrent(t *testing.T) {
	have, err := os.ReadFile("NAMES.md")
	require.NoError(t, err)
	assert.True(t, Reference() == string(have), "rules/shoprule/NAMES.md needs updating: run go generate ./rules/...")
}

// Whatever can be named reads on every demo recipe: no name stops the program.
func TestEveryNameOnEveryRecipe(t *testing.T) {
	shop := demo(t)
	for _, k := range table.kinds {
		for _, n := range k.Names {
			assert.NotEmpty(t, n.Doc, "%s.%s", k.Name, n.Name)
			require.True(t, (n.get != nil) != (n.follow != nil), "%s.%s", k.Name, n.Name)
			if n.Type.Kind == Thing {
				require.NotNil(t, table.byName[n.Type.Of], "%s.%s", k.Name, n.Name)
			}
			for _, recipe := range shop.Recipes() {
				s := sceneOf.In(lint.NewView(shop, recipe, today))
				for i := range s.of(k.at) {
					if n.follow != nil {
						n.follow(s, &s.of(k.at)[i])
						continue
					}
					v := n.get(s, &s.of(k.at)[i])
					_ = shown(s, &expr{Type: n.Type}, v)
				}
			}
		}
	}
}

// FuzzCompile: whatever is written, the compiler comes to an end, and what it
// says stands inside the rule.
func FuzzCompile(f *testing.F) {
	f.Add(`pour.at <= mold.seal.holds_to - degrees("10 °F")`, `"The pour is ${show(pour.at)}."`)
	f.Add(`count("step", "cure") == 1 || !(wax.weight / mold.holds < batch.density)`, `"x"`)
	f.Add(`((((`, `"${"${"`)
	shop := demo(f)
	view := lint.NewView(shop, shop.Find("recipe", "tide-pillar"), today)
	f.Fuzz(func(t *testing.T, require, message string) {
		text := ruleText("tried", `"pour"`, require, "  message = "+message+"\n")
		p := compileWritten(text)
		for _, problem := range p.problems {
			if problem.span.Start < 0 || problem.span.End < problem.span.Start || int(problem.span.End) > len(text) {
				t.Fatalf("%v is outside of %d bytes: %s", problem.span, len(text), problem.message)
			}
		}
		if p.runs() {
			o := p.outcome(view)
			if o.spoke && len(o.message) > 4*mostMessage {
				t.Fatal("a message without an end")
			}
		}
	})
}

func compileWritten(text string) *program { return compileWording(wording{rule: text}) }
