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
	step  schema.Edit   // the insertion
	edits []schema.Edit // all of the fix: another step may wait less for it
	rank  int           // of the step in working order
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
		if file, ok := w.with(next.edits); ok {
			try := &walkthrough{here: w.here, file: file, top: w.top}
			if now := w.musts(try.report()); now <= musts {
				w.take(next, file)
				musts = now
				continue
			}
		}
		w.refused = append(w.refused, next.step.Text)
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
		if len(fixes) == 0 || fixes[0].Guess {
			continue
		}
		step, ok := w.insertion(fixes[0].Edits)
		if ok && !slices.Contains(w.refused, step.Text) {
			list = append(list, missingStep{f, step, fixes[0].Edits, rankOf(step.Text)})
		}
	}
	slices.SortStableFunc(list, func(x, y missingStep) int { return cmp.Compare(x.rank, y.rank) })
	return list
}

// insertion is the one edit among those of a fix that inserts a step. False:
// none does, or it moves a step, or reaches into another file.
func (w *walkthrough) insertion(edits []schema.Edit) (step schema.Edit, ok bool) {
	for _, e := range edits {
		if e.File != w.file {
			return step, false
		}
		if _, isStep := stepWritten(e.Text); isStep {
			if ok || e.Span.Len() > 0 {
				return step, false
			}
			step, ok = e, true
			continue
		}
		if e.Text == "" {
			return step, false
		}
	}
	return step, ok
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

func (w *walkthrough) with(edits []schema.Edit) (*schema.File, bool) {
	text, err := schema.Apply(w.file.Text.String(), edits)
	if err != nil {
		return nil, false
	}
	file := schema.Read(w.file.Name, []byte(text))
	return file, file.Whole
}

// take makes an insertion, and keeps note of where those made stand.
func (w *walkthrough) take(m missingStep, file *schema.File) {
	step := strings.TrimSpace(m.step.Text)
	start := m.step.Span.Start + int32(strings.Index(m.step.Text, step))
	for _, e := range m.edits {
		if e != m.step && e.Span.End <= m.step.Span.Start {
			start += grown(e)
		}
	}
	for i, was := range w.inserted {
		for _, e := range m.edits {
			if e.Span.End <= was.Start {
				w.inserted[i].Start += grown(e)
			}
			if e.Span.Start < was.End {
				w.inserted[i].End += grown(e)
			}
		}
	}
	w.inserted = append(w.inserted, schema.Span{Start: start, End: start + int32(len(step))})
	slices.SortFunc(w.inserted, func(x, y schema.Span) int { return cmp.Compare(x.Start, y.Start) })
	w.file = file
}

// grown is by how many bytes an edit makes its text longer.
func grown(e schema.Edit) int32 { return int32(len(e.Text) - e.Span.Len()) }

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
