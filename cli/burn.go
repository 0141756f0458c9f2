package cli

import (
	"io"
	"strings"

	"github.com/spf13/pflag"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/rules/batch"
	"wickrule/rules/formula"
	"wickrule/schema"
)

func burnVerb() verb {
	return verb{
		name:  "burn",
		takes: "RECIPE",
		about: "write a test burn into a recipe, for the formulation as it is now",
		help: `RECIPE is a recipe's key in the shop around the working folder, a folder and a key, or the path of its file. The burn is written into the recipe with the fingerprint of what was burned, so that it counts for this formulation and no other. Say what was seen; what is not said is left out, and nothing is guessed. A burn counts once it has a result.

Without --candle it is the last candle burned that has not ended, else the next letter; without --cycle the candle's next. What is still missing for three candles is told afterwards.

The exit status is 0 where the burn was written, and 1 where what was written says that the candle is not safe to burn.`,
		offers: recipeKeys,
		live:   true,
		setup: func(flags *pflag.FlagSet) action {
			v := &burn{}
			text := func(to *string, name, about string) { flags.StringVar(to, name, "", about) }
			text(&v.Date, "date", "the `DAY` it burned, as 2026-10-04; without it today")
			text(&v.Vessel, "vessel", "the `KEY` of the mold or container, where the recipe has several")
			text(&v.Candle, "candle", "which `CANDLE` it was: A, B, C")
			flags.IntVar(&v.Cycle, "cycle", 0, "which burn of that candle: `1`, 2, 3")
			text(&v.BurnedFor, "burned-for", "how long it burned: `\"4 h\"`")
			v.end = flags.Bool("to-end", false, "it burned to its end")
			text(&v.MeltPool, "melt-pool", "how wide the pool was: `\"2.6 in\"`")
			text(&v.PoolDepth, "pool-depth", "how deep: `\"3/8 in\"`")
			text(&v.Flame, "flame", "the tallest flame: `\"1.2 in\"`")
			text(&v.Wall, "wall", "the hottest place of the container: `\"130 °F\"`")
			text(&v.WeightBefore, "weight-before", "what it weighed before: `\"632 g\"`")
			text(&v.WeightAfter, "weight-after", "what it weighed after: `\"604 g\"`")
			text(&v.Soot, "soot", "`WORD`: none, light, heavy")
			v.seen = flags.String("seen", "", "what else was seen, `WORDS` with commas: mushroom, drip, flare, relight, crack, tip, drowned, tunnel, after-smoke; or nothing")
			text(&v.Result, "result", "`WORD`: pass, fail")
			text(&v.Notes, "notes", "anything else, in `WORDS`")
			v.flags = flags
			return v.run
		},
	}
}

type burn struct {
	formula.Record
	end   *bool
	seen  *string
	flags *pflag.FlagSet
}

func (v *burn) run(s *session, args []string) int {
	o, recipe, ok := s.oneRecipe("burn", args)
	if !ok {
		return NotWorked
	}
	defer o.root.Close()
	view := lint.NewView(o.Shop, recipe, s.today())
	t, code, ok := v.complete(s, view)
	if !ok {
		return NotWorked
	}
	keep := formula.ToKeep(view, t.Vessel)
	text, ok := v.written(s, view, code, keep)
	if !ok {
		return NotWorked
	}
	name := report.Located(o.Root, recipe.File.Name)
	if err := s.rewrite(o.root, recipe.File.Name, recipe.File.Text.String(), text); err != nil {
		s.say("%s: %v", name, err)
		return NotWorked
	}
	p := report.NewPage(s.Look)
	p.Title(t.Subject, name)
	p.Blank()
	for line := range strings.SplitSeq(v.Text(code, keep), "\n") {
		p.Line("  " + report.Clean(line))
	}
	p.Blank()
	next := o.With(schema.Read(recipe.File.Name, []byte(text)))
	unsafe := s.tellBurns(p, next, next.Find("recipe", recipe.Label), t.Vessel)
	if _, err := io.WriteString(s.Out, p.String()); err != nil {
		s.say("it was written, which could not be told: %v", err)
		return NotWorked
	}
	if unsafe {
		return Found
	}
	return Good
}

