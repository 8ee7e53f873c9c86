package carve

import (
	"slices"
	"strconv"

	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
)

// slope is how a plane falls along one local axis of the part: at station from it
// leaves the part whole, at station to it has come in by drop.
type slope struct {
	along          piece.Local
	from, to, drop piece.Figure
}

// sliced is the cut that takes off all beyond a plane with one or two slopes.
func (c *cutting) sliced(off piece.Side, slopes ...slope) *piece.Slice {
	l := c.Maker.Ledger
	axis, high := off.Axis()
	whole := c.Part.Sizes()[axis]
	nought := l.Leaf(c.name+".nought", 0, ledger.Derived, "")
	level := func(drop piece.Figure) piece.Figure {
		if high {
			return l.Less(c.name+".at", whole, drop)
		}
		return drop
	}
	out := &piece.Slice{Off: off, At: [3]piece.Figure{level(nought), level(nought), level(nought)}}
	k := 0
	for a := range piece.Local(3) {
		if a == axis {
			continue
		}
		out.From[k], out.To[k] = nought, c.Part.Sizes()[a]
		for _, s := range slopes {
			if s.along == a {
				out.From[k], out.To[k], out.At[k+1] = s.from, s.to, level(s.drop)
			}
		}
		k++
	}
	return out
}

// taper works out edges and faces that run off towards an end, from a station on:
// by an amount, to what is left, or at an angle. Each side is a cut of its own.
func (c *cutting) taper() bool {
	c.out.Kind = piece.Taper
	end, run, ok := c.open("end")
	if !ok {
		return false
	}
	s := slope{}
	var high bool
	s.along, high = end.Axis()
	s.from, s.to = c.size(run), c.Maker.Ledger.Leaf(c.name+".nought", 0, ledger.Derived, "")
	if high {
		s.from, s.to = s.to, s.from
	}
	if c.Has("from") {
		v, ok := c.need("from")
		if !ok {
			return false
		}
		s.from = c.local(run, v)
	}
	if s.from.Nm == s.to.Nm || (s.from.Nm < s.to.Nm) != high {
		c.Fault(CodeCutMisses, c.Where("from"), message.Text("name", c.Name), message.Length("near", s.from.Nm), message.Length("width", c.size(run).Nm))
		return false
	}
	sides, ok := c.sides(s.along)
	for i, off := range sides {
		if !ok || !c.fall(&s, off, sides) {
			c.more = nil
			return false
		}
		cut := c.out
		if len(sides) > 1 {
			cut.Address = c.Nth(i + 1)
		}
		cut.Slice = c.sliced(off, s)
		c.more = append(c.more, cut)
	}
	return false // they are several
}

// sides reads the list of sides that are taken off; none of them an end of the run.
func (c *cutting) sides(run piece.Local) ([]piece.Side, bool) {
	if !c.Has("sides") {
		c.Missing("sides")
		return nil, false
	}
	v := c.Value("sides", "")
	items := v.Items
	if v.Kind == formula.Text {
		items = []formula.Value{v}
	}
	var out []piece.Side
	for _, item := range items {
		word, ok := c.Maker.Words(item)
		d, known := Facing(word, c.Part.Hand)
		side := c.Part.Frame.SideToward(d)
		if axis, _ := side.Axis(); !ok || !known || axis == run || slices.Contains(out, side) {
			if ok {
				c.BadWord("sides", word, c.across(run))
			}
			return nil, false
		}
		out = append(out, side)
	}
	return out, len(out) > 0
}

// across are the words for the sides that look across a local axis.
func (c *cutting) across(run piece.Local) []string {
	axis, _ := c.Part.Frame.Directions()[run].Axis()
	return otherWords(axis)
}

// fall works out how far a taper has come in at the end. What is left counts
// between opposite sides that both run off.
func (c *cutting) fall(s *slope, off piece.Side, all []piece.Side) bool {
	l := c.Maker.Ledger
	axis, _ := off.Axis()
	whole := c.Part.Sizes()[axis]
	both := slices.Contains(all, off.Opposite())
	switch {
	case c.Has("by"):
		v, ok := c.need("by")
		if !ok || !c.Positive(v, "by", c.name+".by") {
			return false
		}
		s.drop = c.figure(v)
	case c.Has("leaves"):
		v, ok := c.need("leaves")
		if !ok || !c.Positive(v, "leaves", c.name+".leaves") {
			return false
		}
		s.drop = l.Less(c.name+".by", whole, c.figure(v))
		if both {
			s.drop = l.Half(c.name+".by", s.drop)
		}
	case c.Has("angle"):
		long := l.Less("", s.from, s.to)
		if s.from.Nm < s.to.Nm {
			long = l.Less("", s.to, s.from)
		}
		var ok bool
		if s.drop, ok = c.leaning("angle", long); !ok {
			return false
		}
	default:
		c.Missing("leaves")
		return false
	}
	taken := s.drop
	if both {
		taken = l.Sum("", taken, taken)
	}
	return c.leavesSome(taken, whole)
}

