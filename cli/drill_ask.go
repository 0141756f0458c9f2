package cli

import (
	"bufio"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/rules/drill"
	"wickrule/schema"
)

// lesson is a sitting of exercises at the terminal.
type lesson struct {
	*session
	shop   drillShop
	school *drill.School
	diary  *diary
	lines  *bufio.Scanner
	done   [len(outcomeWords)]int
}

// asked is the exercise at hand.
type asked struct {
	*drill.Exercise
	record drill.Record
}

// The outcomes of slips that a sitting counts.
const (
	byThemselves = iota
	withHints
	toldByUs
)

var outcomeWords = [...]string{byThemselves: "found without help", withHints: "found with hints", toldByUs: "told"}

const words = "Answer with the number of a line or the name of a rule. Also: hint, look KEY (what the shop has in stock), rules (their names), recipe (once more), answers (gives up), stop."

// ask holds a sitting.
func (v drillCommand) ask(s *session, shop drillShop, school *drill.School) int {
	d, err := openDiary(v.diaryFile(s))
	if err != nil {
		s.say("%v", err)
		return NotWorked
	}
	l := &lesson{session: s, shop: shop, school: school, diary: d, lines: bufio.NewScanner(s.In)}
	e, series, err := v.begin(l)
	for n := 1; ; n++ {
		if err != nil {
			s.sayNoExercise(err)
			return NotWorked
		}
		more, err := l.exercise(e)
		if err != nil {
			s.say("%v", err)
			return NotWorked
		}
		if !more || n == *v.exercises || !l.another() {
			break
		}
		if e, err = l.next(series); err != nil {
			s.sayNoExercise(err)
			return NotWorked
		}
	}
	l.closing()
	return Good
}

// begin is the exercise that a sitting begins with: the one left open, or the
// first that was not done of the seed asked for, or of a new one.
func (v drillCommand) begin(l *lesson) (*asked, *drill.Series, error) {
	about := strings.TrimSpace(*v.about)
	open := l.diary.Open(l.shop.key)
	if open != nil && (*v.seed == "" && about == "" || open.Seed == strings.TrimSpace(*v.seed) && open.About == about) {
		if e, series := l.goOn(*open); e != nil {
			return e, series, nil
		}
	}
	seed := v.seedOr(freshSeed)
	done := 0
	for _, r := range l.diary.Exercises {
		if r.Shop == l.shop.key && r.Seed == seed && r.About == about {
			done = max(done, r.Number)
		}
	}
	l.tell(fmt.Sprintf("%s, seed %s. %s", l.shop.title, seed, words))
	series := l.school.Series(seed, about)
	var e *drill.Exercise
	var err error
	for range done + 1 {
		if e, err = series.Next(); err != nil {
			return nil, nil, err
		}
	}
	return l.fresh(e), series, nil
}

// goOn takes an exercise up again that was left open. Nil: it is not the same
// any more, which was said and noted.
func (l *lesson) goOn(r drill.Record) (*asked, *drill.Series) {
	school := drill.NewSchool(l.shop.Shop, l.rulesFor(l.shop.Shop), r.Day)
	series := school.Series(r.Seed, r.About)
	var e *drill.Exercise
	var err error
	for range r.Number {
		if e, err = series.Next(); err != nil {
			break
		}
	}
	if err != nil || drill.Digest(e.Text) != r.Text || len(e.Faults) != len(r.Slips) {
		l.say("the shop, its rules or the program changed since exercise %d of seed %s was begun, so it is not gone on with", r.Number, r.Seed)
		r.Ended = l.today()
		if err := l.diary.put(l.session, r); err != nil {
			l.say("%v", err)
		}
		return nil, nil
	}
	l.tell(fmt.Sprintf("%s, seed %s: going on with exercise %d. %s", l.shop.title, r.Seed, r.Number, words))
	return &asked{e, r}, series
}

