package sheet

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/formula"
)

// Burned is how far one kind of candle of this formulation has been tested.
type Burned struct {
	Candle  string   `json:"candle"`  // "Tide and thyme pillar"
	Formula string   `json:"formula"` // its fingerprint
	Passed  []string `json:"passed"`
	Failed  []string `json:"failed"`
	ToEnd   bool     `json:"to_end"`
	Older   int      `json:"older"` // burns of another formulation
	Enough  bool     `json:"enough"`
	Status  string   `json:"status"`
	Rate    string   `json:"rate,omitempty"`  // "7.2 g/h, the fastest of 3 candles weighed"
	Hours   string   `json:"hours,omitempty"` // "at most 38 h"
}

// burns says what was burned of the recipe as it stands.
func (s *Sheet) burns(view *lint.View) {
	for _, t := range formula.Tests(view) {
		passed, failed := t.Passed()
		burned := Burned{
			Candle: t.Subject, Formula: formula.Of.In(view).CodeOf(t.Vessel), Passed: append([]string{}, passed...), Failed: append([]string{}, failed...),
			ToEnd: t.ToEnd(), Older: len(t.Older), Enough: t.Enough(),
		}
		burned.Status = status(view, &t, passed, failed)
		if rate, ok := t.Rate(); ok {
			burned.Rate = fmt.Sprintf("Burn rate %s g/h (%s weighed)", rate.PerHour.Decimal(1), count(rate.Candles, "candle", "candles; the fastest counts"))
			if hours, ok := t.Hours(batch.Of.In(view)); ok {
				burned.Hours = "Burns " + hours.Decimal(0) + " h at most: promise no more"
			}
		}
		s.Burns = append(s.Burns, burned)
	}
}

func status(view *lint.View, t *formula.Tested, passed, failed []string) string {
	madeFor := view.MadeFor
	var b strings.Builder
	switch {
	case len(failed) > 0:
		fmt.Fprintf(&b, "%s failed. ", candles(failed))
	case len(passed) == 0:
		b.WriteString("No candle of this formulation has burned and passed. ")
	}
	if len(passed) > 0 {
		fmt.Fprintf(&b, "%s of this formulation passed", candles(passed))
		if t.ToEnd() {
			b.WriteString(", burned to the end")
		} else {
			b.WriteString(", none burned to its end")
		}
		b.WriteString(". ")
	}
	if n := formula.Wanted - len(passed); n > 0 && madeFor != lint.OwnUse {
		fmt.Fprintf(&b, "%s to burn before it is %s. ", count(n, "more candle", "more candles"), map[lint.MadeFor]string{lint.Sale: "sold", lint.Class: "taught"}[madeFor])
	}
	if n := len(t.Older); n > 0 {
		fmt.Fprintf(&b, "%s of another formulation, which %s not count: %s. ", count(n, "burn", "burns"), map[bool]string{true: "does", false: "do"}[n == 1],
			formula.WhyNot(view, formula.Latest(t.Older), t.Vessel))
	}
	return strings.TrimSpace(b.String())
}

func candles(names []string) string {
	if len(names) == 1 {
		return "Candle " + names[0]
	}
	return "Candles " + strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}
