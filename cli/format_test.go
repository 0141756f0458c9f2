package cli_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"wickrule/cli"
)

func TestFormat(t *testing.T) {
	untidy := "recipe \"a\" {\n title=\"Tide\"\n      made_for   = \"sale\"\n}\n"
	p := newPlace(t, map[string]string{
		"shop.candle.hcl": shopText,
		"a.candle.hcl":    untidy,
		"half.candle.hcl": "recipe \"half\" {\n title=\"Tide\n}\n",
	})
	assert.Equal(t, cli.Found, p.run("format", "--show", "a.candle.hcl"), p.err.String())
	assert.Contains(t, p.out.String(), "\n- title=\"Tide\"\n")
	assert.Equal(t, untidy, p.read("a.candle.hcl"))

	assert.Equal(t, cli.Good, p.run("format", "a.candle.hcl"), p.err.String())
	tidy := "recipe \"a\" {\n  title    = \"Tide\"\n  made_for = \"sale\"\n}\n"
	assert.Equal(t, tidy, p.read("a.candle.hcl"))
	assert.Equal(t, "a.candle.hcl\n1 file, 1 laid out anew, 0 left as they are.\n", p.out.String())

	assert.Equal(t, cli.Good, p.run("format", "--show", "a.candle.hcl"))
	assert.Empty(t, p.out.String())

	assert.Equal(t, cli.Found, p.run("format"))
	assert.Contains(t, p.err.String(), "wickrule: half.candle.hcl: left as it is: ")
	assert.Equal(t, "recipe \"half\" {\n title=\"Tide\n}\n", p.read("half.candle.hcl"))
}
