package lsp

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"wickrule/lint"
	"wickrule/rules/explained"
	"wickrule/rules/shoprule"
)

// explanation is what there is to know of a rule, in Markdown; of one of the
// shop's own also what was tried.
func explanation(shop *lint.Shop, r *lint.Rule) string {
	var b strings.Builder
	b.WriteString("# " + r.Name + "\n\n" + sentence(r.Title) + "\n")
	part := func(heading, text string) {
		if text = strings.TrimSpace(text); text != "" {
			b.WriteString("\n**" + heading + ".** " + text + "\n")
		}
	}
	part("How loud", sentence(r.Loudness()))
	part("Why", r.Why)
	part("To put it right", r.Remedy)
	part("Mind", r.Cautions)
	for _, o := range optionsOf(shop, r) {
		part("Option "+o.Name, sentence(o.String()))
	}
	part("Source", r.Source)
	for _, trial := range trialsBehind(shop, r) {
		b.WriteString("\n- " + trialSays(&trial) + "\n")
	}
	return b.String()
}

// optionsOf are the options of a rule of the shop's own.
func optionsOf(shop *lint.Shop, r *lint.Rule) []shoprule.Option {
	if r.Group != shoprule.OwnGroup {
		return nil
	}
	if rule := shop.Find("rule", r.Name); rule != nil {
		return shoprule.OptionsOf(shop, rule)
	}
	return nil
}

// trialsBehind are the trials that a rule of the shop's own rests on.
func trialsBehind(shop *lint.Shop, r *lint.Rule) []explained.Trial {
	if r.Group != shoprule.OwnGroup {
		return nil
	}
	if rule := shop.Find("rule", r.Name); rule != nil {
		return explained.Behind(shop, rule)
	}
	return nil
}

// trialSays is a trial in a few sentences.
func trialSays(t *explained.Trial) string {
	head := t.Key
	var about []string
	for _, text := range []string{t.Date, t.Outcome} {
		if text != "" {
			about = append(about, text)
		}
	}
	if len(about) > 0 {
		head += " (" + strings.Join(about, ", ") + ")"
	}
	return head + ": " + spaced(t.Asked, fullSentence(t.Tried), t.Noted)
}

// sentence is a text with a capital and a full stop.
func sentence(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return ""
	}
	return string(unicode.ToUpper(first)) + strings.TrimSuffix(text[size:], ".") + "."
}
