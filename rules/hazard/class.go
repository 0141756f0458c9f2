package hazard

import (
	"fmt"
	"strings"
)

// Class is a hazard class of Regulation (EC) No 1272/2008.
type Class uint8

// The classes that are told apart. Physical stands for all classes of part 2:
// they belong to the neat oil, and the finished candle is a solid that none of
// them is taken over to. Outside stands for boxes of the UN system that the
// regulation did not take up, and for supplemental statements of a component.
const (
	NoClass Class = iota
	AcuteTox
	SkinCorr
	SkinIrrit
	EyeDam
	EyeIrrit
	RespSens
	SkinSens
	Muta
	Carc
	Repr
	Lact
	STOTSingle
	STOTRepeated
	AspTox
	AquaticAcute
	AquaticChronic
	Ozone
	DisruptsHumans
	DisruptsNature
	Lasting // PBT, vPvB, PMT, vPvM: which of them, the statement tells
	Physical
	Outside
)

// Route is the way that something acutely toxic gets into the body.
type Route uint8

const (
	NoRoute Route = iota
	Oral
	Dermal
	Inhaled // by a statement that does not say whether as vapor or as dust
	Vapor
	Dust // or mist
)

// Hazard is one entry of a component's classification.
type Hazard struct {
	Class Class
	Cat   int8  // 1 to 4; 0 where the class has no categories
	Sub   byte  // 'A', 'B', 'C', or 0 where it is not split
	Route Route // of AcuteTox
	Code  string
}

// String is the entry as a sheet gives it: "Skin Sens. 1B H317".
func (h Hazard) String() string { return h.Name() + " " + h.Code }

// Name is class and category: "Skin Sens. 1B".
func (h Hazard) Name() string {
	name := abbreviation(h.Class)
	if h.Class == Lasting {
		name = lastingName(h.Code)
	}
	if h.Cat == 0 {
		return name
	}
	name = fmt.Sprintf("%s %d", name, h.Cat)
	if h.Sub != 0 {
		name += string(h.Sub)
	}
	return name
}

// spelling is how a class is written: its abbreviation in Annex VI and what
// else sheets call it, in small letters without dots.
type spelling struct {
	class  Class
	short  string
	others []string
}

var spellings = []spelling{
	{AcuteTox, "Acute Tox.", []string{"acute tox", "acute toxicity"}},
	{SkinCorr, "Skin Corr.", []string{"skin corr", "skin corrosion"}},
	{SkinIrrit, "Skin Irrit.", []string{"skin irrit", "skin irritation"}},
	{EyeDam, "Eye Dam.", []string{"eye dam", "eye damage", "serious eye damage"}},
	{EyeIrrit, "Eye Irrit.", []string{"eye irrit", "eye irritation", "serious eye irritation"}},
	{RespSens, "Resp. Sens.", []string{"resp sens", "respiratory sensitisation", "respiratory sensitization", "respiratory sensitiser", "respiratory sensitizer"}},
	{SkinSens, "Skin Sens.", []string{"skin sens", "skin sensitisation", "skin sensitization", "skin sensitiser", "skin sensitizer"}},
	{Muta, "Muta.", []string{"muta", "germ cell mutagenicity", "mutagenicity"}},
	{Carc, "Carc.", []string{"carc", "carcinogenicity"}},
	{Repr, "Repr.", []string{"repr", "reproductive toxicity", "toxic for reproduction"}},
	{Lact, "Lact.", []string{"lact"}},
	{STOTSingle, "STOT SE", []string{"stot se", "stot single exposure"}},
	{STOTRepeated, "STOT RE", []string{"stot re", "stot repeated exposure"}},
	{AspTox, "Asp. Tox.", []string{"asp tox", "aspiration hazard", "aspiration toxicity"}},
	{AquaticAcute, "Aquatic Acute", []string{"aquatic acute", "acute aquatic toxicity", "acute aquatic hazard"}},
	{AquaticChronic, "Aquatic Chronic", []string{"aquatic chronic", "chronic aquatic toxicity", "chronic aquatic hazard"}},
	{Ozone, "Ozone", []string{"ozone", "hazardous to the ozone layer"}},
	{DisruptsHumans, "ED HH", []string{"ed hh"}},
	{DisruptsNature, "ED ENV", []string{"ed env"}},
	{Lasting, "PBT", []string{"pbt"}}, {Lasting, "vPvB", []string{"vpvb"}},
	{Lasting, "PMT", []string{"pmt"}}, {Lasting, "vPvM", []string{"vpvm"}},
	{Physical, "Flam. Liq.", []string{"flam liq", "flammable liquid", "flammable liquids"}},
	{Physical, "Flam. Sol.", []string{"flam sol", "flammable solid", "flammable solids"}},
}

func abbreviation(c Class) string {
	for _, s := range spellings {
		if s.class == c {
			return s.short
		}
	}
	return ""
}

func lastingName(code string) string {
	switch code {
	case "EUH441":
		return "vPvB"
	case "EUH450":
		return "PMT"
	case "EUH451":
		return "vPvM"
	}
	return "PBT"
}

