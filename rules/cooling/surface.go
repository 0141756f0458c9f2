package cooling

import "math"

// face is how one face of the wax gives heat off.
type face struct {
	insulated  bool
	wall       float64 // m2K/W: the wall of the vessel
	fixed      float64 // W/m2K from its outside; 0: still air
	emissivity float64 // of its outside, for radiation to the room
	convection float64 // free convection in still air is this times (dT / size)^(1/4), in W/m2K
	size       float64 // m
}

// Free convection in still air at the usual pressure, as long as it does not
// swirl: h = C (dT/L)^(1/4). Source: the simplified relations for air in the
// handbooks of heat transfer (after McAdams, Heat Transmission; from memory).
const (
	upright   = 1.42 // a wall, by its height
	facingUp  = 1.32 // a hot face up, by its width
	stefan    = 5.670374419e-8
	absolute  = 273.15
	waxShines = 0.95
)

// water is the exchange with still or gently stirred water: 100 to 300 W/m2K,
// from memory.
const water = 150

// leastFilm keeps a face that is as cool as the room from counting as
// insulated, in W/m2K.
const leastFilm = 0.5

// film is the exchange of the outside with the room, in W/m2K.
func (f face) film(surface, air float64) float64 {
	if f.fixed > 0 {
		return f.fixed
	}
	apart := surface - air
	a, b := surface+absolute, air+absolute
	radiation := f.emissivity * stefan * (a*a + b*b) * (a + b)
	if apart <= 0 {
		return max(radiation, leastFilm)
	}
	return max(radiation+f.convection*math.Sqrt(math.Sqrt(apart/f.size)), leastFilm)
}

// most is the strongest exchange that a face can have, wall included: what a
// step in time must be stable for.
func (f face) most(b bath) float64 {
	if f.insulated {
		return 0
	}
	outside := f.fixed
	if outside == 0 {
		outside = f.film(130, 0)
	}
	if b.to > b.from {
		outside = max(outside, water)
	}
	return 1 / (f.wall + 1/outside)
}
