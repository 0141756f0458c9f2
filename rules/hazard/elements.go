package hazard

import (
	"slices"
	"strings"

	"wickrule/rules/batch"
	"wickrule/schema/quantity"
)

// Elements are what a label in a market carries for a classification.
// The words are offered; the supplier's sheet and the authority of the market
// decide. Precautions are a usual choice, from memory: which of them fit, whoever
// sells the candle decides (Articles 22 and 28).
type Elements struct {
	Market      string
	Signal      string       // "Danger", "Warning" or ""
	Pictograms  []string     // "GHS07"
	Statements  []string     // codes that must stand there: "H317", "EUH208"
	SmallPack   []string     // codes that a pack of up to 125 mL may leave off, with their precautions
	Names       []*Substance // the substances that must be named
	Precautions []string     // "P102"
	UFI         bool         // a unique formula identifier and a notice to the poison centers are due
	Net         bool         // the nominal quantity is due (Article 17(1)(b))
}

// Empty says whether a label need carry nothing.
func (e *Elements) Empty() bool {
	return len(e.Statements) == 0 && len(e.Pictograms) == 0 && e.Signal == ""
}

// smallPack is the content from which on nothing may be left off (Annex I,
// 1.5.2).
var smallPack = quantity.Int(125)

// Label is what a label in a market carries ("EU" or "UK"), on a vessel that
// holds so many mL of wax; where that is not known nothing is left off.
func (c *Classification) Label(market string, holds batch.Figure) Elements {
	e := Elements{Market: market}
	small := holds.Known() && !smallPack.Less(holds.Value)
	var results []Result
	for _, r := range c.Results {
		if (r.Class == DisruptsHumans || r.Class == DisruptsNature || r.Class == Lasting) && market != "EU" {
			continue // classes that Great Britain has not taken over
		}
		results = append(results, r)
	}
	for _, r := range results {
		s := stated(r.Code)
		if s.signal == danger || s.signal == warning && e.Signal == "" {
			e.Signal = s.signal
		}
		if s.sign != "" && signStands(r.Class, s.sign, results) {
			e.Pictograms = append(e.Pictograms, s.sign)
		}
		if !absorbed(r.Code, results) {
			e.statement(r.Code, small && s.small)
		}
		if r.Class.named() {
			for _, sub := range c.Steps[r.Step].Counted() {
				e.name(sub)
			}
		}
		e.UFI = e.UFI || market == "EU" && r.Class.Health()
		e.Net = true
	}
	for _, sub := range c.Elicits {
		e.name(sub)
	}
	if len(c.Elicits) > 0 && !c.Has(SkinSens) && !c.Has(RespSens) {
		e.Statements = append(e.Statements, "EUH208")
	}
	slices.Sort(e.Pictograms)
	e.Pictograms = slices.Compact(e.Pictograms)
	e.Precautions = precautions(e.Statements)
	return e
}

func (e *Elements) statement(code string, small bool) {
	list := &e.Statements
	if small {
		list = &e.SmallPack
	}
	if !slices.Contains(*list, code) {
		*list = append(*list, code)
	}
}

func (e *Elements) name(s *Substance) {
	if !slices.Contains(e.Names, s) {
		e.Names = append(e.Names, s)
	}
}

// named says whether the substances behind a class are named on the label
// (Article 18(3)(b)): not those behind irritation or harm to water.
func (c Class) named() bool {
	switch c {
	case SkinIrrit, EyeIrrit, AquaticAcute, AquaticChronic, Ozone:
		return false
	}
	return true
}

// signStands applies the precedence of pictograms (Article 26): the exclamation
// mark gives way to the skull, for irritation to the corrosion sign, and for
// irritation and skin sensitization to the health sign of respiratory
// sensitization.
func signStands(class Class, sign string, all []Result) bool {
	if sign != "GHS07" {
		return true
	}
	irritates := class == SkinIrrit || class == EyeIrrit
	for _, r := range all {
		other := stated(r.Code).sign
		if other == "GHS06" || other == "GHS05" && irritates || r.Class == RespSens && (irritates || class == SkinSens) {
			return false
		}
	}
	return true
}

