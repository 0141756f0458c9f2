package cooling

// Point is one point of the cooling curve.
type Point struct {
	Seconds    float64 // after the pour
	Core, Wall float64 // °C: the hottest wax, and the wall half way up
	Set        float64 // share of the wax that is set, 0 to 1
}
