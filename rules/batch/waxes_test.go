package batch_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

const (
	oneWax   = "wax \"quarry\" { weight = \"1 kg\" }\n"
	evenSoy  = "wax \"shoal\" { weight = \"1 kg\" }\n"
	aPinch   = "wax \"shoal\" { weight = \"250 g\" }\n"
	pourPool = "mold \"round\" { }\n"
)

func fahrenheit(r quantity.Rat) string {
	return quantity.FromBase(r, quantity.Fahrenheit).Number().Decimal(3)
}

func TestOneWaxSpeaksForItself(t *testing.T) {
	b := of(t, oneWax+pourPool)
	s := b.PourAt()
	assert.Equal(t, "168 to 182 °F", s.Amount.String())
	assert.Equal(t, "168", fahrenheit(s.Low()))
	assert.Equal(t, "182", fahrenheit(s.High()))
	assert.Equal(t, "quarry", s.Wax.Label)
	assert.Equal(t, `"168 to 182 °F"`, s.Value.Written())
	assert.False(t, s.Blend)
	assert.Equal(t, "", s.Family)
}

func TestABlendKeepsToTheCommonRange(t *testing.T) {
	b := of(t, oneWax+evenSoy)
	s := b.PourAt() // 168 to 182 and 130 to 175
	assert.True(t, s.Blend)
	assert.False(t, s.Empty)
	assert.Equal(t, "168", fahrenheit(s.Low()))
	assert.Equal(t, "175", fahrenheit(s.High()))
	assert.Equal(t, "quarry", s.AtLow().Wax.Label)
	assert.Equal(t, "shoal", s.AtHigh().Wax.Label)
	assert.Equal(t, `"130 to 175 °F"`, s.AtHigh().Value.Written())

	s = b.MeltTo() // 180 to 190 and 160 to 170
	assert.True(t, s.Empty)
	assert.Equal(t, schema.Known, s.State)
	assert.Equal(t, "180", fahrenheit(s.Low()))
	assert.Equal(t, "170", fahrenheit(s.High()))
}

func TestABlendBearsWhatItsWeakestBears(t *testing.T) {
	b := of(t, oneWax+evenSoy)
	assert.Equal(t, "185", fahrenheit(b.NeverAbove().High()))
	assert.Equal(t, "shoal", b.NeverAbove().Wax.Label)
	assert.Equal(t, "440", fahrenheit(b.FlashPoint().High()))
	assert.Equal(t, "140", fahrenheit(b.CongealsAt().Low()))
	assert.Equal(t, "quarry", b.CongealsAt().Wax.Label)
	assert.Equal(t, "7 to 14 d", b.Cure().Amount.String())
}

// One kilogram at 0.90 g/mL and one at 0.80 g/mL are 1111.11 + 1250 mL, so
// 2000 / 2361.11 = 0.847 g/mL.
func TestBlendsAreAveraged(t *testing.T) {
	b := of(t, oneWax+evenSoy)
	assert.Equal(t, "0.847059", b.Density().Amount.Base().Decimal(6))
	assert.Equal(t, "0.09", b.Shrinkage().Amount.Base().Decimal(6))
	b = of(t, oneWax+aPinch)
	assert.Equal(t, "0.108", b.Shrinkage().Amount.Base().Decimal(6), "(0.12 * 1000 + 0.06 * 250) / 1250")
	assert.Equal(t, "quarry", b.Shrinkage().Wax.Label)
}

func TestTheFamilyStandsInForASilentSheet(t *testing.T) {
	b := of(t, "wax \"silent-pillar\" { weight = \"1 kg\" }\n"+pourPool)
	s := b.PourAt()
	assert.Equal(t, schema.Known, s.State)
	assert.Equal(t, "paraffin", s.Family)
	assert.Equal(t, "silent-pillar", s.Lacks.Label)
	assert.Equal(t, "pour_at", s.Attr)
	// Pillar paraffin is poured at 80 to 91 °C (common practice).
	assert.Equal(t, "80", s.Low().Decimal(3))
	assert.Equal(t, "91", s.High().Decimal(3))
	assert.Equal(t, "common practice", s.Source())
	assert.Equal(t, "from memory", b.FlashPoint().Source())
	assert.Equal(t, "100", b.NeverAbove().High().Decimal(3))
	assert.Equal(t, schema.Absent, b.MeltTo().State, "no family has a usual melting range")
	assert.Equal(t, "melt_to", b.MeltTo().Attr)
	is(t, "0.905", b.Density().Middle(), 4, "half way from 0.88 to 0.93 g/mL")
}

