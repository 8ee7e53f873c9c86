package assembled

import (
	"scantling/internal/address"
	"scantling/internal/carve/line"
	"scantling/internal/carve/plane"
	"scantling/internal/geom/polygon"
	"scantling/internal/ledger"
	"scantling/internal/piece"
)

// Block is a group as a block of wood: what a cut that is made after glue-up is
// drawn on. Its extent is that of its parts; its length runs to the right, its width
// back and its thickness up.
func Block(l *ledger.Ledger, group address.Address, parts []piece.Part) piece.Part {
	out := piece.Part{Address: group, Form: piece.Board, Frame: piece.Frame{Length: piece.ToRight, Width: piece.ToBack, Thickness: piece.ToUp}}
	var sizes [3]piece.Figure
	for a := range out.Extent {
		var low, high []piece.Figure
		for _, p := range parts {
			low, high = append(low, p.Extent[a].Low), append(high, p.Extent[a].High)
		}
		out.Extent[a] = piece.Extent{Low: l.Least("", low...), High: l.Greatest("", high...)}
		sizes[a] = l.Less(string(group)+"."+[3]string{"wide", "deep", "high"}[a], out.Extent[a].High, out.Extent[a].Low)
	}
	out.Length, out.Width, out.Thickness = sizes[0], sizes[1], sizes[2]
	return out
}

// onto carries cuts from a block to one of the parts that it is put together of.
type onto struct {
	l          *ledger.Ledger
	block, one piece.Part
}

// Onto returns what a cut on an assembled group takes from one of its parts, and
// whether it meets the part at all. The cut gets the part's address with its own last
// step, and names the group.
func Onto(l *ledger.Ledger, c piece.Cut, block, one piece.Part) (piece.Cut, bool) {
	o := onto{l, block, one}
	out := c
	out.Part, out.AfterGlueUp, out.After = one.Address, block.Address, nil
	out.Address = address.Join(append(stepsOf(one.Address), c.Address.Last())...)
	ok := false
	switch {
	case c.Slot != nil:
		out.Slot, ok = o.slot(*c.Slot)
	case c.Bore != nil:
		out.Bore, ok = o.bore(*c.Bore)
	case c.Ease != nil:
		out.Ease, ok = o.ease(*c.Ease)
	case c.Slice != nil:
		out.Slice, ok = o.slice(*c.Slice)
	case c.Pocket != nil:
		out.Pocket, ok = o.pocket(*c.Pocket)
	}
	return out, ok
}

func stepsOf(a address.Address) []address.Step {
	steps, err := a.Steps()
	if err != nil {
		return nil
	}
	return steps
}

// local is the part's own axis along one of the block's, and whether it grows the
// same way.
func (o onto) local(a piece.Local) (piece.Local, bool) {
	l, sign := o.one.Frame.LocalOf(piece.Axis(a))
	return l, sign > 0
}

// at carries a place along an axis of the block to the part's own axis.
func (o onto) at(a piece.Local, f piece.Figure) piece.Figure {
	e := o.one.Extent[a]
	there := o.l.Sum("", o.block.Extent[a].Low, f)
	if _, same := o.local(a); same {
		return o.l.Less("", there, e.Low)
	}
	return o.l.Less("", e.High, there)
}

// span carries a stretch, low end first.
func (o onto) span(a piece.Local, from, to piece.Figure) (low, high piece.Figure) {
	low, high = o.at(a, from), o.at(a, to)
	if low.Nm > high.Nm {
		return high, low
	}
	return low, high
}

// side carries a side, with how far the part's lies behind the block's.
func (o onto) side(s piece.Side) (piece.Side, piece.Figure) {
	a, high := s.Axis()
	local, same := o.local(a)
	b, p := o.block.Extent[a], o.one.Extent[a]
	if high {
		return piece.SideOf(local, same), o.l.Less("", b.High, p.High)
	}
	return piece.SideOf(local, !same), o.l.Less("", p.Low, b.Low)
}

// size is the part's along one of its own axes.
func (o onto) size(a piece.Local) piece.Figure { return o.one.Sizes()[a] }

// slot carries a straight cut: what reaches the part of its depth, and where its
// walls lean where they are there.
func (o onto) slot(s piece.Slot) (*piece.Slot, bool) {
	l := o.l
	out := s
	var gap piece.Figure
	out.Open, gap = o.side(s.Open)
	if s.Depth.Nm <= gap.Nm {
		return nil, false
	}
	out.Run, _ = o.local(s.Run)
	out.From, out.To = o.span(s.Run, s.From, s.To)
	nearLean, farLean := s.LeanNear, s.LeanFar
	near, far := s.Near, s.Far
	leans := s.LeanNear.Nm != 0 || s.LeanFar.Nm != 0
	if gap.Nm > 0 && leans {
		near = l.Sum("", near, o.share(s.LeanNear, gap, s.Depth))
		far = l.Less("", far, o.share(s.LeanFar, gap, s.Depth))
		nearLean = l.Less("", l.Sum("", s.Near, s.LeanNear), near)
		farLean = l.Less("", far, l.Less("", s.Far, s.LeanFar))
	}
	out.Near, out.Far = o.span(s.Across(), near, far)
	if _, same := o.local(s.Across()); !same {
		nearLean, farLean = farLean, nearLean
	}
	if leans {
		out.LeanNear, out.LeanFar = nearLean, farLean
	}
	open, _ := out.Open.Axis()
	out.Depth = l.Least("", l.Less("", s.Depth, gap), o.size(open))
	out.StartOpen, out.EndOpen = out.From.Nm <= 0, out.To.Nm >= o.size(out.Run).Nm
	met := out.Far.Nm > 0 && out.Near.Nm < o.size(out.Across()).Nm && out.To.Nm > 0 && out.From.Nm < o.size(out.Run).Nm
	return &out, met
}

