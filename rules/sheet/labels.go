package sheet

import (
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

// Label is what stands on one label that the steps put on, in our own words
// and not the standard's.
type Label struct {
	Title string   `json:"title"`
	On    string   `json:"on,omitempty"`
	Lines []string `json:"lines"`
}

// labels lists the labels in the order in which they are put on.
func (s *Sheet) labels(view *lint.View, b *batch.Batch) {
	for i := range b.Steps {
		step := &b.Steps[i]
		if step.Kind != "attach label" {
			continue
		}
		for _, item := range step.Block.Get("label").Items() {
			if stock, ok := view.Stock("label", item.Text); ok {
				s.Labels = append(s.Labels, Label{Title: stock.Title(), On: step.Block.Get("on").Text(), Lines: labelLines(stock)})
			}
		}
	}
}

func labelLines(stock *schema.Block) []string {
	lines := []string{}
	var words []string
	for _, item := range stock.Get("cautions").Items() {
		if c := schema.CautionNamed(item.Text); c != nil {
			words = append(words, c.Words)
		}
	}
	text := strings.Join(words, " ")
	signal := stock.Get("signal").Text()
	if hazards := listed(stock, "hazards"); hazards != "" {
		signal = "" // it belongs to the hazards and not to the cautions
	}
	if signal != "" {
		text = strings.TrimRight(signal+": "+text, ": ")
	}
	add := func(before, text string) {
		if text != "" {
			lines = append(lines, before+text)
		}
	}
	add("", text)
	add("Hazard signs: ", listed(stock, "pictograms"))
	if signal == "" {
		add("Signal word: ", stock.Get("signal").Text())
	}
	add("Hazard statements: ", listed(stock, "hazards"))
	add("Contains: ", listed(stock, "names"))
	add("Precautions: ", listed(stock, "precautions"))
	add("", stock.Get("ufi").Text())
	add("Net weight: ", stock.Get("net_weight").Text())
	add("", stock.Get("count_and_length").Text())
	add("", stock.Get("contact").Text())
	add("Lot: ", stock.Get("lot").Text())
	return lines
}

func listed(stock *schema.Block, attr string) string {
	var texts []string
	for _, item := range stock.Get(attr).Items() {
		texts = append(texts, item.Text)
	}
	return strings.Join(texts, ", ")
}
