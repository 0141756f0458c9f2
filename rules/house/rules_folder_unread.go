package house

import "wickrule/lint"

// RulesFolderUnread is a folder of rules that a shop counts on and does not
// get.
var RulesFolderUnread = &lint.Rule{
	Name:   "rules-folder-unread",
	Group:  Group,
	Title:  "a folder of rules that the shop does not get",
	Levels: lint.Every(lint.Must), Binding: true,
	About: lint.AboutFile,
	Why: "Rules kept for several shops are taken from a folder beside them. Where that folder is not there, the recipes are checked without those rules, " +
		"and everything looks sound that the rules would have stopped.",
	Remedy: "Write the folder from the shop file on, with /, and keep it in the same repository, with nothing but rules and trials in its files.",
	Source: formatSource,
	Bad: []lint.Example{{
		About: "a folder of one computer only",
		Text:  "shop \"quay\" {\n  rules_from = [\"/home/quay/house-rules\"]\n}\n",
		Flags: []string{`"/home/quay/house-rules"`},
	}, {
		About: "a folder written with the other slash",
		Text:  "shop \"quay\" {\n  rules_from = [\"..\\\\house-rules\"]\n}\n",
		Flags: []string{`"..\\house-rules"`},
	}},
	Good: []lint.Example{{
		About: "a folder beside the shop",
		Text:  "shop \"quay\" {\n  rules_from = [\"../house-rules\"]\n}\n",
	}},
	Also:  []string{"key-repeated"},
	Check: checkRulesFolders,
}

func checkRulesFolders(p *lint.Pass) {
	for _, b := range p.File.Blocks {
		if !b.Is("shop") {
			continue
		}
		said := b.Get("rules_from")
		for i, item := range said.Items() {
			problem := lint.FolderForm(item.Text)
			if taken := p.Taken(); problem == "" && b == p.Config() && i < len(taken) && taken[i].Folder == item.Text {
				problem = taken[i].Problem
			}
			if problem != "" {
				p.Report(lint.Finding{At: lint.AtItem(said, item), Message: "no rules are taken from " + item.Text + ": " + problem})
			}
		}
	}
}
