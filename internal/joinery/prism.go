package joinery

import (
	"math/big"
	"slices"

	"scantling/internal/ledger"
	"scantling/internal/piece"
)

// corner is a corner of a line across an axis of the piece: its places along the
// two axes that follow, in turn.
type corner [2]piece.Figure

// prism is a body of one section along an axis: a box whose section may be any
// convex line, anticlockwise. Without a line it is the box itself.
type prism struct {
	box
	axis piece.Axis
	line []corner
}

// profile gives a claim's boxes a section along an axis: what is cut and what of
// it is kept. A box without a line is whole.
type profile struct {
	axis      piece.Axis
	cut, kept []corner
}

func (c *claim) cutBody() prism {
	if c.profile == nil {
		return prism{box: c.cut}
	}
	return prism{c.cut, c.profile.axis, c.profile.cut}
}

func (c *claim) keptBody() prism {
	if c.profile == nil {
		return prism{box: c.kept}
	}
	return prism{c.kept, c.profile.axis, c.profile.kept}
}

// shaped returns the claim with other bodies.
func (c claim) shaped(cut, kept prism) claim {
	c.cut, c.kept = cut.box, kept.box
	if cut.line == nil && kept.line == nil {
		c.profile = nil
	} else {
		c.profile = &profile{cut.axis, cut.line, kept.line}
	}
	return c
}

// section returns the two axes of a section across an axis.
func section(a piece.Axis) [2]piece.Axis { return [2]piece.Axis{(a + 1) % 3, (a + 2) % 3} }

// prismOf is the prism of a line along an axis, between two figures.
func prismOf(axis piece.Axis, along piece.Extent, line []corner) prism {
	p := prism{axis: axis, line: line}
	p.box[axis] = along
	p.bound()
	return p
}

// lineOf is a line across an axis from corners given by their places along one of
// the other axes, first, and along the third; it is turned to run anticlockwise.
func lineOf(across, first piece.Axis, corners ...corner) []corner {
	if section(across)[0] != first {
		for i, c := range corners {
			corners[i] = corner{c[1], c[0]}
		}
	}
	sum := new(big.Int)
	for i, c := range corners {
		n := corners[(i+1)%len(corners)]
		sum.Add(sum, new(big.Int).Sub(
			new(big.Int).Mul(big.NewInt(int64(c[0].Nm)), big.NewInt(int64(n[1].Nm))),
			new(big.Int).Mul(big.NewInt(int64(n[0].Nm)), big.NewInt(int64(c[1].Nm)))))
	}
	if sum.Sign() < 0 {
		slices.Reverse(corners)
	}
	return corners
}

// bound sets the box's limits to those of the line.
func (p *prism) bound() {
	for k, a := range section(p.axis) {
		e := piece.Extent{Low: p.line[0][k], High: p.line[0][k]}
		for _, c := range p.line[1:] {
			if c[k].Nm < e.Low.Nm {
				e.Low = c[k]
			}
			if c[k].Nm > e.High.Nm {
				e.High = c[k]
			}
		}
		p.box[a] = e
	}
}

// content returns the body's volume in whole cubic nanometres, rounded down.
func (p prism) content() *big.Int {
	switch {
	case !p.box.solid():
		return new(big.Int)
	case p.line == nil:
		return p.box.volume()
	}
	v := twiceArea(p.line)
	v.Mul(v, big.NewInt(int64(p.box.size(p.axis))))
	return v.Rsh(v, 1)
}

// twiceArea returns twice the area within a line in square nanometres.
func twiceArea(line []corner) *big.Int {
	sum, term := new(big.Int), new(big.Int)
	for i, c := range line {
		n := line[(i+1)%len(line)]
		sum.Add(sum, term.Mul(big.NewInt(int64(c[0].Nm)), big.NewInt(int64(n[1].Nm))))
		sum.Sub(sum, term.Mul(big.NewInt(int64(n[0].Nm)), big.NewInt(int64(c[1].Nm))))
	}
	return sum.Abs(sum)
}

