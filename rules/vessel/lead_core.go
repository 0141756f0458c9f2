package vessel

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// LeadCore is a wick whose core is lead, holds too much of it, or is of metal
// whose lead nobody states.
var LeadCore = &lint.Rule{
	Name:   "lead-core",
	Group:  group,
	Title:  "a wick with lead in its core",
	Levels: lint.Every(lint.Must), Binding: true,
	Why: "A lead core burns off into the air of the room, where people breathe it and it settles on what children touch. There is no safe amount for a child. " +
		"In the United States a metal-cored wick with more than 0.06 % of lead in the metal, and any candle made with it, is a banned hazardous substance. " +
		"Zinc and tin cores may carry lead as an impurity, which their maker has to state.",
	Remedy: "Use wicks with a core of cotton or paper, or with none; of metal cores only those whose maker states 0.06 % of lead or less (lead_at_most), or conformity with 16 CFR 1500.17(a)(13).",
	Card: lint.Card{
		Question: "Is there lead in the wick?",
		Answer: "Not in one with a core of cotton or paper, or with none. Of a metal core its maker has to say: over 0.06 % of lead it is banned in " +
			"the United States.",
		AllRight: "Zinc and tin cores whose maker states 0.06 % of lead or less.",
		Do:       "Ask for that statement, and do not burn old metal-cored wicks that nobody knows: they go with hazardous waste.",
	},
	Source:   "16 CFR 1500.17(a)(13) and 1500.12(a)(2): lead over 0.06 % by weight of the metal core",
	Cautions: "Do not burn old wicks off to be rid of them; lead goes with hazardous waste.",
	Bad: []lint.Example{
		{
			About:   "a core of lead",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `"cored-cotton-44"`, To: `"old-lead-core"`}},
			Stock:   metalWick("old-lead-core", "lead", "  lead_at_most = \"99 %\"\n"),
			Flags:   []string{`"old-lead-core"`},
		},
		{
			About:   "a zinc core of 0.07 % lead",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `"cored-cotton-44"`, To: `"poor-zinc"`}},
			Stock:   metalWick("poor-zinc", "zinc", "  lead_at_most = \"0.07 %\"\n"),
			Flags:   []string{`"poor-zinc"`},
		},
		{
			About:   "a tin core with no statement, sold",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `"cored-cotton-44"`, To: `"silent-tin"`}},
			Stock:   metalWick("silent-tin", "tin", ""),
			Flags:   []string{`"silent-tin"`},
		},
		{
			About:   "the same in a class",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `"cored-cotton-44"`, To: `"silent-tin"`}, {From: `made_for = "sale"`, To: `made_for = "class"`}},
			Stock:   metalWick("silent-tin", "tin", ""),
			Flags:   []string{`"silent-tin"`},
			Level:   lint.Should,
		},
	},
	Good: []lint.Example{
		{About: "a zinc core of 0.01 % lead", Recipe: "lantern-votive", Shows: `mold "votive-small"`, Shelf: `wick cored-zinc-34`},
		{
			About:   "just 0.06 %",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `"cored-cotton-44"`, To: `"fair-zinc"`}},
			Stock:   metalWick("fair-zinc", "zinc", "  lead_at_most = \"0.06 %\"\n"),
		},
		{About: "a cotton core", Recipe: "harbor-jar", Shelf: `wick cored-cotton-44`},
	},
	Also:  []string{"test-burn-missing", "lead-statement-missing"},
	Check: checkLead,
}

// metalWick is a stock item for the examples.
func metalWick(key, core, lead string) string {
	return "wick \"" + key + "\" {\n  title        = \"Cored, " + core + "\"\n  construction = \"cored\"\n  core         = \"" + core + "\"\n" +
		"  burns        = \"2.6 to 3.1 in\"\n  families     = [\"paraffin\"]\n  trim         = \"1/4 in\"\n  tab          = true\n" + lead + "}\n"
}

// mostLead is the most lead in a metal core, by its weight: 0.06 %. 16 CFR
// 1500.17(a)(13).
var mostLead = quantity.NewRat(6, 10000)

func checkLead(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if v.Stock != nil && !burns(b, v) {
			continue
		}
		if w := wickOf(p, b, i); w.stock != nil {
			judgeLead(p, w)
		}
	}
}

func judgeLead(p *lint.Pass, w wicked) {
	core, lead := w.stock.Get("core"), w.stock.Get("lead_at_most")
	name := w.stock.Title()
	f := lint.Finding{At: lint.AtValue(w.said)}
	switch core.Text() {
	case "lead":
		f.Message = fmt.Sprintf("%s has a core of lead: burning puts lead into the air of the room. 16 CFR 1500.17(a)(13) bans a metal core of over 0.06 %% lead, and every candle made with it", name)
		f.Notes = batch.NoteAt("its core is stated here", core)
	case "zinc", "tin":
		switch {
		case lead.IsAmount():
			if !mostLead.Less(lead.Amount().Base()) {
				return
			}
			over := quantity.FromBase(lead.Amount().Base().Sub(mostLead), quantity.Percent)
			f.Message = fmt.Sprintf("the %s core of %s may hold %s of lead, %s over the 0.06 %% that 16 CFR 1500.17(a)(13) allows: burning puts it into the air of the room",
				core.Text(), name, lead.Amount().String(), over.String())
			f.Notes = batch.NoteAt("stated here", lead)
		case lead.Broken() || strings.Contains(w.stock.Get("conformity").Text(), "1500.17") || w.stock.Get("conformity").Broken():
			return
		default:
			f.Levels = lint.Levels{OwnUse: lint.Should, Class: lint.Should, Sale: lint.Must}
			f.Message = fmt.Sprintf("nobody states how much lead the %s core of %s holds; 16 CFR 1500.17(a)(13) allows 0.06 %%. Ask its maker and write lead_at_most", core.Text(), name)
			f.Notes = batch.NoteAt("its core is stated here", core)
		}
	case "":
		if made := w.stock.Get("construction").Text(); core.Absent() && made != "flat braid" && made != "square braid" && made != "wooden" {
			p.CannotCheck(w.stock, "core")
		}
		return
	default:
		return
	}
	p.Report(f)
}

// leaded says whether a wick must not be offered for its lead: a metal core
// that is not stated to be within the limit, or a cored wick of unknown core.
func leaded(wick *schema.Block) bool {
	switch wick.Get("core").Text() {
	case "lead":
		return true
	case "zinc", "tin":
		lead := wick.Get("lead_at_most")
		return !lead.IsAmount() || mostLead.Less(lead.Amount().Base())
	case "":
		return wick.Get("construction").Text() == "cored"
	}
	return false
}
