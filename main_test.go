package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"wickrule/cli"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"wickrule": program})
}

// program is the whole program, for which it is the day that a script says:
// what the demo shop concedes ends some day.
func program() {
	day, err := time.ParseInLocation(time.DateOnly, os.Getenv("WICKRULE_TEST_DAY"), time.Local)
	if err != nil {
		main()
	}
	env, err := cli.System()
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(cli.NotWorked)
	}
	env.Now = func() time.Time { return day }
	os.Exit(cli.Run(context.Background(), os.Args[1:], env))
}

// The whole program, as it is typed: testdata/scripts. $EXAMPLES is the folder
// of that name.
func TestScripts(t *testing.T) {
	examples, err := filepath.Abs("examples")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{Dir: "testdata/scripts", Setup: func(env *testscript.Env) error {
		env.Setenv("EXAMPLES", examples)
		return nil
	}})
}
