package carve

import (
	"slices"
	"strconv"

	"scantling/internal/carve/angle"
	"scantling/internal/carve/direction"
	"scantling/internal/carve/fault"
	"scantling/internal/carve/plane"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
)

// taper works out edges and faces that run off towards an end, from a station on:
// by an amount, to what is left, or at an angle. Each side is a cut of its own.
func (c *cutting) taper() bool {
	c.out.Kind = piece.Taper
	end, run, ok := c.open("end")
	if !ok {
		return false
	}
	s := plane.Slope{}
	var high bool
	s.Along, high = end.Axis()
	s.From, s.To = c.size(run), c.Maker.Ledger.Leaf(c.name+".nought", 0, ledger.Derived, "")
	if high {
		s.From, s.To = s.To, s.From
	}
	if c.Has("from") {
		v, ok := c.need("from")
		if !ok {
			return false
		}
		s.From = c.local(run, v)
	}
	if s.From.Nm == s.To.Nm || (s.From.Nm < s.To.Nm) != high {
		c.Fault(fault.CodeCutMisses, c.Where("from"), message.Text("name", c.Name), message.Length("near", s.From.Nm), message.Length("width", c.size(run).Nm))
		return false
	}
	sides, ok := c.sides(s.Along)
	for i, off := range sides {
		if !ok || !c.fall(&s, off, sides) {
			c.more = nil
			return false
		}
		cut := c.out
		if len(sides) > 1 {
			cut.Address = c.Nth(i + 1)
		}
		cut.Slice = plane.Slice(c.Maker.Ledger, c.name, c.Part, off, s)
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
		d, known := direction.Facing(word, c.Part.Hand)
		side := c.Part.Frame.SideToward(d)
		if axis, _ := side.Axis(); !ok || !known || axis == run || slices.Contains(out, side) {
			if ok {
				way, _ := c.Part.Frame.Directions()[run].Axis()
				c.BadWord("sides", word, otherWords(way))
			}
			return nil, false
		}
		out = append(out, side)
	}
	return out, len(out) > 0
}

// fall works out how far a taper has come in at the end. What is left counts
// between opposite sides that both run off.
func (c *cutting) fall(s *plane.Slope, off piece.Side, all []piece.Side) bool {
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
		s.Drop = c.figure(v)
	case c.Has("leaves"):
		v, ok := c.need("leaves")
		if !ok || !c.Positive(v, "leaves", c.name+".leaves") {
			return false
		}
		s.Drop = l.Less(c.name+".by", whole, c.figure(v))
		if both {
			s.Drop = l.Half(c.name+".by", s.Drop)
		}
	case c.Has("angle"):
		long := l.Less("", s.From, s.To)
		if s.From.Nm < s.To.Nm {
			long = l.Less("", s.To, s.From)
		}
		var ok bool
		if s.Drop, ok = c.leaning("angle", long); !ok {
			return false
		}
	default:
		c.Missing("leaves")
		return false
	}
	taken := s.Drop
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
		c.Fault(fault.CodeTakesAll, c.Block.Where, message.Text("name", c.Name), message.Length("taken", taken.Nm), message.Length("whole", whole.Nm))
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
	return angle.Rise(c.Maker, c.name+".by", over, a)
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
	over := c.Part.Sizes()[s.Along]
	axis, _ := off.Axis()
	switch {
	case c.Has("by"):
		v, ok := c.need("by")
		if !ok || !c.Positive(v, "by", c.name+".by") {
			return false
		}
		s.Drop = c.figure(v)
	case !c.Has("angle") && usual:
		s.Drop = over // the tangent of 45 degrees is one
	default:
		if s.Drop, ok = c.leaning("angle", over); !ok {
			return false
		}
	}
	if !c.leavesSome(s.Drop, c.Part.Sizes()[axis]) {
		return false
	}
	c.out.Slice = plane.Slice(c.Maker.Ledger, c.name, c.Part, off, s)
	return true
}

// kept is the slope away from the face or edge that keeps its full size.
func (c *cutting) kept(attribute, word string, open piece.Axis) (plane.Slope, bool) {
	d, known := direction.Facing(word, c.Part.Hand)
	axis, _ := d.Axis()
	if !known || axis == open {
		if word != "" {
			c.BadWord(attribute, word, otherWords(open))
		} else if !c.Has(attribute) {
			c.Missing(attribute)
		}
		return plane.Slope{}, false
	}
	side := c.Part.Frame.SideToward(d)
	local, high := side.Axis()
	out := plane.Slope{Along: local, From: c.Maker.Ledger.Leaf(c.name+".nought", 0, ledger.Derived, ""), To: c.Part.Sizes()[local]}
	if high {
		out.From, out.To = out.To, out.From
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
		c.Fault(fault.CodeAngles, v.Where, message.Text("name", c.Name))
	}
	if v.Kind != formula.Object || len(v.Fields) != 2 {
		return false
	}
	var slopes [2]plane.Slope
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
		if s.Drop, ok = angle.Rise(c.Maker, c.name+".by", c.Part.Sizes()[s.Along], a); !ok {
			return false
		}
		slopes[i] = s
		taken = append(taken, s.Drop)
	}
	if slopes[0].Along == slopes[1].Along {
		c.Fault(fault.CodeAngles, v.Where, message.Text("name", c.Name))
		return false
	}
	axis, _ := off.Axis()
	if !c.leavesSome(c.Maker.Ledger.Sum("", taken...), c.Part.Sizes()[axis]) {
		return false
	}
	c.out.Slice = plane.Slice(c.Maker.Ledger, c.name, c.Part, off, slopes[:]...)
	return true
}
