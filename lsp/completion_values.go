package lsp

import (
	"slices"
	"strings"
	"time"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/rules/batch"
	"wickrule/rules/formula"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// values offers what may be written behind an =.
func (a *asked) values() []offer {
	attr := a.attr
	if attr == nil {
		return nil
	}
	rest := strings.TrimLeft(a.rest, " \t")
	if !a.quoted && rest != "" && !strings.ContainsRune("#/}],", rune(rest[0])) {
		return nil // a value stands there already
	}
	var offers []offer
	switch attr.Type {
	case schema.YesNo:
		if a.quoted {
			return nil
		}
		for _, word := range []string{"true", "false"} {
			offers = append(offers, offer{label: word, text: word, kind: protocol.CompletionItemKindKeyword, span: a.word})
		}
		return offers
	case schema.Amount, schema.Figure:
		return a.amounts()
	case schema.Choice, schema.Choices:
		offers = a.choices()
	case schema.Key, schema.Keys:
		offers = a.keys(attr.Refers)
	case schema.Date:
		offers = a.dates(attr.Name == "until")
	case schema.Line:
		offers = a.lines()
	}
	isList := attr.Type == schema.Choices || attr.Type == schema.Keys || attr.Type == schema.Texts
	if a.list && !isList {
		return nil
	}
	kept := offers[:0]
	for _, o := range offers {
		if a.list && slices.Contains(a.others, o.label) {
			continue
		}
		o.text, o.span = a.inQuotes(o.label), a.word
		if !a.quoted && !a.list && strings.HasPrefix(attr.Example, "[") {
			o.text = "[" + o.text + "]"
		}
		kept = append(kept, o)
	}
	return kept
}

// inQuotes is a text with the quotes that are not there yet.
func (a *asked) inQuotes(text string) string {
	text = schema.Quote(text)
	if a.quoted {
		text = text[1:]
	}
	if a.quoted && a.closed {
		text = text[:len(text)-1]
	}
	return text
}

// choices are the words that an attribute may have. On a label's cautions the
// required ones come first; of markets, the shop's.
func (a *asked) choices() []offer {
	if a.attr.Name == "cautions" {
		return a.cautions()
	}
	words := slices.Clone(a.attr.Choices)
	why := map[string]string{}
	if a.attr.Name == "markets" && a.shop.Config != nil && a.parent != nil && a.parent.Name != "shop" {
		for _, m := range a.shop.Config.Get("markets").Items() {
			why[m.Text] = "the shop sells there"
		}
	}
	if a.attr.Name == "makes" && a.made != nil {
		for i := range a.made.Vessels {
			v := a.made.Vessels[i]
			if v.Stock == nil {
				continue
			}
			alone := batch.Batch{Vessels: a.made.Vessels} // as if the recipe did not say
			if what := alone.MadeIn(&v); what != "" && why[what] == "" {
				why[what] = "what " + v.Stock.Title() + " is for"
			}
		}
	}
	slices.SortStableFunc(words, func(x, y string) int { return trueFirst(why[x] != "", why[y] != "") })
	var offers []offer
	for _, word := range words {
		offers = append(offers, offer{label: word, kind: protocol.CompletionItemKindEnumMember, why: why[word],
			of: described{What: "attribute", In: a.parent.ID, Name: a.attr.Name}})
	}
	return offers
}

// dates offers today, and as the end of a concession a day in three months.
func (a *asked) dates(ends bool) []offer {
	today := offer{label: a.today, text: a.today, kind: protocol.CompletionItemKindValue, why: "today"}
	day, err := time.Parse(time.DateOnly, a.today)
	if err != nil {
		return nil
	}
	if !ends {
		return []offer{today}
	}
	later := today
	later.label, later.why = day.AddDate(0, 3, 0).Format(time.DateOnly), "in three months"
	return []offer{later, today}
}

// lines are the few texts that are known: the fingerprint of the formulation
// as it stands, for a test burn.
func (a *asked) lines() []offer {
	if a.attr.Name != "formula" || a.recipe == nil {
		return nil
	}
	f := formula.Of.In(a.look)
	var offers []offer
	add := func(code, of string) {
		if code == "" || slices.ContainsFunc(offers, func(o offer) bool { return o.label == code }) {
			return
		}
		offers = append(offers, offer{label: code, kind: protocol.CompletionItemKindValue, why: of + " as it stands: only if this burn was of it"})
	}
	for i, each := range f.Each {
		if v := &a.made.Vessels[i]; len(f.Each) > 1 && v.Block.Label == a.block.Get("vessel").Text() {
			add(each.Code, v.Stock.Title())
		}
	}
	add(f.Code, "the formulation")
	for i, each := range f.Each {
		add(each.Code, a.made.Vessels[i].Stock.Title())
	}
	return offers
}

// amounts offers the units behind a number, only those that the attribute
// takes; where nothing is typed yet, the words that may stand there and what
// the supplier states for this step.
func (a *asked) amounts() []offer {
	typed := a.typed(a.content, a.at)
	if !a.quoted {
		if a.at != a.word.End || strings.Trim(typed, "0123456789.") != "" {
			return nil
		}
		if typed == "" {
			return a.stated()
		}
		var offers []offer // a number without quotes and unit
		for _, u := range a.unitsTaken() {
			amount := typed + " " + u.named(typed)
			offers = append(offers, offer{label: amount, text: schema.Quote(amount), kind: protocol.CompletionItemKindUnit, detail: u.measures, span: a.word})
		}
		return offers
	}
	if strings.TrimSpace(typed) == "" {
		return a.stated()
	}
	number, unit := cutUnit(typed)
	if number == "" {
		return a.stated()
	}
	span := schema.Span{Start: a.at - int32(len(unit)), End: a.unitEnd()}
	before := ""
	if unit == "" && number[len(number)-1] != ' ' { // right behind the digits
		at := strings.LastIndexAny(number, " ") + 1
		before = number[at:]
		span.Start = a.at - int32(len(before))
		before += " "
	}
	close := `"`
	if a.closed || span.End < a.word.End {
		close = ""
	}
	var offers []offer
	for _, u := range a.unitsTaken() {
		name := u.named(number)
		o := offer{label: before + name, text: before + name + close, kind: protocol.CompletionItemKindUnit, detail: u.measures, span: span}
		if c := strings.TrimPrefix(name, "°"); c != name && unit != "" && strings.EqualFold(unit[:1], c) {
			o.filter = c
		}
		offers = append(offers, o)
	}
	return offers
}

// unitEnd is where the unit under the cursor ends: with the amount, unless
// more numbers follow.
func (a *asked) unitEnd() int32 {
	rest := a.content[a.at:a.word.End]
	if belowRim := strings.Index(rest, " below"); belowRim >= 0 {
		rest = rest[:belowRim]
	}
	if !strings.ContainsAny(rest, "0123456789") {
		return a.at + int32(len(rest))
	}
	for i := range len(rest) {
		if !inWord(rest[i]) && rest[i] < 0x80 && rest[i] != '%' && rest[i] != '/' || rest[i] >= '0' && rest[i] <= '9' {
			return a.at + int32(i)
		}
	}
	return a.at + int32(len(rest))
}

// cutUnit cuts the unit being typed off the end of an amount. Without a number
// before it there is none.
func cutUnit(typed string) (number, unit string) {
	at := strings.LastIndexAny(typed, "0123456789½¼¾⅓⅔⅛⅜⅝⅞")
	if at < 0 {
		return "", typed
	}
	for at++; at < len(typed) && typed[at] >= 0x80 && typed[at] < 0xC0; at++ { // the rest of a fraction's bytes
	}
	for at < len(typed) && (typed[at] == ' ' || typed[at] == '\t') {
		at++
	}
	return typed[:at], typed[at:]
}

func isOne(number string) bool {
	fields := strings.Fields(number)
	last := fields[len(fields)-1]
	return len(fields) == 1 && (last == "1" || strings.Contains(last, "/"))
}

// unitOffer is a unit as it is offered.
type unitOffer struct{ symbol, plural, measures string }

// named is the unit as it stands behind a number.
func (u unitOffer) named(number string) string {
	if u.plural != "" && !isOne(number) {
		return u.plural
	}
	return u.symbol
}

// unitsTaken are the units of the dimensions that the attribute takes, the
// usual ones in the shop's own system first.
func (a *asked) unitsTaken() []unitOffer {
	if a.attr.Type == schema.Figure {
		return []unitOffer{{symbol: a.attr.Unit}}
	}
	var own, others []unitOffer
	for i, d := range a.attr.Dims {
		if d == quantity.Share && i > 0 && a.attr.Dims[i-1] == quantity.Proportion {
			continue // read, but it has to be said of what
		}
		symbols := d.Units()
		for _, u := range quantity.Units() {
			if u.Dim == d && !slices.Contains(symbols, u.Symbol) && !slices.Contains(symbols, u.Plural) {
				symbols = append(symbols, u.Symbol)
			}
		}
		for _, symbol := range symbols {
			u := quantity.UnitOf(symbol)
			if u == nil {
				continue
			}
			add := unitOffer{symbol: u.Symbol, plural: u.Plural, measures: "a " + d.String()}
			to := &others
			if u.System == a.units() || u.Dim == quantity.Time || u.Dim == quantity.Count || u.Dim == quantity.Share || u.Dim == quantity.Proportion {
				to = &own
			}
			*to = append(*to, add)
			if d == quantity.Length && a.attr.BelowRim {
				*to = append(*to, unitOffer{symbol: u.Symbol + " below rim", measures: "from the rim down"})
			}
		}
	}
	return append(own, others...)
}

// stated offers what may stand in place of a number, and the range that the
// supplier states for what the step does. Nothing is offered that is not on
// the sheet.
func (a *asked) stated() []offer {
	var offers []offer
	for _, word := range a.attr.Words {
		offers = append(offers, offer{label: word, kind: protocol.CompletionItemKindEnumMember})
	}
	if a.made != nil {
		var s batch.Stated
		switch a.parent.ID + "." + a.attr.Name {
		case "step melt.to":
			s = a.made.MeltTo()
		case "step pour.at":
			s = a.made.PourAt()
		case "step add fragrance.at":
			s = a.made.AddFragranceAt()
		case "step cure.for":
			s = a.made.Cure()
		}
		if s.Known() && s.Family == "" && !s.Blend && s.Value.Known() {
			offers = append(offers, offer{label: s.Amount.String(), kind: protocol.CompletionItemKindValue, why: "stated for " + s.Whose()})
		}
	}
	for i := range offers {
		offers[i].text, offers[i].span = a.inQuotes(offers[i].label), a.word
	}
	return offers
}
