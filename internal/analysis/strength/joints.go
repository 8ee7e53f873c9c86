package strength

import (
	"cmp"
	"slices"
	"strings"

	"scantling/internal/analysis/estimate"
	"scantling/internal/figure"
	"scantling/internal/hardware"
	"scantling/internal/joinery"
	"scantling/internal/ledger"
	"scantling/internal/mechanics"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// holds estimates what every joint bears that there is an estimate for. Plain glued
// housings, rebates and grooves have none: end grain and a close fit are nobody's
// formula.
func (e *estimator) holds() []plan.JointHold {
	var out []plan.JointHold
	for i := range e.Joints {
		l := &e.Joints[i]
		j, a, b := e.joints[l.Joint], e.parts[l.A], e.parts[l.B]
		if j == nil || a == nil || b == nil {
			continue
		}
		h := holder{estimator: e, j: j, l: l, a: a, b: b, name: string(j.Address) + ".holds"}
		out = append(out, h.hold())
	}
	return out
}

// holder works out one joint.
type holder struct {
	*estimator
	j    *piece.Joint
	l    *joinery.Lowered
	a, b *piece.Part
	name string
}

func (h *holder) hold() plan.JointHold {
	out := plan.JointHold{Joint: h.j.Address, Kind: string(h.j.Kind)}
	switch j := h.j; {
	case j.Dowels != nil && j.Glue != "":
		out.Ways = append(out.Ways, h.dowels(j.Dowels)...)
	case j.Tenon != nil && j.Glue != "":
		wide := h.a.Width
		for _, shoulder := range []piece.Figure{j.Tenon.Low, j.Tenon.High} {
			if shoulder.Entry != 0 {
				wide = h.Ledger.Less(h.name+".tenon", wide, shoulder)
			}
		}
		out.Ways = append(out.Ways, h.cheeks(wide, j.Depth, 2))
	case j.Loose != nil && j.Glue != "":
		out.Ways = append(out.Ways, h.cheeks(j.Loose.Width, shorter(j.Loose.InA, j.Loose.InB), 2*j.Loose.Count))
	case j.Tails != nil && j.Glue != "":
		out.Ways = append(out.Ways, h.cheeks(h.a.Thickness, h.b.Thickness, 2*len(j.Tails.Tails)))
	case len(j.Fingers) > 1 && j.Glue != "":
		out.Ways = append(out.Ways, h.cheeks(h.a.Thickness, h.b.Thickness, len(j.Fingers)-1))
	}
	if f := h.j.Fasteners; f != nil && f.Count > 0 {
		ways, missing := h.fasteners(f)
		out.Ways, out.Missing = append(out.Ways, ways...), missing
	}
	if len(out.Ways) == 0 && len(out.Missing) == 0 {
		out.Missing = []plan.Datum{plan.NoJointFormula}
	}
	return out
}

func shorter(a, b piece.Figure) piece.Figure {
	if b.Nm < a.Nm {
		return b
	}
	return a
}

// way fills in what is allowed of an ultimate load.
func (h *holder) way(name string, count int, ultimate plan.Estimate) plan.Holding {
	safety := estimate.Number(h.maker, "safety factor", mechanics.Safety, "")
	over, in := "force over", ""
	if ultimate.Unit != "" {
		over, in = "moment over", ultimate.Unit
	}
	return plan.Holding{Way: name, Count: count, Ultimate: ultimate,
		Allowed: h.maker.Estimate(h.name+"."+name+" allowed", over, in, ultimate.Source, plan.NoJointFormula, estimate.Again(ultimate), safety)}
}

func (h *holder) count(n int) estimate.Arg {
	return h.maker.Given(h.name+".count", unit.OfCount(n), ledger.Document, "")
}

// dowelWood is what bought dowels are of.
const dowelWood = "Beech, American"

func (h *holder) dowels(d *piece.Dowels) []plan.Holding {
	_, member := h.wood(h.b)
	beech, err := timber.Default().Find(dowelWood)
	shear := estimate.Lack(plan.NoWood)
	if member.known && err == nil {
		shear = estimate.Number(h.maker, h.name+".shear", member.species.Shear, plan.NoStiffness)
	}
	pull := h.maker.Estimate(h.name+".dowels", "dowels pull out", "", mechanics.SourceDowel, plan.NoJointFormula,
		estimate.Of(d.Diameter), estimate.Of(shorter(d.InA, d.InB)), h.count(d.Count), shear, estimate.Number(h.maker, "shear of a dowel", beech.Shear, plan.NoStiffness))
	moment := h.maker.Estimate(h.name+".dowels bear", "pull bears", "N m", own(mechanics.SourceDowel, pull), plan.NoJointFormula, estimate.Again(pull), estimate.Of(h.a.Thickness))
	return []plan.Holding{h.way("dowels pull out", d.Count, pull), h.way("moment", d.Count, moment)}
}

// own marks an estimate of our own on somebody's formula.
func own(s figure.Source, of plan.Estimate) figure.Source {
	s.Key = "strength.own-estimate"
	s.Status = figure.Weaker(figure.Derived, of.Source.Status)
	return s
}

// cheeks is the moment of so many glue lines of a width and a length.
func (h *holder) cheeks(wide, long piece.Figure, lines int) plan.Holding {
	bond := estimate.Number(h.maker, "glue line in shear", mechanics.Bond, "")
	return h.way("moment", lines, h.maker.Estimate(h.name+".cheeks", "cheeks bear", "N m", mechanics.SourceTenon, plan.NoJointFormula,
		estimate.Of(wide), estimate.Of(long), h.count(lines), bond))
}

// driven says through which part fasteners go, along which axis, and into which they
// go on.
func (h *holder) driven() (first, second *piece.Part, axis piece.Axis) {
	entry, _ := h.l.Entry.Axis()
	switch h.j.Kind {
	case piece.HousingJoint, piece.GrooveJoint:
		return h.b, h.a, entry
	case piece.RebateJoint:
		return h.a, h.b, 3 - entry - h.l.Run
	}
	thickA, _ := h.a.Frame.Thickness.Axis()
	thickB, _ := h.b.Frame.Thickness.Axis()
	if thickA != entry && thickB == entry {
		return h.b, h.a, entry
	}
	return h.a, h.b, entry
}

// fasteners estimates screws or nails, by the specific gravity of the wood that holds
// them: drawn out, pushed sideways, and drawn at half the thickness of the thinner part
// (an estimate of our own, which leaves the glue out).
func (h *holder) fasteners(f *piece.Fasteners) ([]plan.Holding, []plan.Datum) {
	first, second, axis := h.driven()
	screw, isScrew := hardware.ReadScrew(f.Kind)
	thick, long := figure.Exactly(screw.Diameter, screw.Source), screw.Length
	if !isScrew {
		thick, long = pinOf(f.Kind)
	}
	if thick.Value <= 0 {
		return nil, []plan.Datum{plan.NoFastener}
	}
	gravity, lateral := h.gravity(second)
	source := h.Ledger.Leaf(h.name+".fastener", long, ledger.Reference, f.Kind)
	deep := h.Ledger.Less(h.name+".deep", source, first.Extent[axis].High)
	deep = h.Ledger.Sum(h.name+".deep", deep, first.Extent[axis].Low)
	if whole := second.Extent[axis]; deep.Nm > whole.Size() {
		deep = h.Ledger.Less(h.name+".second", whole.High, whole.Low)
	}
	diameter := estimate.Of(h.Ledger.Leaf(h.name+".diameter", thick.Value, ledger.Reference, f.Kind))
	diameter.Source = thick.Source
	if thick.Low != thick.High {
		diameter.Low, diameter.High = unit.OfLength(thick.Low), unit.OfLength(thick.High)
	}
	grain := estimate.Number(h.maker, "side grain", figure.Exactly(mechanics.Ratio(1), mechanics.SourceScrew), "")
	if local, _ := second.Frame.LocalOf(axis); local == piece.AlongLength && !h.materials[second.Material].Sheet {
		grain = estimate.Number(h.maker, "end grain", mechanics.EndGrain, "")
	}
	out, side, from, word := "screw pulls out", "screw pushed sideways", mechanics.SourceScrew, "screws"
	if !isScrew {
		out, side, from, word = "nail pulls out", "nail pushed sideways", mechanics.SourceNail, "nails"
	}
	k := lateral.screw
	if !isScrew {
		k = lateral.nail
	}
	pull := h.maker.Estimate(h.name+".out", out, "", from, plan.NoFastener, gravity, diameter, estimate.Of(deep), h.count(f.Count), grain)
	push := h.maker.Estimate(h.name+".side", side, "", mechanics.SourceLateral, plan.NoFastener, k, diameter, h.count(f.Count))
	thin := shorter(h.a.Thickness, h.b.Thickness)
	moment := h.maker.Estimate(h.name+".fasteners bear", "pull bears", "N m", own(from, pull), plan.NoFastener, estimate.Again(pull), estimate.Of(thin))
	return []plan.Holding{h.way(word+" pull out", f.Count, pull), h.way(word+" pushed sideways", f.Count, push), h.way("moment", f.Count, moment)}, nil
}

// pinOf returns the thickness and the length of a pin as a document says it: a size of
// the table, or a kind and a length ("panel pin 25"), which leaves a range of
// thicknesses; of those the middle one. Nought for what the table lacks.
func pinOf(kind string) (thick figure.Of[unit.Length], long unit.Length) {
	if p, ok := hardware.ReadPin(kind); ok {
		return figure.Exactly(p.Diameter, p.Source), p.Length
	}
	i := strings.LastIndexByte(kind, ' ')
	if i < 0 {
		return thick, 0
	}
	long, err := unit.Parse(kind[i+1:], unit.Millimetre)
	if err != nil {
		return thick, 0
	}
	var sold []hardware.Pin
	for _, p := range hardware.Pins() {
		if p.Length == long && strings.HasPrefix(p.Name, strings.ToLower(kind[:i])) {
			sold = append(sold, p)
		}
	}
	if len(sold) == 0 {
		return thick, 0
	}
	slices.SortFunc(sold, func(a, b hardware.Pin) int { return cmp.Compare(a.Diameter, b.Diameter) })
	return figure.Between(sold[len(sold)/2].Diameter, sold[0].Diameter, sold[len(sold)-1].Diameter, sold[0].Source), long
}

// lateralArgs are the constants of the table of side loads for one wood.
type lateralArgs struct{ nail, screw estimate.Arg }

// gravity returns the specific gravity of what holds a fastener, and the constants of
// its side load.
func (h *holder) gravity(p *piece.Part) (estimate.Arg, lateralArgs) {
	m, w := h.wood(p)
	lack := func(d plan.Datum) (estimate.Arg, lateralArgs) {
		return estimate.Lack(d), lateralArgs{estimate.Lack(d), estimate.Lack(d)}
	}
	g, soft := w.species.Gravity, w.species.Kind == timber.Softwood
	switch {
	case m.Sheet:
		panel, err := timber.FindPanel(m.Species, p.Thickness.Nm)
		if err != nil || !panel.Density.Known() {
			return lack(plan.NoDensity)
		}
		x := timber.Gravity(float64(panel.Density.Value) / 1120)
		g = figure.Exactly(x, figure.Source{Key: "strength.gravity", Title: panel.Density.Source.Title, Status: figure.Weaker(figure.Derived, panel.Density.Source.Status)})
	case !w.known:
		return lack(plan.NoWood)
	}
	gravity := estimate.Number(h.maker, "specific gravity of "+m.Species, g, plan.NoDensity)
	l, err := mechanics.LateralOf(mechanics.Gravity(g.Value), soft)
	if err != nil {
		return gravity, lateralArgs{estimate.Lack(plan.NoDensity), estimate.Lack(plan.NoDensity)}
	}
	k := func(name string, one mechanics.Force) estimate.Arg {
		return estimate.Number(h.maker, name+" in "+m.Species, figure.Exactly(one, l.Source), plan.NoDensity)
	}
	return gravity, lateralArgs{k("side load of a nail", l.Nail(unit.Millimetre)), k("side load of a screw", l.Screw(unit.Millimetre))}
}
