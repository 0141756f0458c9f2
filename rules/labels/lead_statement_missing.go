package labels

import (
	"fmt"
	"strings"

	"wickrule/lint"
)

// LeadStatementMissing is about metal-cored wicks that the shop sells by
// themselves in the US.
var LeadStatementMissing = &lint.Rule{
	Name:   "lead-statement-missing",
	Group:  Group,
	Title:  "metal-cored wicks sold loose without the statement that they conform to the lead rule",
	Levels: lint.Levels{Sale: lint.Should},
	About:  lint.AboutFile,
	Why: "A wick whose metal core holds more than 0.06 % lead is banned in the US, because burning it puts lead into the air. Packs of metal-cored wicks " +
		"say that they conform, so that whoever makes candles from them knows.",
	Remedy:   "Print \"Conforms to 16 CFR 1500.17(a)(13)\" on the pack, once you have the maker's statement on file, and write it in the wick's conformity.",
	Source:   "16 CFR 1500.17(a)(13)(ii) and (iii); the wording of the statement is from memory",
	Cautions: deferral,
	Bad: []lint.Example{{
		About: "zinc-cored wicks sold by the pack",
		Text:  "wick \"zinc-loose\" {\n  construction = \"cored\"\n  core         = \"zinc\"\n  lead_at_most = \"0.01 %\"\n  sold_loose   = true\n  burns        = \"2 to 2.5 in\"\n  families     = [\"paraffin\"]\n  trim         = \"1/4 in\"\n  tab          = true\n}\n",
		Flags: []string{`wick "zinc-loose"`},
	}},
	Also: []string{"unused-stock"},
	Good: []lint.Example{{
		About: "with the statement on the pack",
		Text:  "wick \"zinc-loose\" {\n  construction = \"cored\"\n  core         = \"zinc\"\n  lead_at_most = \"0.01 %\"\n  sold_loose   = true\n  conformity   = \"Conforms to 16 CFR 1500.17(a)(13)\"\n}\n",
	}, {
		About: "no metal in the core",
		Text:  "wick \"cotton-loose\" {\n  construction = \"cored\"\n  core         = \"cotton\"\n  sold_loose   = true\n}\n",
	}},
	Check: checkLeadStatement,
}

func checkLeadStatement(p *lint.Pass) {
	if !p.SoldIn("US") {
		return
	}
	for _, wick := range p.File.Blocks {
		if !wick.Is("wick") {
			continue
		}
		switch wick.Get("core").Text() {
		case "zinc", "tin", "lead":
		default:
			continue
		}
		statement := wick.Get("conformity")
		if !wick.Get("sold_loose").Yes() || statement.Broken() || strings.Contains(statement.Text(), "1500.17") || !p.Whole() {
			continue
		}
		p.Report(lint.Finding{
			At: lint.AtHeader(wick),
			Message: fmt.Sprintf("%s has a core of %s and is sold loose in the US without saying on the pack that it conforms to 16 CFR 1500.17(a)(13)",
				wick.Title(), wick.Get("core").Text()),
		})
	}
}
