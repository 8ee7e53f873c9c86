package joinery

import (
	"math/big"

	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/proportion"
	"scantling/internal/unit"
)

// loose sinks a row of mortises with round ends in both of two parts that touch,
// in line, for separate tenons. They are placed as dowels are, their width along
// the joint.
func (w *work) loose(j *joint) {
	s := j.Loose
	if s == nil || s.Count < 1 || s.Thickness.Nm <= 0 || s.Width.Nm < s.Thickness.Nm {
		w.fail(j, noRoom(j, "joint.no-loose", 0, j.meets.region.size(j.meets.run)))
		return
	}
	if room := j.meets.region.size(j.meets.across); s.Thickness.Nm >= room {
		w.fail(j, noRoom(j, "joint.loose-too-thick", s.Thickness.Nm, room))
		return
	}
	sides := [2]struct {
		p     *piece.Part
		open  piece.Direction
		depth piece.Figure
	}{{j.partA, j.meets.entry, s.InA}, {j.partB, j.meets.entry.Opposite(), s.InB}}
	for _, c := range sides {
		if size := c.p.Extent[j.meets.normal].Size(); c.depth.Nm <= 0 || c.depth.Nm >= size {
			w.fail(j, noRoom(j, "joint.loose-too-long", c.depth.Nm, size))
			return
		}
	}
	at, ok := w.row(j, j.meets.run, s.Count, s.Margin, s.Width)
	if !ok {
		return
	}
	if room := j.meets.region.size(j.meets.run); s.Count == 1 && s.Width.Nm >= room {
		w.fail(j, noRoom(j, "joint.no-room-for-row", s.Width.Nm, room))
		return
	}
	name := string(j.Address) + ".mortise"
	half := func(f piece.Figure) piece.Figure { return w.ledger.Half(name, f) }
	mid := w.middle(j, j.meets.across)
	w.wallsBeside(j, mid.Nm-s.Thickness.Nm/2, mid.Nm+s.Thickness.Nm/2)
	for _, x := range at {
		for _, c := range sides {
			b := j.meets.region
			b[j.meets.run] = piece.Extent{Low: w.ledger.Less(name, x, half(s.Width)), High: w.ledger.Sum(name, x, half(s.Width))}
			b[j.meets.across] = piece.Extent{Low: w.ledger.Less(name, mid, half(s.Thickness)), High: w.ledger.Sum(name, mid, half(s.Thickness))}
			n := j.meets.normal
			if _, toward := c.open.Axis(); toward > 0 {
				b[n].Low = w.ledger.Less(name, b[n].High, c.depth)
			} else {
				b[n].High = w.ledger.Sum(name, b[n].Low, c.depth)
			}
			w.sink(j, c.p, b, c.open, half(s.Thickness))
		}
	}
	w.fasten(j)
}

// wallsBeside warns where a row of mortises leaves little wood beside it.
func (w *work) wallsBeside(j *joint, low, high unit.Length) {
	a := j.meets.across
	for _, p := range [2]*piece.Part{j.partA, j.partB} {
		e := p.Extent[a]
		least := leastOf(proportion.MortiseWall(e.Size()))
		if wall := min(low-e.Low.Nm, e.High.Nm-high); wall < least {
			f := tenonFault(j, "joint.mortise-thin", wall, least)
			f.args[1] = message.Address("b", p.Address)
			w.warn(j, f)
			return
		}
	}
}

// sink files a mortise with round ends in a part.
func (w *work) sink(j *joint, p *piece.Part, region box, open piece.Direction, radius piece.Figure) {
	slot := w.slot(p, &claim{kind: piece.Mortise, cut: region, open: open, run: j.meets.run})
	slot.EndRadius = radius
	with := j.A
	if p == j.partA {
		with = j.B
	}
	w.holes = append(w.holes, piece.Cut{
		Kind: piece.Mortise, Part: p.Address, Joint: j.Address, With: with, Slot: &slot, Where: j.Where,
	})
}

// strips adds the flats of loose tenons to what holds long grain on long grain: of
// each the two flats between its round edges, over the lesser of its depths.
func (w *work) strips(j *joint, t *touch) {
	s := j.Loose
	if j.Kind != piece.LooseJoint || s == nil {
		return
	}
	flats := square(s.Width.Nm-s.Thickness.Nm, min(s.InA.Nm, s.InB.Nm))
	t.long.Add(&t.long, flats.Mul(flats, big.NewInt(2*int64(s.Count))))
}