func (l *lesson) fresh(e *drill.Exercise) *asked {
	return &asked{e, drill.NewRecord(l.shop.key, l.school.Today, e)}
}

func (l *lesson) next(series *drill.Series) (*asked, error) {
	e, err := series.Next()
	if err != nil {
		return nil, err
	}
	return l.fresh(e), nil
}

// tell writes a paragraph.
func (l *lesson) tell(text string) {
	p := report.NewPage(l.Look)
	p.Wrap("", 0, text)
	p.Blank()
	fmt.Fprint(l.Out, p)
}

// answer writes a line or two that answer what was typed.
func (l *lesson) answer(format string, values ...any) {
	p := report.NewPage(l.Look)
	p.Wrap("", 2, fmt.Sprintf(format, values...))
	fmt.Fprint(l.Out, p)
}

// read asks and reads a line; false at the end of input.
func (l *lesson) read(question string) (string, bool) {
	fmt.Fprint(l.Out, question+" ")
	l.asking.Store(l.diary.name != "") // where nothing is kept, nothing is said to be
	defer l.asking.Store(false)
	if !l.lines.Scan() {
		fmt.Fprintln(l.Out)
		return "", false
	}
	if !l.Typed {
		fmt.Fprintln(l.Out, report.Clean(l.lines.Text())) // so that what is kept of it reads on its own
	}
	return strings.TrimSpace(l.lines.Text()), true
}

// exercise asks until every slip is found or told. False: the learner stops
// here.
func (l *lesson) exercise(a *asked) (more bool, err error) {
	l.show(a)
	if err := l.keepRecord(a); err != nil {
		return false, err
	}
	for a.left() > 0 {
		typed, ok := l.read(a.question())
		if !ok || typed == "stop" {
			return false, nil
		}
		if typed == "" {
			continue
		}
		if err := l.heard(a, typed); err != nil {
			return false, err
		}
	}
	a.record.Ended = l.today()
	l.explain(a)
	return true, l.keepRecord(a)
}

func (l *lesson) keepRecord(a *asked) error { return l.diary.put(l.session, a.record) }

// left is how many slips are neither found nor told.
func (a *asked) left() (n int) {
	for _, s := range a.record.Slips {
		if s.Outcome == "" {
			n++
		}
	}
	return n
}

func (a *asked) question() string {
	if n := a.left(); n < len(a.Faults) {
		return fmt.Sprintf("And what else is wrong (%d more)?", n)
	}
	return "What is wrong?"
}

func (l *lesson) show(a *asked) {
	p := report.NewPage(l.Look)
	showExercise(p, a.Exercise, l.shop.title)
	for i, s := range a.record.Slips {
		if s.Outcome != "" {
			p.Wrap("", 2, "Found already: "+a.Faults[i].Rule.Name+".")
		}
	}
	fmt.Fprint(l.Out, p)
}

// heard does what was typed.
func (l *lesson) heard(a *asked, typed string) error {
	word, rest, _ := strings.Cut(typed, " ")
	rest = strings.TrimSpace(rest)
	switch strings.ToLower(word) {
	case "hint":
		return l.hint(a)
	case "look":
		l.look(rest)
	case "rules":
		l.listRules(rest)
	case "recipe":
		l.show(a)
	case "answers":
		for i := range a.record.Slips {
			if s := &a.record.Slips[i]; s.Outcome == "" {
				s.Outcome = "told"
				l.done[toldByUs]++
			}
		}
	case "help", "?":
		l.answer("%s", words)
	case "line":
		return l.guess(a, rest)
	default:
		return l.guess(a, typed)
	}
	return nil
}

// guess takes a line's number or a rule's name.
func (l *lesson) guess(a *asked, typed string) error {
	if n, err := strconv.Atoi(typed); err == nil {
		return l.pointed(a, n)
	}
	name := strings.ToLower(strings.Join(strings.Fields(typed), "-"))
	for _, r := range l.school.Rules {
		if r.Name == name {
			return l.namedRule(a, r)
		}
	}
	l.suggest(typed, name)
	return nil
}

