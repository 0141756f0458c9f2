package cli

import (
	"crypto/rand"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/rules/drill"
	"wickrule/schema"
)

func drillVerb() verb {
	return verb{
		name:  "drill",
		takes: "[mark [PATH...]]",
		about: "practise on recipes of the shop with slips planted in them",
		help: `A sound recipe of the shop around the working folder is shown with one to three slips in it, as people make them; the checker has proved that they are all that is wrong. Answer with the number of a line or the name of a rule; hint, look KEY, rules, recipe, answers and stop do what they say. When an exercise is over every slip is named and explained. Where there is no shop, the built-in demo shop stands in.

What was done is kept in a file of the learner's own, and the next wickrule drill goes on where the last one stopped. Whoever uses the same --seed on the same shop has the same exercises.

With --into the exercises are written into a new folder, to be mended in any editor; wickrule drill mark, in that folder, marks them: what was mended, what is still there, what was newly broken, and what only looks mended because something was taken out or conceded.

The exit status of drill mark is 0 where all is mended, and 1 where something is left.`,
		offers: func(*session) []string { return []string{"mark"} },
		setup: func(flags *pflag.FlagSet) action {
			v := drillCommand{}
			v.seed = flags.String("seed", "", "the `WORD` that the exercises follow from; without it another each time")
			v.about = flags.String("about", "", "begin each exercise with this `RULE` or group of rules: seal-too-weak, heat")
			v.exercises = flags.Int("exercises", 10, "how many, `1` to 99 (10 where it is not said)")
			v.demo = flags.Bool("demo", false, "use the built-in demo shop, also where there is another")
			v.into = flags.String("into", "", "write them into this new `FOLDER` in place of asking")
			v.progress = flags.String("progress", "", "keep what was done in this `FILE`")
			v.hint = oneOf(flags, "hint", "mark: how much to say of what is not mended", append([]string{"none"}, drill.HintWords...)...)
			v.answers = flags.Bool("answers", false, "mark: tell all that was wrong")
			return v.run
		},
	}
}

type drillCommand struct {
	seed, about, into, progress *string
	exercises                   *int
	demo, answers               *bool
	hint                        *choice
}

func (v drillCommand) run(s *session, args []string) int {
	if len(args) > 0 && args[0] == "mark" {
		return v.mark(s, args[1:])
	}
	switch {
	case len(args) > 0:
		s.say("drill takes nothing after it but mark, not %q", args[0])
		return NotWorked
	case *v.exercises < 1 || *v.exercises > drill.MostExercises:
		s.say("--exercises: %d is not 1 to %d", *v.exercises, drill.MostExercises)
		return NotWorked
	case *v.answers || v.hint.word != "none":
		s.say("--hint and --answers go with drill mark; without it, type hint or answers when asked")
		return NotWorked
	}
	shop, ok := v.shop(s)
	if !ok {
		return NotWorked
	}
	school := drill.NewSchool(shop.Shop, s.rulesFor(shop.Shop), s.today())
	if about := strings.TrimSpace(*v.about); !v.knows(s, school, about) {
		return NotWorked
	}
	if *v.into != "" {
		return v.write(s, shop, school)
	}
	return v.ask(s, shop, school)
}

// knows says whether exercises can be about something; where not, it was said.
func (v drillCommand) knows(s *session, school *drill.School, about string) bool {
	if about == "" || slices.Contains(school.Subjects(), strings.ToLower(about)) {
		return true
	}
	s.say("--about: there are no exercises about %q: %s", about, schema.NearestOrKnown(strings.ToLower(about), school.Subjects(), `"`))
	return false
}

// drillShop is the shop that exercises are made of.
type drillShop struct {
	*lint.Shop
	key, title string
}

// shop is the shop around the working folder, or the demo shop where there is
// none. False: it cannot be used, and it was said why.
func (v drillCommand) shop(s *session) (drillShop, bool) {
	if *v.demo {
		return named(demoShop()), true
	}
	shops, unread := s.find(nil)
	if len(shops) == 0 && !slices.ContainsFunc(unread, func(u report.Unread) bool { return !errors.Is(u.Err, lint.ErrNoRecipeFile) }) {
		s.say("there is no shop in this folder, so the exercises are of the built-in demo shop")
		return named(demoShop()), true
	}
	s.sayUnread(unread)
	if len(shops) == 0 {
		return drillShop{}, false
	}
	o, unread := s.open(shops[0])
	s.progress.erase()
	s.sayUnread(unread)
	if o.Shop == nil {
		return drillShop{}, false
	}
	o.root.Close()
	if len(unread) > 0 {
		s.say("no exercises are made, since not all of the shop could be read")
		return drillShop{}, false
	}
	return named(o.Shop), true
}

func named(shop *lint.Shop) drillShop {
	d := drillShop{shop, "", "A shop without a shop file"}
	if shop.Config != nil {
		d.key, d.title = shop.Config.Label, shop.Config.Title()
	}
	return d
}

// write makes a folder of exercises.
func (v drillCommand) write(s *session, shop drillShop, school *drill.School) int {
	files, err := school.SetOut(shop.title, v.seedOr(freshSeed), strings.TrimSpace(*v.about), *v.exercises)
	if err != nil {
		s.sayNoExercise(err)
		return NotWorked
	}
	folder := s.locate(*v.into).full()
	if err := s.newFolder(folder, files); err != nil {
		s.say("%s: %v", *v.into, err)
		return NotWorked
	}
	p := report.NewPage(s.Look)
	set, err := drill.ReadSet([]byte(files[drill.SetName]))
	if err != nil { // it was written a moment ago
		panic(err)
	}
	p.Wrap("", 0, fmt.Sprintf("%s of %s, from the seed %s: mend them in any editor, then run wickrule drill mark in %s. %s in it says more.",
		plural(*v.exercises, "exercise", "exercises"), shop.title, set.Seed, filepath.ToSlash(*v.into), drill.GuideName))
	fmt.Fprint(s.Out, p)
	return Good
}

// sayNoExercise says why there is none, and what to do.
func (s *session) sayNoExercise(err error) {
	if errors.Is(err, drill.ErrNoSoundRecipe) {
		s.say("%v. wickrule check says what to put right first; --demo takes the built-in demo shop", err)
		return
	}
	s.say("%v", err)
}

func (v drillCommand) seedOr(other func() string) string {
	if seed := strings.TrimSpace(*v.seed); seed != "" {
		return seed
	}
	return other()
}

// freshSeed is a word that nobody had before, short enough to be told.
func freshSeed() string { return strings.ToLower(rand.Text()[:5]) }
