package mechanics_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"scantling/internal/mechanics"
	"scantling/internal/unit"
)

// body is a strip cut out of the width, in plane stress, on a grid of equal cells:
// displacements of its nodes from the least elastic energy by finite differences. It
// knows nothing of beams: that sections stay plane comes out, or does not.
type body struct {
	long, deep int // cells
	dx, dy     float64
	stiff      []float64 // of each layer of cells, from below
	free       []float64 // free strain along the strip
	u, v       []float64
}

func (b *body) node(i, j int) int { return i*(b.deep+1) + j }

// gradient adds the force on every node for displacements u and v: the strains of a
// cell are differences along its four sides, and its shear the mean of them at its
// middle, as on staggered grids. Poisson's ratio is 0, as in the formula that is tested,
// so that the modulus of shear is E/2.
func (b *body) gradient(u, v, gu, gv []float64, strained bool) {
	for i := range b.long {
		for j := range b.deep {
			e, own := b.stiff[j]*b.dx*b.dy, 0.0
			if strained {
				own = b.free[j]
			}
			n := [4]int{b.node(i, j), b.node(i+1, j), b.node(i, j+1), b.node(i+1, j+1)}
			for side := range 2 { // below and above, left and right
				l, r := n[2*side], n[2*side+1]
				ex := (u[r]-u[l])/b.dx - own
				gu[r] += e / 2 * ex / b.dx
				gu[l] -= e / 2 * ex / b.dx
				d, t := n[side], n[side+2]
				ey := (v[t] - v[d]) / b.dy
				gv[t] += e / 2 * ey / b.dy
				gv[d] -= e / 2 * ey / b.dy
			}
			shear := (u[n[2]]+u[n[3]]-u[n[0]]-u[n[1]])/(2*b.dy) + (v[n[1]]+v[n[3]]-v[n[0]]-v[n[2]])/(2*b.dx)
			for c, k := range n {
				gu[k] += e / 2 * shear / (2 * b.dy) * float64(c/2*2-1)
				gv[k] += e / 2 * shear / (2 * b.dx) * float64(c%2*2-1)
			}
		}
	}
}

// settle finds the displacements of least energy by conjugate gradients; nothing holds
// the strip, and from rest it drifts nowhere, since all forces balance.
func (b *body) settle(t *testing.T) {
	n := (b.long + 1) * (b.deep + 1)
	x, r, p := make([]float64, 2*n), make([]float64, 2*n), make([]float64, 2*n)
	b.gradient(x[:n], x[n:], r[:n], r[n:], true)
	dot := func(a, b []float64) float64 {
		s := 0.0
		for i := range a {
			s += a[i] * b[i]
		}
		return s
	}
	for i := range r {
		r[i] = -r[i]
	}
	copy(p, r)
	rr, first := dot(r, r), dot(r, r)
	for k := 0; rr > 1e-20*first; k++ {
		if k > 20*n {
			t.Fatal("does not settle")
		}
		ap := make([]float64, 2*n)
		b.gradient(p[:n], p[n:], ap[:n], ap[n:], false)
		a := rr / dot(p, ap)
		for i := range x {
			x[i] += a * p[i]
			r[i] -= a * ap[i]
		}
		next := dot(r, r)
		for i := range p {
			p[i] = r[i] + next/rr*p[i]
		}
		rr = next
	}
	b.u, b.v = x[:n], x[n:]
}

// bow is the curvature of the lower face over the middle half of the strip.
func (b *body) bow() float64 {
	q := b.long / 4
	at := func(i int) float64 { return b.v[b.node(i, 0)] }
	w := float64(q) * b.dx
	return (at(b.long/2-q) - 2*at(b.long/2) + at(b.long/2+q)) / (w * w)
}

