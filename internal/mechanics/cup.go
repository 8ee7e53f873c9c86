package mechanics

import (
	"scantling/internal/unit"
)

// Cup returns the free curvature of the slab in a state, across its width, when a
// point of moisture changes a size by the part of it given. Positive is hollow on the
// machined face. Each strip of the width bends by the first moment of its own free
// strain about its middle, 12/t3 times it, a strip over a channel being as thick as
// the wood below; the width adds them in the measure of what they take of it (beam
// theory). It is the upper limit: elastic, nothing holds the board.
func (m Moisture) Cup(perPoint float64) Curvature {
	sum, all := 0.0, 0.0
	for i, width := range m.net.widths {
		sum += float64(width * m.bending(i, perPoint))
		all += width
	}
	return Curvature(sum / all)
}

// bending is the curvature of one column by itself.
func (m Moisture) bending(column int, perPoint float64) float64 {
	n := m.net
	low, high := -1.0, 0.0
	for j := range n.deep {
		if n.holds[column*n.deep+j] > 0 {
			if low < 0 {
				low = n.bounds[j]
			}
			high = n.bounds[j+1]
		}
	}
	t, middle, sum := high-low, float64((low+high)/2), 0.0
	if t <= 0 {
		return 0
	}
	for j := range n.deep {
		k := column*n.deep + j
		if n.holds[k] > 0 {
			above, under := n.bounds[j]-middle, n.bounds[j+1]-middle
			moment := (float64(under*under) - float64(above*above)) / 2
			strain := float64(perPoint * m.at[k])
			sum += float64(strain * moment)
		}
	}
	return 12 * sum / (t * t * t)
}

// Way says on which face a cupped board is hollow.
type Way string

// The ways.
const (
	StaysFlat      Way = "flat"
	HollowMachined Way = "hollow on the machined face"
	HollowBack     Way = "hollow on the other face"
)

// Way returns on which face a board so bent is hollow; less than one millionth per
// millimetre (0.01 mm over 300) is flat.
func (k Curvature) Way() Way {
	switch {
	case k > 1e-6:
		return HollowMachined
	case k < -1e-6:
		return HollowBack
	}
	return StaysFlat
}

// Keeping is how a board waits.
type Keeping string

// The ways of keeping a machined board.
const (
	FlatOnBench  Keeping = "flat on the bench"      // the machined face up: the other is shut off from the air
	OnEdge       Keeping = "on edge"                // both faces open
	Stickered    Keeping = "stickered"              // both faces open
	BothMachined Keeping = "machined on both faces" // on edge, and the other face cut alike
	Weighted     Keeping = "stickered under weight" // both faces open, held flat while it lasts
	FaceDown     Keeping = "face down on the bench" // the machined face is shut off
)

// Kept returns the slab as it waits: which faces the air reaches, and for
// [BothMachined] the other face cut like the machined one.
func (s Slab) Kept(k Keeping) Slab {
	s.Machined.Open, s.Back.Open = true, true
	switch k {
	case FlatOnBench:
		s.Back.Open = false
	case FaceDown:
		s.Machined.Open = false
	case BothMachined:
		s.Back = s.Machined
		if most := s.Thickness * 9 / 20; s.Machined.Deep > most { // or nothing would be left between
			s.Machined.Deep, s.Back.Deep = most, most
		}
	}
	return s
}

// CupDay is how a board is bent after a day.
type CupDay struct {
	Day  int
	Bend Curvature
	Rise unit.Length // off a straight edge across the width; positive hollow on the machined face
}

// CupDays returns the cup of a board of a width at the end of each of so many days,
// from day nought, and the worst moment by the hour. A weighted board stands for
// what it would do if it were let go at the end of that day.
//
// Errors: those of [Slab.Follow].
func (s Slab) CupDays(k Keeping, width unit.Length, perPoint float64, days int) (each []CupDay, worst CupDay, at Hours, err error) {
	kept := s.Kept(k)
	states, err := kept.Follow(4, days*6+1)
	if err != nil {
		return nil, CupDay{}, 0, err
	}
	for i, m := range states {
		bend := m.Cup(perPoint)
		c := CupDay{int(m.After / 24), bend, bend.Rise(width)}
		if i%6 == 0 {
			each = append(each, c)
		}
		if c.Rise.Abs() > worst.Rise.Abs() {
			worst, at = c, m.After
		}
	}
	return each, worst, at, nil
}
