package drill

import (
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"math/rand/v2"
)

// draw is chance that comes out the same for the same seed.
type draw struct{ *rand.Rand }

// newDraw is the chance of one purpose under a seed.
func newDraw(seed string, purpose string, number int) draw {
	sum := sha256.Sum256(fmt.Appendf(nil, "%s\x00%s\x00%d", seed, purpose, number))
	return draw{rand.New(rand.NewPCG(binary.BigEndian.Uint64(sum[:8]), binary.BigEndian.Uint64(sum[8:16])))}
}

// shuffled is a list in another order.
func shuffled[T any](d draw, list []T) []T {
	mixed := append([]T(nil), list...)
	d.Shuffle(len(mixed), func(i, j int) { mixed[i], mixed[j] = mixed[j], mixed[i] })
	return mixed
}
