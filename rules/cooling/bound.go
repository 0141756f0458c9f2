package cooling

import "math"

// surelyCool is an upper bound of what solve gives for the core, by reckoning
// each stage by itself and against the slower side: all latent and liquid heat
// is given off while the wax is no hotter than its solidus, through the wall
// alone and in still air that a wall only a little warmer than the room stirs;
// then the set wax cools. The first is the quasi-steady solution for a
// cylinder that sets inwards, with the heat of the liquid added to the latent
// heat. It is no proof: TestTheBoundsHold looks for a body that is slower.
func surelyCool(b body) float64 {
	if b.side.insulated {
		return math.Inf(1)
	}
	w := &b.wax
	film := b.side.film(b.air+5, b.air)
	film = 1 / (b.side.wall + 1/film)
	apart := w.solidus() - b.air
	heat := w.heatAt(b.pour)
	sets := heat * b.radius / (2 * apart) * (b.radius/(2*w.kSolid) + 1/film)
	aim := max(coreCool, b.air+1)
	tau := w.density * w.cSolid * b.radius / 2 * (1/film + b.radius/(2*w.kSolid))
	return sets + tau*math.Log(max(apart/(aim-b.air), 1))
}

// surelyOpen is a stretch of time within that in which solve has relief holes
// make sense: later than it has a skin of 3 mm, sooner than it has half set.
// The skin: first all heat of the liquid goes out through the slower of wall
// and top, all through alike, then a plane skin sets. Half set: quasi-steady in
// a cylinder with no heat but the latent, the wall no cooler than where wax
// begins to set, and sooner for its ends by more than short cylinders are. As
// above it is no proof, and tested on bodies of every build. Water round the
// wall sets both aside: then there is no such stretch.
func surelyOpen(b body) (from, to float64) {
	if b.bath.to > b.bath.from || b.side.insulated {
		return math.Inf(1), 0
	}
	w := &b.wax
	skin := func(f face, lump float64) float64 {
		resists := f.wall + 1/f.film(b.air+10, b.air)
		cools := w.density * w.cLiquid * lump * (resists + lump/(2*w.kLiquid)) * math.Log((b.pour-b.air)/(w.liquidus-b.air))
		sets := w.heatToMelt() * skins[1] / (w.solidus() - b.air) * (resists + skins[1]/(2*w.kSolid))
		return cools + sets
	}
	from = max(skin(b.side, b.radius/2), skin(b.top, min(b.depth, b.radius)))

	resists := b.side.wall + 1/b.side.film(w.liquidus, b.air)
	half := w.density * w.latent / (w.liquidus - b.air) *
		(b.radius*b.radius/(4*w.kSolid)*(0.75+0.5*math.Log(0.5)) + b.radius/2*resists*0.75)
	stout := 2 * b.radius / b.depth
	return from, half / (1 + 0.35*stout*stout)
}
