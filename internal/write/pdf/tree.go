package pdf

import (
	"fmt"
	"slices"
	"strings"

	"scantling/internal/page"
)

// names are the structure types of ISO 32000-1 clause 14.8.4.
var names = map[page.Role]string{
	page.RoleDocument: "Document", page.RoleSection: "Sect",
	page.RoleH1: "H1", page.RoleH2: "H2", page.RoleH3: "H3", page.RoleParagraph: "P",
	page.RoleList: "L", page.RoleListItem: "LI", page.RoleLabel: "Lbl", page.RoleListBody: "LBody",
	page.RoleTable: "Table", page.RoleRow: "TR", page.RoleHeaderCell: "TH", page.RoleCell: "TD",
	page.RoleFigure: "Figure", page.RoleCaption: "Caption", page.RoleLink: "Link",
}

// tree grows the structure tree as content is written: kids stand in the order
// in which they appear, empty cells in the order of their numbers.
type tree struct {
	w        *writer
	nodes    page.Tree
	refs     []ref
	kids     [][]kid
	attached []bool
	lastKid  []page.NodeID // highest child that is attached, by parent
	children [][]page.NodeID
	boxes    []page.Box
	boxPage  []int
	readings map[page.NodeID]string // what spans added for fractions and signs say
	// parents lists, for each page, the node of each marked content, and then
	// for each link its node.
	parents [][]page.NodeID
	links   []page.NodeID
}

// kid is a child node, a marked content of a page, or a link's annotation.
type kid struct {
	node  page.NodeID
	page  int
	mcid  int
	annot ref
}

func newTree(w *writer) *tree {
	nodes := slices.Clone(w.doc.Tree)
	if len(nodes) < 2 {
		nodes = page.NewTree()
	}
	n := len(nodes)
	t := &tree{
		w: w, nodes: nodes, refs: make([]ref, n), kids: make([][]kid, n), attached: make([]bool, n),
		children: make([][]page.NodeID, n), boxes: make([]page.Box, n), boxPage: make([]int, n),
		parents: make([][]page.NodeID, len(w.doc.Pages)), readings: map[page.NodeID]string{},
	}
	for i := page.Root + 1; int(i) < n; i++ {
		p := nodes[i].Parent
		t.children[p] = append(t.children[p], i)
	}
	t.attached[page.Root] = true
	for i, p := range w.doc.Pages {
		for _, it := range p.Items {
			if nodes.Valid(it.Node) && nodes[it.Node].Role == page.RoleFigure {
				if t.boxes[it.Node].Empty() {
					t.boxPage[it.Node] = i
				}
				if t.boxPage[it.Node] == i {
					t.boxes[it.Node] = t.boxes[it.Node].Union(it.Shape.Bounds())
				}
			}
		}
	}
	return t
}

func (t *tree) name(node page.NodeID) string {
	if s, ok := names[t.nodes[node].Role]; ok {
		return s
	}
	return "Span"
}

// attach makes the node a kid of its parent, after those cells before it that
// have no content of their own.
func (t *tree) attach(node page.NodeID) {
	if t.attached[node] {
		return
	}
	t.attached[node] = true
	parent := t.nodes[node].Parent
	t.attach(parent)
	siblings := t.children[parent]
	for len(siblings) > 0 && siblings[0] < node {
		if s := siblings[0]; !t.attached[s] && t.standsEmpty(s) {
			t.attached[s] = true
			t.kids[parent] = append(t.kids[parent], kid{node: s})
		}
		siblings = siblings[1:]
	}
	t.children[parent] = siblings
	t.kids[parent] = append(t.kids[parent], kid{node: node})
}

// standsEmpty reports whether a node stands in the tree even without content.
func (t *tree) standsEmpty(node page.NodeID) bool {
	r := t.nodes[node].Role
	return r == page.RoleCell || r == page.RoleHeaderCell
}

// content notes a new marked content of a node on a page and returns its number.
func (t *tree) content(node page.NodeID, pageIndex int) int {
	t.attach(node)
	id := len(t.parents[pageIndex])
	t.parents[pageIndex] = append(t.parents[pageIndex], node)
	t.kids[node] = append(t.kids[node], kid{page: pageIndex, mcid: id})
	return id
}

// reading adds a span below a node that is read as the given text, and returns
// the number of its marked content.
func (t *tree) reading(below page.NodeID, pageIndex int, says string) int {
	node := t.nodes.Add(page.Node{Parent: below})
	t.refs, t.kids, t.attached = append(t.refs, 0), append(t.kids, nil), append(t.attached, false)
	t.children, t.boxes, t.boxPage = append(t.children, nil), append(t.boxes, page.Box{}), append(t.boxPage, 0)
	t.readings[node] = says
	return t.content(node, pageIndex)
}

