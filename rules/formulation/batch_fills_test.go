package formulation_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A cube of 100 mm holds 1000 mL: 900 g at 0.9 g/mL. The edges, 5, 10 and
// 20 %, are common practice and belong to the milder side.
func TestTheEdgesOfABatch(t *testing.T) {
	for _, c := range []struct{ weight, want string }{
		{"854.99 g", "should batch-does-not-fill"},
		{"855 g", ""},
		{"900 g", ""},
		{"990 g", ""},
		{"990.01 g", "consider batch-left-over"},
		{"1080 g", "consider batch-left-over"},
		{"1080.01 g", "should batch-left-over"},
	} {
		want := []string{}
		if c.want != "" {
			want = append(want, c.want+" on \""+c.weight+"\"")
		}
		assert.Equal(t, want, check(t, wax("six", c.weight)+"  mold \"cube\" {}\n"), c.weight)
	}
	assert.Equal(t, []string{"batch-left-over: 1 kg goes in altogether and Cube takes 900 g at the density of the solid wax: over by 100 g (11.11 %). To fill them exactly: 900 g of Six wax"},
		messages(run(t, wax("six", "1000 g")+"  mold \"cube\" {}\n")))
}

// Everything weighed in counts: 860 g of wax with 5 % of oil is 903 g.
func TestAllThatIsWeighedInFills(t *testing.T) {
	assert.Empty(t, check(t, wax("six", "815 g")+fragrance("thyme", "load", "5 % of wax")+"  mold \"cube\" {}\n"), "855.75 g")
	assert.Equal(t, []string{`should batch-does-not-fill on "814 g"`}, check(t, wax("six", "814 g")+fragrance("thyme", "load", "5 % of wax")+"  mold \"cube\" {}\n"), "854.7 g")
	assert.Equal(t, []string{`should batch-does-not-fill on "500 g"`}, check(t, wax("six", "300 g")+wax("ten", "500 g")+"  mold \"cube\" {}\n"), "at the heaviest wax")
}

// By hand, each 1000 mL of cube at 0.9 g/mL: half of it is 450 g.
func TestEveryFormOfFill(t *testing.T) {
	for fill, weight := range map[string]string{
		"50 mm": "450 g", "50 mm below rim": "450 g", "500 mL": "450 g", "450 g": "450 g", "50 %": "450 g", "30 mm below rim": "630 g",
	} {
		body := "  mold \"cube\" {\n    fill = \"" + fill + "\"\n  }\n"
		assert.Empty(t, check(t, wax("six", weight)+body), fill)
		assert.Len(t, check(t, wax("six", "900 g")+body), 1, fill)
	}
	assert.Empty(t, check(t, wax("six", "900 g")+"  mold \"cube\" {\n    fill = \"to the brim\"\n  }\n"), "unreadable: another rule's")
}

// Two cubes and three jars of 400 mL take 2 x 900 + 3 x 360 = 2880 g.
func TestSeveralVessels(t *testing.T) {
	vessels := "  mold \"cube\" {\n    count = 2\n  }\n  container \"jar\" {\n    count = 3\n  }\n"
	assert.Empty(t, check(t, wax("six", "2880 g")+vessels))
	assert.Equal(t, []string{`should batch-does-not-fill on "2.7 kg"`}, check(t, wax("six", "2.7 kg")+vessels))
	assert.Contains(t, messages(run(t, wax("six", "2.7 kg")+vessels))[0], "2 of Cube and 3 of Jar take 2.88 kg")
	none := "  mold \"cube\" {\n    count = 0\n  }\n  container \"jar\" {\n    count = 3\n  }\n"
	assert.Empty(t, check(t, wax("six", "1080 g")+none))
	assert.Equal(t, []string{`should batch-left-over on "2.7 kg"`}, check(t, wax("six", "2.7 kg")+none))
	assert.Empty(t, check(t, wax("six", "1080 g")+"  mold \"cube\" {\n    count = 0\n  }\n"), "nothing to fill")
}

func TestWhatCannotBeFilledIsNotJudged(t *testing.T) {
	assert.Empty(t, check(t, wax("six", "4 kg")+"  taper \"ten\" {\n    count = 12\n  }\n"), "a dipping vat is never emptied")
	assert.Empty(t, check(t, wax("six", "4 kg")), "no vessel")
	assert.Empty(t, check(t, "  mold \"cube\" {}\n"), "no wax")
	assert.Empty(t, check(t, wax("six", "4 kg")+"  mold \"nowhere\" {}\n"))
	assert.Empty(t, check(t, wax("six", "4 kg")+"  mold \"cube\" {}\n  mold \"nowhere\" {}\n"))
	report := run(t, wax("sponge", "900 g")+"  mold \"cube\" {}\n")
	assert.Empty(t, said(t, report), "paraffin's usual 0.88 to 0.93 g/mL stands in")
	report = run(t, wax("nothing-said", "900 g")+"  mold \"cube\" {}\n")
	assert.Empty(t, said(t, report))
	assert.Equal(t, []string{"wax.density"}, needs(report))
	report = run(t, unweighed("six")+"  mold \"cube\" {}\n")
	assert.Empty(t, said(t, report))
	assert.Equal(t, []string{"wax.weight"}, needs(report))
	report = runText(t, "recipe \"try\" {\n"+wax("six", "500 g")+"  mold \"cube\" {}\n  mold \"cu")
	assert.Empty(t, said(t, report), "more may be typed yet")
}