// shares reports whether two bodies share a volume, exactly.
func shares(a, b prism) bool {
	if !a.box.solid() || !b.box.solid() || !overlaps(a.box, b.box) {
		return false
	}
	if a.line == nil && b.line == nil {
		return true
	}
	va, vb := a.points(), b.points()
	ea, eb := a.edges(), b.edges()
	var ways []spot
	for _, e := range [2][]spot{ea, eb} { // normals of the sides
		along := e[len(e)-1]
		for _, s := range e[:len(e)-1] {
			ways = append(ways, s.cross(along))
		}
	}
	for _, s := range ea {
		for _, t := range eb {
			ways = append(ways, s.cross(t))
		}
	}
	for _, way := range ways {
		if way.none() {
			continue
		}
		lowA, highA := way.reach(va)
		lowB, highB := way.reach(vb)
		if highA.Cmp(lowB) <= 0 || highB.Cmp(lowA) <= 0 {
			return false
		}
	}
	return true
}

// holds reports whether a box lies wholly within the body.
func (p prism) holds(b box) bool {
	for _, a := range axes {
		if b[a].Low.Nm < p.box[a].Low.Nm || b[a].High.Nm > p.box[a].High.Nm {
			return false
		}
	}
	for i, c := range p.line {
		n := p.line[(i+1)%len(p.line)]
		for _, x := range rectangle(b, p.axis) {
			left := new(big.Int).Mul(big.NewInt(int64(n[0].Nm-c[0].Nm)), big.NewInt(int64(x[1].Nm-c[1].Nm)))
			if left.Cmp(new(big.Int).Mul(big.NewInt(int64(n[1].Nm-c[1].Nm)), big.NewInt(int64(x[0].Nm-c[0].Nm)))) < 0 {
				return false
			}
		}
	}
	return true
}

// spot is a point or a direction, by right, back and up.
type spot [3]*big.Int

func (s spot) none() bool { return s[0].Sign() == 0 && s[1].Sign() == 0 && s[2].Sign() == 0 }

func (s spot) cross(t spot) (out spot) {
	for i := range out {
		j, k := (i+1)%3, (i+2)%3
		out[i] = new(big.Int).Mul(s[j], t[k])
		out[i].Sub(out[i], new(big.Int).Mul(s[k], t[j]))
	}
	return out
}

// reach returns how far points reach along a direction, low and high.
func (s spot) reach(points []spot) (low, high *big.Int) {
	for _, p := range points {
		at := new(big.Int)
		for i := range s {
			at.Add(at, new(big.Int).Mul(s[i], p[i]))
		}
		if low == nil || at.Cmp(low) < 0 {
			low = at
		}
		if high == nil || at.Cmp(high) > 0 {
			high = at
		}
	}
	return low, high
}

// outline returns the section's corners; those of the box where there is no line.
func (p prism) outline() []corner {
	if p.line != nil {
		return p.line
	}
	return rectangle(p.box, p.axis)
}

// rectangle is a box's section across an axis as a line.
func rectangle(b box, axis piece.Axis) []corner {
	s := section(axis)
	u, v := b[s[0]], b[s[1]]
	return []corner{{u.Low, v.Low}, {u.High, v.Low}, {u.High, v.High}, {u.Low, v.High}}
}

func (p prism) points() []spot {
	s := section(p.axis)
	var out []spot
	for _, c := range p.outline() {
		for _, high := range [2]bool{false, true} {
			var at spot
			at[p.axis] = big.NewInt(int64(p.box.end(p.axis, high).Nm))
			at[s[0]], at[s[1]] = big.NewInt(int64(c[0].Nm)), big.NewInt(int64(c[1].Nm))
			out = append(out, at)
		}
	}
	return out
}

// edges returns the directions of the section's sides and, last, of the axis.
// The two axes across stand among the sides' normals as every line's bounds are
// compared first.
func (p prism) edges() []spot {
	s := section(p.axis)
	line := p.outline()
	var out []spot
	for i, c := range line {
		n := line[(i+1)%len(line)]
		e := spot{new(big.Int), new(big.Int), new(big.Int)}
		e[s[0]].SetInt64(int64(n[0].Nm - c[0].Nm))
		e[s[1]].SetInt64(int64(n[1].Nm - c[1].Nm))
		out = append(out, e)
	}
	along := spot{new(big.Int), new(big.Int), new(big.Int)}
	along[p.axis].SetInt64(1)
	return append(out, along)
}

