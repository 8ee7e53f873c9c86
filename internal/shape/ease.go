package shape

import (
	"scantling/internal/geom/polygon"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// dip is an arc out of an edge or an end, through the thickness. Its bulge is
// tan(sweep/4) = 2 depth / chord.
func dip(p *piece.Part, d *piece.Dip, i int) solid.Primitive {
	if a, _ := d.Open.Axis(); a == piece.AlongThickness {
		return solid.Prism{} // out of a face: the solid comes out unverified
	}
	f, _, sense := mouth(p, d.Open, piece.AlongThickness)
	half, depth := float64(d.Chord.Nm.Millimetres()/2), d.Depth.Nm.Millimetres()
	mid := float64(sense * d.Centre.Nm.Millimetres())
	tag := wallTag(i, Round)
	return solid.Prism{
		Frame: f, From: -beyond, To: size(p, piece.AlongThickness) + beyond,
		Profile: polygon.Profile{Outer: polygon.Loop{
			{P2: polygon.P2{X: mid + half, Y: beyond}},
			{P2: polygon.P2{X: mid - half, Y: beyond}},
			{P2: polygon.P2{X: mid - half}, Bulge: depth / half},
			{P2: polygon.P2{X: mid + half}},
		}},
		Sides: []solid.Tag{tag}, Caps: [2]solid.Tag{tag, tag},
	}
}

// ease takes an edge off, along its whole length or from one station to another,
// with flat ends. The corner lies at the origin of the section, the part where both
// coordinates are negative.
func ease(p *piece.Part, e *piece.Ease, i int) solid.Primitive {
	a, highA := e.Sides[0].Axis()
	b, highB := e.Sides[1].Axis()
	if a == b {
		return solid.Prism{} // no common edge: the solid comes out unverified
	}
	f := vec.Frame{U: toward(a, highA), V: toward(b, highB)}
	f.W = f.U.Cross(f.V)
	if highA {
		f.Origin = f.Origin.Add(toward(a, true).Mul(size(p, a)))
	}
	if highB {
		f.Origin = f.Origin.Add(toward(b, true).Mul(size(p, b)))
	}
	along := piece.Local(3 - int(a) - int(b))
	from, to := eased(p, e)
	z0, z1 := from.Millimetres(), to.Millimetres()
	if from <= 0 {
		z0 -= beyond
	}
	if to >= p.Sizes()[along].Nm {
		z1 += beyond
	}
	caps := [2]solid.Tag{wallTag(i, Start), wallTag(i, End)}
	if f.W.At(int(along)) < 0 {
		z0, z1 = -z1, -z0
		caps[0], caps[1] = caps[1], caps[0]
	}
	r := e.Radius.Nm.Millimetres()
	bulge := -quarter // hollow in the cutter: the wood is round
	switch {
	case e.Chamfer:
		bulge = 0
	case e.Cove:
		bulge = quarter
	}
	return solid.Prism{
		Frame: f, From: z0, To: z1,
		Profile: polygon.Profile{Outer: polygon.Loop{
			{P2: polygon.P2{X: beyond, Y: beyond}},
			{P2: polygon.P2{X: -r, Y: beyond}},
			{P2: polygon.P2{X: -r}, Bulge: bulge},
			{P2: polygon.P2{Y: -r}},
			{P2: polygon.P2{X: beyond, Y: -r}},
		}},
		Sides: []solid.Tag{wallTag(i, Round)}, Caps: caps,
	}
}

// eased returns the stretch of the edge that is taken off.
func eased(p *piece.Part, e *piece.Ease) (from, to unit.Length) {
	a, _ := e.Sides[0].Axis()
	b, _ := e.Sides[1].Axis()
	whole := p.Sizes()[3-int(a)-int(b)].Nm
	if e.From.Nm == 0 && e.To.Nm == 0 {
		return 0, whole
	}
	return max(e.From.Nm, 0), min(e.To.Nm, whole)
}
