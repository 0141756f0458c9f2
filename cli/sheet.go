package cli

import (
	"bytes"
	"io"

	"github.com/spf13/pflag"

	"wickrule/rules/sheet"
	"wickrule/schema/quantity"
)

func sheetVerb() verb {
	return verb{
		name:  "sheet",
		takes: "RECIPE",
		about: "print a recipe's batch sheet: what to weigh, what to do, what to watch for",
		help: `RECIPE is a recipe's key in the shop around the working folder (tide-pillar), a folder and a key (examples/shop/tide-pillar), or the path of its file. What to weigh stands in both systems, what to do with its temperatures in both scales and its times, what the rules find, what has been test burned, what stands on the label, and the usual cautions.

With --for the recipe is made to order. Everything is weighed in proportion, with the recipe's own share for what stays in the pot, put on the step of the scale so that no load rises, and shared over as many pots as it takes; then that batch is checked anew.

The sheet comes out as text; --format html makes a page for the printer, which needs nothing but itself.

The exit status is 1 where something must be put right before the batch is poured. The sheet is printed all the same and says so at its top.`,
		offers: recipeKeys,
		live:   true,
		setup: func(flags *pflag.FlagSet) action {
			v := sheetCommand{}
			v.order = flags.String("for", "", "make this much: `\"24 candles\"`, or \"2 kg of wax\"")
			v.scale = flags.String("scale", "", "the step of the scale, `\"0.1 g\"`; without it the shop's, else 1 g")
			v.form = oneOf(flags, "format", "how to write it: text, markdown, html for the printer, json for programs", "text", "markdown", "html", "json")
			return v.run
		},
	}
}

type sheetCommand struct {
	order, scale *string
	form         *choice
}

func (v sheetCommand) run(s *session, args []string) int {
	options := sheet.Options{Today: s.today(), Rules: s.rulesFor}
	if *v.order != "" {
		order, err := sheet.ParseOrder(*v.order)
		if err != nil {
			s.say("--for: %v", err)
			return NotWorked
		}
		options.Order = order
	}
	if *v.scale != "" {
		q, err := quantity.Parse(*v.scale, quantity.Weight)
		if err != nil || q.IsRange() || q.Base().Sign() <= 0 {
			s.say("--scale: %q is no step of a scale: write a weight, as \"0.1 g\"", *v.scale)
			return NotWorked
		}
		options.Scale = q.Base()
	}
	o, recipe, ok := s.oneRecipe("sheet", args)
	if !ok {
		return NotWorked
	}
	defer o.root.Close()
	made, err := sheet.Make(o.Shop, recipe, options)
	if err != nil {
		s.say("%v", err)
		return NotWorked
	}
	var out bytes.Buffer
	if err := v.write(&out, s, made); err == nil {
		_, err = io.Copy(s.Out, &out)
	}
	if err != nil {
		s.say("the sheet could not be written: %v", err)
		return NotWorked
	}
	if made.Musts() > 0 {
		return Found
	}
	return Good
}

func (v sheetCommand) write(w io.Writer, s *session, made *sheet.Sheet) error {
	switch v.form.word {
	case "markdown":
		return made.Markdown(w)
	case "html":
		return made.HTML(w)
	case "json":
		return made.JSON(w)
	}
	return made.Text(w, s.Look)
}

// recipeKeys are the recipes of the shop around the working folder.
func recipeKeys(s *session) []string {
	shops, _ := s.find(nil)
	var keys []string
	for _, f := range shops {
		if o, _ := s.open(f); o.Shop != nil {
			keys = append(keys, o.Keys("recipe")...)
			o.root.Close()
		}
	}
	return keys
}
