package cli

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/rules/drill"
)

// progressName is where progress is kept in a folder of exercises.
const progressName = "progress.json"

// mark marks exercises that were mended in an editor.
func (v drillCommand) mark(s *session, args []string) int {
	if len(args) == 0 {
		args = []string{"."}
	}
	p := report.NewPage(s.Look)
	total := tally{}
	for _, arg := range args {
		if !v.markPath(s, p, s.locate(arg).full(), arg, &total) {
			fmt.Fprint(s.Out, p)
			return NotWorked
		}
	}
	p.Wrap("", 0, total.String())
	p.Wrap("", 0, report.Caution)
	fmt.Fprint(s.Out, p)
	if total.good < total.marked {
		return Found
	}
	return Good
}

// tally counts over all exercises that are marked.
type tally struct{ marked, good, slips, mended int }

func (t *tally) String() string {
	text := fmt.Sprintf("%s marked: %d of %s mended", plural(t.marked, "exercise", "exercises"), t.mended, plural(t.slips, "slip", "slips"))
	if t.good == t.marked {
		return text + ", and nothing broken."
	}
	return text + "."
}

// markPath marks a folder of exercises, or one file of it. False: it could not
// be done, which was said.
func (v drillCommand) markPath(s *session, p *report.Page, full, shown string, total *tally) bool {
	folder, only := full, ""
	if info, err := os.Stat(full); err != nil || !info.IsDir() {
		folder, only = filepath.Dir(full), filepath.Base(full)
	}
	root, err := os.OpenRoot(folder)
	if err != nil {
		s.say("%s cannot be opened: %v", shown, cause(err))
		return false
	}
	defer root.Close()
	data, err := root.ReadFile(drill.SetName)
	if err != nil {
		s.say("%s is no folder of exercises: there is no %s in it. wickrule drill --into FOLDER makes one", filepath.ToSlash(filepath.Dir(filepath.Join(shown, "x"))), drill.SetName)
		return false
	}
	set, err := drill.ReadSet(data)
	if err != nil {
		s.say("%s cannot be used: %v", filepath.ToSlash(filepath.Join(shown, drill.SetName)), err)
		return false
	}
	items := set.Exercises
	if only != "" {
		items = slices.DeleteFunc(slices.Clone(items), func(i drill.SetItem) bool { return i.File != only })
		if len(items) == 0 {
			s.say("%s is none of the exercises in its folder", shown)
			return false
		}
	}
	school, ok := s.shelf(root, set, shown)
	if !ok {
		return false
	}
	name := filepath.Join(folder, progressName)
	if *v.progress != "" {
		name = v.diaryFile(s)
	}
	d, err := openDiary(name)
	if err != nil {
		s.say("%v", err)
		return false
	}
	for _, item := range items {
		if !v.markOne(s, p, root, set, school, item, d, total) {
			return false
		}
	}
	return true
}

// shelf is the school of a folder of exercises: of the shop that was put beside
// them, on the day they were made.
func (s *session) shelf(root *os.Root, set *drill.Set, shown string) (*drill.School, bool) {
	sub, err := fs.Sub(root.FS(), drill.ShelfName)
	if err != nil { // the name is one of ours
		panic(err)
	}
	shop, errs := lint.Load(sub, ".", nil)
	for _, e := range errs {
		s.say("%s: %v", filepath.ToSlash(filepath.Join(shown, drill.ShelfName, e.Name)), e.Err)
	}
	if len(errs) > 0 {
		return nil, false
	}
	return drill.NewSchool(shop, s.rulesFor(shop), set.Day), true
}

// markOne marks one exercise and keeps what came of it.
func (v drillCommand) markOne(s *session, p *report.Page, root *os.Root, set *drill.Set, school *drill.School, item drill.SetItem, d *diary, total *tally) bool {
	e, err := school.Open(set, item)
	if err != nil {
		s.say("%s cannot be marked: %v. Make the exercises anew", item.File, err)
		return false
	}
	text, err := root.ReadFile(item.File)
	if err != nil {
		s.say("%s cannot be read: %v", item.File, cause(err))
		return false
	}
	m := school.Mark(e, string(text))
	record := v.record(s, m, e, set, d)
	total.marked++
	total.slips += len(e.Faults)
	if m.Good() {
		total.good++
	}
	for _, slip := range record.Slips {
		if slip.Outcome == "mended" {
			total.mended++
		}
	}
	v.show(p, m, e, item.File)
	if err := d.put(s, record); err != nil {
		s.say("%v", err)
		return false
	}
	return true
}

