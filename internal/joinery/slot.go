package joinery

import (
	"cmp"
	"slices"
	"strings"

	"scantling/internal/address"
	"scantling/internal/piece"
)

// cuts turns claims and holes into cuts, joint by joint.
func (w *work) cuts() []piece.Cut {
	byJoint := make(map[address.Address][]piece.Cut, len(w.joints))
	order := make([]int, 0, len(w.claims))
	for i := range w.claims {
		if !w.claims[i].gone {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(w.claims[i].joint, w.claims[j].joint) })
	for _, i := range order {
		if c, ok := w.cutOf(&w.claims[i]); ok {
			byJoint[c.Joint] = append(byJoint[c.Joint], c)
		}
	}
	for _, h := range w.holes {
		byJoint[h.Joint] = append(byJoint[h.Joint], h)
	}
	var out []piece.Cut
	for i := range w.joints {
		j := w.joints[i].Address
		list := byJoint[j]
		delete(byJoint, j)
		name(j, list)
		if w.joints[i].Kind == piece.MitreJoint {
			slipsAfter(list)
		}
		out = append(out, list...)
	}
	return out
}

// name gives the cuts of a joint their addresses: the joint's, and the kind of
// cut, counted from 1 where there are several of a kind.
func name(j address.Address, list []piece.Cut) {
	total, seen := map[piece.CutKind]int{}, map[piece.CutKind]int{}
	for i := range list {
		total[list[i].Kind]++
	}
	for i := range list {
		k := list[i].Kind
		seen[k]++
		if total[k] == 1 {
			list[i].Address = j.Child(wordOf(k))
		} else {
			list[i].Address = j.Nth(wordOf(k), seen[k])
		}
	}
}

// wordOf is a kind of cut as a word of an address.
func wordOf(k piece.CutKind) string { return strings.ReplaceAll(string(k), " ", "-") }

// cutOf turns a claim into a slot in local coordinates of the loser.
func (w *work) cutOf(c *claim) (piece.Cut, bool) {
	p := &w.piece.Parts[c.loser]
	j := &w.joints[c.joint]
	if c.profile != nil {
		out := piece.Cut{Kind: c.kind, Part: p.Address, Joint: j.Address, With: w.piece.Parts[c.keeper].Address, Where: j.Where}
		ok := w.shapedCut(p, c, &out)
		if !ok {
			w.report(j.Joint, fault{CodeBuried, "joint.buried", pairArgs(j.Joint)})
		}
		return out, ok
	}
	if !c.aim(p) {
		w.report(j.Joint, fault{CodeBuried, "joint.buried", pairArgs(j.Joint)})
		return piece.Cut{}, false
	}
	slot := w.slot(p, c)
	slot.EndRadius = c.endRadius
	return piece.Cut{
		Kind: c.shape(p, slot), Part: p.Address, Joint: j.Address, With: w.piece.Parts[c.keeper].Address,
		Slot: &slot, Where: j.Where,
	}, true
}

// aim makes sure that the cut is open to the side that it is to be made from; if
// not, it chooses a side to which it is. The run is never the axis of that side.
func (c *claim) aim(p *piece.Part) bool {
	body := box(p.Extent)
	reaches := func(d piece.Direction) bool {
		if d == "" {
			return false
		}
		a, sign := d.Axis()
		return c.cut.end(a, sign > 0).Nm == body.end(a, sign > 0).Nm
	}
	if !reaches(c.open) {
		c.open = ""
		for _, d := range p.Frame.Directions() {
			for _, way := range [2]piece.Direction{d, d.Opposite()} {
				if c.open == "" && reaches(way) {
					c.open = way
				}
			}
		}
		if c.open == "" {
			return false
		}
	}
	if a, _ := c.open.Axis(); a == c.run || c.kind == piece.Notch {
		c.run = throughAxis(c.cut, body, a)
	}
	return true
}

// throughAxis returns the axis across open along which the cut runs right through
// the body, or else the one along which it is longer.
func throughAxis(cut, body box, open piece.Axis) piece.Axis {
	a, b := (open+1)%3, (open+2)%3
	throughA, throughB := cut.size(a) == body.size(a), cut.size(b) == body.size(b)
	if throughA != throughB {
		if throughA {
			return a
		}
		return b
	}
	if cut.size(a) >= cut.size(b) {
		return a
	}
	return b
}

// slot writes the claim's box in local coordinates.
func (w *work) slot(p *piece.Part, c *claim) piece.Slot {
	run, _ := p.Frame.LocalOf(c.run)
	openAxis, sign := c.open.Axis()
	s := piece.Slot{Open: p.Frame.SideToward(c.open), Run: run}
	label := string(p.Address) + "." + string(c.kind)
	s.From, s.To = w.local(label, p, c.run, c.cut)
	s.Near, s.Far = w.local(label, p, 3-c.run-openAxis, c.cut)
	whole := w.along(p, c.run)
	s.StartOpen, s.EndOpen = s.From.Nm == 0, s.To.Nm == whole.Nm
	body := box(p.Extent)
	if sign > 0 {
		s.Depth = w.ledger.Less(label+" depth", body[openAxis].High, c.cut[openAxis].Low)
	} else {
		s.Depth = w.ledger.Less(label+" depth", c.cut[openAxis].High, body[openAxis].Low)
	}
	return s
}

// local returns the limits of a box along an axis, measured from the part's
// local origin, the lesser first.
func (w *work) local(label string, p *piece.Part, a piece.Axis, b box) (from, to piece.Figure) {
	_, sign := p.Frame.LocalOf(a)
	e := p.Extent[a]
	zero := w.ledger.Less(label+" end", e.Low, e.Low)
	whole := w.along(p, a)
	at := func(f piece.Figure) piece.Figure {
		switch {
		case f.Nm == e.Low.Nm && sign > 0, f.Nm == e.High.Nm && sign < 0:
			return zero
		case f.Nm == e.Low.Nm || f.Nm == e.High.Nm:
			return whole
		case sign > 0:
			return w.ledger.Less(label, f, e.Low)
		}
		return w.ledger.Less(label, e.High, f)
	}
	from, to = at(b[a].Low), at(b[a].High)
	if sign < 0 {
		from, to = to, from
	}
	return from, to
}

// shape names a trench by its shape: open along a side it is a rebate; otherwise
// it is what its joint made it.
func (c *claim) shape(p *piece.Part, s piece.Slot) piece.CutKind {
	if c.kind != piece.Rebate && c.kind != piece.Groove && c.kind != piece.Housing {
		return c.kind
	}
	across := s.Across()
	size := p.Sizes()[across].Nm
	if s.Near.Nm == 0 || s.Far.Nm == size {
		return piece.Rebate
	}
	if c.kind != piece.Rebate {
		return c.kind
	}
	if s.Run == piece.AlongLength {
		return piece.Groove
	}
	return piece.Housing
}
