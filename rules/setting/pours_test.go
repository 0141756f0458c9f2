package setting_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/rules/setting"
	"wickrule/schema"
)

const second = `step "second pour" { at = "182 °F" }`

func in(vessel, wax string, steps ...string) string {
	return lines(append([]string{`wax "` + wax + `" { weight = "1 kg" }`, vessel, sealed, melt}, steps...)...)
}

// Over 6 % of shrinkage in a mold over 40 mm: common practice.
func TestSecondPourMissing(t *testing.T) {
	holdTo(t, "second-pour-missing", []sample{
		{"topped up", in(`mold "round" {}`, "quarry", pour, second), nil},
		{"not topped up", in(`mold "round" {}`, "quarry", pour), []string{`should mold "round"`}},
		{"just 40 mm wide", in(`mold "slim" {}`, "quarry", pour), nil},
		{"just 6 % of shrinkage", in(`mold "round" {}`, "rock", pour), nil},
		{"sold as needing one pour", in(`mold "round" {}`, "once", pour), nil},
		{"a blend of which one part needs one pour only", in(`mold "round" {}`, "quarry", pour, `wax "once" { weight = "100 g" }`), []string{`should mold "round"`}},
		{"beeswax", in(`mold "round" {}`, "hive", pour), []string{`consider mold "round"`}},
		{"the family's figure, where the sheet is silent", in(`mold "round" {}`, "silent", pour), []string{`should mold "round"`}},
		{"nothing is known of the wax", in(`mold "round" {}`, "nameless", pour), []string{"? wax.shrinkage"}},
		{"layers", in(`mold "round" {}`, "quarry", pour, melt, pour), nil},
		{"a jar", in(`container "jar" {}`, "quarry", pour), nil},
		{"melts", in(`mold "melts" {}`, "quarry", pour), nil},
		{"no pour is written", in(`mold "round" {}`, "quarry"), nil},
		{"an unknown wax", in(`mold "round" {}`, "nowhere", pour), nil},
		{"one of two molds", in(`mold "round" {}`, "quarry", `mold "pinned" {}`, pour, "step \"second pour\" {\n at = \"182 °F\"\n vessel = \"pinned\"\n}"), []string{`should mold "round"`}},
		{"pillars and melts from one pot", in(`mold "round" {}`, "quarry", `mold "melts" {}`, pour, "step \"second pour\" {\n at = \"182 °F\"\n vessel = \"round\"\n}"), nil},
	})
}

// A second pour is offered a little above the first, and where the wax, the
// mold or a seal does not bear that, no hotter than the first or not at all.
func TestTheSecondPourOffered(t *testing.T) {
	for _, c := range []struct{ name, body, want string }{
		{"5 °F above", in(`mold "round" {}`, "quarry", pour), "pour again at 181 °F, 3 h after the pour"},
		{"3 °C above", in(`mold "round" {}`, "quarry", `step "pour" { at = "80 °C" }`), "pour again at 83 °C, 3 h after the pour"},
		{"after the relief holes", in(`mold "round" {}`, "quarry", pour, `step "relief holes" { after = "2 h" }`), "pour again at 181 °F, 1 h after the relief holes"},
		{"the seal bears no more than the first", lines(paraffin, `mold "round" {}`, `step "seal wick hole" { with = "putty" }`, melt, pour), "pour again at 176 °F, 3 h after the pour"},
		{"the wax does not bear the first", in(`mold "round" {}`, "quarry", `step "pour" { at = "245 °F" }`), ""},
		{"the first does not say", in(`mold "round" {}`, "quarry", `step "pour" {}`), ""},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, fixOf(t, c.body, setting.SecondPourMissing)) })
	}
}

// fixOf is the title of the one fix of the one finding of a rule.
func fixOf(t *testing.T, body string, rule *lint.Rule) string {
	t.Helper()
	var fixes []schema.Fix
	n := 0
	for _, f := range report(t, body).Findings {
		if f.Rule == rule {
			n++
			fixes = f.Repairs()
		}
	}
	require.Equal(t, 1, n, "findings")
	if len(fixes) == 0 {
		return ""
	}
	require.Len(t, fixes, 1)
	return fixes[0].Title
}

