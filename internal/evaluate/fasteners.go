package evaluate

import (
	"scantling/internal/figure"
	"scantling/internal/formula"
	"scantling/internal/hardware"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// fasteners works out what is driven through a joint. Screws whose size is known
// get their holes by rule: pilot, clearance and countersink, or a plug; pins and
// nails get a pilot hole only where it is asked for.
func (f *family) fasteners(how string, j *piece.Joint, p pair) *piece.Fasteners {
	known := []string{"kind", "count", "margin", "pilot", "depth"}
	if how == "screws" {
		known = append(known, "clearance", "sink", "plug", "slot")
	}
	v, ok := f.object(how, known...)
	if !ok {
		return nil
	}
	name := string(j.Family) + "." + how
	kind, has := v.Field("kind")
	n, counted := v.Field("count")
	if !has || !counted {
		f.w().fault(formula.CodeMissing, v.Where, message.Text("name", "kind, count"), message.Text("block", how))
		return nil
	}
	out := &piece.Fasteners{}
	var okK, okC, okM bool
	out.Kind, okK = f.d.s.maker.Words(kind)
	out.Count, _, okC = f.d.s.maker.Count(n, 1, 1000, "")
	out.Margin, okM = f.field(v, "margin", name+".margin")
	if !okK || !okC || !okM {
		return nil
	}
	d := drilling{f: f, v: v, name: name, out: out}
	if how == "screws" {
		ok = d.screw(f.hardness(p))
	} else {
		ok = d.pin()
	}
	if !ok {
		return nil
	}
	return out
}

// hardness is soft where both parts are of softwood: the lesser pilot hole would
// split a hardwood.
func (f *family) hardness(p pair) hardware.Wood {
	for _, x := range [2]*part{p.a, p.b} {
		m := x.material()
		if m == nil {
			return hardware.HardWood
		}
		if s, err := m.s.w.shop.Wood(m.stock().Species); err != nil || s.Kind != timber.Softwood {
			return hardware.HardWood
		}
	}
	return hardware.SoftWood
}

// drilling works out the holes of one kind of fastener.
type drilling struct {
	f    *family
	v    formula.Value
	name string
	out  *piece.Fasteners
}

// hole is a diameter or a depth: as said, nought where it is said to be false, else
// by rule if there is one.
func (d drilling) hole(field string, rule figure.Of[unit.Length]) (piece.Figure, bool) {
	x, said := d.v.Field(field)
	yes := said && x.Kind == formula.Truth && x.Is.Truth()
	switch {
	case said && x.Kind == formula.Truth && !x.Is.Truth():
		return piece.Figure{}, true
	case said && !yes:
		return d.f.field(d.v, field, d.name+"."+field)
	case !rule.Known():
		if yes {
			d.f.w().fault(CodeUnknownSize, x.Where, message.Text("kind", d.out.Kind), message.Text("word", field))
		}
		return piece.Figure{}, !yes
	}
	l := d.f.w().ledger
	return l.Figure(l.Given(ledger.Entry{Name: d.name + "." + field, Value: unit.OfLength(rule.Value), Origin: ledger.Reference,
		Source: rule.Source.Key, Status: string(rule.Source.Status)})), true
}

// pin works out the pilot hole of a pin or a nail, if there is to be one.
func (d drilling) pin() bool {
	var lead, deep figure.Of[unit.Length]
	if x, said := d.v.Field("pilot"); said && x.Kind == formula.Truth && x.Is.Truth() {
		if p, ok := hardware.ReadPin(d.out.Kind); ok {
			lead, deep = p.Lead(), figure.Exactly(p.Length, p.Source)
		}
	}
	var okP, okD bool
	d.out.Pilot, okP = d.hole("pilot", lead)
	d.out.Depth, okD = d.hole("depth", deep)
	return okP && okD
}

// screw works out the holes of a screw.
func (d drilling) screw(wood hardware.Wood) bool {
	s, known := hardware.ReadScrew(d.out.Kind)
	var h hardware.Holes
	var deep figure.Of[unit.Length]
	if known {
		h, deep = s.Holes(wood), figure.Exactly(s.Length, s.Source)
	}
	var okP, okC, okD bool
	d.out.Pilot, okP = d.hole("pilot", h.Lead)
	d.out.Clearance, okC = d.hole("clearance", h.Clearance)
	if !okP || !okC || !d.mouth(s, h) {
		return false
	}
	var okS bool
	if d.out.Slot, okS = d.hole("slot", figure.Of[unit.Length]{}); !okS {
		return false
	}
	d.out.Depth, okD = d.hole("depth", deep)
	if _, said := d.v.Field("depth"); okD && !said && known && d.out.Sink != nil && d.out.Sink.Flat {
		d.out.Depth = d.f.w().ledger.Sum(d.name+".depth", d.out.Depth, d.out.Sink.Depth) // below the plug
	}
	return okD
}

// mouth works out the countersink, a right-angled cone, or the hole for a plug.
func (d drilling) mouth(s hardware.Screw, h hardware.Holes) bool {
	l := d.f.w().ledger
	if x, said := d.v.Field("plug"); said && (x.Kind != formula.Truth || x.Is.Truth()) {
		var rule figure.Of[unit.Length]
		if s.Head > 0 {
			rule, _ = hardware.Plug(s.Head)
		}
		wide, ok := d.hole("plug", rule)
		if !ok {
			return false
		}
		deep := hardware.PlugDepth(wide.Nm)
		d.out.Sink = &piece.Sink{Flat: true, Diameter: wide, Depth: l.Figure(l.Given(ledger.Entry{Name: d.name + ".plug.depth",
			Value: unit.OfLength(deep.Value), Origin: ledger.Reference, Source: deep.Source.Key, Status: string(deep.Source.Status)}))}
		return true
	}
	wide, ok := d.hole("sink", h.Sink)
	if !ok || wide.Nm <= 0 {
		return ok
	}
	hole := d.out.Clearance
	if hole.Nm == 0 {
		hole = d.out.Pilot
	}
	if wide.Nm > hole.Nm {
		d.out.Sink = &piece.Sink{Diameter: wide, Depth: l.Half(d.name+".sink.depth", l.Less(d.name+".sink.depth", wide, hole))}
	}
	return true
}