// absorbed says whether a statement only repeats what another says (Article
// 27).
func absorbed(code string, all []Result) bool {
	for _, r := range all {
		if code == "H400" && r.Code == "H410" || code == "H318" && r.Code == "H314" {
			return true
		}
	}
	return false
}

// saysMore are statements that a label may carry in place of another: they say
// all of it and more.
var saysMore = map[string][]string{
	"H302": {"H301", "H300"}, "H301": {"H300"}, "H312": {"H311", "H310"}, "H311": {"H310"}, "H332": {"H331", "H330"}, "H331": {"H330"},
	"H315": {"H314"}, "H318": {"H314"}, "H319": {"H318", "H314"}, "EUH208": {"H317", "H334"},
	"H400": {"H410"}, "H411": {"H410"}, "H412": {"H411", "H410"}, "H413": {"H412", "H411", "H410"},
	"H341": {"H340"}, "H351": {"H350"}, "H361": {"H360"}, "H371": {"H370"}, "H373": {"H372"},
}

// Carries says whether the codes on a label cover a statement. They may have
// words behind them.
func Carries(codes []string, wanted string) bool {
	for _, c := range codes {
		has, _, _ := strings.Cut(strings.TrimSpace(c), " ")
		has = strings.TrimRight(has, ".,:;")
		if has == wanted || has != "" && len(wanted) == 4 && strings.HasPrefix(has, wanted) {
			return true
		}
		for _, more := range saysMore[wanted] {
			if strings.HasPrefix(has, more) {
				return true
			}
		}
	}
	return false
}

// Lacks is what a label does not carry of what it must, with its own words,
// lists of codes and names.
func (e *Elements) Lacks(signals, pictograms, statements, names []string) Elements {
	lacks := Elements{Market: e.Market}
	if e.Signal != "" && !slices.ContainsFunc(signals, func(s string) bool {
		return strings.EqualFold(s, e.Signal) || strings.EqualFold(s, danger)
	}) {
		lacks.Signal = e.Signal
	}
	for _, p := range e.Pictograms {
		if !slices.Contains(pictograms, p) && !(p == "GHS07" && slices.Contains(pictograms, "GHS06")) {
			lacks.Pictograms = append(lacks.Pictograms, p)
		}
	}
	for _, code := range e.Statements {
		if !Carries(statements, code) {
			lacks.Statements = append(lacks.Statements, code)
		}
	}
	for _, s := range e.Names {
		if !slices.ContainsFunc(names, s.GoesBy) {
			lacks.Names = append(lacks.Names, s)
		}
	}
	return lacks
}

// Extra is what a label carries beyond what it need, signs and statements; what
// a small pack may leave off is no extra.
func (e *Elements) Extra(pictograms, statements []string) Elements {
	extra := Elements{Market: e.Market}
	for _, sign := range pictograms {
		if !slices.Contains(e.Pictograms, sign) {
			extra.Pictograms = append(extra.Pictograms, sign)
		}
	}
	for _, code := range statements {
		founded := func(due string) bool { return Carries([]string{code}, due) }
		if !slices.ContainsFunc(e.Statements, founded) && !slices.ContainsFunc(e.SmallPack, founded) {
			extra.Statements = append(extra.Statements, code)
		}
	}
	return extra
}

// None says whether nothing is lacking.
func (e *Elements) None() bool { return e.Empty() && len(e.Names) == 0 }

// String is the label text to offer: "Warning. H317 May cause an allergic skin
// reaction. Contains d-limonene, linalool."
func (e *Elements) String() string {
	var words []string
	for _, p := range e.Pictograms {
		words = append(words, "["+p+"]")
	}
	if e.Signal != "" {
		words = append(words, e.Signal+".")
	}
	names := NamesOf(e.Names)
	contained := false
	for _, code := range e.Statements {
		if code == "EUH208" {
			words = append(words, "EUH208 Contains "+names+". May produce an allergic reaction.")
			contained = true
			continue
		}
		words = append(words, code+" "+Words(code))
	}
	if names != "" && !contained {
		words = append(words, "Contains "+names+".")
	}
	if len(e.Precautions) > 0 {
		words = append(words, strings.Join(e.Precautions, ", ")+".")
	}
	return strings.Join(words, " ")
}