func TestWithoutAFamilyNothingIsUsual(t *testing.T) {
	b := of(t, "wax \"no-family\" { weight = \"1 kg\" }")
	s := b.NeverAbove()
	assert.Equal(t, schema.Absent, s.State)
	assert.Equal(t, "no-family", s.Lacks.Label)
	assert.Equal(t, "never_above", s.Attr)
	assert.False(t, s.Known())
}

func TestASilentWaxInABlendIsNoted(t *testing.T) {
	b := of(t, oneWax+"wax \"no-family\" { weight = \"1 kg\" }")
	s := b.NeverAbove()
	assert.Equal(t, "240", fahrenheit(s.High()))
	assert.True(t, s.Partly)
	assert.Equal(t, "no-family", s.Lacks.Label)
	assert.Equal(t, schema.Absent, b.Density().State)
	assert.Equal(t, "no-family", b.Density().Lacks.Label)
}

func TestAnUnknownWaxIsSilent(t *testing.T) {
	b := of(t, "wax \"quary\" { weight = \"1 kg\" }")
	for _, s := range []batch.Stated{b.PourAt(), b.NeverAbove(), b.Density(), b.Shrinkage(), b.Cure()} {
		assert.Equal(t, schema.Broken, s.State)
		assert.Nil(t, s.Lacks)
	}
	b = of(t, oneWax+"wax \"quary\" { weight = \"1 kg\" }")
	assert.Equal(t, "240", fahrenheit(b.NeverAbove().High()), "what the known wax cannot bear the blend cannot")
	assert.Equal(t, schema.Broken, b.FragranceLimit().State)
}

func TestTheFragranceLimit(t *testing.T) {
	b := of(t, oneWax+"fragrance \"thyme\" { load = \"7 % of wax\" }\n")
	l := b.FragranceLimit()
	assert.Equal(t, quantity.OfWax, l.Basis)
	is(t, "0.07", l.Load, 6, "load")
	is(t, "0.06", l.Strictest, 6, "limit")
	is(t, "0.06", l.Average, 6, "average")
	is(t, "10", b.Over(l, l.Strictest.Value), 6, "1 % of a kilogram")
}

// A limit of total: 12 % of 1000 g is 120 g over 880 g of wax; 10 % of total
// beside 880 g of wax is 97.778 g (880 / 0.9 - 880), 22.222 g less.
func TestALimitOfTotal(t *testing.T) {
	b := of(t, "wax \"shoal\" { weight = \"880 g\" }\nfragrance \"thyme\" { load = \"12 % of total\" }\n")
	l := b.FragranceLimit()
	assert.Equal(t, quantity.OfTotal, l.Basis)
	is(t, "0.12", l.Load, 6, "load")
	is(t, "0.1", l.Strictest, 6, "limit")
	is(t, "22.222", b.Over(l, l.Strictest.Value), 3, "over")
}

// 6 % of wax and 10 % of total, which is 1/9 of wax: half of each is 8.556 %.
func TestABlendOfTwoBases(t *testing.T) {
	b := of(t, oneWax+evenSoy+"fragrance \"thyme\" { load = \"7 % of wax\" }\n")
	l := b.FragranceLimit()
	assert.Equal(t, quantity.OfWax, l.Basis)
	is(t, "0.06", l.Strictest, 6, "strictest")
	is(t, "0.0855556", l.Average, 7, "average")
	assert.Equal(t, "quarry", l.At.Wax.Label)
	assert.True(t, l.Blend)
}

// Additives count in the total, so a limit of total allows a little more of
// the wax: with 100 g beside 1000 g, 10 % of total is 1.1 / 9 of wax.
func TestALimitOfTotalCountsEverything(t *testing.T) {
	b := of(t, oneWax+evenSoy+"additive \"hardener\" { weight = \"200 g\" }\nfragrance \"thyme\" { load = \"5 % of wax\" }\n")
	is(t, "0.0911111", b.FragranceLimit().Average, 7, "half of 0.06 and of 0.122222")
}

func TestTheFamilysLimitIsTheMostAnyGradeHolds(t *testing.T) {
	b := of(t, "wax \"silent-pillar\" { weight = \"1 kg\" }\nfragrance \"thyme\" { load = \"5 % of wax\" }\n"+pourPool)
	l := b.FragranceLimit()
	assert.Equal(t, "paraffin", l.Family)
	assert.Equal(t, "silent-pillar", l.Lacks.Label)
	is(t, "0.06", l.Strictest, 6, "3 to 6 % of wax")
	b = of(t, "wax \"no-family\" { weight = \"1 kg\" }\nfragrance \"thyme\" { load = \"5 % of wax\" }\n")
	assert.Equal(t, schema.Absent, b.FragranceLimit().State)
	assert.Equal(t, "no-family", b.FragranceLimit().Lacks.Label)
}

