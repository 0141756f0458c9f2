package rules_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"wickrule/lint"
	"wickrule/rules"
	"wickrule/schema"
)

// with is the shop with one of its files read anew from another text.
func with(shop *lint.Shop, name, text string) (*lint.Shop, *schema.File) {
	read := schema.Read(name, []byte(text))
	return shop.With(read), read
}

// sane asserts what holds of every report, whatever the text: no rule stops,
// and everything that is said points into the text of its file.
func sane(t *testing.T, report *lint.Report, what string) {
	t.Helper()
	for _, fault := range report.Faults {
		t.Errorf("%s: %s stopped: %s", what, fault.Rule, fault.Reason)
	}
	inside := func(p lint.Place, about string) {
		if size := int32(len(p.File.Text.String())); p.Span.Start < 0 || p.Span.Start > p.Span.End || p.Span.End > size {
			t.Errorf("%s: %s points outside %s: %v of %d", what, about, p.File.Name, p.Span, size)
		}
	}
	for i := range report.Findings {
		f := &report.Findings[i]
		inside(f.At, f.Rule.Name)
		for _, note := range f.Notes {
			inside(note.Place, f.Rule.Name+"'s note")
		}
		if f.Message == "" {
			t.Errorf("%s: %s says nothing", what, f.Rule.Name)
		}
		for _, fix := range f.Repairs() {
			for _, e := range fix.Edits {
				inside(lint.Place{File: e.File, Span: e.Span}, f.Rule.Name+"'s fix "+fix.Title)
			}
		}
	}
	for _, u := range report.Unchecked {
		inside(u.At, u.Needs)
	}
}

var prefixed = []string{"recipes/tide-pillar.candle.hcl", "recipes/tideline-layers.candle.hcl", "recipes/skerry-eu.candle.hcl"}

// While a recipe is being typed, what is not there yet is not missed: the text
// so far is judged by what stands in it. The recipes are sound, so nothing but
// the half-typed end itself is told of, and it is the format that tells it.
func TestEveryPrefix(t *testing.T) {
	shop := exampleShop(t)
	all := rules.All()
	format := map[string]bool{}
	for _, r := range all {
		format[r.Name] = r.Group == "The format itself"
	}
	for _, name := range prefixed {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			text := fileText(t, shop, name)
			small := alone(shop, name)
			stride := 1
			if testing.Short() {
				stride = 97
			}
			for end := 0; end <= len(text) && !t.Failed(); end += stride {
				laid, file := with(small, name, text[:end])
				report := lint.RunFor(laid, all, today, func(f string) bool { return f == name })
				sane(t, report, name)
				if file.Whole {
					continue
				}
				for i := range report.Findings {
					f := &report.Findings[i]
					// The last line may be cut short, and then says another thing.
					if f.At.File == file && !format[f.Rule.Name] && int(f.At.Span.End) < lastLine(text[:end]) {
						t.Errorf("the first %d bytes: %s on %q, which is whole: %s", end, f.Rule.Name, file.Text.Slice(f.At.Span), f.Message)
					}
				}
				assert.Empty(t, uncheckedIn(report, file), "the first %d bytes", end)
			}
		})
	}
}

// alone is the shop with one recipe file only, beside all that is not one.
func alone(shop *lint.Shop, name string) *lint.Shop {
	var files []*schema.File
	for _, f := range shop.Files() {
		if f.Name == name || !strings.HasPrefix(f.Name, "recipes/") {
			files = append(files, f)
		}
	}
	return lint.NewShop(shop.Root, files)
}

func lastLine(text string) int { return strings.LastIndexByte(text, '\n') + 1 }

func uncheckedIn(report *lint.Report, file *schema.File) []string {
	var found []string
	for _, u := range report.Unchecked {
		if u.At.File == file {
			found = append(found, u.Needs)
		}
	}
	return found
}

func fileText(t *testing.T, shop *lint.Shop, name string) string {
	t.Helper()
	for _, f := range shop.Files() {
		if f.Name == name {
			return f.Text.String()
		}
	}
	t.Fatalf("the example shop has no %s", name)
	return ""
}

// Whatever single line is left out of any file of the example shop, every rule
// runs to its end and points into the text.
func TestEveryLineLeftOut(t *testing.T) {
	t.Parallel()
	shop := exampleShop(t)
	all := rules.All()
	stride := 1
	if testing.Short() {
		stride = 11
	}
	n := 0
	for _, f := range shop.Files() {
		lines := strings.SplitAfter(f.Text.String(), "\n")
		small := shop
		if strings.HasPrefix(f.Name, "recipes/") {
			small = alone(shop, f.Name)
		}
		for i := range lines {
			if n++; n%stride != 0 {
				continue
			}
			laid, _ := with(small, f.Name, strings.Join(append(append([]string{}, lines[:i]...), lines[i+1:]...), ""))
			sane(t, lint.Run(laid, all, today), f.Name+" without "+strings.TrimSpace(lines[i]))
		}
	}
}
