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

// head prints the uncut body.
func head(p *piece.Part, t Turn) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s %d %d %d\n", p.Form, p.Length.Nm, p.Width.Nm, p.Thickness.Nm)
	b.WriteString(closedLine(p.Outline, [2]unit.Length{p.Length.Nm, p.Width.Nm}, [2]bool{t[0], t[1]}))
	holes := make([]string, len(p.Holes))
	for i, h := range p.Holes {
		holes[i] = "less\n" + closedLine(h, [2]unit.Length{p.Length.Nm, p.Width.Nm}, [2]bool{t[0], t[1]})
	}
	slices.Sort(holes)
	b.WriteString(strings.Join(holes, ""))
	// A profile is printed from the end that comes first.
	n := len(p.Profile)
	for i := range p.Profile {
		v := p.Profile[i]
		if t[0] {
			v = p.Profile[n-1-i]
			v.Bulge = 0
			if i < n-1 {
				v.Bulge = p.Profile[n-2-i].Bulge
			}
		} else if i == n-1 {
			v.Bulge = 0 // no stretch leaves the last
		}
		fmt.Fprintf(&b, "%d %d %.12g\n", flip(v.Along.Nm, p.Length.Nm, t[0]), v.Radius.Nm, v.Bulge)
	}
	return b.String()
}

// closedLine prints a closed line from its least corner on, so that turning it
// round gives the same text.
func closedLine(line []piece.OutlinePoint, whole [2]unit.Length, turned [2]bool) string {
	n := len(line)
	if n == 0 {
		return ""
	}
	points := make([]string, n)
	back := turned[0] != turned[1] // the line then runs the other way
	for i := range points {
		v := line[i]
		bulge := v.Bulge
		if back {
			v = line[(2*n-i)%n]
			// Mirrored and run backwards, an arc swells to the same side.
			bulge = line[(2*n-i-1)%n].Bulge
		}
		x, y := flip(v.Along.Nm, whole[0], turned[0]), flip(v.Across.Nm, whole[1], turned[1])
		points[i] = fmt.Sprintf("%d %d %.12g\n", x, y, bulge+0)
	}
	best := ""
	for i := range points {
		s := strings.Join(points[i:], "") + strings.Join(points[:i], "")
		if best == "" || s < best {
			best = s
		}
	}
	return best
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

// straight reports whether a slot runs along the side that it is cut into.
func straight(s *piece.Slot) bool {
	open, _ := s.Open.Axis()
	return open != s.Run && s.Run >= piece.AlongLength && s.Run <= piece.AlongThickness
}

// SlotBox returns the local limits of the box around a slot's mouth and depth, by
// length, width and thickness: what it takes, if it is [Plain].
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
