package page

import (
	"fmt"
	"strings"
)

// Breach is one place where a page breaks a law.
type Breach struct {
	// What says which law, with the two things or numbers that clash.
	What string
	// Items are the numbers of the items in the page; -1 for a block.
	Items [2]int
	Box   Box
}

// Dangling lists the links that lead to no anchor of the document; writers leave
// those out.
func Dangling(d Document) (bad []Breach) {
	anchors := map[string]bool{}
	for _, a := range d.Anchors {
		anchors[a.Name] = a.Page >= 0 && a.Page < len(d.Pages)
	}
	for n, p := range d.Pages {
		for i, it := range p.Items {
			if l, ok := it.Shape.(Link); ok && !anchors[l.To] && !strings.Contains(l.To, ":") {
				bad = append(bad, Breach{
					What:  fmt.Sprintf("page %d: %s leads nowhere", n+1, describe(it)),
					Items: [2]int{i, -1}, Box: l.Area,
				})
			}
		}
	}
	return bad
}

// slack is how far ink may leave its area unblamed: the side bearing of a glyph.
const slack = 0.3

// Outside lists the items whose ink leaves the page inside its margins. Artifacts
// (header, footer) only have to stay on the paper.
func Outside(p Page, m Margins) (bad []Breach) {
	inside, paper := m.Inside(p.Size), Margins{}.Inside(p.Size)
	for i, it := range p.Items {
		b := it.Shape.Bounds()
		if b.Empty() {
			continue
		}
		area := inside
		if it.Node == Artifact {
			area = paper
		}
		// A comparison with not-a-number is false, so this also finds those.
		if !area.Contains(b, slack) {
			bad = append(bad, Breach{
				What:  fmt.Sprintf("%s %s lies outside %s", describe(it), b, area),
				Items: [2]int{i, -1}, Box: b,
			})
		}
	}
	return bad
}

// Overlaps lists pairs of texts whose ink boxes cover each other, and pairs of
// blocks that do, by more than touching.
func Overlaps(p Page) (bad []Breach) {
	type placed struct {
		item    int
		corners [4]Point
		box     Box
	}
	var texts []placed
	for i, it := range p.Items {
		if t, ok := it.Shape.(Text); ok {
			c := t.Corners()
			if b := boxOf(c[:]...); b.Width() > 0 && b.Height() > 0 {
				texts = append(texts, placed{i, c, b})
			}
		}
	}
	for i, a := range texts {
		for _, b := range texts[i+1:] {
			if boxesCover(a.box, b.box) && quadsCover(a.corners, b.corners) {
				bad = append(bad, Breach{
					What:  fmt.Sprintf("%s covers %s", describe(p.Items[a.item]), describe(p.Items[b.item])),
					Items: [2]int{a.item, b.item}, Box: a.box,
				})
			}
		}
	}
	for i, a := range p.Blocks {
		for _, b := range p.Blocks[i+1:] {
			if boxesCover(a.Box, b.Box) {
				bad = append(bad, Breach{What: fmt.Sprintf("block %q covers block %q", a.Name, b.Name), Items: [2]int{-1, -1}, Box: a.Box})
			}
		}
	}
	return bad
}

// Struck lists texts that a drawn line runs through.
func Struck(p Page) (bad []Breach) {
	for i, it := range p.Items {
		t, ok := it.Shape.(Text)
		if !ok {
			continue
		}
		c := t.Corners()
		box := boxOf(c[:]...)
		if box.Height() == 0 {
			continue
		}
		for k, other := range p.Items {
			s, ok := other.Shape.(Stroke)
			if !ok || !boxesCover(box, s.Bounds()) || !strikes(s, c) {
				continue
			}
			bad = append(bad, Breach{What: fmt.Sprintf("a line runs through %s", describe(it)), Items: [2]int{i, k}, Box: box})
		}
	}
	return bad
}

// strikes reports whether a chord of the stroke crosses the quadrilateral.
func strikes(s Stroke, c [4]Point) bool {
	for _, line := range s.Path.Flatten(0.05) {
		for i := range line[1:] {
			a, b := line[i], line[i+1]
			if quadsCover(c, [4]Point{a, b, b, a}) {
				return true
			}
		}
	}
	return false
}

// touch is the cover that counts as touching only, in millimetres.
const touch = 0.05

func boxesCover(a, b Box) bool {
	return a.Min.X+touch < b.Max.X && b.Min.X+touch < a.Max.X && a.Min.Y+touch < b.Max.Y && b.Min.Y+touch < a.Max.Y
}

// quadsCover reports whether two convex quadrilaterals cover each other: no
// direction square to a side separates them.
func quadsCover(a, b [4]Point) bool {
	for _, q := range [2][4]Point{a, b} {
		for i := range q {
			side := q[(i+1)%4].Sub(q[i])
			n := side.Norm()
			if n == 0 {
				continue
			}
			normal := Point{-side.Y / n, side.X / n}
			aLow, aHigh := reach(a, normal)
			bLow, bHigh := reach(b, normal)
			if aHigh <= bLow+touch || bHigh <= aLow+touch {
				return false
			}
		}
	}
	return true
}

func reach(q [4]Point, dir Point) (low, high float64) {
	for i, p := range q {
		d := float64(p.X*dir.X) + float64(p.Y*dir.Y)
		if i == 0 {
			low, high = d, d
		}
		low, high = min(low, d), max(high, d)
	}
	return low, high
}

func describe(it Item) string {
	kind := "item"
	switch s := it.Shape.(type) {
	case Text:
		kind = fmt.Sprintf("text %.40q", s.String)
	case Stroke:
		kind = "stroke"
	case Fill:
		kind = "fill"
	case Hatch:
		kind = "hatch"
	case Link:
		kind = fmt.Sprintf("link to %q", s.To)
	}
	if it.Address != "" {
		kind += " of " + it.Address
	}
	return kind
}

// String prints the box as its corners in millimetres.
func (b Box) String() string {
	return fmt.Sprintf("(%.2f, %.2f)–(%.2f, %.2f)", b.Min.X, b.Min.Y, b.Max.X, b.Max.Y)
}
