package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

// WaxNotForContainer is a wax that is not sold for what it is poured into: a
// pillar wax in a jar. Every wax of a loose blend is asked, a house blend by
// what it says of itself, and what the shop has tested counts as suiting.
var WaxNotForContainer = &lint.Rule{
	Name:   "wax-not-for-container",
	Group:  group,
	Title:  "a wax in a container that it is not made for",
	Levels: lint.Levels{OwnUse: lint.Consider, Class: lint.Should, Sale: lint.Must},
	Why: "Pillar wax is made to shrink, so that the candle leaves its mold. In a jar the same shrinking pulls it away from the glass: the candle comes loose and rattles, " +
		"air and then hot wax run down the gap, and the glass is heated unevenly and can crack. Container wax is softer, shrinks less and holds to the wall. " +
		"A wax that its maker sells for both is fine. How much it matters depends on who lights it: on your own shelf you know what it is and watch it; " +
		"in a class it goes home with somebody who may not; a buyer cannot know at all.",
	Remedy: "Use a wax whose sheet says container (for a tealight cup tealight or container, for a votive glass votive, for melts melt or container). " +
		"It can still be all right for yourself: warm the glass, let it cool slowly, burn it on a plate and in sight. " +
		"Where your own burns have shown that this wax keeps to this glass, write the use into its tested_for and keep the trial that says how.",
	Card: lint.Card{
		Question: "Can I pour pillar wax into a jar?",
		Answer: "Not for a candle that somebody else will light. Pillar wax shrinks away from the glass; the candle rattles loose, and the glass is " +
			"heated unevenly and can crack.",
		AllRight: "For yourself, on a plate and in sight, since you know what it is. And any wax that its maker sells for containers as well.",
		Do:       "Ask for a container wax. If you try it all the same, warm the glass, let it cool slowly, and stay with it while it burns.",
	},
	Source: "the supplier's sheet (suits); what happens otherwise: common practice",
	Bad: []lint.Example{
		{
			About:   "pillar wax in a jar for sale",
			Recipe:  "kitchen-shelf",
			Changes: []lint.Change{{From: `made_for = "own use"`, To: `made_for = "sale"`}, {From: keptConcession, To: ""}},
			Flags:   []string{`"northlight-pillar"`},
		},
		{
			About:   "the same in a class",
			Recipe:  "kitchen-shelf",
			Changes: []lint.Change{{From: `made_for = "own use"`, To: `made_for = "class"`}, {From: keptConcession, To: ""}},
			Flags:   []string{`"northlight-pillar"`},
		},
		{
			About:   "the same on one's own shelf",
			Recipe:  "kitchen-shelf",
			Changes: []lint.Change{{From: keptConcession, To: ""}},
			Flags:   []string{`"northlight-pillar"`},
		},
		{
			About:   "a loose blend, half of it pillar wax",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `weight = "2 lb 13 oz"`, To: "weight = \"22 oz\"\n  }\n  wax \"northlight-pillar\" {\n    weight = \"23 oz\""}},
			Flags:   []string{`"northlight-pillar"`},
		},
		{
			About:   "a tenth of pillar wax in container wax: softer",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `weight = "2 lb 13 oz"`, To: "weight = \"40 oz\"\n  }\n  wax \"northlight-pillar\" {\n    weight = \"4 oz\""}},
			Flags:   []string{`"northlight-pillar"`},
			Level:   lint.Should,
		},
		{
			About:   "pillar wax in a tealight cup",
			Recipe:  "shingle-tealight",
			Changes: []lint.Change{{From: `wax "pierhead-container"`, To: `wax "northlight-pillar"`}},
			Flags:   []string{`"northlight-pillar"`},
		},
		{
			About:   "a wax for pillars only, as melts: there is no flame",
			Recipe:  "gorse-melt",
			Changes: []lint.Change{{From: `wax "millrace-pillar"`, To: `wax "sandbar-palm"`}},
			Flags:   []string{`"sandbar-palm"`},
			Level:   lint.Should,
		},
	},
	Good: []lint.Example{
		{About: "container wax in a jar", Recipe: "harbor-jar", Shelf: `wax pierhead-container`},
		{About: "a wax that suits both", Recipe: "clover-jar", Shelf: `wax clover-beeswax`},
		{
			About:   "a pillar wax that the shop has tested in its jars",
			Recipe:  "kitchen-shelf",
			Changes: []lint.Change{{From: `made_for = "own use"`, To: `made_for = "sale"`}, {From: `wax "northlight-pillar"`, To: `wax "proven-pillar"`}},
			Stock: `wax "proven-pillar" {
  title      = "Proven paraffin, pillar grade"
  family     = "paraffin"
  suits      = ["pillar"]
  tested_for = ["container"]
}
`,
		},
		{About: "melts of a wax sold for melts", Recipe: "gorse-melt", Shelf: `wax millrace-pillar`},
	},
	Also:  []string{"test-burn-missing", "pour-too-hot", "pour-too-cool", "melt-too-hot", "melt-too-cool", "fragrance-added-too-hot", "fragrance-added-too-cool", "cure-too-short", "wick-not-for-wax", "fragrance-over-limit", "fragrance-near-limit", "batch-left-over", "batch-does-not-fill", "second-pour-out-of-step", "second-pour-missing"},
	Check: checkWaxForContainer,
}