func TestSuits(t *testing.T) {
	b := of(t, oneWax)
	assert.True(t, b.Suits("pillar").Yes)
	s := b.Suits("container")
	assert.Equal(t, schema.Known, s.State)
	assert.False(t, s.Yes)
	assert.Equal(t, `["pillar"]`, s.Value.Written())

	s = of(t, "wax \"silent-coconut\" { weight = \"1 kg\" }").Suits("pillar")
	assert.Equal(t, schema.Known, s.State)
	assert.False(t, s.Yes)
	assert.Equal(t, "coconut", s.Family)

	s = of(t, "wax \"no-family\" { weight = \"1 kg\" }").Suits("pillar")
	assert.Equal(t, schema.Absent, s.State)
	assert.Equal(t, "no-family", s.Lacks.Label)

	s = of(t, oneWax+aPinch).Suits("pillar")
	assert.False(t, s.Yes)
	assert.Equal(t, "shoal", s.Wax.Label)
}

// A wax sold for pillars has the figures of a pillar paraffin and not of a
// container one, and every row of the table is of a family the format knows.
func TestTheFamiliesAreThoseOfTheFormat(t *testing.T) {
	known := schema.Top("wax").Attr("family").Choices
	for _, family := range batch.Families() {
		assert.Contains(t, known, family)
	}
}

// What a recipe makes, and the uses its wax may be sold for.
func TestUses(t *testing.T) {
	for makes, uses := range map[string][]string{
		"pillar": {"pillar"}, "jar": {"container"}, "tealight": {"tealight", "container"},
		"votive": {"votive"}, "taper": {"taper"}, "melt": {"melt", "container"}, "": nil,
	} {
		assert.Equal(t, uses, batch.Uses(makes), makes)
	}
	wax := schema.Top("wax").Attr("suits").Choices
	for _, makes := range schema.Top("recipe").Attr("makes").Choices {
		assert.NotEmpty(t, batch.Uses(makes), makes)
		assert.Subset(t, wax, batch.Uses(makes), makes)
	}
}

func TestTheShopsOwnTestsCount(t *testing.T) {
	stock := shelf + `
wax "proven" {
  suits      = ["pillar"]
  tested_for = ["container"]
}
wax "soft" {
  family = "gel"
}
`
	b, _ := shopWith(t, stock, "wax \"proven\" { weight = \"1 kg\" }")
	s := b.Suits("container")
	assert.True(t, s.Yes)
	assert.True(t, s.Tested)
	assert.Equal(t, `["container"]`, s.Value.Written())
	assert.False(t, b.Suits("pillar").Tested)

	b, _ = shopWith(t, stock, "wax \"soft\" { weight = \"1 kg\" }")
	assert.True(t, b.Suits("container").Yes, "gel is for containers only (common practice)")
	assert.False(t, b.Suits("pillar").Yes)
	assert.Equal(t, schema.Absent, b.Suits("melt").State)
}

// Where the sheet does not say the grade, the lowest of the grades' ceilings
// stands in, and nothing that differs from grade to grade.
func TestAnUnknownGradeIsGivenTheLowestCeiling(t *testing.T) {
	b, _ := shopWith(t, shelf+"wax \"bare\" {\n  family = \"paraffin\"\n}\n", "wax \"bare\" { weight = \"1 kg\" }\n"+pourPool)
	assert.Equal(t, "93", b.NeverAbove().High().Decimal(3))
	assert.Equal(t, schema.Absent, b.PourAt().State)
	for _, name := range batch.Families() {
		assert.True(t, batch.LowestCeilingStands(name), name)
	}
}

// Of a wax sold for several uses, the grade the recipe asks for counts.
func TestTheGradeFollowsTheRecipe(t *testing.T) {
	stock := shelf + "wax \"both\" {\n  family = \"soy\"\n  suits  = [\"container\", \"pillar\"]\n}\n"
	b, _ := shopWith(t, stock, "wax \"both\" { weight = \"1 kg\" }\n"+pourPool)
	assert.Equal(t, "90", b.NeverAbove().High().Decimal(3), "a pillar soy")
	b, _ = shopWith(t, stock, "wax \"both\" { weight = \"1 kg\" }\ncontainer \"tumbler\" { }")
	assert.Equal(t, "85", b.NeverAbove().High().Decimal(3), "a container soy")
}
