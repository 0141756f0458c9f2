package shoprule

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// RestsOnNothing is a rule that names no trial.
var RestsOnNothing = &lint.Rule{
	Name:   restsOnNothing,
	Group:  Group,
	Title:  "a rule of the shop's own that rests on no trial",
	Levels: lint.Every(lint.Consider),
	About:  lint.AboutFile,
	Why: "A rule of thumb outlives the reason for it. Where a trial bears it out, whoever doubts the rule can read what was tried, " +
		"and knows when to try again.",
	Remedy: "Name the trials in rests_on; where there is none, write one down as open, with the question it should answer.",
	Source: source,
	Bad: []lint.Example{{
		About: "no rests_on",
		Text:  coolPours("170 °F", "190 °F"),
		Flags: []string{`rule "pours-are-cool"`},
	}},
	Good: []lint.Example{{
		About: "a trial named",
		Text: strings.Replace(coolPours("170 °F", "190 °F"), "  require", "  rests_on = [\"pour-trial\"]\n  require", 1) +
			"\n" + trialText("pour-trial", "held", ""),
	}},
	Check: eachRule(func(p *lint.Pass, b *schema.Block, _ *program) {
		rests := b.Get("rests_on")
		if rests.Absent() || rests.Known() && len(rests.Items()) == 0 {
			p.Missing(lint.Finding{At: lint.AtHeader(b), Message: b.Title() + " rests on no trial: name what bears it out, or write down what you would have to try"})
		}
	}),
}

func trialText(key, outcome, more string) string {
	return fmt.Sprintf("trial %q {\n  question = \"Is it so?\"\n  date     = \"2026-09-12\"\n%s  outcome  = %q\n}\n", key, more, outcome)
}

// TrialOpen is a trial without an outcome.
var TrialOpen = &lint.Rule{
	Name:   "trial-open",
	Group:  Group,
	Title:  "a trial that has no outcome yet",
	Levels: lint.Every(lint.Consider),
	About:  lint.AboutFile,
	Why:    "A question that was asked and never answered is easily taken for one that was answered well. Rules that rest on it rest on nothing until then.",
	Remedy: "Finish the trial and write down what came of it: held, failed or mixed.",
	Source: source,
	Bad: []lint.Example{{
		About: "still open",
		Text:  trialText("shelf-in-winter", "open", ""),
		Flags: []string{`"open"`},
	}},
	Good: []lint.Example{{About: "answered", Text: trialText("shelf-in-winter", "held", "")}},
	Check: func(p *lint.Pass) {
		for _, b := range p.File.Blocks {
			if !b.Is("trial") {
				continue
			}
			outcome := b.Get("outcome")
			f := lint.Finding{At: lint.AtValue(outcome), Message: openMessage(p, b)}
			switch {
			case outcome.Absent():
				p.Missing(f)
			case outcome.Text() == "open":
				p.Report(f)
			}
		}
	},
}

func openMessage(p *lint.Pass, trial *schema.Block) string {
	message := fmt.Sprintf("the trial %s is still open", trial.Label)
	if q := strings.Join(strings.Fields(trial.Get("question").Text()), " "); q != "" {
		message += ": " + q
	}
	var resting []string
	for _, rule := range p.Shelf("rule") {
		for _, item := range rule.Get("rests_on").Items() {
			if item.Text == trial.Label {
				resting = append(resting, rule.Label)
				break
			}
		}
	}
	if len(resting) > 0 {
		message += " (" + strings.Join(resting, ", ") + " rests on it)"
	}
	return message
}

