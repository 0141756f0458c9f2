package labels

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/schema"
)

// scented is a recipe for sale with an oil of one component at 10 % of total,
// so that a tenth of the component's share is in the candle.
func scented(markets, component, steps string) string {
	return "fragrance \"oil\" {\n  component \"stuff\" {\n" + component + "  }\n}\n" +
		recipe("  made_for = \"sale\"\n  markets  = ["+markets+"]\n  fragrance \"oil\" {\n    load = \"10 % of total\"\n  }", steps)
}

const sensitizer = "    share   = \"10 %\"\n    hazards = [\"Skin Sens. 1B H317\"]\n" // 1 % of the candle: just reached

// hazardLabel is a label that lacks nothing but what is written of hazards.
func hazardLabel(market, hazards string) string {
	return "label \"l\" {\n  markets = [\"" + market + "\"]\n  signal = \"Warning\"\n  cautions = [\"general warning sign\", \"never leave unattended\", \"keep away from children and pets\", " +
		"\"keep away from things that catch fire\", \"heat-resistant holder\"]\n  net_weight = \"500 g\"\n  contact = \"us@shop.example\"\n  lot = \"1\"\n" + hazards + "}\n"
}

const sensitizerPrint = "  pictograms = [\"GHS07\"]\n  hazards = [\"H317\"]\n  names = [\"stuff\"]\n  precautions = [\"P102\", \"P501\"]\n"

// Worked by hand from Annex I of Regulation (EC) No 1272/2008.
func TestHazardsOnLabels(t *testing.T) {
	uk, eu := hazardLabel("UK", sensitizerPrint), hazardLabel("EU", sensitizerPrint+"  ufi = \"UFI: K7C0-40W5-T00A-93GX\"\n")
	for name, c := range map[string]struct {
		text string
		want []string
	}{
		"all of it, UK": {uk + scented(`"UK"`, sensitizer, attach("l")), []string{}},
		"all of it, EU": {eu + scented(`"EU"`, sensitizer, attach("l")), []string{}},
		"the EU wants an identifier": {
			hazardLabel("EU", sensitizerPrint) + scented(`"EU"`, sensitizer, attach("l")), []string{`must hazard-label-missing on "l"`}},
		"an identifier is four blocks of four": {
			hazardLabel("EU", sensitizerPrint+"  ufi = \"UFI: K7C0-40W5\"\n") + scented(`"EU"`, sensitizer, attach("l")), []string{`must hazard-label-missing on "UFI: K7C0-40W5"`}},
		"nothing printed": {hazardLabel("UK", "") + scented(`"UK"`, sensitizer, attach("l")), []string{`must hazard-label-missing on "l"`}},
		"a name left out": {hazardLabel("UK", strings.Replace(sensitizerPrint, `"stuff"`, `"other"`, 1)) + scented(`"UK"`, sensitizer, attach("l")), []string{`must hazard-label-missing on "l"`}},
		"a hair under the limit it is named by EUH208": {
			hazardLabel("UK", "  hazards = [\"EUH208\"]\n  names = [\"stuff\"]\n") + scented(`"UK"`, strings.Replace(sensitizer, "10 %", "9.99 %", 1), attach("l")), []string{}},
		"a hair under the limit the sign is unfounded": {
			uk + scented(`"UK"`, strings.Replace(sensitizer, "10 %", "9.99 %", 1), attach("l")), []string{`consider hazard-label-unfounded on "l"`}},
		"too many precautions": {
			hazardLabel("UK", strings.Replace(sensitizerPrint, `"P102"`, `"P101", "P102", "P103", "P280", "P261", "P321", "P363"`, 1)) + scented(`"UK"`, sensitizer, attach("l")),
			[]string{`consider hazard-label-missing on "l"`}},
		"none of them about disposal": {
			hazardLabel("UK", strings.Replace(sensitizerPrint, `, "P501"`, "", 1)) + scented(`"UK"`, sensitizer, attach("l")), []string{`should hazard-label-missing on "l"`}},
		"no label at all is told once": {scented(`"UK"`, sensitizer, ""), []string{`must warning-label-missing on mold "round"`}},
		"a melt without a label has hazards all the same": {
			strings.Replace(scented(`"UK"`, sensitizer, ""), "made_for", "makes = \"melt\"\n  made_for", 1), []string{`must hazard-label-missing on mold "round"`}},
		"from a category's figure, which is from memory": {
			hazardLabel("UK", "") + scented(`"UK"`, "    share = \"100 %\"\n    hazards = [\"Acute Tox. 3 H301\"]\n", attach("l")), []string{`should hazard-label-missing on "l"`}},
		"from a stated estimate": {
			hazardLabel("UK", "") + scented(`"UK"`, "    share = \"100 %\"\n    hazards = [\"Acute Tox. 3 H301\"]\n    ate = \"oral 100 mg/kg\"\n", attach("l")), []string{`must hazard-label-missing on "l"`}},
		"harm to organs, from memory, with its identifier": {
			hazardLabel("EU", "") + scented(`"EU"`, "    share = \"100 %\"\n    hazards = [\"STOT RE 1 H372\"]\n", attach("l")),
			[]string{`should hazard-label-missing on "l"`, `should hazard-label-missing on "l"`}},
		"organs beside a sensitizer that is printed": {
			uk + scented(`"UK"`, sensitizer+"  }\n  component \"other\" {\n    share = \"90 %\"\n    hazards = [\"STOT RE 1 H372\"]\n", attach("l")), []string{`should hazard-label-missing on "l"`}},
		"organs beside a sensitizer that is not": {
			hazardLabel("UK", "") + scented(`"UK"`, sensitizer+"  }\n  component \"other\" {\n    share = \"90 %\"\n    hazards = [\"STOT RE 1 H372\"]\n", attach("l")), []string{`must hazard-label-missing on "l"`}},
		"not for sale": {
			strings.Replace(hazardLabel("UK", "")+scented(`"UK"`, sensitizer, attach("l")), `"sale"`, `"class"`, 1), []string{}},
		"a signal word that says more": {
			strings.Replace(uk, `"Warning"`, `"Danger"`, 1) + scented(`"UK"`, sensitizer, attach("l")), []string{}},
		"harm to fertility at its limit": {
			uk + scented(`"UK"`, "    share = \"3 %\"\n    hazards = [\"Repr. 1B H360FD\"]\n", attach("l")), []string{`must banned-ingredient on "oil"`}},
		"unknown": {
			hazardLabel("UK", "") + "fragrance \"oil\" {\n}\n" + recipe("  made_for = \"sale\"\n  markets  = [\"UK\"]\n  fragrance \"oil\" {\n    load = \"10 % of total\"\n  }", attach("l")),
			[]string{`must hazard-unknown on "oil"`}},
	} {
		t.Run(name, func(t *testing.T) { assert.ElementsMatch(t, c.want, check(t, c.text)) })
	}
}

