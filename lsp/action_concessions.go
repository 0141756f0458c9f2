package lsp

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// concessions offers to write a concession for each finding that may be
// conceded. Its reason is left empty: until it is filled in it does not count,
// and says so.
func (a *actions) concessions(found []lint.Found) {
	said := map[string]bool{}
	for i := range found {
		f := &found[i]
		if f.Recipe == nil || f.Recipe.File != a.file || f.Rule.About == lint.AboutFormat || isAboutConcessions(f.Rule.Name) || said[f.Rule.Name] || conceded(f.Recipe, f.Rule.Name) {
			continue
		}
		said[f.Rule.Name] = true
		title := "write down why this is all right here: a concession for " + f.Rule.Name
		if f.Rule.Binding && a.view(f.Recipe).MadeFor == lint.Sale {
			a.cannot(title, quickFix, f.Rule.Name+" cannot be conceded in a recipe made for sale: somebody else lights this candle")
			continue
		}
		text := fmt.Sprintf("concession %s {\n  reason = \"\"\n}", schema.Quote(f.Rule.Name))
		a.offer(codeAction{Title: title, Kind: quickFix, Diagnostics: a.saidAs(f)}, []schema.Edit{appendApart(f.Recipe, text)})
	}
}

func isAboutConcessions(rule string) bool {
	switch rule {
	case lint.ConcessionExpired, lint.ConcessionNotAllowed, lint.ConcessionUnused, lint.ConcessionWithoutReason:
		return true
	}
	return false
}

func conceded(recipe *schema.Block, rule string) bool {
	for c := range recipe.Each("concession") {
		if c.Label == rule {
			return true
		}
	}
	return false
}

// appendApart puts a block's text at the end of a block, with an empty line in
// front of it.
func appendApart(parent *schema.Block, text string) schema.Edit {
	return apart(schema.AppendBlock(parent, text))
}

// apart is the insertion of a block with an empty line in front of it.
func apart(e schema.Edit) schema.Edit {
	for _, end := range []string{"\r\n", "\n", "\r"} {
		if strings.HasPrefix(e.Text, end) && e.Span.Len() == 0 {
			e.Text = end + e.Text
			break
		}
	}
	return e
}