// leavesSome reports a slice that takes nothing, or more than there is.
func (c *cutting) leavesSome(taken, whole piece.Figure) bool {
	switch {
	case taken.Nm <= 0:
		c.Fault(formula.CodeNotPositive, c.Block.Where, message.Text("name", c.name+".by"), message.Length("got", taken.Nm))
	case taken.Nm >= whole.Nm:
		c.Fault(CodeTakesAll, c.Block.Where, message.Text("name", c.Name), message.Length("taken", taken.Nm), message.Length("whole", whole.Nm))
	default:
		return true
	}
	return false
}

// leaning is how far an angle comes in over a distance.
func (c *cutting) leaning(attribute string, over piece.Figure) (piece.Figure, bool) {
	a, ok := c.angle(attribute, 0.05, 85)
	if !ok {
		return piece.Figure{}, false
	}
	t, ok := c.Maker.Tangent(a)
	if !ok {
		return piece.Figure{}, false
	}
	return c.scaled(c.name+".by", over, ledger.OpMul, t), true
}

// bevel works out an edge or face that leans: the face named by keeps stays as wide
// as it is.
func (c *cutting) bevel() bool {
	c.out.Kind = piece.Bevel
	return c.leans("edge", false)
}

// mitre works out an end at an angle, 45 degrees unless said.
func (c *cutting) mitre() bool {
	c.out.Kind = piece.Mitre
	return c.leans("end", true)
}

func (c *cutting) leans(attribute string, usual bool) bool {
	off, open, ok := c.open(attribute)
	if !ok {
		return false
	}
	s, ok := c.kept("keeps", c.Words("keeps"), open)
	if !ok {
		return false
	}
	over := c.Part.Sizes()[s.along]
	axis, _ := off.Axis()
	switch {
	case c.Has("by"):
		v, ok := c.need("by")
		if !ok || !c.Positive(v, "by", c.name+".by") {
			return false
		}
		s.drop = c.figure(v)
	case !c.Has("angle") && usual:
		s.drop = over // the tangent of 45 degrees is one
	default:
		if s.drop, ok = c.leaning("angle", over); !ok {
			return false
		}
	}
	if !c.leavesSome(s.drop, c.Part.Sizes()[axis]) {
		return false
	}
	c.out.Slice = c.sliced(off, s)
	return true
}

// kept is the slope away from the face or edge that keeps its full size.
func (c *cutting) kept(attribute, word string, open piece.Axis) (slope, bool) {
	d, known := Facing(word, c.Part.Hand)
	axis, _ := d.Axis()
	if !known || axis == open {
		if word != "" {
			c.BadWord(attribute, word, otherWords(open))
		} else if !c.Has(attribute) {
			c.Missing(attribute)
		}
		return slope{}, false
	}
	side := c.Part.Frame.SideToward(d)
	local, high := side.Axis()
	out := slope{along: local, from: c.Maker.Ledger.Leaf(c.name+".nought", 0, ledger.Derived, ""), to: c.Part.Sizes()[local]}
	if high {
		out.from, out.to = out.to, out.from
	}
	return out, true
}

// compound works out an end at two angles: angles = { back = 5, top = 12 } names
// the sides that keep their length and how far the end leans away from each.
func (c *cutting) compound() bool {
	c.out.Kind = piece.Compound
	off, open, ok := c.open("end")
	if !ok {
		return false
	}
	v := c.Value("angles", "")
	if !c.Has("angles") {
		c.Missing("angles")
	}
	if v.OK() && (v.Kind != formula.Object || len(v.Fields) != 2) {
		c.Fault(CodeAngles, v.Where, message.Text("name", c.Name))
	}
	if v.Kind != formula.Object || len(v.Fields) != 2 {
		return false
	}
	var slopes [2]slope
	taken := []piece.Figure{}
	for i, f := range v.Fields {
		s, ok := c.kept("angles", f.Name, open)
		if !ok {
			return false
		}
		a, ok := c.inRange(f.Value, c.name+".angle["+strconv.Itoa(i+1)+"]", 0.05, 85)
		if !ok {
			return false
		}
		t, ok := c.Maker.Tangent(a)
		if !ok {
			return false
		}
		s.drop = c.scaled(c.name+".by", c.Part.Sizes()[s.along], ledger.OpMul, t)
		slopes[i] = s
		taken = append(taken, s.drop)
	}
	if slopes[0].along == slopes[1].along {
		c.Fault(CodeAngles, v.Where, message.Text("name", c.Name))
		return false
	}
	axis, _ := off.Axis()
	if !c.leavesSome(c.Maker.Ledger.Sum("", taken...), c.Part.Sizes()[axis]) {
		return false
	}
	c.out.Slice = c.sliced(off, slopes[0], slopes[1])
	return true
}