// The fix writes what is lacking into the stock label, and then it is there.
func TestTheHazardsCanBePrinted(t *testing.T) {
	text := stock + hazardLabel("UK", "") + scented(`"UK"`, sensitizer, attach("l"))
	f := schema.Read("try.candle.hcl", []byte(text))
	report := lint.Run(lint.NewShop(".", []*schema.File{f}), []*lint.Rule{HazardLabelMissing}, "2026-10-20")
	require.Len(t, report.Findings, 1)
	fixes := report.Findings[0].Repairs()
	require.Len(t, fixes, 1)
	assert.Equal(t, "add the pictogram GHS07, H317 and the name stuff to the stock label l (and print it anew)", fixes[0].Title)
	mended, err := schema.Apply(text, fixes[0].Edits)
	require.NoError(t, err)
	again := lint.Run(lint.NewShop(".", []*schema.File{schema.Read("try.candle.hcl", []byte(mended))}), []*lint.Rule{HazardLabelMissing}, "2026-10-20")
	require.Len(t, again.Findings, 1)
	assert.Equal(t, lint.Should, again.Findings[0].Level, "the precautions are the seller's choice: %s", again.Findings[0].Message)
}

// What harms water counts times its M-factor: where none is stated, that is
// said.
func TestAFactorThatIsNotStated(t *testing.T) {
	text := stock + hazardLabel("UK", "") + scented(`"UK"`, "    share = \"10 %\"\n    hazards = [\"Aquatic Acute 1 H400\"]\n", attach("l"))
	f := schema.Read("try.candle.hcl", []byte(text))
	report := lint.Run(lint.NewShop(".", []*schema.File{f}), []*lint.Rule{HazardLabelMissing}, "2026-10-20")
	assert.Empty(t, report.Findings)
	require.Len(t, report.Unchecked, 1)
	assert.Equal(t, "component.m_factor", report.Unchecked[0].Needs)
	assert.Equal(t, lint.Should, report.Unchecked[0].Level)
}

// A value that cannot be read is its own finding, and nothing is summed.
func TestHazardsOfWhatCannotBeRead(t *testing.T) {
	text := stock + hazardLabel("UK", "") + scented(`"UK"`, strings.Replace(sensitizer, `"10 %"`, `"ten"`, 1), attach("l"))
	f := schema.Read("try.candle.hcl", []byte(text))
	require.NotEmpty(t, f.Problems)
	report := lint.Run(lint.NewShop(".", []*schema.File{f}), []*lint.Rule{HazardLabelMissing, HazardUnknown, BannedIngredient}, "2026-10-20")
	assert.Empty(t, report.Findings)
}
