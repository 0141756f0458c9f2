package handbook

import (
	"html/template"
	"slices"
	"strings"
	"unicode"

	"wickrule/lint"
	"wickrule/schema"
)

// linker knows what words in a text lead somewhere: terms of the trade, and
// the names of rules.
type linker struct {
	phrases map[string]string // in small letters; to an address
	shown   map[string]string // what stands in place of a phrase, where it is not itself
	rules   map[string]string // built-in and own, the own first
	most    int               // words of the longest phrase
}

func newLinker(t *terms, rules []*lint.Rule, own func(*lint.Rule) bool) *linker {
	l := &linker{phrases: map[string]string{}, shown: map[string]string{}, rules: map[string]string{}}
	for _, term := range t.all {
		for _, said := range slices.Concat([]string{term.Name}, term.Also, term.Forms) {
			words := len(strings.Fields(said))
			if term.Common && (words == 1 || said == term.Name) {
				continue
			}
			l.most = max(l.most, words)
			l.phrases[strings.ToLower(said)] = termAddress(term.Name)
		}
	}
	for _, f := range []struct{ phrase, shown, address string }{ // files that are pages here
		{"the house format, schema/format.md", "the house format", "format.html"},
		{"rules/shoprule/names.md", "the names a rule can ask for", namesFile},
	} {
		l.phrases[f.phrase], l.shown[f.phrase] = f.address, f.shown
		l.most = max(l.most, len(wordsIn(f.phrase)))
	}
	for _, r := range rules {
		l.rules[r.Name] = RulePage(r.Name, own(r))
	}
	return l
}

// prose turns texts of one page into HTML. The first time that a word leads
// somewhere it is a link.
type prose struct {
	links *linker
	done  map[string]bool // addresses that were linked, and the page's own
}

func (l *linker) prose(own ...string) *prose {
	p := &prose{l, map[string]bool{}}
	for _, address := range own {
		p.done[address] = true
	}
	return p
}

// paragraphs are the paragraphs of a text, which stand apart by an empty line.
func (p *prose) paragraphs(text string) []template.HTML {
	var all []template.HTML
	for paragraph := range strings.SplitSeq(strings.TrimSpace(text), "\n\n") {
		if paragraph = strings.Join(strings.Fields(paragraph), " "); paragraph != "" {
			all = append(all, p.line(paragraph))
		}
	}
	return all
}

// line is a text with what leads somewhere as links.
func (p *prose) line(text string) template.HTML {
	var b strings.Builder
	words := wordsIn(text)
	at := 0
	for i := 0; i < len(words); i++ {
		address, n := p.leads(text, words[i:])
		if address == "" {
			i += max(n, 1) - 1 // a phrase that is a link already is not taken apart
			continue
		}
		start, end := words[i].start, words[i+n-1].end
		b.WriteString(template.HTMLEscapeString(text[at:start]))
		shown := text[start:end]
		if other, ok := p.links.shown[strings.ToLower(shown)]; ok {
			if strings.TrimSpace(text[:start]) == "" {
				other = schema.Capital(other)
			}
			shown = other
		}
		b.WriteString(`<a href="` + template.HTMLEscapeString(address) + `">` + template.HTMLEscapeString(shown) + `</a>`)
		at = end
		i += n - 1
	}
	b.WriteString(template.HTMLEscapeString(text[at:]))
	return template.HTML(b.String())
}

// leads is the address that the longest phrase at the start of the words leads
// to, and how many words it has; no address where it was linked before, and no
// words where there is none.
func (p *prose) leads(text string, words []word) (address string, n int) {
	for n = min(p.links.most, len(words)); n > 0; n-- {
		said := text[words[0].start:words[n-1].end]
		address, ok := p.links.phrases[strings.ToLower(said)]
		if n == 1 && !ok {
			address, ok = p.links.rules[said]
			ok = ok && strings.Contains(said, "-")
		}
		if !ok {
			continue
		}
		if p.done[address] {
			return "", n
		}
		p.done[address] = true
		return address, n
	}
	return "", 0
}

// word is where a word stands in a text.
type word struct{ start, end int }

// wordsIn finds the words of a text: letters, digits and what holds them
// together.
func wordsIn(text string) []word {
	var all []word
	start := -1
	for i, r := range text {
		inside := unicode.IsLetter(r) || unicode.IsDigit(r) || r == '_' || start >= 0 && (r == '-' || r == '\'') || r == '%'
		switch {
		case inside && start < 0:
			start = i
		case !inside && start >= 0:
			all = append(all, word{start, i})
			start = -1
		}
	}
	if start >= 0 {
		all = append(all, word{start, len(text)})
	}
	return all
}
