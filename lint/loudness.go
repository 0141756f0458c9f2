package lint

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
	if r.Binding && (m == Sale || r.About == AboutFormat) && tuned < level {
		return level
	}
	return tuned
}
