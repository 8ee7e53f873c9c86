package typeset

import (
	"scantling/internal/font"
	"scantling/internal/page"
)

// rowKind says what a row is.
type rowKind uint8

const (
	bodyRow rowKind = iota
	headRow
)

// grid sets the rows of one table.
type grid struct {
	c      *composer
	t      Table
	node   page.NodeID
	style  style
	widths []float64
}

// setCell is a cell with its lines broken.
type setCell struct {
	x, width float64
	lines    []line
	align    page.Align
	fill     page.Colour
}

// row sets a row: one slab, or several if it is taller than a column.
func (g *grid) row(r Row, kind rowKind) []slab {
	cells, most := g.cells(r, kind)
	lineHeight := float64(leading * g.style.size)
	// A line may hold larger type only if a manner asks for it; cells do not.
	fit := max(1, int((float64(g.c.column/2)-2*padY)/lineHeight))
	if room := int((g.c.column - 2*padY - lineHeight*2) / lineHeight); most <= room {
		fit = most
	}
	if most > fit {
		g.c.note(Note{Kind: RowSplit, Name: r.Address, Wanted: float64(most) * lineHeight, Got: g.c.column})
	}
	var out []slab
	for from := 0; from < max(most, 1); from += max(fit, 1) {
		out = append(out, g.part(cells, from, min(max(fit, 1), max(most-from, 1)), r, kind))
	}
	if r.Anchor != "" {
		out[0].anchors = append(out[0].anchors, r.Anchor)
	}
	out[len(out)-1].keep = r.Group
	return out
}

// cells breaks the lines of a row's cells and gives each its node.
func (g *grid) cells(r Row, kind rowKind) (cells []setCell, most int) {
	rowNode := g.c.tree.Add(page.Node{Role: page.RoleRow, Parent: g.node})
	at, x := 0, 0.0
	for _, cell := range r.Cells {
		span := max(cell.Columns, 1)
		if at >= len(g.widths) {
			break
		}
		span = min(span, len(g.widths)-at)
		width := 0.0
		for _, w := range g.widths[at : at+span] {
			width += w
		}
		st := g.style
		if st.address = r.Address; kind == headRow || r.Group {
			st.weight = font.Bold
		}
		role := page.RoleCell
		if kind == headRow || cell.Header || r.Group {
			role = page.RoleHeaderCell
		}
		st.node = g.c.tree.Add(page.Node{Role: role, Parent: rowNode, OfRow: cell.Header && kind == bodyRow, Columns: span})
		s := setCell{x: x, width: width, fill: cell.Fill, align: g.t.Columns[at].Align}
		if span > 1 {
			s.align = page.Start
		}
		if cell.Fill != page.Ink {
			st.colour = cell.Fill.On()
		}
		s.lines = breakLines(cell.Spans, st, max(width-2*padX, 0.5))
		most = max(most, len(s.lines))
		cells = append(cells, s)
		at, x = at+span, x+width
	}
	return cells, most
}

// part sets lines from.. of every cell as one slab.
func (g *grid) part(cells []setCell, from, count int, r Row, kind rowKind) slab {
	lineHeight := float64(leading * g.style.size)
	s := slab{height: float64(float64(count)*lineHeight) + 2*padY}
	full := 0.0
	for _, w := range g.widths {
		full += w
	}
	for _, cell := range cells {
		if cell.fill != page.Ink {
			s.add(page.Artifact, "", page.Fill{Path: page.Rectangle(page.NewBox(cell.x, 0, cell.width, s.height)), Colour: cell.fill})
		}
	}
	if kind == headRow || r.Group {
		s.under(page.Fill{Path: page.Rectangle(page.NewBox(0, 0, full, s.height)), Colour: page.Bench})
	}
	for _, cell := range cells {
		for i := from; i < min(from+count, len(cell.lines)); i++ {
			var l slab
			l.setLine(&g.c.tree, cell.lines[i], cell.x+padX, cell.width-2*padX, cell.align, g.style.size)
			l.shift(0, padY+float64(float64(i-from)*lineHeight))
			s.items = append(s.items, l.items...)
		}
	}
	g.rules(&s, full, kind)
	s.blocks = []page.Block{{Name: "row " + r.Address, Box: page.NewBox(0, 0, full, s.height)}}
	return s
}

// rules draws the lines above and below a row.
func (g *grid) rules(s *slab, full float64, kind rowKind) {
	rule := func(y float64, w page.Width, c page.Colour) {
		s.add(page.Artifact, "", page.Stroke{Path: page.Line(page.Point{Y: y}, page.Point{X: full, Y: y}), Width: w, Colour: c})
	}
	if kind == headRow {
		rule(0, page.W035, page.Ink)
		rule(s.height, page.W025, page.Ink)
		return
	}
	rule(s.height, page.W018, page.Rule)
}
