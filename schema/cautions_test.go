package schema

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The core sets, after the published summaries of ASTM F2058-07(2021) and of
// EN 15494:2019; what further types of candle need there is from memory.
func TestRequiredCautions(t *testing.T) {
	us := []string{"burn within sight", "keep away from things that catch fire", "keep away from children"}
	en := []string{"general warning sign", "never leave unattended", "keep away from children and pets", "keep away from things that catch fire"}
	cases := []struct {
		market string
		candle CandleType
		want   []string
	}{
		{"US", CandleType{}, us},
		{"US", CandleType{Container: true}, us},
		{"US", CandleType{Floats: true}, us},
		{"EU", CandleType{Container: true}, en},
		{"EU", CandleType{}, append(en[:4:4], "heat-resistant holder")},
		{"EU", CandleType{Floats: true}, append(en[:4:4], "float in a suitable bowl")},
		{"UK", CandleType{Container: true}, en},
		{"UK", CandleType{}, append(en[:4:4], "heat-resistant holder")},
		{"US", CandleType{Melt: true, Container: true}, nil},
		{"EU", CandleType{Melt: true}, nil},
		{"elsewhere", CandleType{}, nil},
	}
	for _, c := range cases {
		assert.ElementsMatch(t, c.want, RequiredCautions(c.market, c.candle), "%s %+v", c.market, c.candle)
	}
}

func TestChildrenAndPetsCoversChildren(t *testing.T) {
	assert.True(t, CautionCovers("keep away from children and pets", "keep away from children"))
	assert.False(t, CautionCovers("keep away from children", "keep away from children and pets"))
	assert.True(t, CautionCovers("trim the wick", "trim the wick"))
	assert.False(t, CautionCovers("trim the wick", "keep the pool clear"))
	// Each asks for something else: in sight, and not alone.
	assert.False(t, CautionCovers("never leave unattended", "burn within sight"))
}

func TestEveryCautionHasItsPlace(t *testing.T) {
	used := map[string]bool{}
	for _, market := range Markets() {
		in := CautionsIn(market)
		require.NotNil(t, in, market)
		assert.NotEmpty(t, in.Standard, market)
		assert.NotEmpty(t, in.Source, market)
		for _, name := range append(append([]string{}, in.Core...), in.Further...) {
			assert.NotNil(t, CautionNamed(name), name)
			used[name] = true
		}
		for _, c := range in.ByType {
			assert.NotNil(t, CautionNamed(c.Name), c.Name)
			assert.NotEmpty(t, c.Which, c.Name)
			assert.NotEmpty(t, c.Because, c.Name)
			used[c.Name] = true
		}
	}
	for _, name := range CautionNames() {
		assert.True(t, used[name], "no market knows %q", name)
		assert.Regexp(t, `^[A-Z].*\.$`, CautionNamed(name).Words)
	}
	assert.Equal(t, CautionNames(), Top("label").Attr("cautions").Choices)
	assert.Nil(t, CautionsIn("elsewhere"))
	assert.Nil(t, CautionNamed("burn it all"))
}
