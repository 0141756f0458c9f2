package lsp

import (
	"cmp"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// steps offers to insert all the steps that the rules miss in the recipe, in
// working order, by the rules' own fixes.
func (a *actions) steps() {
	if a.recipe == nil {
		return
	}
	w := &walkthrough{here: a.here, file: a.file, top: slices.Index(a.file.Blocks, a.recipe)}
	before := w.missing()
	atPlace := slices.ContainsFunc(before, func(m missingStep) bool { return touch(m.found.At.Span, a.at) })
	if len(before) == 0 || !atPlace && a.params.Context.TriggerKind == offeredUnasked {
		return
	}
	w.insertAll()
	if len(w.inserted) < 2 {
		return // its own fix does it
	}
	w.order()
	var said []any
	for i := range before {
		said = append(said, a.saidAs(&before[i].found)...)
	}
	title := "insert the steps this recipe still needs: " + andList(w.kinds())
	a.offer(codeAction{Title: title, Kind: quickFix, Diagnostics: said}, differences(a.file, w.file.Text.String()))
}

// walkthrough goes through a recipe and inserts what is missing, one step
// after the other: what one needs may depend on the others.
type walkthrough struct {
	*here
	file     *schema.File // as it stands
	top      int          // which of its blocks is the recipe
	inserted []schema.Span
	refused  []string // what made things worse
}

// missingStep is a finding whose first fix is to insert a step.
type missingStep struct {
	found lint.Found
	edit  schema.Edit
	rank  int // of the step in working order
}

// mostSteps is how many steps are inserted at once at most.
const mostSteps = 24

func (w *walkthrough) insertAll() {
	musts := w.musts(w.report())
	for range mostSteps {
		missing := w.missing()
		if len(missing) == 0 {
			return
		}
		next := missing[0]
		file := w.with(next.edit)
		if !file.Whole {
			w.refused = append(w.refused, next.edit.Text)
			continue
		}
		try := &walkthrough{here: w.here, file: file, top: w.top}
		if now := w.musts(try.report()); now <= musts {
			w.take(next.edit, file)
			musts = now
			continue
		}
		w.refused = append(w.refused, next.edit.Text)
	}
}

func (w *walkthrough) report() *lint.Report {
	shop := w.shop.With(w.file)
	return lint.RunFile(shop, w.rules(shop), w.today, w.file.Name)
}

func (w *walkthrough) musts(r *lint.Report) (n int) {
	for i := range r.Findings {
		if r.Findings[i].Level == lint.Must {
			n++
		}
	}
	return n
}

// missing lists the steps that are missing now, in working order.
func (w *walkthrough) missing() []missingStep {
	if !w.file.Whole || w.top < 0 {
		return nil
	}
	recipe := w.file.Blocks[w.top]
	var list []missingStep
	for _, f := range w.report().Findings {
		if f.Recipe != recipe || f.Level < w.wants.softest() {
			continue
		}
		fixes := f.Repairs()
		if len(fixes) == 0 || fixes[0].Guess || len(fixes[0].Edits) != 1 {
			continue
		}
		edit := fixes[0].Edits[0]
		kind, ok := stepWritten(edit.Text)
		if !ok || edit.File != w.file || edit.Span.Len() > 0 || slices.Contains(w.refused, edit.Text) {
			continue
		}
		list = append(list, missingStep{f, edit, slices.Index(schema.StepKinds(), kind)})
	}
	slices.SortStableFunc(list, func(x, y missingStep) int { return cmp.Compare(x.rank, y.rank) })
	return list
}

// stepWritten is the kind of step that an inserted text is.
func stepWritten(text string) (kind string, ok bool) {
	rest, ok := strings.CutPrefix(strings.TrimSpace(text), `step "`)
	if !ok {
		return "", false
	}
	kind, _, ok = strings.Cut(rest, `"`)
	return kind, ok && schema.Step(kind) != nil
}

func (w *walkthrough) with(e schema.Edit) *schema.File {
	text := w.file.Text.String()
	return schema.Read(w.file.Name, []byte(text[:e.Span.Start]+e.Text+text[e.Span.End:]))
}

// take makes an insertion, and keeps note of where those made stand.
func (w *walkthrough) take(e schema.Edit, file *schema.File) {
	at, long := e.Span.Start, int32(len(e.Text))
	for i := range w.inserted {
		if w.inserted[i].Start >= at {
			w.inserted[i].Start += long
			w.inserted[i].End += long
		}
	}
	step := strings.TrimSpace(e.Text)
	start := at + int32(strings.Index(e.Text, step))
	w.inserted = append(w.inserted, schema.Span{Start: start, End: start + int32(len(step))})
	slices.SortFunc(w.inserted, func(x, y schema.Span) int { return cmp.Compare(x.Start, y.Start) })
	w.file = file
}

// order puts steps that were inserted next to each other in working order,
// where the rules do not mind.
func (w *walkthrough) order() {
	text := w.file.Text.String()
	for i := 0; i < len(w.inserted); {
		end := i + 1
		for end < len(w.inserted) && strings.TrimSpace(text[w.inserted[end-1].End:w.inserted[end].Start]) == "" {
			end++
		}
		w.orderRun(i, end)
		text = w.file.Text.String()
		i = end
	}
}

func (w *walkthrough) orderRun(i, end int) {
	text := w.file.Text.String()
	var steps []string
	for _, s := range w.inserted[i:end] {
		steps = append(steps, text[s.Start:s.End])
	}
	sorted := slices.Clone(steps)
	slices.SortStableFunc(sorted, func(x, y string) int { return cmp.Compare(rankOf(x), rankOf(y)) })
	if slices.Equal(sorted, steps) {
		return
	}
	var b strings.Builder
	at := int32(0)
	spans := slices.Clone(w.inserted)
	for n, step := range sorted {
		b.WriteString(text[at:spans[i+n].Start])
		start := int32(b.Len())
		b.WriteString(step)
		at, spans[i+n] = spans[i+n].End, schema.Span{Start: start, End: start + int32(len(step))}
	}
	b.WriteString(text[at:])
	try := &walkthrough{here: w.here, file: schema.Read(w.file.Name, []byte(b.String())), top: w.top}
	if w.musts(try.report()) <= w.musts(w.report()) {
		w.file, w.inserted = try.file, spans
	}
}

func rankOf(step string) int {
	kind, _ := stepWritten(step)
	return slices.Index(schema.StepKinds(), kind)
}

// kinds are the steps that were inserted, in their order.
func (w *walkthrough) kinds() []string {
	var kinds []string
	for _, s := range w.inserted {
		kind, _ := stepWritten(w.file.Text.Slice(s))
		kinds = append(kinds, kind)
	}
	return kinds
}

// andList joins words the way a sentence does: "a, b and c".
func andList(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " and " + words[last]
}
