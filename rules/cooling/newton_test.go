package cooling

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Newton's law of cooling (Incropera and DeWitt, Fundamentals of Heat and Mass
// Transfer, the lumped capacitance method): 1 kg of 2300 J/kgK that gives off
// 10 W/m2K from 0.06 m2; then 40 min at 22 °C; then the time constant from two
// readings. Figures worked out with another program, to thirty digits.
func TestNewton(t *testing.T) {
	assert.InDelta(t, 3833.333333, 1*2300/(10*0.06), 1e-6)
	pot := Newton{Tau: 40 * 60, Air: 22}
	assert.InDelta(t, 60.211431562, pot.After(85, 20*60), 1e-9)
	assert.InDelta(t, 36.057200089, pot.After(85, 60*60), 1e-9)
	assert.InDelta(t, 15.277384428, pot.Until(85, 65)/60, 1e-9)
	fitted := Newton{Tau: 10 * 60 / math.Log((85.0-22)/(75-22)), Air: 22}
	assert.InDelta(t, 57.856035989, fitted.Tau/60, 1e-9)
	assert.InDelta(t, 22.097222581, fitted.Until(85, 65)/60, 1e-9)
	assert.Equal(t, 0.0, pot.Until(65, 65))
	assert.Equal(t, 0.0, pot.Until(65, 70))
	assert.True(t, math.IsInf(pot.Until(65, 22), 1))
}