// Decides stands under every text that offers what a label carries.
const Decides = "the supplier's safety data sheets and the authority of the market decide"

// Offer is the label text to offer, with what it rests on.
func (e *Elements) Offer() string {
	text := "a label for the " + e.Market + " could read: " + e.String() + e.terms()
	return text + " This is an offer worked out from what the stock states; " + Decides
}

// terms is what is to be known of the label text beside its words.
func (e *Elements) terms() string {
	text := ""
	if len(e.Precautions) > 0 {
		text += " The precautions are a usual choice, from memory."
	}
	if len(e.SmallPack) > 0 {
		text += " A pack of at most 125 mL may leave out " + strings.Join(e.SmallPack, ", ") + " (Annex I, 1.5.2)."
	}
	return text
}

// Due is what a market asks for beside the label text: "" for nothing.
func (e *Elements) Due() string {
	text := strings.TrimSpace(e.terms())
	if e.UFI {
		text = strings.TrimSpace(text + " A unique formula identifier (UFI) and a notice to the poison centers are due before it is sold (Article 45, Annex VIII).")
	}
	return text
}

// NamesOf lists substances by name.
func NamesOf(all []*Substance) string {
	names := make([]string, len(all))
	for i, s := range all {
		names[i] = s.Name
	}
	return strings.Join(names, ", ")
}

// usual are precautions that are usual beside a statement when the public buys.
var usual = []struct {
	code        string
	precautions []string
}{
	{"H300", []string{"P264", "P301+P310"}}, {"H301", []string{"P264", "P301+P310"}}, {"H302", []string{"P264", "P301+P312"}},
	{"H310", []string{"P280", "P302+P352", "P310"}}, {"H311", []string{"P280", "P302+P352"}}, {"H312", []string{"P280", "P302+P352"}},
	{"H330", []string{"P260", "P304+P340", "P310"}}, {"H331", []string{"P261", "P304+P340", "P311"}}, {"H332", []string{"P261", "P304+P340"}},
	{"H314", []string{"P260", "P280", "P305+P351+P338", "P310"}}, {"H318", []string{"P280", "P305+P351+P338", "P310"}},
	{"H334", []string{"P261", "P304+P340", "P342+P311"}}, {"H340", []string{"P201", "P280", "P308+P313"}}, {"H350", []string{"P201", "P280", "P308+P313"}},
	{"H360", []string{"P201", "P280", "P308+P313"}}, {"H341", []string{"P201", "P308+P313"}}, {"H351", []string{"P201", "P308+P313"}}, {"H361", []string{"P201", "P308+P313"}},
	{"H317", []string{"P280", "P302+P352", "P333+P313"}}, {"H319", []string{"P305+P351+P338", "P337+P313"}}, {"H315", []string{"P302+P352", "P332+P313"}},
	{"H400", []string{"P273", "P391"}}, {"H410", []string{"P273", "P391"}}, {"H411", []string{"P273", "P391"}}, {"H412", []string{"P273"}}, {"H413", []string{"P273"}},
}

// precautions are a usual choice beside the statements: at most six, one of
// them about disposal, as the public needs one (Article 28).
func precautions(statements []string) []string {
	var chosen []string
	for _, u := range usual {
		if slices.ContainsFunc(statements, func(s string) bool { return strings.HasPrefix(s, u.code) }) {
			for _, p := range u.precautions {
				if len(chosen) < 4 && !slices.Contains(chosen, p) {
					chosen = append(chosen, p)
				}
			}
		}
	}
	if chosen == nil {
		return nil
	}
	return append(append([]string{"P102"}, chosen...), "P501")
}