// share is a lean over a part of the depth.
func (o onto) share(lean, gap, depth piece.Figure) piece.Figure {
	if lean.Nm == 0 {
		return o.l.Less("", gap, gap)
	}
	area, err := o.l.Make("", ledger.OpMul, "", lean.Entry, gap.Entry)
	if err != nil {
		return o.l.Less("", gap, gap)
	}
	id, err := o.l.Make("", ledger.OpDiv, "", area, depth.Entry)
	if err != nil {
		return o.l.Less("", gap, gap)
	}
	return o.l.Figure(id)
}

// bore carries a hole.
func (o onto) bore(b piece.Bore) (*piece.Bore, bool) {
	out := b
	var gap piece.Figure
	out.Open, gap = o.side(b.Open)
	open, _ := b.Open.Axis()
	own, _ := out.Open.Axis()
	met := b.Through || b.Depth.Nm > gap.Nm
	k := 0
	for a := range piece.Local(3) {
		if a == open {
			continue
		}
		local, _ := o.local(a)
		i := 0
		if local > 3-own-local {
			i = 1
		}
		out.At[i] = o.at(a, b.At[k])
		met = met && out.At[i].Nm > -b.Diameter.Nm/2 && out.At[i].Nm < o.size(local).Nm+b.Diameter.Nm/2
		k++
	}
	if !met {
		return nil, false
	}
	out.Depth = o.size(own)
	if left := o.l.Less("", b.Depth, gap); !b.Through && left.Nm < out.Depth.Nm {
		out.Depth = left
	} else {
		out.Through = true
	}
	if gap.Nm > 0 {
		out.Sink = nil
	}
	return &out, true
}

// ease carries an edge taken off to the parts that have it.
func (o onto) ease(e piece.Ease) (*piece.Ease, bool) {
	out := e
	var gaps [2]piece.Figure
	for i, s := range e.Sides {
		out.Sides[i], gaps[i] = o.side(s)
	}
	if gaps[0].Nm != 0 || gaps[1].Nm != 0 {
		return nil, false
	}
	if e.To.Nm == 0 {
		return &out, true
	}
	a, _ := e.Sides[0].Axis()
	b, _ := e.Sides[1].Axis()
	run := 3 - a - b
	local, _ := o.local(run)
	out.From, out.To = o.span(run, e.From, e.To)
	return &out, out.To.Nm > 0 && out.From.Nm < o.size(local).Nm
}

// slice carries a plane: its three stations, and where it crosses at them.
func (o onto) slice(s piece.Slice) (*piece.Slice, bool) {
	out := piece.Slice{}
	out.Off, _ = o.side(s.Off)
	off, _ := s.Off.Axis()
	own, _ := out.Off.Axis()
	var order [2]int // of the block's two axes among the part's
	k := 0
	for a := range piece.Local(3) {
		if a == off {
			continue
		}
		local, _ := o.local(a)
		i := 0
		if local > 3-own-local {
			i = 1
		}
		out.From[i], out.To[i] = o.at(a, s.From[k]), o.at(a, s.To[k])
		order[k] = i
		k++
	}
	out.At[0] = o.at(off, s.At[0])
	out.At[order[0]+1], out.At[order[1]+1] = o.at(off, s.At[1]), o.at(off, s.At[2])
	return &out, plane.Crosses(out, o.one.Sizes())
}

// pocket carries a cut within a line.
func (o onto) pocket(p piece.Pocket) (*piece.Pocket, bool) {
	out := p
	var gap piece.Figure
	out.Open, gap = o.side(p.Open)
	open, _ := p.Open.Axis()
	own, _ := out.Open.Axis()
	if !p.Through && p.Depth.Nm <= gap.Nm {
		return nil, false
	}
	out.Depth = o.size(own)
	if left := o.l.Less("", p.Depth, gap); !p.Through && left.Nm < out.Depth.Nm {
		out.Depth = left
	} else {
		out.Through = true
	}
	first, second := (open+1)%3, (open+2)%3
	if first > second {
		first, second = second, first
	}
	u, sameU := o.local(first)
	_, sameV := o.local(second)
	swapped := u > 3-own-u
	out.Outline = make([]piece.OutlinePoint, len(p.Outline))
	for i, v := range p.Outline {
		x, y := o.at(first, v.Along), o.at(second, v.Across)
		if swapped {
			x, y = y, x
		}
		if sameU != sameV != swapped {
			v.Bulge = -v.Bulge
		}
		out.Outline[i] = piece.OutlinePoint{Along: x, Across: y, Bulge: v.Bulge}
	}
	out.Outline = line.Wound(out.Outline, true)
	low, high := polygon.Profile{Outer: line.Loop(out.Outline)}.Bounds()
	local := [2]piece.Local{u, 3 - own - u}
	if swapped {
		local[0], local[1] = local[1], local[0]
	}
	return &out, low.X < line.MM(o.size(local[0])) && high.X > 0 && low.Y < line.MM(o.size(local[1])) && high.Y > 0
}
