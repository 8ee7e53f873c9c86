package strength

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis/estimate"
	"scantling/internal/figure"
	"scantling/internal/joinery"
	"scantling/internal/ledger"
	"scantling/internal/mechanics"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// sheetRigid is the modulus of rigidity of sheet goods in their plane, in MPa; from
// memory of plywood handbooks.
var sheetRigid = figure.Between(mechanics.Stress(700), 500, 900, figure.Source{Key: "strength.sheet-rigidity", Title: "plywood handbooks", Status: figure.Memory})

// frame is a case: uprights that stand from left to right, and the corners where flat
// parts are joined to them.
type frame struct {
	group    address.Address
	uprights []*piece.Part
	corners  []*joinery.Lowered
	back     *piece.Part
}

// cases lists the cases that do not move: groups of two uprights or more with flat parts
// joined to them.
func (e *estimator) cases(holds []plan.JointHold) []plan.Racking {
	bears := map[address.Address]plan.Estimate{}
	for _, h := range holds {
		bears[h.Joint] = plan.Estimate{Missing: h.Missing}
		if len(h.Missing) == 0 {
			bears[h.Joint] = plan.Estimate{Missing: []plan.Datum{plan.NoJointFormula}}
		}
		for _, w := range h.Ways {
			if w.Way == "moment" {
				bears[h.Joint] = w.Allowed
			}
		}
	}
	var out []plan.Racking
	for _, f := range e.frames() {
		if len(f.uprights) > 1 && len(f.corners) > 1 {
			out = append(out, e.rack(f, bears))
		}
	}
	return out
}

func (e *estimator) frames() []*frame {
	var out []*frame
	at := map[address.Address]*frame{}
	for i := range e.Piece.Parts {
		p := &e.Piece.Parts[i]
		if t, _ := p.Frame.Thickness.Axis(); t != piece.Right || p.Tilt != nil || e.of(p.Address) != nil || p.Extent[piece.Up].Size() < p.Extent[piece.Back].Size()/2 {
			continue
		}
		f := at[p.Group]
		if f == nil {
			f = &frame{group: p.Group}
			at[p.Group], out = f, append(out, f)
		}
		f.uprights = append(f.uprights, p)
	}
	for i := range e.Joints {
		l := &e.Joints[i]
		a, b := e.parts[l.A], e.parts[l.B]
		if a == nil || b == nil {
			continue
		}
		ta, _ := a.Frame.Thickness.Axis()
		tb, _ := b.Frame.Thickness.Axis()
		if ta == piece.Right {
			a, b, ta, tb = b, a, tb, ta
		}
		f := at[b.Group]
		if tb != piece.Right || f == nil || !slices.Contains(f.uprights, b) {
			continue
		}
		switch ta {
		case piece.Up:
			f.corners = append(f.corners, l)
		case piece.Back:
			f.back = a
		}
	}
	return out
}

func (e *estimator) rack(f *frame, bears map[address.Address]plan.Estimate) plan.Racking {
	low, high := f.uprights[0].Extent[piece.Up].Low, f.uprights[0].Extent[piece.Up].High
	left, right := f.uprights[0].Extent[piece.Right].Low, f.uprights[0].Extent[piece.Right].High
	for _, p := range f.uprights {
		low, high = lower(low, p.Extent[piece.Up].Low), higher(high, p.Extent[piece.Up].High)
		left, right = lower(left, p.Extent[piece.Right].Low), higher(right, p.Extent[piece.Right].High)
	}
	name := string(f.group) + ".racking"
	out := plan.Racking{Group: f.group, High: e.Ledger.Less(name+".high", high, low), Corners: len(f.corners), Back: e.backOf(f)}
	out.Push = e.maker.Estimate(name+".push", "push of use", "", figure.PracticeSource("mechanics.push-of-use"), plan.NoDensity, estimate.Again(e.wholeMass()))
	corners := e.maker.Given(name+".corners", unit.OfCount(out.Corners), ledger.Derived, "")
	out.Each = e.maker.Estimate(name+".each", "moment on a corner", "N m", mechanics.SourceRacking, plan.NoLoad, estimate.Again(out.Push), estimate.Of(out.High), corners)
	if f.back != nil && e.materials[f.back.Material].Sheet && (out.Back == "glued" || out.Back == "fixed") {
		width := e.Ledger.Less(name+".width", right, left)
		out.Panel = e.maker.Estimate(name+".panel", "shift of a panel", "", mechanics.SourceRacking, plan.NoStiffness,
			estimate.Again(out.Push), estimate.Of(width), estimate.Of(out.High), estimate.Of(f.back.Thickness), estimate.Number(e.maker, "rigidity of sheet goods", sheetRigid, ""))
	}
	for i, l := range f.corners {
		b := bears[l.Joint]
		if i == 0 || out.Bears.Known() && (!b.Known() || b.Value.Float() < out.Bears.Value.Float()) {
			out.Bears, out.Weakest = b, l.Joint
		}
	}
	return out
}

func lower(a, b piece.Figure) piece.Figure {
	if b.Nm < a.Nm {
		return b
	}
	return a
}

func higher(a, b piece.Figure) piece.Figure {
	if b.Nm > a.Nm {
		return b
	}
	return a
}

// backOf says how the back of a case is held, by its loosest joint.
func (e *estimator) backOf(f *frame) string {
	if f.back == nil {
		return "open"
	}
	out := "glued"
	for _, l := range e.at[f.back.Address] {
		switch j := e.joints[l.Joint]; {
		case j == nil:
		case j.B == f.back.Address && !slices.ContainsFunc(f.uprights, func(p *piece.Part) bool { return p.Address == j.A }):
			// what is let into the back is held by it: a bottom in its groove
		case j.Glue != "" && !j.Slides:
		case j.Fasteners != nil && j.Fasteners.Count > 0 && !j.Slides:
			if out == "glued" {
				out = "fixed"
			}
		default:
			out = "loose"
		}
	}
	return out
}

// wholeMass is the mass of all parts, and of the contents whose mass is known.
func (e *estimator) wholeMass() plan.Estimate {
	var all []plan.Estimate
	for i := range e.Piece.Parts {
		if p := &e.Piece.Parts[i]; p.Form != piece.Bought {
			all = append(all, e.mass(p))
		}
	}
	for _, c := range e.cargo {
		if c.mass.Known() {
			all = append(all, c.mass)
		}
	}
	return e.sum("all that is known to stand", all...)
}
