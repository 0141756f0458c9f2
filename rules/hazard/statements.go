package hazard

import "strings"

// statement is one hazard statement with what a label carries beside it:
// Regulation (EC) No 1272/2008, the label tables of Annex I (3.1.3 to 3.10.2,
// 4.1.4), the words of Annex III and the pictograms of Annex V. Those of the
// classes added by Delegated Regulation (EU) 2023/707 are from memory.
type statement struct {
	class    Class
	from, to int8  // the categories that have it; 0 where the class has none
	route    Route // of AcuteTox
	splits   bool  // its categories A and B count from different shares
	code     string
	words    string
	signal   string // Danger, Warning or ""
	sign     string // the pictogram, or ""
	small    bool   // words may be left off a pack of up to 125 mL (Annex I, 1.5.2.1.1)
}

const (
	danger  = "Danger"
	warning = "Warning"
)

var statements = []statement{
	{class: AcuteTox, from: 1, to: 2, route: Oral, code: "H300", words: "Fatal if swallowed.", signal: danger, sign: "GHS06"},
	{class: AcuteTox, from: 3, to: 3, route: Oral, code: "H301", words: "Toxic if swallowed.", signal: danger, sign: "GHS06"},
	{class: AcuteTox, from: 4, to: 4, route: Oral, code: "H302", words: "Harmful if swallowed.", signal: warning, sign: "GHS07"},
	{class: AcuteTox, from: 1, to: 2, route: Dermal, code: "H310", words: "Fatal in contact with skin.", signal: danger, sign: "GHS06"},
	{class: AcuteTox, from: 3, to: 3, route: Dermal, code: "H311", words: "Toxic in contact with skin.", signal: danger, sign: "GHS06"},
	{class: AcuteTox, from: 4, to: 4, route: Dermal, code: "H312", words: "Harmful in contact with skin.", signal: warning, sign: "GHS07"},
	{class: AcuteTox, from: 1, to: 2, route: Inhaled, code: "H330", words: "Fatal if inhaled.", signal: danger, sign: "GHS06"},
	{class: AcuteTox, from: 3, to: 3, route: Inhaled, code: "H331", words: "Toxic if inhaled.", signal: danger, sign: "GHS06"},
	{class: AcuteTox, from: 4, to: 4, route: Inhaled, code: "H332", words: "Harmful if inhaled.", signal: warning, sign: "GHS07"},
	{class: SkinCorr, from: 1, to: 1, code: "H314", words: "Causes severe skin burns and eye damage.", signal: danger, sign: "GHS05"},
	{class: SkinIrrit, from: 2, to: 2, code: "H315", words: "Causes skin irritation.", signal: warning, sign: "GHS07", small: true},
	{class: EyeDam, from: 1, to: 1, code: "H318", words: "Causes serious eye damage.", signal: danger, sign: "GHS05"},
	{class: EyeIrrit, from: 2, to: 2, code: "H319", words: "Causes serious eye irritation.", signal: warning, sign: "GHS07", small: true},
	{class: RespSens, from: 1, to: 1, splits: true, code: "H334", words: "May cause allergy or asthma symptoms or breathing difficulties if inhaled.", signal: danger, sign: "GHS08"},
	{class: SkinSens, from: 1, to: 1, splits: true, code: "H317", words: "May cause an allergic skin reaction.", signal: warning, sign: "GHS07"},
	{class: Muta, from: 1, to: 1, code: "H340", words: "May cause genetic defects.", signal: danger, sign: "GHS08"},
	{class: Muta, from: 2, to: 2, code: "H341", words: "Suspected of causing genetic defects.", signal: warning, sign: "GHS08"},
	{class: Carc, from: 1, to: 1, code: "H350", words: "May cause cancer.", signal: danger, sign: "GHS08"},
	{class: Carc, from: 2, to: 2, code: "H351", words: "Suspected of causing cancer.", signal: warning, sign: "GHS08"},
	{class: Repr, from: 1, to: 1, code: "H360", words: "May damage fertility or the unborn child.", signal: danger, sign: "GHS08"},
	{class: Repr, from: 2, to: 2, code: "H361", words: "Suspected of damaging fertility or the unborn child.", signal: warning, sign: "GHS08"},
	{class: Lact, code: "H362", words: "May cause harm to breast-fed children."},
	{class: STOTSingle, from: 1, to: 1, code: "H370", words: "Causes damage to organs.", signal: danger, sign: "GHS08"},
	{class: STOTSingle, from: 2, to: 2, code: "H371", words: "May cause damage to organs.", signal: warning, sign: "GHS08"},
	{class: STOTSingle, from: 3, to: 3, code: "H335", words: "May cause respiratory irritation.", signal: warning, sign: "GHS07"},
	{class: STOTSingle, from: 3, to: 3, code: "H336", words: "May cause drowsiness or dizziness.", signal: warning, sign: "GHS07"},
	{class: STOTRepeated, from: 1, to: 1, code: "H372", words: "Causes damage to organs through prolonged or repeated exposure.", signal: danger, sign: "GHS08"},
	{class: STOTRepeated, from: 2, to: 2, code: "H373", words: "May cause damage to organs through prolonged or repeated exposure.", signal: warning, sign: "GHS08"},
	{class: AspTox, from: 1, to: 1, code: "H304", words: "May be fatal if swallowed and enters airways.", signal: danger, sign: "GHS08"},
	{class: AquaticAcute, from: 1, to: 1, code: "H400", words: "Very toxic to aquatic life.", signal: warning, sign: "GHS09", small: true},
	{class: AquaticChronic, from: 1, to: 1, code: "H410", words: "Very toxic to aquatic life with long lasting effects.", signal: warning, sign: "GHS09", small: true},
	{class: AquaticChronic, from: 2, to: 2, code: "H411", words: "Toxic to aquatic life with long lasting effects.", sign: "GHS09", small: true},
	{class: AquaticChronic, from: 3, to: 3, code: "H412", words: "Harmful to aquatic life with long lasting effects."},
	{class: AquaticChronic, from: 4, to: 4, code: "H413", words: "May cause long lasting harmful effects to aquatic life."},
	{class: Ozone, from: 1, to: 1, code: "H420", words: "Harms public health and the environment by destroying ozone in the upper atmosphere.", signal: warning, sign: "GHS07"},
	{class: DisruptsHumans, from: 1, to: 1, code: "EUH380", words: "May cause endocrine disruption in humans.", signal: danger},
	{class: DisruptsHumans, from: 2, to: 2, code: "EUH381", words: "Suspected of causing endocrine disruption in humans.", signal: warning},
	{class: DisruptsNature, from: 1, to: 1, code: "EUH430", words: "May cause endocrine disruption in the environment.", signal: danger},
	{class: DisruptsNature, from: 2, to: 2, code: "EUH431", words: "Suspected of causing endocrine disruption in the environment.", signal: warning},
	{class: Lasting, code: "EUH440", words: "Accumulates in the environment and living organisms including in humans.", signal: danger},
	{class: Lasting, code: "EUH441", words: "Strongly accumulates in the environment and living organisms including in humans.", signal: danger},
	{class: Lasting, code: "EUH450", words: "Can cause long-lasting and diffuse contamination of water resources.", signal: danger},
	{class: Lasting, code: "EUH451", words: "Can cause very long-lasting and diffuse contamination of water resources.", signal: danger},
}

// stated is the statement of a code; letters behind it (H360FD) only tell it
// apart from its kin.
func stated(code string) *statement {
	for i := range statements {
		if strings.HasPrefix(code, statements[i].code) {
			return &statements[i]
		}
	}
	return nil
}

// Words is what a hazard statement says, "" for a code that is not known here.
func Words(code string) string {
	if code == "EUH208" {
		return "Contains …. May produce an allergic reaction."
	}
	if s := stated(code); s != nil {
		return s.words
	}
	return ""
}
