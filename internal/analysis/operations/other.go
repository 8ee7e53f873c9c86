package operations

import (
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/tool"
)

// otherWay returns how a hole, a plane, a scoop or an eased edge is made: at the
// drill press, the saws or the router table where the shop has what it takes, else
// by hand; others are all cuts of the part.
func otherWay(shop Workshop, l *ledger.Ledger, cut piece.Cut, others []piece.Cut, w work) Way {
	way := Way{Machine: Hand, Guide: ByHand, Work: w.size, At: w.at}
	switch {
	case cut.Bore != nil:
		way.drill(shop, l, cut, w)
	case cut.Slice != nil:
		way.slicer(shop, l, cut, others, w)
	case cut.Dip != nil:
		way.Depth = cut.Dip.Depth
		for _, m := range shop.Of(tool.BandSaw) {
			if len(m.Check(tool.Size{Length: w.size[0].Nm, Thickness: w.size[2].Nm})) == 0 {
				way.Machine, way.Kind, way.Guide = m.Name, m.Kind, ByTable
				break
			}
		}
	case cut.Pocket != nil && cut.Kind == piece.Curve && cut.Pocket.Through:
		way.curve(shop, cut, w)
	case cut.Ease != nil && cut.Ease.To.Nm == 0:
		way.round(shop, l, cut, w)
	}
	return way
}

// drill takes the drill press for a hole square to a face, or to an edge of work that
// stands firm on the other, within its throat, where a drill of just that size is in the
// drawer. Work of up to twice its thickness stands on its edge; wider work and ends are
// bored by hand. Common practice, no source.
func (way *Way) drill(shop Workshop, l *ledger.Ledger, cut piece.Cut, w work) {
	b := cut.Bore
	way.Down, way.Depth = b.Open.Opposite(), b.Depth
	way.Size = b.Diameter
	for _, c := range shop.Cutters {
		if c.Shape == tool.Drill && c.Diameter == b.Diameter.Nm {
			way.Cutter = c
			way.Size = l.Leaf("cutter."+c.Name+".diameter", c.Diameter, ledger.Bought, "")
		}
	}
	over := piece.AlongWidth // how far in from the column's side it lies
	switch open, _ := b.Open.Axis(); {
	case way.Cutter.Name == "" || open == piece.AlongLength:
		return
	case open == piece.AlongWidth && w.size[piece.AlongWidth].Nm > 2*w.size[piece.AlongThickness].Nm:
		return
	case open == piece.AlongWidth:
		over = piece.AlongThickness
	}
	across := min(b.At[1].Nm, w.size[over].Nm-b.At[1].Nm)
	for _, m := range shop.Of(tool.DrillPress) {
		if throat := shop.Reach[m.Name]; throat > 0 && across > throat {
			continue
		}
		if len(m.Check(tool.Size{Length: w.size[0].Nm})) == 0 && m.Takes(way.Cutter) == nil {
			way.Machine, way.Kind, way.Guide = m.Name, m.Kind, ByTable
			return
		}
	}
}

// curve takes the band saw for an outline through a face: beside the line, and then
// shaved and sanded to it.
func (way *Way) curve(shop Workshop, cut piece.Cut, w work) {
	if axis, _ := cut.Pocket.Open.Axis(); axis != piece.AlongThickness {
		return
	}
	for _, m := range shop.Of(tool.BandSaw) {
		if len(m.Check(tool.Size{Length: w.size[0].Nm, Thickness: w.size[2].Nm})) == 0 {
			way.Machine, way.Kind, way.Guide, way.Down = m.Name, m.Kind, ByTable, cut.Pocket.Open.Opposite()
			return
		}
	}
}

// makesEdge reports whether a cutter takes off the edge: of just the radius for a
// round or a cove; a chamfer cutter of 45 degrees whose edges are as long as the leg.
func makesEdge(c tool.Cutter, e piece.Ease) bool {
	switch {
	case e.Chamfer:
		return c.Shape == tool.Chamfer && c.Reaches(e.Radius.Nm)
	case e.Cove:
		return c.Shape == tool.Cove && c.Radius == e.Radius.Nm
	}
	return c.Shape == tool.RoundOver && c.Radius == e.Radius.Nm
}

// round takes the router table for an edge along the grain with a cutter that makes
// just that edge, where the part may be fed.
func (way *Way) round(shop Workshop, l *ledger.Ledger, cut piece.Cut, w work) {
	way.Depth = cut.Ease.Radius
	for _, s := range cut.Ease.Sides {
		if axis, _ := s.Axis(); axis == piece.AlongLength {
			return // across the grain a plane and a backer are surer
		}
	}
	for _, m := range shop.Of(tool.RouterTable) {
		if len(m.Check(tool.Size{Length: w.size[0].Nm})) > 0 {
			continue
		}
		for _, c := range shop.Cutters {
			if makesEdge(c, *cut.Ease) && m.Takes(c) == nil {
				way.Machine, way.Kind, way.Guide, way.Cutter = m.Name, m.Kind, ByRounds, c
				way.Size = l.Leaf("cutter."+c.Name+".radius", c.Radius, ledger.Bought, "")
				if cut.Ease.Chamfer {
					way.Size = cut.Ease.Radius // how much of the cutter stands out
				}
				way.Down, way.Fences = faceAndEdge(cut.Ease.Sides)
				return
			}
		}
	}
}

// faceAndEdge sorts the two sides of an edge: the face lies down, the edge is
// against the fence.
func faceAndEdge(sides [2]piece.Side) (piece.Side, []piece.Side) {
	if rankOf(sides[0]) > rankOf(sides[1]) {
		sides[0], sides[1] = sides[1], sides[0]
	}
	return sides[0], []piece.Side{sides[1]}
}

// handSlot is the way of a slot that no machine makes.
func handSlot(cut piece.Cut, w work) Way {
	s := cut.Slot
	return Way{
		Machine: Hand, Guide: ByHand, Down: s.Open, Run: s.Run, Across: s.Across(),
		From: s.From, To: s.To, StartOpen: s.StartOpen, EndOpen: s.EndOpen,
		Near: s.Near, Far: s.Far, Depth: s.Depth, Work: w.size, At: w.at,
	}
}