// pointed takes a line.
func (l *lesson) pointed(a *asked, n int) error {
	if last := strings.Count(a.Text, "\n"); n < 1 || n > last {
		l.answer("The recipe has the lines 1 to %d.", last)
		return nil
	}
	again := false
	for i := range a.Faults {
		if !slices.Contains(a.Faults[i].Lines(), n) {
			continue
		}
		if a.record.Slips[i].Outcome == "" {
			return l.found(a, i)
		}
		again = true
	}
	switch {
	case again:
		l.answer("What is wrong in line %d you have already.", n)
		return nil
	case a.near(n):
		l.answer("Close: it is in the block that line %d is of, and not this line.", n)
		return nil
	}
	a.record.Misses++
	l.answer("Line %d is as it should be.", n)
	return l.keepRecord(a)
}

// near says whether an open slip is in the step or ingredient that a line is
// of.
func (a *asked) near(n int) bool {
	file := schema.Read(drill.ExerciseName, []byte(a.Text))
	for _, recipe := range file.Blocks {
		for _, b := range recipe.Blocks() {
			first, last := file.Text.Line(b.Span.Start), file.Text.Line(max(b.Span.Start, b.Span.End-1))
			if n < first || n > last {
				continue
			}
			for i := range a.Faults {
				inside := func(line int) bool { return line >= first && line <= last }
				if a.record.Slips[i].Outcome == "" && slices.ContainsFunc(a.Faults[i].Lines(), inside) {
					return true
				}
			}
		}
	}
	return false
}

// namedRule takes a rule.
func (l *lesson) namedRule(a *asked, r *lint.Rule) error {
	for i := range a.Faults {
		if a.Faults[i].Rule.Name != r.Name {
			continue
		}
		if a.record.Slips[i].Outcome != "" {
			l.answer("%s you have already.", r.Name)
			return nil
		}
		return l.found(a, i)
	}
	for i := range a.Aside {
		if a.Aside[i].Rule.Name == r.Name {
			l.answer("It speaks here, but of something that is only worth knowing: %s.", a.Aside[i].Message)
			return nil
		}
	}
	a.record.Misses++
	l.answer("By %s there is nothing to put right here.", r.Name)
	return l.keepRecord(a)
}

// found notes a slip that the learner found.
func (l *lesson) found(a *asked, i int) error {
	slip := &a.record.Slips[i]
	slip.Outcome = "found"
	if slip.Hints > 0 {
		l.done[withHints]++
	} else {
		l.done[byThemselves]++
	}
	l.answer("Yes: %s. %s.", a.Faults[i].Rule.Name, schema.Capital(a.Faults[i].Found[0].Message))
	return l.keepRecord(a)
}

// hint gives the next hint on the first slip that is open.
func (l *lesson) hint(a *asked) error {
	for i := range a.record.Slips {
		slip := &a.record.Slips[i]
		if slip.Outcome != "" {
			continue
		}
		hints := drill.Hints(&a.Faults[i].Found[0])
		if slip.Hints == len(hints) {
			l.answer("That was all the help there is with this one: answers tells the rest.")
			return nil
		}
		h := hints[slip.Hints]
		slip.Hints++
		p := report.NewPage(l.Look)
		p.Wrap("  "+h.Label, told, h.Text)
		fmt.Fprint(l.Out, p)
		return l.keepRecord(a)
	}
	return nil
}