// TrialContradicts is a rule that says otherwise than a trial it rests on.
var TrialContradicts = &lint.Rule{
	Name:   "trial-contradicts",
	Group:  Group,
	Title:  "a rule that says otherwise than a trial it rests on",
	Levels: lint.Every(lint.Should),
	About:  lint.AboutFile,
	Why: "The rule was asked about the recipe of the trial, as it is written now. It speaks against what held, or passes what failed: " +
		"then either the rule draws the line in the wrong place, or the trial was of something else.",
	Remedy: "Move the rule's line to what the trial shows, or name the trial that bears the rule out.",
	Cautions: "A trial is asked only where it names a recipe; where it names a stock item, the recipe must still use that; where it says up to what heat, " +
		"what held counts for pours no hotter than that, and what failed for pours at least as hot.",
	Source: source,
	Bad: []lint.Example{
		{
			About: "the rule speaks against a recipe that held",
			Text:  restingOn("held", `amount("170 °F")`, "170 °F", "171 °F"),
			Flags: []string{`"quay-pour"`},
		},
		{
			About: "the rule passes a recipe that failed",
			Text:  restingOn("failed", `amount("180 °F")`, "180 °F", "181 °F"),
			Flags: []string{`"quay-pour"`},
		},
	},
	Good: []lint.Example{
		{About: "what held is within the rule", Text: restingOn("held", `amount("182 °F")`, "170 °F", "183 °F")},
		{About: "what failed is outside of it", Text: restingOn("failed", `amount("170 °F")`, "170 °F", "171 °F")},
	},
	Check: eachRule(checkTrials),
}

// restingOn is a rule about pours that rests on a trial with the demo shop's
// tide-pillar, which is poured at 176 °F.
func restingOn(outcome, limit, sound, faulty string) string {
	text := strings.Replace(coolPours(sound, faulty), `amount("180 °F")`, limit, 1)
	text = strings.Replace(text, "  require", "  rests_on = [\"quay-pour\"]\n  require", 1)
	return text + "\n" + trialText("quay-pour", outcome, "  recipe   = \"tide-pillar\"\n")
}

func checkTrials(p *lint.Pass, b *schema.Block, own *program) {
	if !own.runs() {
		return
	}
	own = inForce(p.Shop(), b) // an edit of a rule or of the shop block has everything checked again: no need to note it
	rests := b.Get("rests_on")
	for _, item := range rests.Items() {
		trial, ok := p.Stock("trial", item.Text)
		if !ok || !trial.Get("recipe").Known() {
			continue
		}
		recipe, ok := p.Stock("recipe", trial.Get("recipe").Text())
		if !ok {
			continue
		}
		view := p.Of(recipe)
		outcome := trial.Get("outcome").Text()
		if !asTried(view, trial, outcome) {
			continue
		}
		o := own.outcome(view)
		message := ""
		switch {
		case outcome == "held" && o.spoke:
			message = fmt.Sprintf("the trial %s held with %s, and this rule speaks against that: %s", trial.Label, recipe.Title(), o.message)
		case outcome == "failed" && o.held && !o.spoke && !o.unknown:
			message = fmt.Sprintf("the trial %s failed with %s, and this rule finds nothing wrong with that as it is written now", trial.Label, recipe.Title())
		default:
			continue
		}
		p.Report(lint.Finding{At: lint.AtItem(rests, item), Message: message,
			Notes: []lint.Note{{Place: lint.AtHeader(trial), Message: "the trial stands here"}}})
	}
}

// asTried says whether the recipe is still what the trial speaks of: it names
// what was tried, and is poured no hotter than that held, or at least as hot
// as failed.
func asTried(view *lint.View, trial *schema.Block, outcome string) bool {
	if tried := trial.Get("tried"); tried.Known() && !names(view.Recipe, tried.Text()) {
		return false
	}
	upTo := trial.Get("up_to")
	if !upTo.IsAmount() {
		return true
	}
	var hottest quantity.Quantity
	b := batch.Of.In(view)
	for i := range b.Pours {
		heat := b.Pours[i].Step.Heat
		if !heat.IsAmount() {
			return false
		}
		if q := heat.Amount().High(); hottest.Dim() == quantity.None || q.Cmp(hottest) > 0 {
			hottest = q
		}
	}
	if hottest.Dim() == quantity.None {
		return false
	}
	if outcome == "held" {
		return hottest.Cmp(upTo.Amount().High()) <= 0
	}
	return hottest.Cmp(upTo.Amount().High()) >= 0
}

// names says whether a recipe refers to a key.
func names(recipe *schema.Block, key string) bool {
	for ref := range lint.References(recipe.File) {
		for b := ref.From; b != nil; b = b.Parent {
			if b == recipe && ref.Key == key {
				return true
			}
		}
	}
	return false
}
