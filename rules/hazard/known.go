package hazard

import "strings"

// Known is a substance that fragrances often hold, with the classification
// that is usual for it. It serves to complete what is typed and to notice
// what a sheet seems to leave out. The supplier's sheet always goes first:
// nothing is ever judged by this table.
type Known struct {
	Name       string
	CAS        string
	Others     []string // further names, as labels print them
	Hazards    []string // as a component lists them
	Limit      string   // specific concentration limit; "" where none is known
	Harmonised bool     // stands in Annex VI; else as suppliers notify it
	Source     string
	Aldehyde   bool // sums of irritants may fall short for it (Annex I, 3.2.3.3.4)
	Phenol     bool
}

// tableDate is when the table was last gone through.
const tableDate = "2026-11"

const (
	notified = "as commonly notified by suppliers, from memory, " + tableDate
	annexVI  = "Annex VI of Regulation (EC) No 1272/2008"
	memory   = ", from memory, " + tableDate
)

var known = []Known{
	{Name: "d-limonene", CAS: "5989-27-5", Others: []string{"limonene", "(R)-p-mentha-1,8-diene"}, Harmonised: true, Source: annexVI + ", 601-096-00-2 (17th adaptation)" + memory,
		Hazards: []string{"Flam. Liq. 3 H226", "Asp. Tox. 1 H304", "Skin Irrit. 2 H315", "Skin Sens. 1B H317", "Aquatic Acute 1 H400", "Aquatic Chronic 3 H412"}},
	{Name: "dl-limonene", CAS: "138-86-3", Others: []string{"limonene", "dipentene"}, Harmonised: true, Source: annexVI + ", 601-029-00-7" + memory,
		Hazards: []string{"Flam. Liq. 3 H226", "Skin Irrit. 2 H315", "Skin Sens. 1 H317", "Aquatic Acute 1 H400", "Aquatic Chronic 1 H410"}},
	{Name: "l-limonene", CAS: "5989-54-8", Others: []string{"limonene"}, Harmonised: true, Source: annexVI + ", 601-029-00-7" + memory,
		Hazards: []string{"Flam. Liq. 3 H226", "Skin Irrit. 2 H315", "Skin Sens. 1 H317", "Aquatic Acute 1 H400", "Aquatic Chronic 1 H410"}},
	{Name: "linalool", CAS: "78-70-6", Harmonised: true, Source: annexVI + ", 603-235-00-2" + memory, Hazards: []string{"Skin Sens. 1B H317"}},
	{Name: "citral", CAS: "5392-40-5", Harmonised: true, Aldehyde: true, Source: annexVI + ", 605-019-00-3" + memory, Hazards: []string{"Skin Irrit. 2 H315", "Skin Sens. 1 H317"}},
	{Name: "geraniol", CAS: "106-24-1", Source: "sources differ on whether it stands in Annex VI" + memory, Hazards: []string{"Skin Irrit. 2 H315", "Eye Dam. 1 H318", "Skin Sens. 1 H317"}},
	{Name: "eugenol", CAS: "97-53-0", Phenol: true, Source: notified, Hazards: []string{"Eye Irrit. 2 H319", "Skin Sens. 1B H317"}},
	{Name: "isoeugenol", CAS: "97-54-1", Phenol: true, Harmonised: true, Limit: "0.01 %", Source: annexVI + ", 604-094-00-X" + memory, Hazards: []string{"Skin Sens. 1A H317"}},
	{Name: "cinnamal", CAS: "104-55-2", Others: []string{"cinnamaldehyde"}, Aldehyde: true, Harmonised: true, Limit: "0.01 %", Source: annexVI + " (21st adaptation, applies from 2025-09-01), looked up in " + tableDate,
		Hazards: []string{"Skin Sens. 1A H317"}},
	{Name: "coumarin", CAS: "91-64-5", Source: notified, Hazards: []string{"Acute Tox. 4 H302", "Skin Sens. 1B H317"}},
	{Name: "hydroxycitronellal", CAS: "107-75-5", Aldehyde: true, Source: notified, Hazards: []string{"Eye Irrit. 2 H319", "Skin Sens. 1B H317"}},
	{Name: "citronellol", CAS: "106-22-9", Source: notified, Hazards: []string{"Skin Irrit. 2 H315", "Skin Sens. 1B H317", "Eye Irrit. 2 H319"}},
	{Name: "benzyl salicylate", CAS: "118-58-1", Harmonised: true, Source: annexVI + " (17th adaptation), looked up in " + tableDate, Hazards: []string{"Skin Sens. 1B H317"}},
	{Name: "benzyl alcohol", CAS: "100-51-6", Source: annexVI + ", 603-057-00-5, its newest form not looked up" + memory, Hazards: []string{"Acute Tox. 4 H302", "Acute Tox. 4 H332", "Eye Irrit. 2 H319"}},
	{Name: "benzyl benzoate", CAS: "120-51-4", Harmonised: true, Source: annexVI + ", 607-085-00-9" + memory, Hazards: []string{"Acute Tox. 4 H302", "Aquatic Chronic 2 H411"}},
	{Name: "hexyl cinnamal", CAS: "101-86-0", Others: []string{"alpha-hexylcinnamaldehyde", "hexyl cinnamaldehyde"}, Aldehyde: true, Source: notified,
		Hazards: []string{"Skin Sens. 1B H317", "Aquatic Acute 1 H400", "Aquatic Chronic 2 H411"}},
	{Name: "alpha-isomethyl ionone", CAS: "127-51-5", Source: notified, Hazards: []string{"Skin Irrit. 2 H315", "Skin Sens. 1B H317", "Aquatic Chronic 2 H411"}},
	{Name: "linalyl acetate", CAS: "115-95-7", Source: notified, Hazards: []string{"Skin Irrit. 2 H315", "Skin Sens. 1B H317", "Eye Irrit. 2 H319"}},
	{Name: "p-cymene", CAS: "99-87-6", Harmonised: true, Source: annexVI + ", 601-094-00-1, looked up in " + tableDate,
		Hazards: []string{"Flam. Liq. 3 H226", "Acute Tox. 3 H331", "Asp. Tox. 1 H304", "Aquatic Chronic 2 H411"}},
	{Name: "alpha-pinene", CAS: "80-56-8", Source: notified,
		Hazards: []string{"Flam. Liq. 3 H226", "Acute Tox. 4 H302", "Asp. Tox. 1 H304", "Skin Irrit. 2 H315", "Skin Sens. 1B H317", "Aquatic Acute 1 H400", "Aquatic Chronic 1 H410"}},
	{Name: "hexyl salicylate", CAS: "6259-76-3", Source: "opinion of the Committee for Risk Assessment, 2022; whether it stands in Annex VI yet is not known here" + memory,
		Hazards: []string{"Skin Sens. 1 H317", "Repr. 2 H361", "Aquatic Acute 1 H400", "Aquatic Chronic 1 H410"}},
	{Name: "hydroxyisohexyl 3-cyclohexene carboxaldehyde", CAS: "31906-04-4", Aldehyde: true, Harmonised: true, Source: annexVI + memory, Hazards: []string{"Skin Sens. 1A H317"}},
	{Name: "butylphenyl methylpropional", CAS: "80-54-6", Others: []string{"2-(4-tert-butylbenzyl)propionaldehyde"}, Aldehyde: true, Harmonised: true, Source: annexVI + " (15th adaptation)" + memory,
		Hazards: []string{"Acute Tox. 4 H302", "Skin Irrit. 2 H315", "Skin Sens. 1B H317", "Repr. 1B H360Fd", "Aquatic Chronic 3 H412"}},
	{Name: "vanillin", CAS: "121-33-5", Aldehyde: true, Source: notified, Hazards: []string{"Eye Irrit. 2 H319"}},
	{Name: "ethyl vanillin", CAS: "121-32-4", Aldehyde: true, Source: notified, Hazards: []string{"Eye Irrit. 2 H319"}},
	{Name: "hexamethylindanopyran", CAS: "1222-05-5", Others: []string{"HHCB"}, Harmonised: true, Source: annexVI + ", 603-212-00-7" + memory, Hazards: []string{"Aquatic Acute 1 H400", "Aquatic Chronic 1 H410"}},
	{Name: "diethyl phthalate", CAS: "84-66-2", Source: notified},
	{Name: "dipropylene glycol", CAS: "25265-71-8", Source: notified},
	{Name: "isopropyl myristate", CAS: "110-27-0", Source: notified},
}