// Parse reads an entry of a component's hazards: class, category and statement
// ("Skin Sens. 1B H317"). The statement alone is enough where only one
// category has it, or all that have it are judged alike; H317 alone is not,
// since 1A counts from a tenth of what 1B counts from.
func Parse(text string) (Hazard, bool) {
	if h, ok := parseUsual(text); ok {
		return h, true
	}
	h := Hazard{}
	var name []string
	for word := range strings.FieldsFuncSeq(text, func(r rune) bool { return strings.ContainsRune(" \u00a0,;:.()/-–—", r) }) {
		lower := strings.ToLower(word)
		switch {
		case isCode(lower):
			if h.Code != "" {
				return h, false // two entries in one
			}
			h.Code = strings.ToUpper(lower[:codeDigits(lower)]) + word[codeDigits(lower):]
		case isCategory(lower) && h.Cat == 0:
			h.Cat = int8(lower[0] - '0')
			if len(lower) == 2 {
				h.Sub = lower[1] - 'a' + 'A'
			}
		case routeNamed(lower) != NoRoute:
			h.Route = routeNamed(lower)
		case lower == "category" || lower == "cat":
		default:
			name = append(name, lower)
		}
	}
	if len(name) > 0 {
		h.Class = named(strings.Join(name, " "))
		if h.Class == NoClass && !isPhysical(h.Code) {
			return h, false
		}
	}
	return h, h.settle()
}

// parseUsual reads an entry written as Annex VI has it, which nearly all are,
// without taking it to pieces.
func parseUsual(text string) (h Hazard, ok bool) {
	for i := range spellings {
		short := spellings[i].short
		if len(text) > len(short)+2 && text[len(short)] == ' ' && strings.HasPrefix(text, short) {
			h.Class, text = spellings[i].class, text[len(short)+1:]
			break
		}
	}
	category, code, _ := strings.Cut(text, " ")
	if h.Class == NoClass || len(category) == 0 || len(category) > 2 || category[0] < '1' || category[0] > '4' || len(code) < 4 || code[0] != 'H' || strings.Trim(code[4:], "FDfdi") != "" {
		return h, false
	}
	h.Cat, h.Code = int8(category[0]-'0'), code
	if len(category) == 2 {
		if h.Sub = category[1]; h.Sub < 'A' || h.Sub > 'C' {
			return h, false
		}
	}
	return h, h.settle()
}

// settle fills in what the rest of the entry tells, and says whether all of it
// fits together.
func (h *Hazard) settle() bool {
	switch {
	case h.Class == Physical || isPhysical(h.Code):
		h.Class = Physical
		return true
	case h.Code == "EUH066" || h.Code == "EUH071" || outside[h.Code]:
		h.Class = Outside
		return true
	case h.Class == EyeIrrit:
		h.Sub = 0 // the UN's 2A and 2B are one category here
		if h.Code == "H320" {
			h.Code = "H319"
		}
	}
	if h.Code == "" {
		return h.codeFromCategory()
	}
	fits := 0
	for i := range statements {
		s := &statements[i]
		if !strings.HasPrefix(h.Code, s.code) || h.Class != NoClass && h.Class != s.class || h.Cat != 0 && s.from != 0 && (h.Cat < s.from || h.Cat > s.to) {
			continue
		}
		if fits++; fits > 1 {
			return false
		}
		if h.Class == NoClass || h.Cat == 0 && s.from != 0 {
			if s.splits || s.from != s.to {
				return false // the statement alone does not tell what it counts from
			}
			h.Cat = s.from
		}
		h.Class = s.class
		if s.class == AcuteTox && (h.Route == NoRoute || s.route != Inhaled) {
			h.Route = s.route
		}
	}
	return fits == 1
}

// codeFromCategory finds the one statement of a class and category.
func (h *Hazard) codeFromCategory() bool {
	for i := range statements {
		s := &statements[i]
		if s.class != h.Class || s.from != 0 && (h.Cat < s.from || h.Cat > s.to) || h.Class == AcuteTox && !s.route.of(h.Route) || h.Class == Lasting {
			continue
		}
		if h.Code != "" {
			return false
		}
		h.Code = s.code
	}
	return h.Code != ""
}

func (r Route) of(said Route) bool {
	return r == said || r == Inhaled && (said == Vapor || said == Dust)
}

// outside are statements of the UN system that the regulation did not take up.
var outside = map[string]bool{"H303": true, "H305": true, "H313": true, "H316": true, "H333": true, "H401": true, "H402": true}

// named is the class that a name stands for. Behind those of harm to organs the
// organ may be named.
func named(name string) Class {
	for _, s := range spellings {
		organs := s.class == STOTSingle || s.class == STOTRepeated
		for _, other := range s.others {
			if other == name || organs && strings.HasPrefix(name, other+" ") {
				return s.class
			}
		}
	}
	return NoClass
}

// isCode says whether a word is a hazard statement's code: h317, h360fd, euh208.
func isCode(lower string) bool {
	n := codeDigits(lower)
	return n > 0 && len(lower)-n <= 2 && strings.Trim(lower[n:], "fdi") == ""
}

// codeDigits is the length of a code without the letters behind it; 0 where
// the word is none.
func codeDigits(lower string) int {
	digits := strings.TrimPrefix(lower, "eu")
	if len(digits) < 4 || digits[0] != 'h' || strings.Trim(digits[1:4], "0123456789") != "" {
		return 0
	}
	return len(lower) - len(digits) + 4
}

func isPhysical(code string) bool { return len(code) == 4 && strings.HasPrefix(code, "H2") }

func isCategory(lower string) bool {
	return (len(lower) == 1 || len(lower) == 2 && 'a' <= lower[1] && lower[1] <= 'c') && '1' <= lower[0] && lower[0] <= '5'
}

func routeNamed(lower string) Route {
	switch lower {
	case "oral":
		return Oral
	case "dermal":
		return Dermal
	case "inhalation", "inhaled", "inhal":
		return Inhaled
	case "vapor", "vapour", "vapors", "vapours":
		return Vapor
	case "dust", "dusts", "mist", "mists":
		return Dust
	}
	return NoRoute
}
