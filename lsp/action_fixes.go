package lsp

import (
	"fmt"
	"slices"

	"wickrule/lint"
	"wickrule/schema"
)

// findings are those of the document that the range touches and that are
// shown.
func (a *actions) findings() []lint.Found {
	report := a.check()
	var touched []lint.Found
	for _, f := range report.Findings {
		if f.At.File == a.file && f.Level >= a.wants.softest() && touch(f.At.Span, a.at) {
			touched = append(touched, f)
		}
	}
	return touched
}

// touch says whether two spans share a byte, or an end.
func touch(s, o schema.Span) bool { return s.Start <= o.End && o.Start <= s.End }

// fixes offers the fixes of findings. The one to be preferred comes first:
// the first that is no guess.
func (a *actions) fixes(found []lint.Found) {
	for i := range found {
		fixes, sure := a.fixesOf(&found[i])
		for n, fix := range fixes {
			a.fix(&found[i], fix, sure && n == 0)
		}
	}
}

// fixesOf are the fixes of a finding that can be made now, and whether the
// first is no guess.
func (a *actions) fixesOf(f *lint.Found) (fixes []schema.Fix, sure bool) {
	fixes = slices.DeleteFunc(slices.Clone(f.Repairs()), func(fix schema.Fix) bool { return len(fix.Edits) == 0 || !a.holds(fix.Edits) })
	best := slices.IndexFunc(fixes, func(fix schema.Fix) bool { return !fix.Guess })
	if best > 0 {
		first := fixes[best]
		fixes = slices.Insert(slices.Delete(fixes, best, best+1), 0, first)
	}
	return fixes, best >= 0
}

func (a *actions) fix(f *lint.Found, fix schema.Fix, preferred bool) {
	a.offer(codeAction{Title: fix.Title, Kind: quickFix, Diagnostics: a.saidAs(f), IsPreferred: preferred}, fix.Edits)
}

// wantsOneEach says whether a client may make everything it is answered: it
// asks about the whole text because of findings it names, and does not know
// which action is to be preferred. So does Kate 22.12 for its Quick Fix, and
// makes all edits at once.
func (a *actions) wantsOneEach() bool {
	return !a.can.TextDocument.CodeAction.IsPreferredSupport && len(a.params.Context.Diagnostics) > 0 &&
		a.at.Start == 0 && int(a.at.End) == a.text.Len()
}

// oneEach offers, of each finding that the client names, the fix to be
// preferred, and nothing of a finding that has none.
func (a *actions) oneEach() {
	if !a.wanted(quickFix) {
		return
	}
	for _, f := range a.findings() {
		if !a.named(&f) {
			continue
		}
		if fixes, sure := a.fixesOf(&f); sure {
			a.fix(&f, fixes[0], true)
		}
	}
}

// named says whether the client names a finding, as it was sent.
func (a *actions) named(f *lint.Found) bool {
	return slices.ContainsFunc(a.saidAs(f), func(d any) bool { _, as := d.(sentBack); return as })
}

// holds says whether edits are about the very texts of the shop.
func (a *actions) holds(edits []schema.Edit) bool {
	return !slices.ContainsFunc(edits, func(e schema.Edit) bool { return a.shop.File(e.File.Name) != e.File })
}

// saidAs is the finding as it was sent: as the client gives it back where it
// does, else as it is published.
func (a *actions) saidAs(f *lint.Found) []any {
	var said []any
	for _, d := range a.diagnostics(&lint.Report{Findings: []lint.Found{*f}}) {
		same := slices.IndexFunc(a.params.Context.Diagnostics, func(s sentBack) bool { return s.Range == d.Range && s.Message == d.Message })
		if same >= 0 {
			said = append(said, a.params.Context.Diagnostics[same])
			continue
		}
		said = append(said, d)
	}
	return said
}

const mendTitle = "put right everything that is safe in this file"

// mendFile offers to put right what is safe in the whole file, where something
// at the place can be put right so.
func (a *actions) mendFile(found []lint.Found) {
	if slices.ContainsFunc(found, isSafe) {
		a.mendAction(quickFix)
	}
}

// fixAll is the same for a client that asks for it by its kind, wherever the
// cursor is.
func (a *actions) fixAll() {
	if slices.ContainsFunc(a.check().Findings, isSafe) {
		a.mendAction(fixAll)
	}
}

// isSafe says whether a finding can be put right without changing what is
// made.
func isSafe(f lint.Found) bool {
	return slices.ContainsFunc(f.Repairs(), func(fix schema.Fix) bool { return fix.Safe })
}

// mendAction makes the edits when the action is chosen, for a client that asks
// again then: mending looks at the whole shop, several times.
func (a *actions) mendAction(kind string) {
	action := codeAction{Title: mendTitle, Kind: kind}
	if resolve := a.can.TextDocument.CodeAction.ResolveSupport; resolve != nil && slices.Contains(resolve.Properties, "edit") && a.can.TextDocument.CodeAction.DataSupport {
		if doc, ok := a.docs[keyOf(a.uri)]; ok {
			action.Data = &actionData{URI: a.uri, Version: doc.version}
			a.all = append(a.all, action)
			return
		}
	}
	if edits := a.mend(a.file.Name).edits; len(edits) > 0 {
		edit := a.workspaceEdit(edits)
		action.Edit = &edit
		a.all = append(a.all, action)
	}
}

// actionData is what comes back with an action whose edits are yet to be made.
type actionData struct {
	URI     string `json:"uri"`
	Version int32  `json:"version"`
}

// mending is what mending does to a shop.
type mending struct {
	*lint.Mended
	edits []schema.Edit
}

// mend puts right what is safe, in one file or with "" in all, in the way the
// command line does.
func (h *here) mend(file string) mending {
	options, shop := lint.MendOptions{}, h.shop
	if file != "" {
		options.Covers = func(name string) bool { return name == file }
		shop = without(h.shop, file)
	}
	m := mending{Mended: lint.Mend(shop, h.rules, h.today, options)}
	for _, c := range m.Changed {
		m.edits = append(m.edits, differences(c.File, c.Text)...)
	}
	return m
}

// without is the shop without the other files that hold recipes and nothing
// else, where the file itself holds nothing else: what it says touches none of
// them, and a shop may have thousands.
func without(shop *lint.Shop, file string) *lint.Shop {
	if !onlyRecipes(shop.File(file)) {
		return shop
	}
	var kept []*schema.File
	for _, f := range shop.Files() {
		if f.Name == file || !f.Whole || !onlyRecipes(f) {
			kept = append(kept, f)
		}
	}
	return lint.NewShop(shop.Root, kept)
}

func onlyRecipes(f *schema.File) bool {
	return !slices.ContainsFunc(f.Blocks, func(b *schema.Block) bool { return !b.Is("recipe") })
}

// told says in words what mending did, or would do.
func (m mending) told() string {
	text := "nothing that is safe to put right was found"
	if n := len(m.Applied); n > 0 {
		text = numbered(n, "repair") + " made"
		if files := len(m.Changed); files > 1 {
			text += " in " + numbered(files, "file")
		}
	}
	if n := len(m.Withheld); n > 0 {
		text += fmt.Sprintf("; %s left to you, since what is made would change or a choice is yours", numbered(n, "repair"))
	}
	if n := len(m.Skipped); n > 0 {
		text += fmt.Sprintf("; %s not made: %s", numbered(n, "repair"), m.Skipped[0].Why)
	}
	return text
}

func numbered(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
