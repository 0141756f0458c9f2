package cli

import (
	"fmt"
	"runtime"
	"runtime/debug"

	"github.com/spf13/pflag"
)

func versionVerb() verb {
	return verb{
		name:  "version",
		about: "say which wickrule this is",
		help:  "Says the version, the version of the recipe format it reads, and what it was built with.",
		setup: func(*pflag.FlagSet) action {
			return func(s *session, args []string) int {
				if len(args) > 0 {
					s.say("version takes nothing after it")
					return NotWorked
				}
				fmt.Fprintf(s.Out, "wickrule %s, recipe format 1, built with %s for %s/%s\n", version(), runtime.Version(), runtime.GOOS, runtime.GOARCH)
				return Good
			}
		},
	}
}

// Of a release, its version and its day; the linker writes them (.ci/release).
var release, released string

// version is the version this program was built as.
func version() string {
	if release != "" {
		return release
	}
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" {
		return info.Main.Version
	}
	return "of unknown version"
}
