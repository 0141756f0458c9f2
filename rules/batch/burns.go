package batch

import "wickrule/schema"

// Burned sorts the candles of test burns by their records: passed where every
// burn of the candle passed, failed where one did not. A burn without a
// candle's name proves nothing.
func Burned(burns []*schema.Block) (passed, failed []string) {
	var names []string
	good := map[string]bool{}
	for _, burn := range burns {
		name := burn.Get("candle").Text()
		if name == "" {
			continue
		}
		if _, seen := good[name]; !seen {
			names = append(names, name)
			good[name] = true
		}
		if burn.Get("result").Text() != "pass" {
			good[name] = false
		}
	}
	for _, name := range names {
		if good[name] {
			passed = append(passed, name)
		} else {
			failed = append(failed, name)
		}
	}
	return passed, failed
}
