package cli

import (
	"fmt"

	"github.com/spf13/pflag"

	"wickrule/lint"
	"wickrule/rules/handbook"
)

func handbookVerb() verb {
	return verb{
		name:  "handbook",
		takes: "[SHOP]",
		about: "make the shop's handbook: its rules, stock, trials and the words of the trade as pages",
		help: `SHOP is a folder of recipes; without it, the shop around the working folder. The pages are made for a browser and for the printer. They need no server and nothing from elsewhere: open index.html in the folder they were made into. What they say of the examples is found by checking them as the pages are made.

A folder that was made by this verb is made anew, all of it or nothing; any other folder that has something in it is left alone.`,
		setup: func(flags *pflag.FlagSet) action {
			v := handbookCommand{into: flags.String("into", "", "the `FOLDER` to make the pages in; the one above it must be there")}
			return v.run
		},
	}
}

type handbookCommand struct{ into *string }

func (v handbookCommand) run(s *session, args []string) int {
	if len(args) > 1 {
		s.say("handbook takes one shop")
		return NotWorked
	}
	if *v.into == "" {
		s.say("handbook needs the folder that the pages go into: --into FOLDER")
		return NotWorked
	}
	shop := s.wholeShop(args)
	if shop == nil {
		return NotWorked
	}
	files, err := handbook.Make(handbook.Order{Shop: shop, Demo: demoShop(), Rules: s.rulesFor, Today: s.today()})
	if err != nil {
		s.say("no handbook was made: %v", err)
		return NotWorked
	}
	if err := s.writePages(*v.into, files); err != nil {
		s.say("no handbook was made: %v", err)
		return NotWorked
	}
	fmt.Fprintf(s.Out, "The handbook is made. Open %s in a browser.\n", s.shown(s.locate(*v.into))+"/index.html")
	return Good
}

// wholeShop is the one shop that was asked for, all of it read. Nil: it was
// said what is wrong.
func (s *session) wholeShop(args []string) *lint.Shop {
	shops, unread := s.find(args)
	if len(shops) != 1 {
		s.sayUnread(unread)
		switch {
		case len(shops) > 1:
			s.say("there are %d shops there: name the folder of one", len(shops))
		case len(unread) == 0:
			s.say("there are no recipe files here")
		}
		return nil
	}
	o, more := s.open(shops[0])
	if o.Shop != nil {
		o.root.Close()
	}
	if unread = append(unread, more...); len(unread) > 0 {
		s.sayUnread(unread)
		s.say("nothing is done, since not all of the shop could be read")
		return nil
	}
	return o.Shop
}
