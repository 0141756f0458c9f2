package formulation

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/schema"
)

// What is known already can be over whatever is missing: arithmetic.
func TestSurelyOverTheLimit(t *testing.T) {
	const stock = "wax \"six\" {\n  family = \"paraffin\"\n  fragrance_limit = \"6 % of wax\"\n}\nwax \"silent\" {\n  title = \"Silent\"\n}\n" +
		"fragrance \"a\" {\n  density = \"1 g/mL\"\n}\nfragrance \"b\" {\n  title = \"B\"\n}\n"
	find := func(body string) []string {
		f := schema.Read("try.candle.hcl", []byte(stock+"recipe \"try\" {\n  made_for = \"sale\"\n"+body+"}\n"))
		report := lint.Run(lint.NewShop(".", []*schema.File{f}), []*lint.Rule{FragranceOverLimit}, "2026-10-20")
		require.Empty(t, report.Faults)
		found := []string{}
		for _, one := range report.Findings {
			found = append(found, one.Level.String()+" "+f.Text.Slice(one.At.Span))
		}
		return found
	}
	const kilo = "  wax \"six\" {\n    weight = \"1000 g\"\n  }\n"
	const nine = "  fragrance \"a\" {\n    load = \"9 % of wax\"\n  }\n"
	for name, other := range map[string]string{
		"no amount":       "  fragrance \"b\" {}\n",
		"no density":      "  fragrance \"b\" {\n    weight = \"10 mL\"\n  }\n",
		"a broken load":   "  fragrance \"b\" {\n    load = \"much\"\n  }\n",
		"an unknown key":  "  fragrance \"nowhere\" {\n    weight = \"10 mL\"\n  }\n",
		"and none at all": "",
	} {
		assert.Equal(t, []string{`must "9 % of wax"`}, find(kilo+nine+other), name)
	}
	five := "  fragrance \"a\" {\n    load = \"5 % of wax\"\n  }\n"
	assert.Empty(t, find(kilo+five+"  fragrance \"b\" {}\n"), "it may still be within")

	pinch := "  wax \"six\" {\n    weight = \"999 g\"\n  }\n  wax \"silent\" {\n    weight = \"1 g\"\n  }\n"
	assert.Equal(t, []string{`must "9 % of wax"`}, find(pinch+nine), "a gram more cannot hold it")
	half := "  wax \"six\" {\n    weight = \"500 g\"\n  }\n  wax \"silent\" {\n    weight = \"500 g\"\n  }\n"
	assert.Empty(t, find(half+nine), "half of the wax says nothing")
}
