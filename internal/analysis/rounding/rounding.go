package rounding

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Rows returns the part list with what each size does.
func Rows(p *piece.Piece, rows []plan.PartRow) []plan.PartRow {
	f := finder{piece: p, parts: map[address.Address]*piece.Part{}, goes: map[address.Address][3]plan.Going{}}
	for i := range p.Parts {
		f.parts[p.Parts[i].Address] = &p.Parts[i]
	}
	f.fits()
	f.joints()
	f.openings()
	out := slices.Clone(rows)
	for i := range out {
		for _, a := range out[i].Members {
			for n, g := range f.goes[a] {
				if rank(g.What) > rank(out[i].Goes[n].What) {
					out[i].Goes[n] = g
				}
			}
		}
	}
	return out
}

// rank orders what a size may do: going in comes before anything else.
func rank(g plan.Goes) int {
	return slices.Index([]plan.Goes{plan.Matches, plan.Takes, plan.GoesIn}, g)
}

type finder struct {
	piece *piece.Piece
	parts map[address.Address]*piece.Part
	goes  map[address.Address][3]plan.Going
}

// note keeps what the size of a part along an axis of the piece does.
func (f *finder) note(p *piece.Part, axis piece.Axis, what plan.Goes, by address.Address) {
	local, _ := p.Frame.LocalOf(axis)
	all := f.goes[p.Address]
	if rank(what) > rank(all[local].What) {
		all[local] = plan.Going{What: what, By: by}
	}
	f.goes[p.Address] = all
}

// fits notes the parts that reach from end to end of a group that goes into a space,
// or, upwards, to its top.
func (f *finder) fits() {
	for _, fit := range f.piece.Fits {
		var parts []*piece.Part
		for i := range f.piece.Parts {
			if p := &f.piece.Parts[i]; fit.Moves.Has(p.Address) {
				parts = append(parts, p)
			}
		}
		for _, axis := range []piece.Axis{piece.Right, piece.Back, piece.Up} {
			low, high := ends(parts, axis)
			for _, p := range parts {
				if e := p.Extent[axis]; e.High.Nm == high && (e.Low.Nm == low || axis == piece.Up) {
					f.note(p, axis, plan.GoesIn, fit.Address)
				}
			}
		}
	}
}

func ends(parts []*piece.Part, axis piece.Axis) (low, high unit.Length) {
	for i, p := range parts {
		e := p.Extent[axis]
		if i == 0 {
			low, high = e.Low.Nm, e.High.Nm
		}
		low, high = min(low, e.Low.Nm), max(high, e.High.Nm)
	}
	return low, high
}

// enters tells joints in which A stands in wood of B.
func enters(k piece.JointKind) bool {
	switch k {
	case piece.HousingJoint, piece.GrooveJoint, piece.RebateJoint, piece.TongueJoint, piece.TenonJoint, piece.BridleJoint, piece.SlidingJoint:
		return true
	}
	return false
}

// wraps tells joints whose cut in B is as wide as A is thick.
func wraps(k piece.JointKind) bool { return k == piece.HousingJoint || k == piece.GrooveJoint }

// joints notes parts that stand in others at both ends, and the thickness of boards
// that a slot is cut for. A sheet is as thick as it is: its slot is cut to it.
func (f *finder) joints() {
	type key struct {
		part address.Address
		axis piece.Axis
	}
	low, high := map[key]bool{}, map[key]bool{}
	for _, j := range f.piece.Joints {
		a, b := f.parts[j.A], f.parts[j.B]
		if a == nil || b == nil || !enters(j.Kind) {
			continue
		}
		axis, up, ok := entry(a, b)
		if !ok {
			continue
		}
		k := key{a.Address, axis}
		if up {
			high[k] = true
		} else {
			low[k] = true
		}
		if low[k] && high[k] {
			f.note(a, axis, plan.GoesIn, j.Family)
		}
		if through, _ := a.Frame.Directions()[piece.AlongThickness].Axis(); wraps(j.Kind) && through != axis && !f.sheet(a) {
			f.note(a, through, plan.GoesIn, j.Family)
		}
	}
}

func (f *finder) sheet(p *piece.Part) bool {
	return slices.ContainsFunc(f.piece.Materials, func(m piece.Material) bool { return m.Name == p.Material && m.Sheet })
}

// entry is the axis along which A stands in B, and whether with its high end: the one
// along which they overlap least, and A sticks out of B on one side only.
func entry(a, b *piece.Part) (axis piece.Axis, up, ok bool) {
	least := unit.Length(-1)
	for _, x := range []piece.Axis{piece.Right, piece.Back, piece.Up} {
		p, q := a.Extent[x], b.Extent[x]
		over := min(p.High.Nm, q.High.Nm) - max(p.Low.Nm, q.Low.Nm)
		inHigh, inLow := p.High.Nm > q.Low.Nm && p.Low.Nm < q.Low.Nm && p.High.Nm <= q.High.Nm, p.Low.Nm < q.High.Nm && p.High.Nm > q.High.Nm && p.Low.Nm >= q.Low.Nm
		if over <= 0 || !inHigh && !inLow || least >= 0 && over >= least {
			continue
		}
		least, axis, up, ok = over, x, inHigh, true
	}
	return axis, up, ok
}

// openings notes parts that are as long as a space is clear and stand beside it: they
// hold it apart for what goes into it.
func (f *finder) openings() {
	for _, s := range f.piece.Spaces {
		used := slices.ContainsFunc(f.piece.Fits, func(x piece.Fit) bool { return x.Inside == s.Address }) ||
			slices.ContainsFunc(f.piece.Groups, func(g piece.Group) bool { return g.Inside == s.Address })
		if !used {
			continue
		}
		for i := range f.piece.Parts {
			p := &f.piece.Parts[i]
			for _, axis := range []piece.Axis{piece.Right, piece.Back, piece.Up} {
				bounded := s.Bounds[2*int(axis)] != "" && s.Bounds[2*int(axis)+1] != ""
				if e := p.Extent[axis]; bounded && e.Low.Nm == s.Extent[axis].Low.Nm && e.High.Nm == s.Extent[axis].High.Nm {
					f.note(p, axis, plan.Takes, s.Address)
				}
			}
		}
	}
}