// link notes an annotation of a node and returns its number in the parent tree.
func (t *tree) link(node page.NodeID, pageIndex int, annot ref) int {
	t.attach(node)
	t.kids[node] = append(t.kids[node], kid{page: pageIndex, annot: annot})
	t.links = append(t.links, node)
	return len(t.w.doc.Pages) + len(t.links) - 1
}

// write writes the tree and returns its root.
func (t *tree) write() ref {
	root := t.w.reserve()
	for i := range t.nodes {
		// Trailing empty cells of rows that stand.
		for _, c := range t.children[i] {
			if t.attached[i] && !t.attached[c] && t.standsEmpty(c) {
				t.attached[c] = true
				t.kids[i] = append(t.kids[i], kid{node: c})
			}
		}
	}
	for i := range t.nodes {
		if t.attached[i] {
			t.refs[i] = t.w.reserve()
		}
	}
	for i := range t.nodes {
		if t.attached[i] {
			t.element(page.NodeID(i), root)
		}
	}
	var nums strings.Builder
	for i, nodes := range t.parents {
		fmt.Fprintf(&nums, "%d [", i)
		for _, n := range nodes {
			nums.WriteString(t.refs[n].String() + " ")
		}
		nums.WriteString("] ")
	}
	for i, n := range t.links {
		fmt.Fprintf(&nums, "%d %v ", len(t.parents)+i, t.refs[n])
	}
	parents := t.w.add("<</Nums [" + nums.String() + "]>>")
	t.w.set(root, fmt.Sprintf("<</Type /StructTreeRoot /K [%v] /ParentTree %v /ParentTreeNextKey %d>>",
		t.refs[page.Root], parents, len(t.parents)+len(t.links)))
	return root
}

// element writes one structure element.
func (t *tree) element(node page.NodeID, root ref) {
	n := t.nodes[node]
	parent := root
	if node != page.Root {
		parent = t.refs[n.Parent]
	}
	var b strings.Builder
	fmt.Fprintf(&b, "<</Type /StructElem /S /%s /P %v", t.name(node), parent)
	own := -1
	for _, k := range t.kids[node] {
		if k.node == 0 {
			own = k.page
			fmt.Fprintf(&b, " /Pg %v", t.w.pages[own])
			break
		}
	}
	b.WriteString(" /K [")
	for _, k := range t.kids[node] {
		switch {
		case k.node != 0:
			b.WriteString(t.refs[k.node].String() + " ")
		case k.annot != 0:
			fmt.Fprintf(&b, "<</Type /OBJR /Obj %v /Pg %v>> ", k.annot, t.w.pages[k.page])
		case k.page == own:
			fmt.Fprintf(&b, "%d ", k.mcid)
		default:
			fmt.Fprintf(&b, "<</Type /MCR /Pg %v /MCID %d>> ", t.w.pages[k.page], k.mcid)
		}
	}
	b.WriteString("]")
	if n.Alt != "" {
		b.WriteString(" /Alt " + text(n.Alt))
	}
	if says := t.readings[node]; says != "" {
		b.WriteString(" /ActualText " + text(says))
	}
	b.WriteString(t.attributes(node))
	b.WriteString(">>")
	t.w.set(t.refs[node], b.String())
}

// attributes returns the attribute entries of clause 14.8.5.
func (t *tree) attributes(node page.NodeID) string {
	n := t.nodes[node]
	switch n.Role {
	case page.RoleHeaderCell, page.RoleCell:
		a := ""
		if n.Role == page.RoleHeaderCell {
			a = " /Scope /Column"
			if n.OfRow {
				a = " /Scope /Row"
			}
		}
		if n.Columns > 1 {
			a += fmt.Sprintf(" /ColSpan %d", n.Columns)
		}
		if a != "" {
			return " /A <</O /Table" + a + ">>"
		}
	case page.RoleFigure:
		box := t.boxes[node]
		if box.Empty() {
			return ""
		}
		height := t.w.doc.Pages[t.boxPage[node]].Size.Height
		return fmt.Sprintf(" /A <</O /Layout /Placement /Block /BBox [%s %s %s %s]>>",
			number(points(box.Min.X)), number(points(height-box.Max.Y)), number(points(box.Max.X)), number(points(height-box.Min.Y)))
	}
	return ""
}
