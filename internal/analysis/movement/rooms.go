package movement

import (
	"fmt"

	"scantling/internal/address"
	"scantling/internal/analysis/estimate"
	"scantling/internal/joinery"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// edge is a joint that holds one edge of a panel: how deep it lies in, and the
// clearance behind it.
type edge struct {
	joint *piece.Joint
	low   *joinery.Lowered
	glued bool
}

// rooms lists solid parts that lie with both edges of their width in the wood of other
// parts, at one of them at least without glue.
func (f *follower) rooms() []plan.PanelRoom {
	joints := map[address.Address]*piece.Joint{}
	for i := range f.Piece.Joints {
		joints[f.Piece.Joints[i].Address] = &f.Piece.Joints[i]
	}
	held := map[address.Address][2][]edge{}
	for i := range f.Joints {
		low := &f.Joints[i]
		j, p, other := joints[low.Joint], f.parts[low.A], f.parts[low.B]
		if j == nil || p == nil || other == nil || j.Depth.Nm <= 0 {
			continue
		}
		axis, _ := p.Frame.Width.Axis()
		if entry, _ := low.Entry.Axis(); entry != axis {
			continue
		}
		side := 0
		if low.Region[axis].Low.Nm > (p.Extent[axis].Low.Nm+p.Extent[axis].High.Nm)/2 {
			side = 1
		}
		both := held[p.Address]
		both[side] = append(both[side], edge{j, low, j.Glue != "" && !j.Slides})
		held[p.Address] = both
	}
	var out []plan.PanelRoom
	for i := range f.Piece.Parts {
		p := &f.Piece.Parts[i]
		both := held[p.Address]
		m, w, solid := f.wood(p)
		if solid && len(both[0]) > 0 && len(both[1]) > 0 && !(tight(both[0]).glued && tight(both[1]).glued) {
			out = append(out, f.room(p, m, w, tight(both[0]), tight(both[1])))
		}
	}
	return out
}

// tight returns the joint of an edge that leaves it the least: a glued one, or that with
// the least clearance.
func tight(all []edge) edge {
	best := all[0]
	for _, e := range all[1:] {
		if e.glued && !best.glued || e.glued == best.glued && e.joint.ClearDeep.Nm < best.joint.ClearDeep.Nm {
			best = e
		}
	}
	return best
}

func (f *follower) room(p *piece.Part, m piece.Material, w wood, low, high edge) plan.PanelRoom {
	name := string(p.Address) + ".room"
	axis, _ := p.Frame.Width.Axis()
	out := plan.PanelRoom{Part: p.Address, Axis: axis, Joints: [2]address.Address{low.joint.Address, high.joint.Address}, Swell: f.swell(name, m, w, 0, p.Width)}
	var terms []piece.Figure
	for _, e := range [2]edge{low, high} {
		if e.glued {
			continue // it stays where it is
		}
		if e.joint.ClearDeep != (piece.Figure{}) {
			terms = append(terms, e.joint.ClearDeep)
		}
		if out.Enters == (piece.Figure{}) || e.joint.Depth.Nm < out.Enters.Nm {
			out.Enters = e.joint.Depth
		}
	}
	if len(terms) == 0 {
		terms = append(terms, f.Ledger.Less(name+".none", out.Enters, out.Enters))
	}
	out.Room = f.Ledger.Sum(name, terms...)
	out.Spare = f.maker.Estimate(name+".spare", "less the growth", "", out.Swell.Grows.Source, plan.NoWood, estimate.Of(out.Room), estimate.Again(out.Swell.Grows))
	out.Keeps = f.maker.Estimate(name+".keeps", "less the loss", "", out.Swell.Shrinks.Source, plan.NoWood, estimate.Of(out.Enters), estimate.Again(out.Swell.Shrinks))
	return out
}

// lessBy is a length less another.
func lessBy(a []unit.Value) (unit.Value, error) {
	l, err := lengthsOf(a, 2)
	if err != nil {
		return unit.Value{}, fmt.Errorf("a room: %w", err)
	}
	return unit.OfLength(l[0] - l[1]), nil
}