// record is the exercise's record with these marks.
func (v drillCommand) record(s *session, m *drill.Mark, e *drill.Exercise, set *drill.Set, d *diary) drill.Record {
	record := drill.NewRecord(set.Shop, set.Day, e)
	for _, r := range d.Exercises {
		if r.Shop == record.Shop && r.Seed == record.Seed && r.About == record.About && r.Number == record.Number && len(r.Slips) == len(record.Slips) {
			record = r
		}
	}
	record.Slips = slices.Clone(record.Slips)
	for i := range m.Slips {
		slip := &record.Slips[i]
		switch {
		case slip.Outcome == "told": // it stays told, whatever was mended since
		case m.Slips[i].Outcome == drill.Mended:
			slip.Outcome = "mended"
		case *v.answers:
			slip.Outcome = "told"
		default:
			slip.Outcome = ""
			slip.Hints = max(slip.Hints, v.hints())
		}
	}
	if m.Good() || *v.answers {
		record.Ended = s.today()
	}
	return record
}

// hints is how many of the hints were asked for.
func (v drillCommand) hints() int { return slices.Index(drill.HintWords, v.hint.word) + 1 }

// show tells the marks of one exercise.
func (v drillCommand) show(p *report.Page, m *drill.Mark, e *drill.Exercise, file string) {
	p.Title(file, e.Title)
	p.Blank()
	var lines [][2]string
	line := func(label, text string) { lines = append(lines, [2]string{label, text}) }
	flush := func() {
		for _, l := range lines {
			p.Wrap("  "+l[0], told, l[1])
		}
		if lines != nil {
			p.Blank()
		}
		lines = nil
	}
	if m.NoRecipe {
		line("no recipe", "There is no recipe in it any more, or more than one.")
	}
	if m.Unread {
		line("not whole", "The text cannot be read whole, so what is missing in it cannot be told yet.")
	}
	if len(m.SetAside) > 0 {
		line("set aside", strings.Join(m.SetAside, ", ")+": the exercise is the recipe alone, and the shop stays as it is.")
	}
	if len(m.Restored) > 0 {
		line("judged as set", "What "+strings.Join(m.Restored, " and ")+" said was taken as it was set: another purpose mends nothing.")
	}
	flush()
	for i := range m.Slips {
		v.showMarked(p, &m.Slips[i])
	}
	if m.NoRecipe && *v.answers {
		for i := range e.Faults {
			showSlip(p, &e.Faults[i], "not mended")
		}
	}
	for i := range m.Broken {
		f := &m.Broken[i]
		line("newly wrong", fmt.Sprintf("line %d, %s: %s.", f.At.File.Text.Line(f.At.Span.Start), f.Rule.Name, f.Message))
	}
	for _, u := range m.Unchecked {
		line("not told", u.Message+".")
	}
	if m.Good() {
		line("all mended", "The checker finds nothing more that must or should be put right.")
	}
	flush()
}

// showMarked tells what became of one slip. What is not mended is named only
// where that was asked for.
func (v drillCommand) showMarked(p *report.Page, slip *drill.Marked) {
	if slip.Outcome == drill.Mended {
		showSlip(p, slip.Planted, "you mended it")
		return
	}
	label, text := "still there", "A slip is still there."
	switch slip.Outcome {
	case drill.Conceded:
		label, text = "conceded", "A concession silences it, and it is still there: here a slip is put right."
	case drill.TakenOut:
		label, text = "taken out", "Nothing speaks of it any more, but "+slip.What+" was taken out: mend the recipe, do not cut it."
	case drill.Unjudged:
		label, text = "not judged", "Whether it is mended cannot be told as the recipe is now."
	}
	if v.hints() == 0 && !*v.answers {
		text += " --hint group says what it is about."
	}
	p.Wrap("  "+label, told, text)
	found := &slip.Found[0]
	if len(slip.Said) > 0 {
		found = &slip.Said[0]
	}
	showHints(p, found, v.hints())
	p.Blank()
	if *v.answers {
		showSlip(p, slip.Planted, "not mended")
	}
}
