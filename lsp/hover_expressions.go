package lsp

import (
	"strings"

	"wickrule/lint"
	"wickrule/rules/explained"
	"wickrule/rules/shoprule"
	"wickrule/schema"
)

// expressionSubject is about a name, a function or a sign in an expression of
// a shop rule: what it gives, what it means, and what it comes to in the
// rule's examples.
func (h *here) expressionSubject(v schema.Value, at int32) *subject {
	rule := topOf(v.Block)
	if !rule.Is("rule") {
		return about(v.Span(), h.attribute(v.Spec)...)
	}
	d := shoprule.DraftOf(h.shop, rule)
	part, ok := d.PartAt(v, at)
	if !ok {
		return h.keySubject(v, at)
	}
	says := h.partMeans(&part)
	switch fixed := d.Fixed(part.Source, h.units()); {
	case fixed != "" && part.Sort != shoprule.SignPart:
		says = append(says, "Here it is "+fixed+".")
	case v.Spec.Name != "is" && !part.Name.One:
		says = append(says, h.comesTo(d, rule, &part, v.Spec.Name != "when"))
	}
	if o, ok := shoprule.OptionOf(h.shop, rule, part.Name.Word); ok && part.Sort == shoprule.OptionPart && h.counts(rule) && o.Here != "" {
		says = append(says, h.plain("In this shop it is "+o.Here+"."))
	}
	return about(part.Span, says...)
}

// keySubject is about the key of something on the shelves that an expression
// says; where there is none, about the attribute.
func (h *here) keySubject(v schema.Value, at int32) *subject {
	for _, m := range shoprule.Mentions(v) {
		if !m.Span.Touches(at) {
			continue
		}
		for _, kind := range m.Kinds {
			if b := h.shop.Find(kind, m.Key); b != nil {
				return about(m.Span, h.card(b)...)
			}
		}
	}
	return about(v.Span(), h.attribute(v.Spec)...)
}

// partMeans is what a part of an expression is.
func (h *here) partMeans(p *shoprule.Part) []string {
	n := &p.Name
	switch p.Sort {
	case shoprule.FunctionPart:
		f, _ := shoprule.FunctionNamed(n.Word)
		return []string{"**" + f.Name + "** " + code(f.Name+"("+f.Takes+")") + " gives " + f.Gives + ". " + f.Doc}
	case shoprule.SignPart:
		return []string{code(strings.Join(strings.Fields(p.Source), " "))}
	case shoprule.KindPart:
		return []string{"**" + n.Word + "** " + n.Doc}
	case shoprule.OptionPart:
		return []string{spaced("**option."+h.plain(n.Word)+"** "+fullSentence(n.Gives), h.plain(fullStop(n.Doc)))}
	}
	head := "**" + p.Source + "** " + fullSentence(n.Gives+fromText[n.From])
	return append([]string{head}, nameDoc(n)...)
}

// mostRecipesShown is how many recipes of a rule's examples are told of.
const mostRecipesShown = 8

// comesTo is what a part comes to in the recipes of the rule's examples, a line
// each.
func (h *here) comesTo(d *shoprule.Draft, rule *schema.Block, p *shoprule.Part, behindWhen bool) string {
	outcomes := d.ComesTo(lint.NewFileView(h.shop, h.file, h.today), rule, p.Source, behindWhen)
	if len(outcomes) == 0 {
		return ""
	}
	lines := []string{"In the rule's examples:", ""}
	for i, o := range outcomes {
		if i == mostRecipesShown {
			lines = append(lines, "- and "+things(len(outcomes)-i, "other"))
			break
		}
		sort := "faulty"
		if o.Sound {
			sort = "sound"
		}
		says := h.plain(strings.Join(o.Values, "; "))
		if says == "" {
			says = h.plain(o.Lacks)
		}
		lines = append(lines, "- "+h.title(o.Recipe)+", "+sort+": "+says)
	}
	return strings.Join(lines, "\n")
}

// exampleSays is what an example is for, and what the rule says of each recipe
// in it.
func (h *here) exampleSays(b *schema.Block) []string {
	says := []string{"**" + b.Name() + "** " + b.Spec.Doc}
	rule := topOf(b)
	proof := shoprule.Prove(lint.NewFileView(h.shop, h.file, h.today), rule)
	for _, e := range proof.Examples {
		if e.Block != b {
			continue
		}
		if e.Says != "" {
			return append(says, h.plain(fullStop(e.Says)))
		}
		var lines []string
		for _, recipe := range e.Recipes {
			lines = append(lines, "- "+h.plain(recipe))
		}
		return append(says, "As it should be:\n\n"+strings.Join(lines, "\n"))
	}
	if !proof.Readable {
		says = append(says, "The rule cannot be read yet, so it is not tried.")
	}
	return says
}

// ruleSays is what the rule says of a recipe of one of its examples.
func (h *here) ruleSays(recipe *schema.Block) string {
	proof := shoprule.Prove(lint.NewFileView(h.shop, h.file, h.today), topOf(recipe))
	for _, e := range proof.Examples {
		if e.Block != recipe.Parent {
			continue
		}
		for _, said := range e.Recipes {
			if of, found := strings.CutPrefix(said, recipe.Title()+": "); found {
				return "This rule: " + h.plain(fullStop(of))
			}
		}
		if strings.HasPrefix(e.Says, recipe.Title()+" ") {
			return "This rule: " + h.plain(fullStop(e.Says))
		}
	}
	return ""
}

// restsText is how a rule of the shop's own is proved, and the trials that bear
// it out.
func (h *here) restsText(rule *schema.Block) []string {
	proof := shoprule.Prove(lint.NewFileView(h.shop, rule.File, h.today), rule)
	says := []string{fullSentence("examples: " + proofText(&proof))}
	var lines []string
	for _, trial := range explained.Behind(h.shop, rule) {
		lines = append(lines, "- "+h.plain(trialSays(&trial)))
	}
	if len(lines) > 0 {
		says = append(says, "It rests on:\n\n"+strings.Join(lines, "\n"))
	}
	return says
}

// bearsText is which rules rest on a trial.
func (h *here) bearsText(trial *schema.Block) string {
	t := explained.TrialOf(h.shop, trial)
	text := schema.Capital(h.trialText(trial))
	if len(t.Bears) > 0 {
		text += ": " + h.plain(strings.Join(t.Bears, ", "))
	}
	return text + "."
}
