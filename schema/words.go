package schema

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// WordMeans is what one of the words of a closed list means, a plain sentence;
// "" for a word that says all there is by itself. What a caution means stands
// with the cautions.
func WordMeans(attr *AttrSpec, word string) string {
	if attr.Name == "languages" || attr.Name == "about" {
		return ""
	}
	if meaning := wordMeanings[attr.Name+" = "+word]; meaning != "" {
		return meaning
	}
	if attr.Name == "over" || attr.Name == "heat" {
		return wordMeanings["heat = "+word]
	}
	if attr.Name == "families" {
		return wordMeanings["family = "+word]
	}
	if attr.Name == "tested_for" {
		return wordMeanings["suits = "+word]
	}
	if strings.HasPrefix(attr.Name, "level_for_") {
		return wordMeanings["level = "+word]
	}
	if step := Step(word); step != nil && (attr.Name == "after" || attr.Name == "before") {
		return step.Doc
	}
	if attr.Name == "signal" {
		return wordMeanings["signal = "+strings.ToLower(word)]
	}
	return ""
}

var wordMeanings = map[string]string{
	"units = us":     "Ounces, inches and degrees Fahrenheit come first.",
	"units = metric": "Grams, millimeters and degrees Celsius come first.",

	"markets = US": "The United States: cautions after ASTM F2058, net weight in ounces and grams.",
	"markets = EU": "The European Union: cautions after EN 15494, and a hazard label by Regulation (EC) No 1272/2008.",
	"markets = UK": "The United Kingdom: cautions after EN 15494, and a hazard label by the same calculation as in the EU (GB CLP).",

	"made_for = sale":    "A stranger will light it: judged most strictly.",
	"made_for = class":   "Made by learners, who take it home and burn it: judged nearly as strictly, while what only concerns trade is said softly or not at all.",
	"made_for = own use": "It stays with whoever made it: what can start a fire is still said, what only concerns selling is not.",

	"makes = pillar":   "A candle that stands by itself, out of a mold.",
	"makes = jar":      "A candle that burns in the jar, tin or bowl it was poured into.",
	"makes = tealight": "A small candle in a cup of its own.",
	"makes = votive":   "A small candle that turns liquid in the glass it is burned in.",
	"makes = taper":    "A long thin candle, dipped or molded, for a holder.",
	"makes = melt":     "Scented wax without a wick, warmed in a burner.",

	"suits = pillar":    "Hard enough to stand by itself, and it lets go of the mold.",
	"suits = votive":    "For small candles that turn liquid in their glass.",
	"suits = container": "For candles that stay in their vessel; mostly too soft to stand alone.",
	"suits = taper":     "For dipping, or for long thin molds.",
	"suits = tealight":  "For tealight cups.",
	"suits = melt":      "For scented wax without a wick.",

	"family = paraffin": "Wax from mineral oil, in many grades: soft ones for jars, hard ones for pillars.",
	"family = soy":      "Hardened soybean oil: soft, poured cool, slow to give its scent.",
	"family = palm":     "Hardened palm oil: poured hot, sets in crystals.",
	"family = beeswax":  "Wax from the hive: melts at about 145 °F (63 °C) and smells of itself.",
	"family = coconut":  "Coconut oil, mostly blended: very soft, for containers only.",
	"family = rapeseed": "Hardened rapeseed oil: soft, for containers.",
	"family = stearin":  "Stearic acid used as a wax: hard, white, shrinks well away from the mold.",
	"family = gel":      "Mineral oil with a polymer: clear, for containers, and only with what is declared fit for gel.",
	"family = blend":    "A mixture with figures of its own; no family's usual figure stands in for it.",

	"heat = water bath":          "The pot stands in hot water, so that no place in it gets much hotter than boiling water; it must not boil dry.",
	"heat = thermostatic melter": "A melter that holds its temperature by itself. Check its dial against a thermometer in the wax.",
	"heat = direct heat":         "A flame, or a plate without a thermostat, under the pot: it overheats wax unseen and can set it alight.",
	"heat = microwave":           "Heats unevenly: one place can be far too hot beside wax that is still solid.",

	"looks_like = food": "A child may bite it: the EU and the UK restrict the sale of what looks like food.",
	"looks_like = toy":  "A child may play with it, lit or not.",

	"in = air":   "Still air: the slow and usual way.",
	"in = water": "A water bath takes the heat away several times faster. Never put hot glass in it.",

	"soot = none":  "No black at all.",
	"soot = light": "A gray breath on white paper held above, no more.",
	"soot = heavy": "Black on the glass or the wall, or smoke that can be seen.",

	"seen = mushroom":    "A black cap grew on the wick: mostly a wick too large, or too much oil.",
	"seen = drip":        "Wax ran down outside.",
	"seen = flare":       "The flame shot up, or more than the wick burned. The candle is not safe.",
	"seen = relight":     "It lit again by itself after it was put out. The candle is not safe.",
	"seen = crack":       "The container cracked. The candle is not safe.",
	"seen = tip":         "It fell over, or leaned until it would. The candle is not safe.",
	"seen = drowned":     "The wick went out in its own pool: mostly a wick too small.",
	"seen = tunnel":      "It burned a hole down the middle and left wax at the wall: mostly a wick too small.",
	"seen = after-smoke": "It went on smoking long after it was put out.",

	"result = pass": "The tester found nothing against it on this burn.",
	"result = fail": "The tester would not let this candle be sold.",

	"outcome = held":   "It did what was hoped, every time.",
	"outcome = failed": "It did not do what was hoped.",
	"outcome = mixed":  "It held sometimes, or up to a point; the notes say which.",
	"outcome = open":   "Still running: nothing may rest on it yet.",

	"level = must":     "Do not pour, sell or teach it like this.",
	"level = should":   "Put it right, or record a concession with its reason.",
	"level = consider": "Worth knowing.",
	"level = off":      "The rule says nothing. What guards against fire cannot be silenced in what is made for sale.",

	"components = none classified": "The safety data sheet was read and lists no classified substance.",

	"shape = cylinder": "Round, as wide at the top as at the bottom.",
	"shape = cone":     "Round, and comes to a point.",
	"shape = block":    "Four straight sides.",
	"shape = sphere":   "A ball.",
	"shape = other":    "No shape to reckon with: fill it with water and write what it holds.",

	"kind = jar":           "A jar or tumbler.",
	"kind = tin":           "A tin, which gets hot underneath: stand it on what can bear that.",
	"kind = tealight cup":  "The small cup of a tealight.",
	"kind = votive glass":  "A small glass that a votive candle is burned in.",
	"kind = bowl":          "A wide bowl, mostly with several wicks.",
	"kind = clamshell":     "A molded pack for wax melts; nothing burns in it.",
	"kind = botanical":     "Dried plants, which burn.",
	"kind = paper":         "Paper or card, which burns.",
	"kind = ribbon":        "Ribbon or cord, which burns and can draw up wax like a wick.",
	"kind = glitter":       "Loose glitter, which can gather at the wick and carry the flame.",
	"kind = mica":          "Mica powder, which clogs the wick.",
	"kind = crystal":       "Stones or crystals, which can crack in the heat or carry the flame as they gather soot and wax.",
	"kind = wax embed":     "Shapes of wax, which melt in with the rest.",
	"kind = plug":          "A plug pressed into the hole.",
	"kind = putty":         "Putty pressed over the hole; it softens if the pour is too hot.",
	"kind = screw":         "A screw that holds the wick in the hole; what it is bedded in decides how hot a pour it bears.",
	"kind = tape":          "Tape over the hole. Only foil tape bears hot wax; masking tape lets go.",
	"kind = hot-melt glue": "Glue from a gun: it softens far below the heat of most pours.",
	"kind = magnet":        "A magnet over the hole.",
	"kind = sticker":       "A sticker under the wick's tab.",
	"kind = silicone":      "Silicone sealant, cured before use.",

	"material = metal":         "Takes any pour; a cold one sets the first wax in rings.",
	"material = silicone":      "Takes any pour and lets go of the candle without help; it keeps the heat in, so wax sets slowly.",
	"material = polycarbonate": "Clear plastic. Ask its maker where it softens.",
	"material = acrylic":       "Clear plastic that softens near the heat of a hot pour.",
	"material = polypropylene": "Plastic that softens near the boiling point of water.",
	"material = polyethylene":  "Plastic that softens at or below the heat of a pillar pour.",
	"material = polystyrene":   "Plastic that softens at or near the heat of a pillar pour.",
	"material = printed PLA":   "A print that softens far below the heat of any pour.",
	"material = printed PETG":  "A print that softens below the heat of most pours.",
	"material = printed ABS":   "A print that softens near the heat of a pour.",
	"material = rubber":        "Latex or the like; it ages with heat and oil.",
	"material = glass":         "Cracks where hot wax meets cold glass, or where a flame stands too near.",
	"material = other":         "Anything else: ask its maker what heat it bears.",
	"material = tin":           "Tinplate: it does not crack, but gets hot underneath.",
	"material = aluminum":      "Does not crack, but gets hot all over.",
	"material = steel":         "Does not crack, but gets hot.",
	"material = ceramic":       "Glazed inside it holds wax; unglazed it soaks it up. It can crack like glass.",
	"material = concrete":      "Soaks up wax unless sealed, and then the whole vessel can burn like a wick.",
	"material = wood":          "Burns.",
	"material = other plastic": "Melts or burns, unless it is made for candles.",
	"material = shell":         "Uneven and untested: it can crack or overheat.",

	"finish = plain":     "Bare glass or metal.",
	"finish = glazed":    "Closed by a glaze, so that wax does not soak in.",
	"finish = sealed":    "Closed by a sealer, so that wax does not soak in.",
	"finish = painted":   "Paint can burn near the flame.",
	"finish = varnished": "Varnish can burn near the flame.",
	"finish = papered":   "Paper burns.",

	"construction = flat braid":   "Bends over as it burns and trims itself: for pillars and tapers.",
	"construction = square braid": "Stands upright and feeds more wax: for beeswax, palm and wide pillars.",
	"construction = cored":        "Stiffened by a core, so that it stands in liquid wax: for containers, votives and tealights.",
	"construction = wooden":       "A thin strip of wood, which burns with a wide, low flame.",

	"core = none":   "Nothing but the braid.",
	"core = cotton": "Stiffened with cotton.",
	"core = paper":  "Stiffened with paper.",
	"core = zinc":   "Stiffened with zinc. A metal core needs its maker's statement on lead.",
	"core = tin":    "Stiffened with tin. A metal core needs its maker's statement on lead.",
	"core = lead":   "Banned in the United States (16 CFR 1500.17(a)(13)): the lead goes into the air of the room.",

	"signal = warning": "The word before the cautions in the US, and the milder of the two signal words of a hazard label.",
	"signal = danger":  "The stronger of the two signal words of a hazard label.",

	"pictograms = GHS01": "Exploding bomb: explosives.",
	"pictograms = GHS02": "Flame: flammable.",
	"pictograms = GHS03": "Flame over circle: oxidizing.",
	"pictograms = GHS04": "Gas cylinder: gas under pressure.",
	"pictograms = GHS05": "Corrosion: burns skin, damages eyes.",
	"pictograms = GHS06": "Skull and crossbones: toxic.",
	"pictograms = GHS07": "Exclamation mark: irritates, can cause an allergic skin reaction, harmful.",
	"pictograms = GHS08": "Health hazard: lasting harm, or harm on breathing in.",
	"pictograms = GHS09": "Environment: toxic to life in water.",
}

// Capital is a text as a sentence begins.
func Capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return ""
	}
	return string(unicode.ToUpper(first)) + text[size:]
}
