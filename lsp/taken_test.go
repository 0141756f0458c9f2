package lsp

import (
	"fmt"
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/rules"
)

const gentle = `rule "gentle-pour" {
  title    = "We pour at 180 °F at most"
  about    = "pour"
  require  = pour.at <= amount("180 °F")
  rests_on = ["cool-pours"]
  sound {
    recipe "cool" {
      step "pour" { at = "140 °F" }
    }
  }
  faulty {
    recipe "hot" {
      step "pour" { at = "290 °F" }
    }
  }
}

trial "cool-pours" {
  question = "How cool can we pour?"
  date     = "2026-09-12"
  outcome  = "held"
}
`

// repository is two shops and the rules that both take.
func repository() fstest.MapFS {
	disk := fstest.MapFS{"repo/.git/HEAD": {}, "repo/house-rules/heat.candle.hcl": {Data: []byte(gentle)}}
	for shop, pour := range map[string]string{"quay": "181 °F", "yard": "175 °F"} {
		disk["repo/"+shop+"/shop.candle.hcl"] = &fstest.MapFile{Data: []byte("shop \"" + shop + "\" {\n  rules_from = [\"../house-rules\"]\n}\n")}
		disk["repo/"+shop+"/pour.candle.hcl"] = &fstest.MapFile{Data: []byte("recipe \"" + shop + "\" {\n  made_for = \"own use\"\n  step \"melt\" { to = \"185 °F\" }\n  step \"pour\" { at = \"" + pour + "\" }\n}\n")}
	}
	return disk
}

// withOwnRules is a server as the program is: with the rules of the shops' own.
func withOwnRules(t *testing.T, disk fs.FS) *editor {
	config := testConfig(t, disk)
	config.Rules = func(shop *lint.Shop) []*lint.Rule { return append(rules.All(), rules.Own(shop)...) }
	return connectTo(t, config, "repo", able)
}

// own waits until the shop's own rules say just that of a file.
func (e *editor) own(path string, want ...string) {
	e.t.Helper()
	var got []string
	for range 2000 {
		got = nil
		for _, code := range e.codes(path) {
			if strings.HasPrefix(code, "gentle") || strings.HasPrefix(code, "rule") {
				got = append(got, code)
			}
		}
		if fmt.Sprint(got) == fmt.Sprint(want) {
			return
		}
		e.findingsSettle()
	}
	require.Equal(e.t, fmt.Sprint(want), fmt.Sprint(got), path)
}

// findingsSettle gives the server the time of a question there and back.
func (e *editor) findingsSettle() { e.call("workspace/symbol", map[string]any{"query": ""}, nil) }

// Rules kept beside two shops speak in both while they are edited, and what is
// wrong with them is shown once, in their own file.
func TestRulesTakenFromBeside(t *testing.T) {
	disk := repository()
	e := withOwnRules(t, disk)
	file := "repo/house-rules/heat.candle.hcl"
	e.own("repo/quay/pour.candle.hcl", "gentle-pour")
	e.own("repo/yard/pour.candle.hcl")
	uri := e.open(file, gentle)
	e.own(file)

	e.replace(uri, `amount("180 °F")`, `amount("170 °F")`)
	e.own("repo/quay/pour.candle.hcl", "gentle-pour")
	e.own("repo/yard/pour.candle.hcl", "gentle-pour")
	e.replace(uri, `amount("170 °F")`, `amount("190 °F")`)
	e.own("repo/quay/pour.candle.hcl")
	e.own("repo/yard/pour.candle.hcl")

	e.replace(uri, "pour.at <=", "pour.att <=")
	e.own(file, "rule-unreadable")
	e.replace(uri, "pour.att <=", "pour.at <=")
	e.own(file)
	require.Empty(t, e.codes(file))

	// Closed, the file on disk counts again.
	e.close(uri)
	e.own("repo/quay/pour.candle.hcl", "gentle-pour")

	// A shop that names no folder any more has none of its rules.
	shop := "repo/quay/shop.candle.hcl"
	config := e.open(shop, string(disk[shop].Data))
	e.replace(config, `"../house-rules"`, `"../no-rules"`)
	e.own("repo/quay/pour.candle.hcl")
	e.own(shop, "rules-folder-unread")
	e.replace(config, `"../no-rules"`, `"../house-rules"`)
	e.own("repo/quay/pour.candle.hcl", "gentle-pour")
	e.own(shop)
}

// A folder of rules that comes and goes on disk.
func TestRulesTakenFromDisk(t *testing.T) {
	disk := &shared{files: repository()}
	e := withOwnRules(t, disk)
	file := "repo/house-rules/heat.candle.hcl"
	e.own("repo/quay/pour.candle.hcl", "gentle-pour")
	disk.write(file, "")
	e.changedOnDisk(deleted, file)
	e.own("repo/quay/pour.candle.hcl")
	e.own("repo/quay/shop.candle.hcl", "rules-folder-unread")
	disk.write(file, gentle)
	e.changedOnDisk(created, file)
	e.own("repo/quay/pour.candle.hcl", "gentle-pour")
	e.own("repo/quay/shop.candle.hcl")
}
