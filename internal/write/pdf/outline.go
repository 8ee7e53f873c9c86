package pdf

import (
	"fmt"
	"strings"

	"scantling/internal/page"
)

// link writes the annotation of a link. One that leads nowhere is left out; its
// text stands all the same.
func (c *content) link(l page.Link, node page.NodeID) {
	where := ""
	if a, ok := c.w.anchors[l.To]; ok {
		where = "/Dest " + c.w.dest(a.Page, a.Y)
	} else if strings.Contains(l.To, ":") {
		where = "/A <</S /URI /URI " + ascii(l.To) + ">>"
	} else {
		return
	}
	x0, y1 := c.at(l.Area.Min)
	x1, y0 := c.at(l.Area.Max)
	r := c.w.reserve()
	c.links = append(c.links, r)
	parent := ""
	if node != page.Artifact {
		parent = fmt.Sprintf(" /StructParent %d", c.w.tree.link(node, c.page, r))
	}
	c.w.set(r, fmt.Sprintf("<</Type /Annot /Subtype /Link /Rect [%s %s %s %s] /Border [0 0 0] /F 4 /Contents %s %s%s>>",
		number(x0), number(y0), number(x1), number(y1), text(l.Says), where, parent))
}

// dest returns a destination: a page with the place at its top.
func (w *writer) dest(n int, y float64) string {
	return fmt.Sprintf("[%v /FitH %s]", w.pages[n], number(points(w.doc.Pages[n].Size.Height-y+5)))
}

// outlineNode is a line of the outline with those below it.
type outlineNode struct {
	heading page.Heading
	ref     ref
	below   []*outlineNode
}

// outline writes the outline and returns its root, or 0 if there is none.
func (w *writer) outline() ref {
	top := &outlineNode{}
	path := []*outlineNode{top}
	for _, h := range w.doc.Outline {
		if h.Page < 0 || h.Page >= len(w.pages) {
			continue
		}
		for len(path) > 1 && path[len(path)-1].heading.Level >= h.Level {
			path = path[:len(path)-1]
		}
		n := &outlineNode{heading: h, ref: w.reserve()}
		above := path[len(path)-1]
		above.below = append(above.below, n)
		path = append(path, n)
	}
	if len(top.below) == 0 {
		return 0
	}
	top.ref = w.reserve()
	w.set(top.ref, fmt.Sprintf("<</Type /Outlines /First %v /Last %v /Count %d>>",
		top.below[0].ref, top.below[len(top.below)-1].ref, len(top.below)))
	w.outlineBelow(top)
	return top.ref
}

// outlineBelow writes what lies below a line; lines below the first level are
// closed at first.
func (w *writer) outlineBelow(above *outlineNode) {
	for i, n := range above.below {
		var b strings.Builder
		fmt.Fprintf(&b, "<</Title %s /Parent %v /Dest %s", text(n.heading.Title), above.ref, w.dest(n.heading.Page, n.heading.Y))
		if i > 0 {
			fmt.Fprintf(&b, " /Prev %v", above.below[i-1].ref)
		}
		if i+1 < len(above.below) {
			fmt.Fprintf(&b, " /Next %v", above.below[i+1].ref)
		}
		if k := len(n.below); k > 0 {
			fmt.Fprintf(&b, " /First %v /Last %v /Count -%d", n.below[0].ref, n.below[k-1].ref, k)
		}
		b.WriteString(">>")
		w.set(n.ref, b.String())
		w.outlineBelow(n)
	}
}
