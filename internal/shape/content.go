package shape

import (
	"fmt"
	"slices"
	"strings"

	"scantling/internal/piece"
	"scantling/internal/unit"
)

// Content is a part by its sizes and cuts alone, in one printed form: two parts
// have the same shape if their contents are equal. Where a part stands, what it
// is called and in which order its cuts are listed do not enter.
type Content string

// Turn says along which local axes a part is turned end for end. With an even
// number of axes it is the same part turned round, with an odd number its mirror
// image.
type Turn [3]bool

// turns are the four ways in which a part can lie with its length, width and
// thickness along the same axes.
var turns = [4]Turn{{}, {true, true, false}, {true, false, true}, {false, true, true}}

// ContentOf returns the content of a part with all its cuts, in the least of the
// forms that it has as it is turned round.
func ContentOf(p *piece.Part, cuts []*piece.Cut) Content { return leastOf(p, cuts, false) }

// MirroredContentOf returns the content of the part's mirror image. It is equal
// to ContentOf if the mirror image is the part turned round.
func MirroredContentOf(p *piece.Part, cuts []*piece.Cut) Content { return leastOf(p, cuts, true) }

func leastOf(p *piece.Part, cuts []*piece.Cut, mirrored bool) Content {
	var least string
	for i, t := range turns {
		if mirrored {
			t[1] = !t[1]
		}
		if s := normal(p, cuts, t); i == 0 || s < least {
			least = s
		}
	}
	return Content(least)
}

// normal prints a part turned by t, its cuts in order and each in one form.
func normal(p *piece.Part, cuts []*piece.Cut, t Turn) string {
	lines := make([]string, 0, len(cuts))
	for _, c := range cuts {
		if s := printed(p, c, t); s != "" {
			lines = append(lines, s)
		}
	}
	slices.Sort(lines)
	return head(p, t) + strings.Join(slices.Compact(lines), "")
}

func head(p *piece.Part, t Turn) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s %d %d %d\n", p.Form, p.Length.Nm, p.Width.Nm, p.Thickness.Nm)
	// An outline is printed from its least corner on, so that turning it round
	// gives the same text.
	n := len(p.Outline)
	if n == 0 {
		return b.String()
	}
	points := make([]string, n)
	back := t[0] != t[1] // the loop then runs the other way
	for i := range points {
		v := p.Outline[i]
		bulge := v.Bulge
		if back {
			v = p.Outline[(2*n-i)%n]
			bulge = -p.Outline[(2*n-i-1)%n].Bulge
		}
		x, y := flip(v.Along.Nm, p.Length.Nm, t[0]), flip(v.Across.Nm, p.Width.Nm, t[1])
		points[i] = fmt.Sprintf("%d %d %.12g\n", x, y, bulge)
	}
	best := ""
	for i := range points {
		s := strings.Join(points[i:], "") + strings.Join(points[:i], "")
		if best == "" || s < best {
			best = s
		}
	}
	return b.String() + best
}

func flip(at, whole unit.Length, turned bool) unit.Length {
	if turned {
		return whole - at
	}
	return at
}

// span turns a stretch.
func span(from, to, whole unit.Length, turned bool) (unit.Length, unit.Length) {
	if turned {
		return whole - to, whole - from
	}
	return from, to
}

func turnSide(s piece.Side, t Turn) piece.Side {
	if a, _ := s.Axis(); t[a] {
		return s.Opposite()
	}
	return s
}

// printed prints one cut of a part turned by t. A slot with square corners is
// the box that it takes, however it is described.
func printed(p *piece.Part, c *piece.Cut, t Turn) string {
	whole := p.Sizes()
	switch {
	case c.Slot != nil && !straight(c.Slot):
		return fmt.Sprintf("impossible slot %s %d\n", c.Slot.Open, c.Slot.Run)
	case c.Slot != nil && c.Slot.Corner.Nm == 0:
		lo, hi := SlotBox(p, c.Slot)
		for a := range lo {
			lo[a], hi[a] = span(max(lo[a], 0), min(hi[a], whole[a].Nm), whole[a].Nm, t[a])
		}
		return fmt.Sprintf("box %d %d %d %d %d %d\n", lo[0], hi[0], lo[1], hi[1], lo[2], hi[2])
	case c.Slot != nil:
		s := c.Slot
		x := s.Across()
		from, to := span(max(s.From.Nm, 0), min(s.To.Nm, whole[s.Run].Nm), whole[s.Run].Nm, t[s.Run])
		near, far := span(s.Near.Nm, s.Far.Nm, whole[x].Nm, t[x])
		return fmt.Sprintf("slot %s %d %d %d %d %d %d %d\n", turnSide(s.Open, t), s.Run, from, to, near, far, s.Depth.Nm, s.Corner.Nm)
	case c.Bore != nil:
		return printedBore(p, c.Bore, t)
	case c.Dip != nil:
		along := dipAxis(c.Dip)
		return fmt.Sprintf("dip %s %d %d %d\n", turnSide(c.Dip.Open, t), flip(c.Dip.Centre.Nm, whole[along].Nm, t[along]), c.Dip.Chord.Nm, c.Dip.Depth.Nm)
	case c.Ease != nil:
		a, b := turnSide(c.Ease.Sides[0], t), turnSide(c.Ease.Sides[1], t)
		if a > b {
			a, b = b, a
		}
		return fmt.Sprintf("ease %s %s %d %t\n", a, b, c.Ease.Radius.Nm, c.Ease.Chamfer)
	}
	return ""
}

func printedBore(p *piece.Part, b *piece.Bore, t Turn) string {
	whole := p.Sizes()
	axis, _ := b.Open.Axis()
	var at [2]unit.Length
	k := 0
	for a := range whole {
		if piece.Local(a) != axis {
			at[k] = flip(b.At[k].Nm, whole[a].Nm, t[a])
			k++
		}
	}
	if b.Through {
		return fmt.Sprintf("hole %d %d %d %d\n", axis, at[0], at[1], b.Diameter.Nm)
	}
	return fmt.Sprintf("bore %s %d %d %d %d\n", turnSide(b.Open, t), at[0], at[1], b.Diameter.Nm, b.Depth.Nm)
}

// dipAxis returns the local axis along which a dip's centre is measured.
func dipAxis(d *piece.Dip) piece.Local {
	if a, _ := d.Open.Axis(); a == piece.AlongLength {
		return piece.AlongWidth
	}
	return piece.AlongLength
}

// straight reports whether a slot runs along the side that it is cut into.
func straight(s *piece.Slot) bool {
	open, _ := s.Open.Axis()
	return open != s.Run && s.Run >= piece.AlongLength && s.Run <= piece.AlongThickness
}

// SlotBox returns the local limits of the box around a slot, by length, width
// and thickness: what it takes, if its corners are square.
func SlotBox(p *piece.Part, s *piece.Slot) (lo, hi [3]unit.Length) {
	open, high := s.Open.Axis()
	lo[s.Run], hi[s.Run] = s.From.Nm, s.To.Nm
	x := s.Across()
	lo[x], hi[x] = s.Near.Nm, s.Far.Nm
	lo[open], hi[open] = 0, s.Depth.Nm
	if high {
		whole := p.Sizes()[open].Nm
		lo[open], hi[open] = whole-s.Depth.Nm, whole
	}
	return lo, hi
}
