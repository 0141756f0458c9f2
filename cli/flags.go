package cli

import (
	"errors"
	"fmt"

	"github.com/spf13/pflag"

	"wickrule/schema"
)

// choice is a flag whose value is one word of a list.
type choice struct {
	word    string
	allowed []string
}

func (c *choice) String() string { return c.word }
func (c *choice) Type() string   { return "WORD" }

func (c *choice) Set(word string) error {
	for _, a := range c.allowed {
		if a == word {
			c.word = word
			return nil
		}
	}
	return errors.New(schema.NearestOrKnown(word, c.allowed, ""))
}

// oneOf adds a flag that takes one word of a list; the first is the usual one.
func oneOf(flags *pflag.FlagSet, name, about string, allowed ...string) *choice {
	c := &choice{word: allowed[0], allowed: allowed}
	flags.Var(c, name, about)
	return c
}

// flagTrouble says in our words what is wrong with the flags.
func flagTrouble(err error, flags *pflag.FlagSet) string {
	var unknown *pflag.NotExistError
	var lacking *pflag.ValueRequiredError
	var wrong *pflag.InvalidValueError
	switch {
	case errors.As(err, &unknown):
		name := unknown.GetSpecifiedName()
		if shorts := unknown.GetSpecifiedShortnames(); shorts != "" {
			return fmt.Sprintf("there is no flag -%s", name)
		}
		known := flagNames(flags)
		if len(known) == 0 {
			return fmt.Sprintf("it takes no flag --%s", name)
		}
		return fmt.Sprintf("there is no flag --%s: %s", name, schema.NearestOrKnown("--"+name, known, ""))
	case errors.As(err, &lacking):
		return fmt.Sprintf("--%s needs a value after it", lacking.GetSpecifiedName())
	case errors.As(err, &wrong):
		switch wrong.GetFlag().Value.(type) {
		case *choice, *copies:
			return fmt.Sprintf("--%s cannot be %q: %v", wrong.GetFlag().Name, wrong.GetValue(), wrong.Unwrap())
		}
		return fmt.Sprintf("--%s cannot be %q", wrong.GetFlag().Name, wrong.GetValue())
	}
	return err.Error()
}

func flagNames(flags *pflag.FlagSet) []string {
	var names []string
	flags.VisitAll(func(f *pflag.Flag) { names = append(names, "--"+f.Name) })
	return names
}