// 6 mm of room in a mold over 60 mm tall: common practice. A quarter of an
// inch is 6.35 mm.
func TestNoRoomForSecondPour(t *testing.T) {
	leaving := func(leave string) string { return "step \"pour\" {\n at = \"176 °F\"\n leave = \"" + leave + "\"\n}" }
	holdTo(t, "no-room-for-second-pour", []sample{
		{"1/4 in", in(`mold "round" {}`, "quarry", leaving("1/4 in"), second), nil},
		{"just 6 mm", in(`mold "round" {}`, "quarry", leaving("6 mm"), second), nil},
		{"a tenth less", in(`mold "round" {}`, "quarry", leaving("5.9 mm"), second), []string{`should "5.9 mm"`}},
		{"own use", in(`mold "round" {}`, "quarry", `made_for = "own use"`, leaving("5.9 mm"), second), []string{`consider "5.9 mm"`}},
		{"class", in(`mold "round" {}`, "quarry", `made_for = "class"`, leaving("5.9 mm"), second), []string{`consider "5.9 mm"`}},
		{"a range that begins below", in(`mold "round" {}`, "quarry", leaving("5 to 10 mm"), second), []string{`should "5 to 10 mm"`}},
		{"just 60 mm tall", in(`mold "slim" {}`, "quarry", leaving("1 mm"), second), nil},
		{"not said", in(`mold "round" {}`, "quarry", pour, second), []string{"? step.leave"}},
		{"no second pour", in(`mold "round" {}`, "quarry", leaving("1 mm")), nil},
		{"the last layer counts", in(`mold "round" {}`, "quarry", leaving("3 in"), melt, leaving("1 mm"), second), []string{`should "1 mm"`}},
		{"a jar", in(`container "jar" {}`, "quarry", leaving("1 mm"), second), nil},
	})
}

func two(first, then string) string {
	return in(`mold "round" {}`, "quarry", `step "pour" { at = "`+first+`" }`, `step "second pour" { at = "`+then+`" }`)
}

// Cooler than the first, or as hot: common practice.
func TestSecondPourTooCool(t *testing.T) {
	holdTo(t, "second-pour-too-cool", []sample{
		{"hotter", two("176 °F", "177 °F"), nil},
		{"as hot", two("176 °F", "176 °F"), []string{`consider "176 °F"`}},
		{"as hot in the other scale", two("176 °F", "80 °C"), []string{`consider "80 °C"`}},
		{"cooler", two("176 °F", "175.9 °F"), []string{`should "175.9 °F"`}},
		{"a range that may be cooler", two("176 °F", "170 to 182 °F"), []string{`should "170 to 182 °F"`}},
		{"ranges that overlap, both ends hotter", two("168 to 182 °F", "176 to 186 °F"), []string{`consider "176 to 186 °F"`}},
		{"ranges that meet", two("168 to 176 °F", "176 to 182 °F"), []string{`consider "176 to 182 °F"`}},
		{"ranges apart", two("168 to 175 °F", "176 to 182 °F"), nil},
		{"the first does not say, which is another rule", in(`mold "round" {}`, "quarry", `step "pour" {}`, second), nil},
		{"a jar", in(`container "jar" {}`, "quarry", pour, `step "second pour" { at = "150 °F" }`), nil},
		{"held against the pour into its own mold", in(`mold "round" {}`, "quarry", `mold "pinned" {}`,
			"step \"pour\" {\n at = \"176 °F\"\n vessel = \"round\"\n}", "step \"pour\" {\n at = \"170 °F\"\n vessel = \"pinned\"\n}",
			"step \"second pour\" {\n at = \"172 °F\"\n vessel = \"pinned\"\n}"), nil},
		{"for both, and cooler than one", in(`mold "round" {}`, "quarry", `mold "pinned" {}`,
			"step \"pour\" {\n at = \"176 °F\"\n vessel = \"round\"\n}", "step \"pour\" {\n at = \"170 °F\"\n vessel = \"pinned\"\n}",
			`step "second pour" { at = "172 °F" }`), []string{`should "172 °F"`}},
		{"held against the last layer", in(`mold "round" {}`, "quarry", `step "pour" { at = "180 °F" }`, melt, `step "pour" { at = "170 °F" }`, `step "second pour" { at = "175 °F" }`), nil},
	})
}