// Find is the known substance of a CAS number.
func Find(cas string) (*Known, bool) {
	for i := range known {
		if cas != "" && known[i].CAS == cas {
			return &known[i], true
		}
	}
	return nil, false
}

// All are the known substances, to offer while one is typed.
func All() []Known { return known }

// Understated lists the harmonized entries of a substance that its
// classification lacks: it has neither them nor a graver category of the same
// class. Classes that the finished candle is not judged by are left out.
func (s *Substance) Understated() (lacking []Hazard, of *Known) {
	k, ok := Find(s.CAS)
	if !ok || !k.Harmonised {
		return nil, nil
	}
	for _, text := range k.Hazards {
		h, _ := Parse(text)
		if h.Class == Physical || h.Class == AspTox || s.covers(h) {
			continue
		}
		lacking = append(lacking, h)
	}
	return lacking, k
}

// covers says whether a substance is classified as gravely as an entry says.
func (s *Substance) covers(want Hazard) bool {
	for _, h := range s.Hazards {
		if h.Class == want.Class && h.Cat <= want.Cat && (want.Sub != 'A' || h.Sub == 'A' || h.Cat < want.Cat) && (h.Class != AcuteTox || h.Code[:3] == want.Code[:3]) {
			return true
		}
		if h.Class == SkinCorr && want.Class == SkinIrrit || h.Class == EyeDam && want.Class == EyeIrrit {
			return true
		}
	}
	return false
}

// GoesBy says whether a label's name stands for the substance: its own name,
// its CAS number, or another name that is known for that number.
func (s *Substance) GoesBy(name string) bool {
	name = strings.TrimSpace(name)
	if strings.EqualFold(name, s.Name) || s.CAS != "" && name == s.CAS {
		return true
	}
	k, ok := Find(s.CAS)
	if !ok {
		return false
	}
	for _, other := range k.Others {
		if strings.EqualFold(name, other) {
			return true
		}
	}
	return strings.EqualFold(name, k.Name)
}
