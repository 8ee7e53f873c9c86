package sequence

import (
	"fmt"
	"slices"

	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// placing says of each part that no joint locates where it lies on what it is glued or
// driven to: how far from which edge and end, both ways. What a joint lets in needs no
// figure, for the joint's own walls and shoulders say where it goes. How far a part stands
// past another is told where nothing else says where it goes.
func (s *sequencer) placing(joints []piece.Joint) []message.Message {
	var out, past []message.Message
	told, whole, some := map[string]bool{}, map[address.Address]bool{}, map[address.Address]bool{}
	keep := func(to *[]message.Message, all ...message.Message) {
		for _, m := range all {
			if key := fmt.Sprint(m); !told[key] {
				told[key] = true
				*to = append(*to, m)
			}
		}
	}
	for _, j := range joints {
		on, lies, ok := s.loosePair(j)
		if !ok || whole[lies.Address] {
			continue
		}
		m, both, beyond := s.lies(lies, on)
		if !m.IsZero() {
			keep(&out, m)
			whole[lies.Address], some[lies.Address] = both, true
		}
		if !some[lies.Address] {
			keep(&past, beyond...)
			some[lies.Address] = len(beyond) > 0
		}
	}
	return append(out, past...)
}

// loosePair returns the parts of a butt joint of which the second lies loose on the
// first: no other joint locates it. Of two loose ones that is the one that the joint is
// of, unless it is larger.
func (s *sequencer) loosePair(j piece.Joint) (on, lies piece.Part, ok bool) {
	a, okA := s.part[j.A]
	b, okB := s.part[j.B]
	if !okA || !okB || j.Kind != piece.ButtJoint || a.Frame.Length == "" || b.Frame.Length == "" {
		return on, lies, false
	}
	looseA, looseB := !s.located(j.A), !s.located(j.B)
	switch {
	case looseA && looseB && a.Length.Nm > b.Length.Nm && a.Width.Nm > b.Width.Nm:
		return a, b, true
	case looseA:
		return b, a, true
	case looseB:
		return a, b, true
	}
	return on, lies, false
}

// located reports whether some joint other than a butt joint holds a part in its place.
func (s *sequencer) located(a address.Address) bool {
	return slices.ContainsFunc(s.Piece.Joints, func(j piece.Joint) bool {
		return j.Kind != piece.ButtJoint && (j.A == a || j.B == a)
	})
}

// lie is where a part lies along one axis of what it lies on: how far from a side, less
// than nought past it.
type lie struct {
	side string
	by   unit.Length
}

// lies puts into words where a part lies on another, along the two axes in which they
// do not follow one another, and whether that is said of both; and how far it stands past.
func (s *sequencer) lies(p, on piece.Part) (m message.Message, both bool, past []message.Message) {
	a, b := message.Text("a", s.rowOf[p.Address]), message.Text("b", s.rowOf[on.Address])
	var flush, from []lie
	for _, axis := range []piece.Axis{piece.Up, piece.Right, piece.Back} {
		e, f := p.Extent[axis], on.Extent[axis]
		if e.Low.Nm >= f.High.Nm || e.High.Nm <= f.Low.Nm {
			continue // the way in which they touch
		}
		switch l := s.lieAlong(p, on, axis); {
		case l.by == 0:
			flush = append(flush, l)
		case l.by > 0:
			from = append(from, l)
		default:
			past = append(past, message.New("steps.placed-past", a, b, message.Length("by", -l.by), message.Word("side", l.side)))
		}
	}
	word := func(name string, l lie) message.Arg { return message.Word(name, l.side) }
	switch {
	case len(flush) == 2:
		m = message.New("steps.placed-flush-both", a, b, word("side", flush[0]), word("other", flush[1]))
	case len(flush) == 1 && len(from) == 1:
		m = message.New("steps.placed-flush-from", a, b, word("side", flush[0]), message.Length("by", from[0].by), word("other", from[0]))
	case len(from) == 2:
		m = message.New("steps.placed-from-both", a, b, message.Length("by", from[0].by), word("side", from[0]), message.Length("further", from[1].by), word("other", from[1]))
	case len(flush) == 1:
		m = message.New("steps.placed-flush", a, b, word("side", flush[0]))
	case len(from) == 1:
		m = message.New("steps.placed-from", a, b, message.Length("by", from[0].by), word("side", from[0]))
	}
	return m, len(flush)+len(from) == 2, past
}

// lieAlong is where a part lies along an axis of what it lies on: from the nearer side,
// of two as near from the low one.
func (s *sequencer) lieAlong(p, on piece.Part, axis piece.Axis) lie {
	e, f := p.Extent[axis], on.Extent[axis]
	low := e.Low.Nm - f.Low.Nm - s.letIn(on, axis, false).Depth.Nm
	high := f.High.Nm - s.letIn(on, axis, true).Depth.Nm - e.High.Nm
	if low >= 0 && (low <= high || high < 0) || low < 0 && high < 0 && low >= high {
		return lie{s.sideOf(on, axis, false), low}
	}
	return lie{s.sideOf(on, axis, true), high}
}

// sideOf is the key of the word for a side of a part as it stands: an edge, an end, a
// face; of what goes into another part there the shoulder, or the end as far as it is seen. Of parts that stand to
// one side of their group it is the outside or the inside.
func (s *sequencer) sideOf(p piece.Part, axis piece.Axis, high bool) string {
	local, _ := p.Frame.LocalOf(axis)
	kind := [3]string{"end", "edge", "face"}[local]
	if j := s.letIn(p, axis, high); j.Kind == piece.TenonJoint {
		kind = "shoulder"
	} else if j.Kind != "" {
		kind += " in"
	}
	where := [3][2]string{piece.Right: {"left", "right"}, piece.Back: {"front", "back"}, piece.Up: {"lower", "upper"}}[axis][index(high)]
	if axis == piece.Right && local != piece.AlongLength {
		if off := s.offMiddle(p); off != 0 {
			where = [2]string{"inside", "outside"}[index((off > 0) == high)]
		}
	}
	return "side." + where + " " + kind
}

func index(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// offMiddle is how far right of the middle of its group a part stands, twice over.
func (s *sequencer) offMiddle(p piece.Part) unit.Length {
	var low, high unit.Length
	found := false
	for _, q := range s.Piece.Parts {
		if q.Group != p.Group {
			continue
		}
		e := q.Extent[piece.Right]
		if !found {
			low, high, found = e.Low.Nm, e.High.Nm, true
		}
		low, high = min(low, e.Low.Nm), max(high, e.High.Nm)
	}
	e := p.Extent[piece.Right]
	return e.Low.Nm + e.High.Nm - low - high
}

// letIn is the joint by which a side of a part goes into another, if one does: it takes
// the joint's depth, so much is out of sight.
func (s *sequencer) letIn(p piece.Part, axis piece.Axis, high bool) piece.Joint {
	f := p.Extent[axis]
	for _, j := range s.Piece.Joints {
		if j.A != p.Address || j.Depth.Nm <= 0 {
			continue
		}
		e := s.part[j.B].Extent[axis]
		if !high && e.Low.Nm <= f.Low.Nm && f.Low.Nm < e.High.Nm && e.High.Nm < f.High.Nm ||
			high && f.Low.Nm < e.Low.Nm && e.Low.Nm < f.High.Nm && f.High.Nm <= e.High.Nm {
			return j
		}
	}
	return piece.Joint{}
}