const keptConcession = "  concession \"wax-not-for-container\" {\n" +
	"    reason = \"The end of a bag of pillar wax, for our own shelf; a wax that has come off the glass is no trouble here\"\n" +
	"    until  = \"2027-06-30\"\n  }\n"

// containerLevels are the rule's own.
var containerLevels = lint.Levels{OwnUse: lint.Consider, Class: lint.Should, Sale: lint.Must}

func checkWaxForContainer(p *lint.Pass) { checkWaxes(p, "container", judgeInContainer) }

// verdict is what one wax is in one vessel.
type verdict struct {
	vessel  *batch.Vessel
	made    string
	suited  batch.Suited
	levels  lint.Levels
	message string
}

// checkWaxes asks every wax for every vessel of a kind that it goes into, and
// reports the loudest answer of each wax.
func checkWaxes(p *lint.Pass, kind string, judge func(*lint.Pass, *batch.Batch, int, *batch.Ingredient, *verdict)) {
	b := batch.Of.In(p.View)
	for i := range b.Waxes {
		in := &b.Waxes[i]
		if in.Stock == nil {
			continue
		}
		var worst *verdict
		for j := range b.Vessels {
			v := &b.Vessels[j]
			if v.Stock == nil || (v.Kind == "container") != (kind == "container") || !goesInto(b, j, in) {
				continue
			}
			made := b.MadeIn(v)
			if made == "" {
				continue
			}
			s := batch.SuitedFor(in.Stock, batch.Uses(made)...)
			if !s.Ask(p) || s.Yes {
				continue
			}
			found := &verdict{vessel: v, made: made, suited: s}
			judge(p, b, j, in, found)
			if worst == nil || worst.levels.For(p.MadeFor) < found.levels.For(p.MadeFor) {
				worst = found
			}
		}
		if worst == nil {
			continue
		}
		p.Report(lint.Finding{
			At:      lint.AtLabel(in.Block),
			Message: worst.message,
			Notes:   batch.NoteAt("what it suits is stated here", worst.suited.Value),
			Levels:  worst.levels,
			Fixes:   func() []schema.Fix { return swapWax(p, b, in) },
		})
	}
}

// capped are levels that speak at most as a should.
func capped(l lint.Levels) lint.Levels {
	return lint.Levels{OwnUse: min(l.OwnUse, lint.Should), Class: min(l.Class, lint.Should), Sale: min(l.Sale, lint.Should)}
}

func unsuited(uses []string) func(*batch.Ingredient) bool {
	return func(in *batch.Ingredient) bool {
		s := batch.SuitedFor(in.Stock, uses...)
		return s.State == schema.Known && !s.Yes
	}
}

