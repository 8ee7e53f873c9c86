package rows

import (
	"fmt"
	"math"

	"scantling/internal/joinery"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/shape"
	"scantling/internal/share"
	"scantling/internal/unit"
)

// Slack is how far a term may be out within the row's band, because a cut is
// curved: less than anyone can measure.
const Slack = 40 * unit.Nanometre

// Functions returns the pure functions that entries of this package call.
func Functions() ledger.Functions {
	return ledger.Functions{"mouth of a cut": mouth}
}

// mouth takes the width, depth and corner radius of a round-bottomed cut and
// gives how wide it is at the surface: the level bottom and the chord of the
// corners, 2 √(h (2r - h)), where h is the depth but at most r.
func mouth(args []unit.Value) (unit.Value, error) {
	if len(args) != 3 {
		return unit.Value{}, fmt.Errorf("the mouth of a cut takes 3 lengths, not %d", len(args))
	}
	var l [3]unit.Length
	for i, a := range args {
		length, ok := a.Length()
		if !ok {
			return unit.Value{}, fmt.Errorf("the mouth of a cut takes lengths, not a %s", a.Dim())
		}
		l[i] = length
	}
	return unit.OfLength(mouthOf(l[0], l[1], l[2])), nil
}

func mouthOf(width, depth, radius unit.Length) unit.Length {
	if depth >= radius {
		return width
	}
	return width - 2*radius + share.Groove{Radius: radius, Depth: depth}.Mouth()
}

// limits is a box in local coordinates: by length, width, thickness.
type limits struct{ lo, hi [3]unit.Length }

// air is what is known of a cut: boxes that it certainly takes and boxes in which
// its wall runs, where nothing is said.
type air struct {
	cut    *piece.Cut
	taken  []limits
	unsure []limits
}

// airOf takes a cut apart.
func airOf(p *piece.Part, c *piece.Cut) air {
	a := air{cut: c}
	switch {
	case c.Slot != nil && shape.Plain(p, c.Slot):
		lo, hi := shape.SlotBox(p, c.Slot)
		a.taken = append(a.taken, limits{lo, hi})
	case c.Slot != nil && c.Slot.EndRadius.Nm > 0 && a.between(p, c):
	case c.Slot != nil && c.Slot.Corner.Nm <= 0, c.Slice != nil, c.Pocket != nil:
		a.around(p, c)
	case c.Slot != nil:
		a.round(p, c.Slot)
	case c.Bore != nil:
		a.hole(p, c.Bore)
	case c.Dip != nil:
		lo, hi := whole(p)
		open, high := c.Dip.Open.Axis()
		inwards(p, &lo, &hi, open, high, c.Dip.Depth.Nm)
		along := piece.AlongLength
		if open == piece.AlongLength {
			along = piece.AlongWidth
		}
		half := (c.Dip.Chord.Nm + 1) / 2
		lo[along], hi[along] = c.Dip.Centre.Nm-half, c.Dip.Centre.Nm+half
		a.unsure = append(a.unsure, limits{lo, hi})
	case c.Ease != nil:
		lo, hi := whole(p)
		for _, s := range c.Ease.Sides {
			axis, high := s.Axis()
			inwards(p, &lo, &hi, axis, high, c.Ease.Radius.Nm)
		}
		a.unsure = append(a.unsure, limits{lo, hi})
	}
	return a
}

// between takes a slot with round ends apart: what lies between its ends as of a
// slot without, and nothing is said of the ends. It reports false where nothing
// lies between.
func (a *air) between(p *piece.Part, c *piece.Cut) bool {
	lo, hi, ok := joinery.Limits(p, c)
	s := *c.Slot
	r := s.EndRadius.Nm
	s.EndRadius = piece.Figure{}
	if !ok || s.To.Nm-s.From.Nm <= 2*r {
		return false
	}
	for k, at := range [2]*piece.Figure{&s.From, &s.To} {
		end := limits{lo, hi}
		if k == 0 {
			at.Nm += r
			end.hi[s.Run] = at.Nm
		} else {
			at.Nm -= r
			end.lo[s.Run] = at.Nm
		}
		a.unsure = append(a.unsure, end)
	}
	middle := airOf(p, &piece.Cut{Slot: &s})
	a.taken, a.unsure = append(a.taken, middle.taken...), append(a.unsure, middle.unsure...)
	return true
}

