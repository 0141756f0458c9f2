package cli_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"wickrule/cli"
	"wickrule/lint"
)

func TestExplain(t *testing.T) {
	p := newPlace(t, nil)
	rule := retitle("tides", lint.Must, false, "thyme", "rosemary")
	rule.Why = "Titles drift.\n\nAnd again."
	rule.Remedy = "Write another."
	rule.Source = "common practice"
	rule.Levels = lint.Levels{OwnUse: lint.Silent, Class: lint.Should, Sale: lint.Must}
	rule.Binding = true
	rule.Bad = []lint.Example{{About: "as the demo shop has it", Recipe: "tide-pillar"}}
	rule.Good = []lint.Example{{About: "another title", Recipe: "tide-pillar", Changes: []lint.Change{{From: "Tide and thyme pillar", To: "Tide and kelp pillar"}}}}
	p.env.Rules = []*lint.Rule{rule}
	assert.Equal(t, cli.Good, p.run("explain", "tides"), p.err.String())
	assert.Equal(t, `tides                                                                     Titles

  The word thyme in a title.

  How loud          for sale must, for a class should, for own use silent; in
                    what is made for sale it can be neither conceded nor turned
                    down

  Why               Titles drift.
                    And again.

  To put it right   Write another.

  Source            common practice

  Wrong             As the demo shop has it:

                    recipe "tide-pillar" {
                      title    = "Tide and thyme pillar"
                      makes    = "pillar"
                    …
                    }

                    the title says thyme
                    to put it right: write rosemary

  Right             Another title:

                    recipe "tide-pillar" {
                      title    = "Tide and kelp pillar"
                      makes    = "pillar"
                    …
                    }

  These figures are an aid, not a test report. Your suppliers' sheets, local
  codes and licensed practice go first.
`, p.out.String())
	assert.Equal(t, cli.Good, p.run("explain"))
	assert.Equal(t, "Titles\n\n  tides                         the word thyme in a title\n", p.out.String())
}
