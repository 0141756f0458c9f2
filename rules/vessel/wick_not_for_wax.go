package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

// WickNotForWax is a wick whose maker does not name the wax's family.
var WickNotForWax = &lint.Rule{
	Name:   "wick-not-for-wax",
	Group:  group,
	Title:  "a wick that is not made for the wax",
	Levels: lint.Every(lint.Should),
	Why: "Waxes climb a wick differently: vegetable wax is thick and wants an open, strong wick, paraffin is thin and floods it, beeswax clogs a fine one. " +
		"A wick outside its family smothers, mushrooms or flares although its size is right on the chart.",
	Remedy: "Take a wick that names the wax's family. Where your burns show that this one works, ask its maker and complete its families.",
	Card: lint.Card{
		Question: "The wick has the right size. Why does it burn badly in my wax?",
		Answer:   "Perhaps it is made for another kind of wax. Each kind climbs a wick in its own way, and the wick's maker says which kinds it is for.",
		AllRight: "Where its chart names your kind of wax. For a blend, where your own burns show that it does well.",
		Do:       "Ask for that size in a wick for soy, paraffin, beeswax or whatever yours is, and burn three.",
	},
	Source: "the wick maker's chart; the reasons: common practice",
	Bad: []lint.Example{
		{
			About:   "a soy wick in paraffin",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `"cored-cotton-44"`, To: `"cored-paper-36"`}},
			Flags:   []string{`"cored-paper-36"`},
		},
		{
			About:   "a small part of beeswax in a blend",
			Recipe:  "winter-blend",
			Changes: []lint.Change{{From: `wax "frostfield-stearin"`, To: `wax "clover-beeswax"`}},
			Flags:   []string{`"flat-braid-24"`},
			Level:   lint.Consider,
		},
	},
	Good: []lint.Example{
		{About: "a family on the wick's list", Recipe: "harbor-jar", Shelf: `wick cored-cotton-44`},
		{About: "a blend of paraffin and stearin, and a wick for both", Recipe: "winter-blend", Shows: `wax "northlight-pillar" {
    weight = "425 g"
  }
  wax "frostfield-stearin"`, Shelf: `wick flat-braid-24`},
		{About: "a house blend, and a wick that names blends", Recipe: "lantern-votive", Shows: `mold "votive-small"`, Shelf: `wick cored-zinc-34`},
		{
			About:   "a house blend, and a wick that names all its parts",
			Recipe:  "lantern-votive",
			Changes: []lint.Change{{From: `"cored-zinc-34"`, To: `"plain-cotton"`}},
			Stock:   "wick \"plain-cotton\" {\n  title        = \"Cored, cotton\"\n  construction = \"cored\"\n  core         = \"cotton\"\n  burns        = \"1.4 to 1.75 in\"\n  families     = [\"paraffin\", \"stearin\"]\n  trim         = \"1/4 in\"\n  tab          = true\n}\n",
		},
	},
	Also:  []string{"test-burn-missing", "wick-outside-diameter", "pour-too-hot", "melt-too-hot", "heat-above-ceiling", "fragrance-added-too-hot", "batch-left-over", "second-pour-out-of-step"},
	Check: checkWickFamilies,
}

func checkWickFamilies(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if v.Stock == nil || v.Wicks == 0 || !burns(b, v) {
			continue
		}
		w := wickOf(p, b, i)
		if w.stock == nil {
			continue
		}
		families := w.stock.Get("families")
		if families.Absent() {
			p.CannotCheck(w.stock, "families")
		}
		if families.Known() {
			judgeFamilies(p, b, i, w)
		}
	}
}

// judgeFamilies reports the first wax in a vessel that its wick is not made
// for; one that is of more weight takes its place.
func judgeFamilies(p *lint.Pass, b *batch.Batch, vessel int, w wicked) {
	families := w.stock.Get("families")
	var worst *batch.Ingredient
	for i := range b.Waxes {
		in := &b.Waxes[i]
		if in.Stock == nil || !goesInto(b, vessel, in) {
			continue
		}
		family := in.Stock.Get("family")
		if family.Absent() {
			p.CannotCheck(in.Stock, "family")
		}
		if !family.Known() || burnsIn(p, families, in.Stock) {
			continue
		}
		if worst == nil || worst.OfWax.Value.Less(in.OfWax.Value) {
			worst = in
		}
	}
	if worst == nil {
		return
	}
	family := worst.Stock.Get("family").Text()
	f := lint.Finding{At: lint.AtValue(w.said), Notes: batch.NoteAt("its families are stated here", families)}
	named := texts(families)
	made := "names no family of wax"
	if len(named) > 0 {
		made = "is made for " + listed(named, "and")
	}
	f.Message = fmt.Sprintf("%s %s, not for %s, which %s is: it may smother, mushroom or flare however well its size fits", w.stock.Title(), made, family, worst.Stock.Title())
	switch {
	case family == "blend":
		f.Levels = lint.Every(lint.Consider)
		f.Message = fmt.Sprintf("%s %s, and says nothing of a blend like %s: only test burns tell, or the families of its parts, where part blocks list them", w.stock.Title(), made, worst.Stock.Title())
	case minority(b, vessel, func(in *batch.Ingredient) bool { return in.Stock == nil || !burnsIn(p, families, in.Stock) }):
		f.Levels = lint.Every(lint.Consider)
		f.Message += fmt.Sprintf(". It is %s of the wax here", batch.Percent(worst.OfWax.Value, 0))
	}
	p.Report(f)
}

// burnsIn says whether a wick's families take in a wax: its own family, or of
// a house blend the family of every part.
func burnsIn(p *lint.Pass, families schema.Value, wax *schema.Block) bool {
	family := wax.Get("family")
	if has(families, family.Text()) {
		return true
	}
	if family.Text() != "blend" {
		return false
	}
	parts := 0
	for part := range wax.Each("part") {
		of, ok := p.Stock("wax", part.Label)
		if !ok {
			continue // an additive, or a key that does not exist
		}
		if !has(families, of.Get("family").Text()) {
			return false
		}
		parts++
	}
	return parts > 0
}