// TestBowAgainstElasticity: the two-layer formula against the strip in plane stress, for
// layers of several thicknesses and moduli; and the formula for an even change. The
// strip is ten times as long as thick and read in its middle half, away from its ends.
func TestBowAgainstElasticity(t *testing.T) {
	worst := 0.0
	for seed := range uint64(6) {
		r := rand.New(rand.NewPCG(seed, 6))
		const deep = 24
		first := 4 + r.IntN(17) // layers of cells of the first
		e1, e2, apart := 600+600*r.Float64(), 600+5000*r.Float64(), 0.002+0.01*r.Float64()
		b := &body{long: 80, deep: deep, dx: 2.5, dy: 0.75}
		for j := range deep {
			e, f := e1, 0.0
			if j >= first {
				e, f = e2, apart
			}
			b.stiff, b.free = append(b.stiff, e), append(b.free, f)
		}
		b.settle(t)
		k, err := mechanics.TwoLayer{First: unit.FromMillimetres(0.75 * float64(first)), Second: unit.FromMillimetres(0.75 * float64(deep-first)),
			StiffFirst: mechanics.Stress(e1), StiffSecond: mechanics.Stress(e2), Apart: mechanics.Strain(apart)}.Bow()
		if err != nil {
			t.Fatal(err)
		}
		// The upper layer grows: the lower face is hollow seen from below, and its ends go down.
		off := math.Abs(float64(k)+b.bow()) / math.Abs(float64(k))
		if worst = max(worst, off); off > 0.01 {
			t.Errorf("seed %d: formula %.5g, strip %.5g", seed, k, -b.bow())
		}
	}
	t.Logf("worst relative difference %.2g", worst)
	b := &body{long: 80, deep: 24, dx: 2.5, dy: 0.75}
	for j := range 24 {
		b.stiff, b.free = append(b.stiff, 900), append(b.free, 0.0073*(float64(j)+0.5)/24)
	}
	b.settle(t)
	if got := float64(mechanics.EvenBow(0.0073, unit.MM(18))); math.Abs(got+b.bow()) > 0.01*got {
		t.Errorf("an even change: formula %.5g, strip %.5g", got, -b.bow())
	}
}

// TestSlabGainsWithTheRootOfTime: while no moisture has reached the middle, a slab is a
// half space, and what it has lost is 4/sqrt(pi) sqrt(D t)/h of the whole: another
// solution than the series, for the beginning that the series is not compared at.
func TestSlabGainsWithTheRootOfTime(t *testing.T) {
	s := mechanics.Slab{Thickness: unit.MM(40), Spreads: 1e-10, Machined: mechanics.Face{Open: true}, Back: mechanics.Face{Open: true}, Core: 1, Shell: 1}
	states, err := s.Follow(6, 60)
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range states[8:] {
		lost := 1 - float64(m.Mean())
		want := 4 / math.Sqrt(math.Pi) * math.Sqrt(1e-10*1e6*float64(m.After)*3600) / 40
		if want > 0.5 {
			break
		}
		if math.Abs(lost-want) > 0.02*want+0.001 {
			t.Errorf("after %g h it has lost %.4f, by the half space %.4f", m.After, lost, want)
		}
	}
}

// sticks finds by trying whether forces can hold a drawer still that is pulled at an
// offset: it bears at one front corner and at the opposite back corner with a force N
// across, and rubs there with at most mu N on either side. Two things must balance: the
// pull, and its moment about the middle of the drawer, to which the two rubbing forces
// add what they differ by. No formula for jamming is used.
func sticks(wide, long, offset, mu float64) bool {
	const pull = 1.0
	for n := 0.0; n < 60; n += 0.002 {
		most := 2*mu*n - pull // by how much the two rubbing forces may differ
		if most < 0 {
			continue
		}
		most = min(most, pull) // neither pushes forward
		if lack := math.Abs(pull*offset-n*long) / (wide / 2); lack <= most+0.002*long/wide {
			return true
		}
	}
	return false
}

// TestJamAgainstStatics: over random drawers, frictions and offsets, what the formulas
// say and what the balance of forces allows.
func TestJamAgainstStatics(t *testing.T) {
	seen := map[bool]int{}
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 7))
		wide, long, mu := 200+800*r.Float64(), 200+400*r.Float64(), 0.2+0.4*r.Float64()
		if mu*wide > 0.9*long {
			continue // it may wedge whichever way it is pulled
		}
		limit := mechanics.JamsBeyond(unit.FromMillimetres(long), mechanics.Friction(mu)).Millimetres()
		offset := limit * (0.5 + r.Float64())
		if math.Abs(offset-limit) < 0.02*limit {
			continue
		}
		got := sticks(wide, long, offset, mu)
		seen[got]++
		if got != (offset > limit) {
			t.Errorf("seed %d: %g wide, %g long, mu %.3f, pulled %g off (limit %g): statics says it sticks: %v", seed, wide, long, mu, offset, limit, got)
		}
		if !mechanics.NeverJams(unit.FromMillimetres(wide), unit.FromMillimetres(long), mechanics.Friction(mu)) && !sticks(wide, long, wide/2*1.03, mu) {
			t.Errorf("seed %d: said to jam at its corner, and it does not", seed)
		}
	}
	if seen[true] < 50 || seen[false] < 50 {
		t.Errorf("tried too little: %v", seen)
	}
}
