package mechanics

import (
	"scantling/internal/figure"
	"scantling/internal/unit"
)

// SourceStack is the source of [Stack].
var SourceStack = figure.Source{Key: "mechanics.stack", Title: "beams on a shared prop: Equation 9-2 of Wood Handbook FPL-GTR-190, 2010, and equal sags", Status: figure.Computed}

// Storey is one of several boards one above the other that bridge the same gap, with an
// upright in the middle between each and the next.
type Storey struct {
	// Beam is the board; its Loading does not matter.
	Beam Beam
	// Spread is what lies on it, evenly.
	Spread Force
}

// Stack returns how far each of the boards, from the lowest up, goes down in its middle,
// and what the upright on each hands down to it (nought for the highest).
//
// Uprights press and do not pull, and do not give: a board goes down no farther than the
// one below it. So a board that would bend farther by itself than the one below hands
// down as much as makes both bend alike, and one that would bend less hands down nothing.
// On a lowest board that does not bend this is the prop under two spans, 5/8 of the load;
// on one that bends as far under its own load it is nought: that upright holds nothing up.
//
// Errors: those of [Beam.Sag].
func Stack(boards []Storey) (sags []unit.Length, hands []Force, err error) {
	type pool struct {
		stiff, load float64 // N/mm, N in the middle
		boards      int
	}
	alone := make([]pool, len(boards))
	var pools []pool
	for i, b := range boards {
		b.Beam.Loading = Spread
		spread, err := b.Beam.Sag(probe)
		if err != nil {
			return nil, nil, err
		}
		b.Beam.Loading = Centre
		centre, err := b.Beam.Sag(probe)
		if err != nil {
			return nil, nil, err
		}
		stiff := probe / centre.Whole().Millimetres()
		alone[i] = pool{stiff, stiff * float64(b.Spread) * spread.Whole().Millimetres() / probe, 1}
		p := alone[i]
		// Boards that would bend farther than those below bend with them.
		for n := len(pools); n > 0 && p.load*pools[n-1].stiff > pools[n-1].load*p.stiff; n = len(pools) {
			below := pools[n-1]
			p = pool{p.stiff + below.stiff, p.load + below.load, p.boards + below.boards}
			pools = pools[:n-1]
		}
		pools = append(pools, p)
	}
	sags, hands = make([]unit.Length, len(boards)), make([]Force, len(boards))
	i := 0
	for _, p := range pools {
		first, sag := i, p.load/p.stiff
		for ; i < first+p.boards; i++ {
			sags[i] = length(sag)
		}
		for k := i - 1; k > first; k-- {
			hands[k-1] = max(0, Force(float64(hands[k])+alone[k].load-float64(alone[k].stiff*sag)))
		}
	}
	return sags, hands, nil
}

// probe is the load by which a board's stiffness is found, in newtons.
const probe = 1000