// 5 to 10 °F above the first is common practice: silent to 15 °F, worth
// knowing to 20 °F. 15 °F is 8.333 K, which no float holds.
func TestSecondPourOutOfStep(t *testing.T) {
	holdTo(t, "second-pour-out-of-step", []sample{
		{"just 15 °F", two("176 °F", "191 °F"), nil},
		{"a tenth over", two("176 °F", "191.1 °F"), []string{`consider "191.1 °F"`}},
		{"just 20 °F", two("176 °F", "196 °F"), []string{`consider "196 °F"`}},
		{"a tenth over that", two("176 °F", "196.1 °F"), []string{`should "196.1 °F"`}},
		{"8 °C", two("80 °C", "88 °C"), nil},
		{"9 °C", two("80 °C", "89 °C"), []string{`consider "89 °C"`}},
		{"12 °C", two("80 °C", "92 °C"), []string{`should "92 °C"`}},
		{"the end of a range", two("176 °F", "182 to 192 °F"), []string{`consider "182 to 192 °F"`}},
		{"ranges like those of the sheet", two("168 to 178 °F", "178 to 186 °F"), nil},
		{"a jar as well", in(`container "jar" {}`, "quarry", pour, `step "second pour" { at = "200 °F" }`), []string{`should "200 °F"`}},
	})
	for _, c := range []struct{ name, body, want string }{
		{"to 10 °F above", two("176 °F", "200 °F"), "make the second pour at 186 °F"},
		{"in its own scale", two("176 °F", "95 °C"), "make the second pour at 85 °C"},
		{"the low end of a range stays", two("176 °F", "180 to 200 °F"), "make the second pour at 180 to 186 °F"},
		{"a range above", two("176 °F", "190 to 200 °F"), "make the second pour at 186 °F"},
		{"not above the ceiling of the wax", two("235 °F", "260 °F"), "make the second pour at 240 °F"},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, fixOf(t, c.body, setting.SecondPourOutOfStep)) })
	}
}

// Relief holes in molds over 50 mm, 2 h after the pour: common practice.
func TestReliefHolesMissing(t *testing.T) {
	holes := `step "relief holes" { after = "2 h" }`
	holdTo(t, "relief-holes-missing", []sample{
		{"opened", in(`mold "round" {}`, "quarry", pour, holes, second), nil},
		{"not opened", in(`mold "round" {}`, "quarry", pour, second), []string{`should step "second pour"`}},
		{"opened too late", in(`mold "round" {}`, "quarry", pour, second, holes), []string{`should step "second pour"`}},
		{"own use", in(`mold "round" {}`, "quarry", `made_for = "own use"`, pour, second), []string{`consider step "second pour"`}},
		{"just 50 mm wide", in(`mold "fifty" {}`, "quarry", pour, second), nil},
		{"no second pour", in(`mold "round" {}`, "quarry", pour), nil},
		{"two second pours: said once", in(`mold "round" {}`, "quarry", pour, second, second), []string{`should step "second pour"`}},
		{"a jar", in(`container "jar" {}`, "quarry", pour, second), nil},
		{"opened in the other mold", in(`mold "round" {}`, "quarry", `mold "pinned" {}`, pour, "step \"relief holes\" {\n after = \"2 h\"\n vessel = \"pinned\"\n}", second), []string{`should step "second pour"`}},
	})
}

// The holes are opened within the time the second pour waited already, where
// it waited long enough.
func TestTheReliefHolesOffered(t *testing.T) {
	for _, c := range []struct{ name, wait, want string }{
		{"3 h in all stay 3 h", `after = "3 h"`, "step \"relief holes\" { after = \"2 h\" }\nstep \"second pour\" {\n  at    = \"182 °F\"\n  after = \"1 h\"\n}"},
		{"an hour is too short to share", `after = "1 h"`, "step \"relief holes\" { after = \"2 h\" }\nstep \"second pour\" {\n  at    = \"182 °F\"\n  after = \"1 h\"\n}"},
		{"counted from the pour", `from_pour = "3 h"`, "step \"relief holes\" { after = \"2 h\" }\nstep \"second pour\" {\n  at    = \"182 °F\"\n  from_pour = \"3 h\"\n}"},
		{"poured before then: nothing to offer", `from_pour = "2 h"`, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := report(t, in(`mold "round" {}`, "quarry", pour, "step \"second pour\" {\n  at    = \"182 °F\"\n  "+c.wait+"\n}"))
			for _, f := range r.Findings {
				if f.Rule != setting.ReliefHolesMissing {
					continue
				}
				fixes := f.Repairs()
				if c.want == "" {
					assert.Empty(t, fixes)
					return
				}
				require.Len(t, fixes, 1)
				text, err := schema.Apply(f.At.File.Text.String(), fixes[0].Edits)
				require.NoError(t, err)
				assert.Contains(t, text, c.want)
				return
			}
			t.Error("nothing found")
		})
	}
}