// inner returns a box that a claim's cut fills: the cut itself, or for one with
// two leaning sides the stretch between them.
func (c *claim) inner() (box, bool) {
	if c.profile == nil {
		return c.cut, true
	}
	b := c.cut
	for k, a := range section(c.profile.axis) {
		// The corners at both limits along the other axis have a stretch in common.
		other := section(c.profile.axis)[1-k]
		low, high := c.reach(k, other, false), c.reach(k, other, true)
		if low == nil || high == nil {
			continue
		}
		from, to := low.Low, low.High
		if high.Low.Nm > from.Nm {
			from = high.Low
		}
		if high.High.Nm < to.Nm {
			to = high.High
		}
		if from.Nm < to.Nm && len(c.profile.cut) == 4 {
			b[a] = piece.Extent{Low: from, High: to}
			return b, true
		}
	}
	return box{}, false
}

// reach returns the stretch along axis number k of the section that its corners
// take up at a limit of the other axis; nil if only one corner lies there.
func (c *claim) reach(k int, other piece.Axis, high bool) *piece.Extent {
	at := c.cut.end(other, high).Nm
	var out []piece.Figure
	for _, x := range c.profile.cut {
		if x[1-k].Nm == at {
			out = append(out, x[k])
		}
	}
	if len(out) != 2 {
		return nil
	}
	if out[0].Nm > out[1].Nm {
		out[0], out[1] = out[1], out[0]
	}
	return &piece.Extent{Low: out[0], High: out[1]}
}

// within returns what of a body lies in a box; false if nothing does. Where a
// leaning side is cut through, the new corner is rounded to the nanometre.
func within(l *ledger.Ledger, p prism, b box) (prism, bool) {
	if p.line == nil {
		if p.box = meet(p.box, b); p.box.solid() {
			return p, true
		}
		return prism{}, false
	}
	for _, high := range [2]bool{false, true} {
		var ok bool
		for _, a := range axes {
			if p, ok = p.halved(l, a, !high, b.end(a, high)); !ok {
				return prism{}, false
			}
		}
	}
	return p, true
}

// halved returns what of a body lies above or below a place along an axis.
func (p prism) halved(l *ledger.Ledger, a piece.Axis, above bool, at piece.Figure) (prism, bool) {
	if outside := p.box.end(a, above).Nm - at.Nm; outside == 0 || (outside < 0) == above {
		return p, false
	}
	if in := p.box.end(a, !above).Nm - at.Nm; in == 0 || (in > 0) == above {
		return p, true
	}
	if p.line == nil || a == p.axis {
		p.box = p.box.with(a, !above, at)
		return p, true
	}
	k := 0
	if a == section(p.axis)[1] {
		k = 1
	}
	var line []corner
	for i, c := range p.line {
		n := p.line[(i+1)%len(p.line)]
		c0, n0 := int64(c[k].Nm-at.Nm), int64(n[k].Nm-at.Nm)
		if !above {
			c0, n0 = -c0, -n0
		}
		if c0 >= 0 {
			line = append(line, c)
		}
		if (c0 > 0 && n0 < 0) || (c0 < 0 && n0 > 0) {
			var x corner
			x[k] = at
			x[1-k] = between(l, c[1-k], n[1-k], c0, c0-n0)
			line = append(line, x)
		}
	}
	if len(line) < 3 || twiceArea(line).Sign() == 0 {
		return p, false
	}
	p.line = line
	p.bound()
	return p, true
}

// between returns the place num/den of the way from one figure to another.
func between(l *ledger.Ledger, from, to piece.Figure, num, den int64) piece.Figure {
	if from.Nm == to.Nm {
		return from
	}
	const name = "on the slope"
	return l.Sum(name, from, l.Times(name, l.Less(name, to, from), num, den))
}

// lessBox returns what is left of a body when a box is taken away, in bodies that
// do not overlap; it is split along the axis first before the others.
func lessBox(l *ledger.Ledger, p prism, c box, first piece.Axis) []prism {
	if !overlaps(p.box, c) {
		return []prism{p}
	}
	var out []prism
	for _, a := range [3]piece.Axis{first, (first + 1) % 3, (first + 2) % 3} {
		for _, high := range [2]bool{false, true} {
			if part, ok := p.halved(l, a, high, c.end(a, high)); ok {
				out = append(out, part)
			}
			var ok bool
			if p, ok = p.halved(l, a, !high, c.end(a, high)); !ok {
				return out
			}
		}
	}
	return out
}