// around says nothing of the box around a cut that is not taken apart: leaning
// walls, round ends, slopes and pockets.
func (a *air) around(p *piece.Part, c *piece.Cut) {
	if lo, hi, ok := joinery.Limits(p, c); ok {
		a.unsure = append(a.unsure, limits{lo, hi})
	}
}

func whole(p *piece.Part) (lo, hi [3]unit.Length) {
	for i, s := range p.Sizes() {
		hi[i] = s.Nm
	}
	return lo, hi
}

// inwards limits a box to a depth from a side.
func inwards(p *piece.Part, lo, hi *[3]unit.Length, axis piece.Local, high bool, depth unit.Length) {
	if high {
		lo[axis] = p.Sizes()[axis].Nm - depth
	} else {
		hi[axis] = depth
	}
}

// round takes a slot with rounded corners apart: its level bottom and what lies
// over it, the upright walls over the corners, and a thin layer at the surface,
// as wide as the mouth.
func (a *air) round(p *piece.Part, s *piece.Slot) {
	lo, hi := shape.SlotBox(p, s)
	open, high := s.Open.Axis()
	x := s.Across()
	r, depth := s.Corner.Nm, s.Depth.Nm
	surface := func(from, to unit.Length) limits { // a layer between two depths
		l := limits{lo, hi}
		if high {
			l.lo[open], l.hi[open] = hi[open]-to, hi[open]-from
		} else {
			l.lo[open], l.hi[open] = from, to
		}
		return l
	}
	// Beside the level bottom by s the depth is less by s²/2r.
	sliver := root(2 * float64(r) * float64(Slack))
	core := surface(0, depth)
	core.lo[x], core.hi[x] = lo[x]+r-min(sliver, r), hi[x]-r+min(sliver, r)
	a.taken = append(a.taken, core)
	layer := depth - r
	if layer <= 0 {
		layer = min(thin(depth, r), depth)
	}
	m := mouthOf(hi[x]-lo[x], depth, r)
	at := lo[x] + (hi[x]-lo[x]-m)/2
	top := surface(0, layer)
	top.lo[x], top.hi[x] = at, at+m
	a.taken = append(a.taken, top)
	for _, side := range [2][2]unit.Length{{at, core.lo[x]}, {core.hi[x], at + m}} {
		z := surface(layer, depth)
		z.lo[x], z.hi[x] = side[0], side[1]
		a.unsure = append(a.unsure, z)
	}
}

// thin returns how far below the surface the width of an arc of depth d and
// radius r has changed by the slack.
func thin(d, r unit.Length) unit.Length {
	if d == r { // upright there: h²/r
		return root(float64(r) * float64(Slack))
	}
	// Both sides lean by (r - d)/√(r² - (r - d)²).
	up := float64(r - d)
	run := math.Sqrt(float64(float64(r)*float64(r)) - float64(up*up))
	return max(unit.Length(float64(Slack)/2*run/up), 2)
}

func root(x float64) unit.Length { return unit.Length(math.Sqrt(x)) }

// hole takes a bore apart: the square within the circle is certain.
func (a *air) hole(p *piece.Part, b *piece.Bore) {
	lo, hi := whole(p)
	open, high := b.Open.Axis()
	if !b.Through {
		inwards(p, &lo, &hi, open, high, b.Depth.Nm)
	}
	r := (b.Diameter.Nm + 1) / 2
	in := b.Diameter.Nm * 7 / 20 // less than half of 1/√2
	taken, around := limits{lo, hi}, limits{lo, hi}
	var cross [2]int
	k := 0
	for i := range 3 {
		if piece.Local(i) == open {
			continue
		}
		c := b.At[k].Nm
		taken.lo[i], taken.hi[i] = c-in, c+in
		around.lo[i], around.hi[i] = c-r, c+r
		cross[k] = i
		k++
	}
	a.taken = append(a.taken, taken)
	for n, i := range cross {
		for _, side := range [2]bool{false, true} {
			z := around
			if side {
				z.lo[i] = taken.hi[i]
			} else {
				z.hi[i] = taken.lo[i]
			}
			if n == 1 { // beside the first pair of strips
				z.lo[cross[0]], z.hi[cross[0]] = taken.lo[cross[0]], taken.hi[cross[0]]
			}
			a.unsure = append(a.unsure, z)
		}
	}
}
