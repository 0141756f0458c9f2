package lint

// LevelsIn is how loud a rule speaks in a shop, with the shop's tune.
func LevelsIn(shop *Shop, r *Rule) Levels {
	return Levels{
		OwnUse: loudness(shop, r, Levels{}, OwnUse),
		Class:  loudness(shop, r, Levels{}, Class),
		Sale:   loudness(shop, r, Levels{}, Sale),
	}
}

// loudness is how loud a finding of the rule speaks: the rule's levels, or
// the finding's own, by what the recipe is made for, changed by the shop's
// tune. Where the rule is silent a tune does not wake it. A binding rule is
// never tuned below its level for what is made for sale, and one about the
// format for nothing: what cannot be read cannot be judged.
func loudness(shop *Shop, r *Rule, own Levels, m MadeFor) Level {
	if own == (Levels{}) {
		own = r.Levels
	}
	level := own.For(m)
	if level == Silent {
		return Silent
	}
	tune := shop.Tune(r.Name)
	if tune == nil {
		return level
	}
	tuned, ok := ParseLevel(tune.Get("level").Text())
	if !ok {
		return level
	}
	if r.binds(m) && tuned < level {
		return level
	}
	return tuned
}

// binds says whether what the rule finds in what is made so can be turned down
// by nothing.
func (r *Rule) binds(m MadeFor) bool { return r.Binding && (m == Sale || r.About == AboutFormat) }

// Binds says whether nothing may turn the finding down, whoever accepts it:
// somebody else lights this candle, or what cannot be read cannot be judged.
func (f *Found) Binds() bool {
	made := Sale
	if f.Recipe != nil {
		made = parseMadeFor(f.Recipe.Get("made_for").Text())
	}
	return f.Rule.binds(made)
}

// Loudness is how loud the rule speaks before a shop tunes it, in words: "for
// sale must, for a class should, for own use silent".
func (r *Rule) Loudness() string {
	text := "for sale " + r.Levels.Sale.Word() + ", for a class " + r.Levels.Class.Word() + ", for own use " + r.Levels.OwnUse.Word()
	if r.Levels == Every(r.Levels.Sale) {
		text = r.Levels.Sale.Word() + ", whatever it is made for"
	}
	switch {
	case r.About == AboutFormat && r.Binding:
		text += "; it is about how the text is written and can be neither conceded nor turned down"
	case r.About == AboutFormat:
		text += "; it is about how the text is written and cannot be conceded"
	case r.Binding:
		text += "; in what is made for sale it can be neither conceded nor turned down"
	}
	return text
}