// look shows what the shop has of a key.
func (l *lesson) look(key string) {
	var kinds []string
	shown := false
	for _, f := range l.school.Shop.Files() {
		for _, b := range f.Blocks {
			if b.Label == key && key != "" {
				p := report.NewPage(l.Look)
				for line := range strings.Lines(f.Text.Slice(b.Span)) {
					p.Line("  " + report.Clean(strings.TrimRight(line, "\r\n")))
				}
				fmt.Fprint(l.Out, p)
				shown = true
			}
			if b.Spec.Stock {
				kinds = append(kinds, b.Label)
			}
		}
	}
	switch {
	case shown:
	case key == "":
		l.answer("Look at what? Name a key of the stock: %s.", strings.Join(slices.Compact(slices.Sorted(slices.Values(kinds))), ", "))
	default:
		l.answer("The shop has no %q: %s.", key, schema.NearestOrKnown(key, kinds, `"`))
	}
}

// listRules lists rules whose name, title or group has all the words.
func (l *lesson) listRules(about string) {
	p := report.NewPage(l.Look)
	var fit []*lint.Rule
	for _, r := range l.school.Rules {
		if containsAll(r, strings.Fields(strings.ToLower(about))) {
			fit = append(fit, r)
		}
	}
	if len(fit) == 0 {
		l.answer("No rule speaks of %s.", about)
		return
	}
	listRules(p, fit)
	fmt.Fprint(l.Out, p)
}

func containsAll(r *lint.Rule, words []string) bool {
	text := strings.ToLower(r.Name + " " + r.Title + " " + r.Group)
	return !slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(text, w) })
}

// mostOffered is how many rules are offered for words that name none.
const mostOffered = 7

// suggest helps with what is neither a line nor a rule.
func (l *lesson) suggest(typed, name string) {
	var names, fit []string
	for _, r := range l.school.Rules {
		names = append(names, r.Name)
		if containsAll(r, strings.Fields(strings.ToLower(typed))) && len(fit) < mostOffered {
			fit = append(fit, r.Name)
		}
	}
	if len(fit) > 0 {
		l.answer("Which of the rules do you mean? %s.", strings.Join(fit, ", "))
		return
	}
	if near, sure := schema.Nearest(name, names); near != "" && sure {
		l.answer("There is no rule %q. Do you mean %s?", typed, near)
		return
	}
	l.answer("That is neither a line nor a rule. rules WORD lists those that speak of something.")
}

// explain names every slip when the exercise is over.
func (l *lesson) explain(a *asked) {
	p := report.NewPage(l.Look)
	p.Blank()
	p.Heading("What was wrong")
	p.Blank()
	for i := range a.Faults {
		slip := a.record.Slips[i]
		how := "you found it"
		switch {
		case slip.Outcome == "told":
			how = "you were told"
		case slip.Hints > 0:
			how = "you found it with " + plural(slip.Hints, "hint", "hints")
		}
		showSlip(p, &a.Faults[i], how)
	}
	fmt.Fprint(l.Out, p)
}

// another asks whether to go on.
func (l *lesson) another() bool {
	for {
		typed, ok := l.read("Another one? Enter goes on, stop ends.")
		switch {
		case !ok || typed == "stop" || typed == "no":
			return false
		case typed == "" || typed == "yes":
			return true
		}
	}
}

// closing says how the sitting went.
func (l *lesson) closing() {
	p := report.NewPage(l.Look)
	p.Blank()
	var parts []string
	for i, n := range l.done {
		if n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, outcomeWords[i]))
		}
	}
	if len(parts) > 0 {
		p.Wrap("", 0, "Slips in this sitting: "+strings.Join(parts, ", ")+".")
	}
	if open := l.diary.Open(l.shop.key); open != nil && l.diary.name != "" {
		p.Wrap("", 0, fmt.Sprintf("Exercise %d of seed %s is open: the next wickrule drill goes on with it.", open.Number, open.Seed))
	}
	if again := l.diary.Again(); len(again) > 0 {
		p.Wrap("", 0, "To look at again, with wickrule explain or drill --about: "+strings.Join(again, ", ")+".")
	}
	if l.diary.name == "" {
		p.Wrap("", 0, "Nothing is kept of it: there is no folder for your settings. --progress FILE keeps it.")
	}
	p.Wrap("", 0, report.Caution)
	fmt.Fprint(l.Out, p)
}
