package strength

import (
	"cmp"
	"math"
	"strings"

	"scantling/internal/address"
	"scantling/internal/analysis/estimate"
	"scantling/internal/figure"
	"scantling/internal/geom/vec"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// mass estimates a part's mass from its finished solid and its wood's density at the
// shop's moisture content.
func (e *estimator) mass(p *piece.Part) plan.Estimate {
	if m, ok := e.masses[p.Address]; ok {
		return m
	}
	name := string(p.Address) + ".mass"
	volume := e.maker.Given(name+".volume", estimate.Value(unit.DimUntyped, e.volume(p)/1000), ledger.Derived, "cubic centimetres of the finished solid")
	out := e.maker.Estimate(name, "mass of wood", "", timber.SourceDensity, plan.NoDensity, volume, e.density(p))
	e.masses[p.Address] = out
	return out
}

// volume is in cubic millimetres.
func (e *estimator) volume(p *piece.Part) float64 {
	if e.Shapes != nil {
		if s, ok := e.Shapes.Of(p.Address); ok && !s.Solid.Empty() {
			return s.Solid.Volume()
		}
	}
	return p.Length.Nm.Millimetres() * p.Width.Nm.Millimetres() * p.Thickness.Nm.Millimetres()
}

// centre is the part's centre of gravity in the piece, in millimetres.
func (e *estimator) centre(p *piece.Part) vec.V3 {
	if e.Shapes != nil {
		if s, ok := e.Shapes.Of(p.Address); ok && !s.Solid.Empty() {
			return s.Frame.ToWorld(s.Solid.Centroid())
		}
	}
	return p.Placed().ToWorld(vec.V3{X: p.Length.Nm.Millimetres() / 2, Y: p.Width.Nm.Millimetres() / 2, Z: p.Thickness.Nm.Millimetres() / 2})
}

func (e *estimator) density(p *piece.Part) estimate.Arg {
	m, w := e.wood(p)
	name := "density of " + m.Species
	if m.Sheet {
		panel, err := timber.FindPanel(m.Species, p.Thickness.Nm)
		if err != nil {
			return estimate.Lack(plan.NoSheet)
		}
		return estimate.Number(e.maker, name, panel.Density, plan.NoDensity)
	}
	if !w.known {
		return estimate.Lack(plan.NoWood)
	}
	moisture := timber.Moisture(12)
	if e.Shop != nil && e.Shop.Climate.Season.Now > 0 {
		moisture = e.Shop.Climate.Season.Now
	}
	d, err := w.species.Density(moisture)
	if err != nil {
		return estimate.Lack(plan.NoDensity)
	}
	return estimate.Number(e.maker, name, d, plan.NoDensity)
}

// cargo is contents that stand somewhere: with a group that moves or with the case,
// on a part.
type cargo struct {
	// on is the part that they rest on, "" if nobody says.
	on address.Address
	// group is that of the part, or of the space.
	group address.Address
	mass  plan.Estimate
	// centre is where they are, in millimetres; set where located.
	centre  vec.V3
	located bool
}

// carried lists what the contents weigh and where they stand. Contents without a mass
// are there with an unknown one.
func (e *estimator) carried() {
	spaces := map[address.Address]*piece.Space{}
	for i := range e.Piece.Spaces {
		spaces[e.Piece.Spaces[i].Address] = &e.Piece.Spaces[i]
	}
	for i := range e.Piece.Contents {
		c := &e.Piece.Contents[i]
		each := plan.Estimate{Missing: []plan.Datum{plan.NoMass}}
		if _, ok := c.Grams(); ok {
			each = plan.Estimate{Value: c.Mass.Value, Low: c.Mass.Value, High: c.Mass.Value, Entry: c.Mass.Entry, Source: figure.Source{Key: string(c.Address), Status: figure.Stated}}
		}
		if len(c.Things) > 0 {
			e.rods(c, each)
			continue
		}
		// Of places that are alike one may stand for all: the others' things are as far
		// back, and at half the height of the piece.
		places, left := max(len(c.In), c.Among), c.All()
		for n, in := range c.In {
			here := shareOf(c.All(), places, n)
			left -= here
			share := e.times(string(c.Address)+".mass", each, here)
			s := spaces[in]
			if s == nil {
				e.cargo = append(e.cargo, cargo{mass: share})
				continue
			}
			x := cargo{on: partOf(s.Bounds[4]), group: s.Group, mass: share, located: true}
			x.centre = middleOf(s)
			if p := e.parts[x.on]; p != nil {
				x.group = cmp.Or(p.Group, s.Group)
			}
			e.cargo = append(e.cargo, x)
		}
		if left > 0 {
			rest := cargo{mass: e.times(string(c.Address)+".rest", each, left)}
			if n := len(e.cargo); len(c.In) > 0 && e.cargo[n-1].located && e.of(e.cargo[n-1].group) == nil {
				rest.centre, rest.located = e.cargo[n-1].centre, true
				rest.centre.Z = (e.floor + e.top).Millimetres() / 2
			}
			e.cargo = append(e.cargo, rest)
		}
	}
}

// rods adds rods, by the part that holds them.
func (e *estimator) rods(c *piece.Contents, each plan.Estimate) {
	count := map[address.Address]int{}
	var order []address.Address
	for _, t := range c.Things {
		if count[t.In] == 0 {
			order = append(order, t.In)
		}
		count[t.In]++
	}
	for _, in := range order {
		x := cargo{on: in, mass: e.times(string(in)+".rods", each, count[in])}
		if p := e.parts[in]; p != nil {
			x.group, x.centre, x.located = p.Group, e.centre(p), true
		}
		e.cargo = append(e.cargo, x)
	}
}

func (e *estimator) times(name string, each plan.Estimate, n int) plan.Estimate {
	if !each.Known() {
		return each
	}
	count := e.maker.Given(name+".count", unit.OfCount(n), ledger.Derived, "")
	return e.maker.Estimate(name, "so many times", "", each.Source, plan.NoMass, estimate.Again(each), count)
}

// shareOf is how many of a count stand in place number n of so many, from nought: the
// first ones are full.
func shareOf(count, places, n int) int {
	each := (count + places - 1) / max(1, places)
	return max(0, min(each, count-each*n))
}

// partOf is the part of a face that bounds a space: "drawer.bottom.top" is a face of
// drawer.bottom.
func partOf(face string) address.Address {
	if i := strings.LastIndexByte(face, '.'); i > 0 {
		return address.Address(face[:i])
	}
	return ""
}

// middleOf is the middle of a space, at a third of its height.
func middleOf(s *piece.Space) vec.V3 {
	mid := func(a piece.Axis) float64 { return (s.Extent[a].Low.Nm + s.Extent[a].High.Nm).Millimetres() / 2 }
	low := s.Extent[piece.Up].Low.Nm.Millimetres()
	return vec.V3{X: mid(piece.Right), Y: mid(piece.Back), Z: low + s.Extent[piece.Up].Size().Millimetres()/3}
}

// whole rounds millimetres to a tenth, as a length: centres of gravity are no
// better.
func whole(mm float64) unit.Length {
	return unit.Length(math.Round(mm*10)) * (unit.Millimetre / 10)
}

// sum adds masses; unknown where one is.
func (e *estimator) sum(name string, all ...plan.Estimate) plan.Estimate {
	args := make([]estimate.Arg, len(all))
	for i, m := range all {
		args[i] = estimate.Again(m)
	}
	return e.maker.Estimate(name, "sum of masses", "", timber.SourceDensity, plan.NoMass, args...)
}
