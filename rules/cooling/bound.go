package cooling

import "math"

// surelyCool is an upper bound of what solve gives for the core, by reckoning
// each stage by itself and against the slower side: all latent and liquid heat
// is given off while the wax is no hotter than its solidus, through the wall
// alone and in still air that a wall only a little warmer than the room stirs;
// then the set wax cools. The first is the quasi-steady solution for a
// cylinder that sets inwards, with the heat of the liquid added to the latent
// heat. It is no proof: TestTheBoundHolds looks for a body that is slower.
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