func judgeInContainer(p *lint.Pass, b *batch.Batch, vessel int, in *batch.Ingredient, f *verdict) {
	f.levels = containerLevels
	wax := in.Stock.Title()
	place := f.vessel.Stock.Title()
	wanted := listed(plurals(batch.Uses(f.made)), "or")
	sold := soldFor(f.suited, wanted)

	if f.made == "melt" {
		f.levels = lint.Levels{OwnUse: lint.Consider, Class: lint.Consider, Sale: lint.Should}
		f.message = fmt.Sprintf("%s %s: nobody says how it gives off its scent or comes out of %s. A melt has no flame and no glass to crack, so it is about scent and looks only", wax, sold, place)
		return
	}
	if f.made == "votive" && suits(in.Stock, "container") {
		f.levels = lint.Every(lint.Consider)
		f.message = fmt.Sprintf("%s %s: it is all right as long as the candle stays in %s, and is then a container candle; write makes = \"jar\" if that is meant. Turned out of the glass it cannot stand", wax, sold, place)
		return
	}
	f.message = fmt.Sprintf("%s %s: %s", wax, sold, harm(in.Stock, f.vessel.Stock))
	if minority(b, vessel, unsuited(batch.Uses(f.made))) {
		f.levels = capped(f.levels)
		f.message += fmt.Sprintf(". It is %s of the wax here, and a little of it hardens a softer wax; but the blend is untested until you have burned it: a blend that proves itself gets its own stock item, with its own suits",
			batch.Percent(in.OfWax.Value, 0))
	}
	if f.suited.Family != "" {
		f.levels = capped(f.levels)
	}
	switch p.MadeFor {
	case lint.OwnUse:
		f.message += ". On your own shelf it can still be all right: warm the glass, let it cool slowly, burn it on a plate and in sight"
	case lint.Class:
		f.message += ". It goes home from the class with somebody who may not know that"
	default:
		f.message += ". A buyer cannot know that, so it is not sold like this"
	}
}

func suits(wax *schema.Block, use string) bool {
	s := batch.SuitedFor(wax, use)
	return s.State == schema.Known && s.Yes
}

// soldFor says what a wax is for and what it is not.
func soldFor(s batch.Suited, wanted string) string {
	if s.Family != "" {
		return fmt.Sprintf("states no suits, and %s is not for %s (common practice)", s.Family, wanted)
	}
	stated := texts(s.Value)
	if len(stated) == 0 {
		return "is sold for nothing named, and so not for " + wanted
	}
	return fmt.Sprintf("is sold for %s, not for %s", listed(plurals(stated), "and"), wanted)
}

// harm is what a wax does in a container that it is not made for.
func harm(wax, container *schema.Block) string {
	if !suits(wax, "pillar") && !suits(wax, "votive") && !suits(wax, "taper") {
		return fmt.Sprintf("nobody says whether it holds to the wall of %s, or how a wick burns in it there", container.Title())
	}
	shrinks := "it shrinks"
	if s := wax.Get("shrinkage"); s.IsAmount() {
		shrinks += " by " + s.Amount().String()
	}
	what := "where a container wax shrinks less and holds to the wall, "
	switch container.Get("material").Text() {
	case "glass":
		return fmt.Sprintf("%s%s as it cools, pulls away from the glass of %s, rattles there, and can crack it", what, shrinks, container.Title())
	case "ceramic", "concrete", "shell":
		return fmt.Sprintf("%s%s as it cools, pulls away from the wall of %s, rattles there, and can crack it", what, shrinks, container.Title())
	case "":
		return fmt.Sprintf("%s%s as it cools, pulls away from the wall of %s, rattles there, and can crack glass", what, shrinks, container.Title())
	}
	return fmt.Sprintf("%s%s as it cools, pulls away from the wall of %s, rattles there, and burns unevenly with the flame beside the gap", what, shrinks, container.Title())
}
