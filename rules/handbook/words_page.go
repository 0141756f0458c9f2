package handbook

import (
	"html/template"
	"strings"

	"wickrule/schema"
)

// wordsPage is the words of the trade by their first letter.
type wordsPage struct{ Letters []letter }

type letter struct {
	Name, Anchor string
	Terms        []termView
}

type termView struct {
	Name, Anchor, Also string
	Means              template.HTML
	Rules, See         []neighbor
}

func (b *book) wordsPage() {
	var p wordsPage
	titles := map[string]string{}
	for _, r := range b.rules {
		if !b.own(r) {
			titles[r.Name] = schema.Capital(r.Title)
		}
	}
	for _, t := range b.terms.all {
		first := strings.ToUpper(t.Name[:1])
		if n := len(p.Letters); n == 0 || p.Letters[n-1].Name != first {
			p.Letters = append(p.Letters, letter{Name: first, Anchor: "letter-" + strings.ToLower(first)})
		}
		v := termView{Name: t.Name, Anchor: termAnchor(t.Name), Also: strings.Join(t.Also, ", "),
			Means: b.links.prose(termAddress(t.Name)).line(t.Means)}
		for _, name := range t.Rules {
			if titles[name] != "" {
				v.Rules = append(v.Rules, neighbor{titles[name], RulePage(name, false)})
			}
		}
		for _, see := range t.See {
			v.See = append(v.See, neighbor{see, termAddress(see)})
		}
		last := &p.Letters[len(p.Letters)-1]
		last.Terms = append(last.Terms, v)
		b.index.add("word", t.Name, schema.Capital(t.Name), termAddress(t.Name), strings.Join(t.Sought, ", "), t.Means, v.Also+" "+strings.Join(t.Forms, " "))
	}
	b.page("words.html", "words", "Words", "The words of the trade", p)
}
