package house

import "wickrule/lint"

const expired = "  concession \"dye-by-eye\" {\n    reason = \"The color is meant to vary\"\n    until  = \"2026-03-31\"\n  }\n"
const valid = "  concession \"dye-by-eye\" {\n    reason = \"The color is meant to vary\"\n    until  = \"2027-03-31\"\n  }\n"

// byEye makes the dye of the example recipe one that needs the concession.
func byEye(concession string) []lint.Change {
	return []lint.Change{
		{From: "  dye \"madder\" {\n    weight = \"0.6 g\"\n  }\n", To: "  dye \"madder\" {\n    amount = \"to shade\"\n  }\n" + concession},
	}
}

func withConcession(concession string) []lint.Change {
	return []lint.Change{{From: "  dye \"madder\" {\n", To: concession + "  dye \"madder\" {\n"}}
}
