package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// LeadCore is a wick with lead in its metal core.
var LeadCore = &lint.Rule{
	Name:   "lead-core",
	Group:  group,
	Title:  "a wick with lead in its core",
	Levels: lint.Every(lint.Must), Binding: true,
	Why: "A burning lead core puts lead into the air of the room, and into the children who breathe it. Candles with such wicks have been banned in the US since October 2003. " +
		"Zinc and tin cores are allowed if they hold no more than 0.06 % lead, and only the maker can tell.",
	Remedy:   "Use a wick of cotton or paper. For one with a metal core get the maker's statement, and write lead_at_most in its stock item.",
	Source:   "16 CFR 1500.17(a)(13): more than 0.06 per cent lead by weight of the metal core; 16 CFR 1500.12(a)(2); 68 FR 19142",
	Cautions: "Do not burn old wicks of unknown make. Children and pregnant women are the most at risk from lead.",
	Bad: []lint.Example{
		{
			About:   "a lead core",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `"flat-braid-24"`, To: `"old-core"`}},
			Stock:   core("lead", ""),
			Flags:   []string{`"old-core"`},
		},
		{
			About:   "zinc with more lead than is allowed",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `"flat-braid-24"`, To: `"old-core"`}},
			Stock:   core("zinc", "0.07 %"),
			Flags:   []string{`"old-core"`},
		},
		{
			About:   "zinc, and nothing said of lead, for own use",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `"flat-braid-24"`, To: `"old-core"`}, {From: `made_for = "sale"`, To: `made_for = "own use"`}},
			Stock:   core("zinc", ""),
			Flags:   []string{`"old-core"`},
			Level:   lint.Should,
		},
	},
	Also: []string{"test-burn-missing"},
	Good: []lint.Example{{
		About:   "zinc with exactly 0.06 % lead",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `"flat-braid-24"`, To: `"old-core"`}},
		Stock:   core("zinc", "0.06 %"),
	}, {About: "no core", Recipe: "tide-pillar"}},
	Check: func(p *lint.Pass) {
		eachVessel(p, func(b *batch.Batch, _ int, v *batch.Vessel) {
			if v.Wick == nil {
				return
			}
			p.CannotCheck(v.Wick, "core")
			if f, found := leadFinding(v); found {
				p.Report(f)
			}
		})
	},
}

func core(metal, lead string) string {
	if lead != "" {
		lead = "  lead_at_most = \"" + lead + "\"\n"
	}
	return "wick \"old-core\" {\n  construction = \"cored\"\n  core         = \"" + metal + "\"\n" + lead + "  burns        = \"2.75 to 3.25 in\"\n  families     = [\"paraffin\"]\n  trim         = \"1/4 in\"\n}\n"
}

// mostLead is 0.06 % of the metal core: 16 CFR 1500.17(a)(13).
var mostLead = quantity.NewRat(6, 10_000)

func leadFinding(v *batch.Vessel) (lint.Finding, bool) {
	metal, lead := v.Wick.Get("core"), v.Wick.Get("lead_at_most")
	f := lint.Finding{At: lint.AtValue(v.WickSaid)}
	if metal.Known() {
		f.Notes = []lint.Note{{Place: lint.AtValue(metal), Message: "its core is stated here"}}
	}
	switch metal.Text() {
	case "lead":
		f.Message = fmt.Sprintf("%s has a core of lead: burning it puts lead into the air, and such candles are banned in the US", v.Wick.Title())
		return f, true
	case "zinc", "tin":
	default:
		return f, false
	}
	switch {
	case lead.Absent():
		f.Levels = lint.Levels{OwnUse: lint.Should, Class: lint.Should, Sale: lint.Must}
		f.Message = fmt.Sprintf("%s has a core of %s and nothing says how much lead is in it; up to 0.06 %% is allowed: get the maker's statement", v.Wick.Title(), metal.Text())
		return f, v.Wick.File.Whole
	case lead.Known() && mostLead.Less(lead.Amount().High().Base()):
		f.Message = fmt.Sprintf("the core of %s holds up to %s lead, over the 0.06 %% that is allowed", v.Wick.Title(), lead.Amount().String())
		f.Notes = append(f.Notes, lint.Note{Place: lint.AtValue(lead), Message: "its lead is stated here"})
		return f, true
	}
	return f, false
}

// leadFree says whether a wick may be offered in a fix.
func leadFree(wick *schema.Block) bool {
	switch wick.Get("core").Text() {
	case "lead":
		return false
	case "zinc", "tin":
		lead := wick.Get("lead_at_most")
		return lead.Known() && !mostLead.Less(lead.Amount().High().Base())
	}
	return true
}