// complete fills in what is not said and can be known.
func (v *burn) complete(s *session, view *lint.View) (*formula.Tested, string, bool) {
	f := formula.Of.In(view)
	if !f.Known() {
		s.say("the formulation of %s cannot be worked out, so a burn of it cannot be told from another's. wickrule check says what is wrong or missing", view.Recipe.Title())
		return nil, "", false
	}
	t, ok := formula.Named(view, v.Vessel)
	if !ok {
		s.sayVessels(view)
		return nil, "", false
	}
	if v.Date == "" {
		v.Date = s.today()
	}
	candle, cycle := t.Next(v.Candle)
	v.Candle = candle
	if v.Cycle == 0 {
		v.Cycle = cycle
	}
	if v.flags.Changed("to-end") {
		v.ToEnd = v.end
	}
	if v.flags.Changed("seen") {
		v.Seen = []string{}
		for word := range strings.SplitSeq(*v.seen, ",") {
			if word = strings.TrimSpace(word); word != "" && word != "nothing" {
				v.Seen = append(v.Seen, word)
			}
		}
	}
	return t, f.CodeOf(t.Vessel), true
}

func (s *session) sayVessels(view *lint.View) {
	b := batch.Of.In(view)
	var keys []string
	for _, t := range formula.Tests(view) {
		if t.Vessel < len(b.Vessels) {
			keys = append(keys, b.Vessels[t.Vessel].Block.Label)
		}
	}
	switch len(keys) {
	case 0:
		s.say("%s makes nothing that burns", view.Recipe.Title())
	case 1:
		s.say("%s has one vessel to burn: --vessel %s, or none at all", view.Recipe.Title(), keys[0])
	default:
		s.say("%s makes several kinds of candle: say which was burned with --vessel and one of %s", view.Recipe.Title(), strings.Join(keys, ", "))
	}
}

// written is the recipe's file with the burn in it. What is not of the format
// is refused in the reader's own words.
func (v *burn) written(s *session, view *lint.View, code string, keep []string) (string, bool) {
	file := view.Recipe.File
	edits := schema.Laid(file, []schema.Edit{v.Edit(view, code, keep)})
	text, err := schema.Apply(file.Text.String(), edits)
	if err != nil {
		s.say("%s: %v", file.Name, err)
		return "", false
	}
	had := map[string]int{}
	for _, p := range file.Problems {
		had[p.Message]++
	}
	now := schema.Read(file.Name, []byte(text))
	for _, p := range now.Problems {
		if had[p.Message]--; had[p.Message] < 0 {
			s.say("the burn was not written: %s", p.Message)
			return "", false
		}
	}
	return text, true
}

// tellBurns tells what the rules say of the recipe's burns now, and how many
// are still wanted. True: one was not safe.
func (s *session) tellBurns(p *report.Page, shop *lint.Shop, recipe *schema.Block, vessel int) (unsafe bool) {
	for _, f := range lint.RunFor(shop, s.rulesFor(shop), s.today(), func(name string) bool { return name == recipe.File.Name }).Findings {
		switch f.Rule.Name {
		case "test-burn-unsafe":
			unsafe = true
		case "test-burn-doubtful", "test-burn-not-to-the-end":
		default:
			continue
		}
		if f.Recipe == recipe {
			p.Wrap("  "+f.Level.String(), 12, f.Message)
		}
	}
	for _, t := range formula.Tests(lint.NewView(shop, recipe, s.today())) {
		if t.Vessel == vessel {
			p.Wrap("", 2, stillWanted(&t, unsafe))
		}
	}
	return unsafe
}

// stillWanted says what is missing for three passing candles.
func stillWanted(t *formula.Tested, unsafe bool) string {
	passed, failed := t.Passed()
	var parts []string
	if len(passed) > 0 {
		parts = append(parts, "Passed so far: "+strings.Join(passed, ", ")+".")
	}
	if len(failed) > 0 {
		parts = append(parts, "Without a pass in every burn: "+strings.Join(failed, ", ")+".")
	}
	switch n := formula.Wanted - len(passed); {
	case unsafe:
		parts = append(parts, "None of that counts while a burn of this formulation was not safe: change it before another is made.")
	case n > 1:
		parts = append(parts, map[int]string{2: "Two", 3: "Three"}[n]+" more candles of this formulation are wanted.")
	case n == 1:
		parts = append(parts, "One more candle of this formulation is wanted.")
	default:
		parts = append(parts, "That is as many candles as are wanted.")
	}
	if !t.ToEnd() {
		parts = append(parts, "None was burned to its end yet.")
	}
	return strings.Join(parts, " ")
}
