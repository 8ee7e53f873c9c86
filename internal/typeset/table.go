package typeset

import (
	"scantling/internal/font"
	"scantling/internal/page"
)

// Padding of cells.
const (
	padX = 1.6
	padY = 0.8
)

// leastCell is the least width of a column: padding and one wide letter.
func (st style) leastCell() float64 { return 2*padX + float64(1.15*st.size) }

// fitColumns drops columns from the right that not even the least type has room
// for, and makes the type small enough for the others.
func (c *composer) fitColumns(t *Table, st *style, width float64) {
	most := max(1, int(width/(2*padX+1.15*leastSize)))
	if n := len(t.Columns); n > most {
		c.note(Note{Kind: Dropped, Name: t.Address, Wanted: float64(n), Got: float64(most)})
		t.Columns = t.Columns[:most]
	}
	room := width/float64(len(t.Columns)) - 2*padX
	st.size = min(st.size, max(room/1.2, leastSize))
}

// table sets a table: a slab for each row.
func (c *composer) table(t Table, parent page.NodeID, width float64) []slab {
	if len(t.Columns) == 0 {
		return nil
	}
	st := c.settings.manner(t.Manner)
	if t.Manner == Body {
		st.size *= 0.92
	}
	c.fitColumns(&t, &st, width)
	node := c.tree.Add(page.Node{Role: page.RoleTable, Parent: parent})
	widths := c.columnWidths(t, st, width)
	var out []slab
	if len(t.Caption) > 0 {
		cs := st
		cs.weight, cs.colour = font.Bold, page.Ink
		cs.node = c.tree.Add(page.Node{Role: page.RoleCaption, Parent: node})
		out = keepNext(c.lines(breakLines(t.Caption, cs, width), st.size, width, page.Start))
		if len(out) > 0 {
			out[len(out)-1].height += 0.8
		}
	}
	g := grid{c: c, t: t, node: node, style: st, widths: widths}
	var head *slab
	if len(t.Header) > 0 {
		rows := g.row(Row{Cells: t.Header, Address: t.Address}, headRow)
		if len(rows) == 1 && rows[0].height < c.column/3 {
			head = artifactOf(rows[0])
		}
		out = append(out, keepNext(rows)...)
	}
	for _, r := range t.Rows {
		rows := g.row(r, bodyRow)
		for i := range rows {
			rows[i].head = head
		}
		out = append(out, rows...)
	}
	if len(out) > 0 {
		out[0].before = c.settings.Size * 0.9
		out[len(out)-1].height += 0.6
		out[len(out)-1].keep = false
		if t.Anchor != "" {
			out[0].anchors = append(out[0].anchors, t.Anchor)
		}
	}
	return out
}

// artifactOf returns a copy of a slab that no reader hears again.
func artifactOf(s slab) *slab {
	again := slab{height: s.height, items: make([]page.Item, 0, len(s.items))}
	for _, it := range s.items {
		if _, link := it.Shape.(page.Link); link {
			continue
		}
		it.Node = page.Artifact
		again.items = append(again.items, it)
	}
	return &again
}

// columnWidths shares the width out: fixed columns as asked, then columns as
// wide as their widest cell, then shares of the rest. Where that is too much,
// what each column has beyond the least shrinks in proportion.
func (c *composer) columnWidths(t Table, st style, width float64) []float64 {
	least := st.leastCell()
	w := make([]float64, len(t.Columns))
	var taken, shares, need, floor float64
	for i, col := range t.Columns {
		switch {
		case col.Width > 0:
			w[i] = max(col.Width, least)
		case col.Share > 0:
			shares += col.Share
			need += max(least, 18)
			floor += least
			continue
		default:
			w[i] = max(natural(t, i, st), least)
		}
		taken += w[i]
	}
	if taken+need > width {
		c.note(Note{Kind: Squeezed, Name: t.Address, Wanted: taken + need, Got: width})
		// Shares give way too, down to the least, but not beyond half the width.
		taken = squeeze(w, least, width-max(floor, min(need, width/2)))
	}
	rest := width - taken
	spare := max(0, rest-floor)
	for i, col := range t.Columns {
		switch {
		case w[i] == 0:
			w[i] = min(least, rest) + float64(spare*(col.Share/shares))
		case shares == 0 && t.Full && rest > 0:
			w[i] += float64(rest * (w[i] / taken))
		}
	}
	return w
}

// squeeze shrinks widths that are set to fit a room, none below the least if it
// can be helped, and returns their sum.
func squeeze(w []float64, least, room float64) (sum float64) {
	var floor, beyond float64
	for _, v := range w {
		if v > 0 {
			floor += least
			beyond += v - least
		}
	}
	k := 0.0
	if beyond > 0 {
		k = max(0, (room-floor)/beyond)
	}
	shrink := 1.0
	if floor > room {
		shrink = room / floor
	}
	for i, v := range w {
		if v > 0 {
			w[i] = float64(least*shrink) + float64((v-least)*k)
			sum += w[i]
		}
	}
	return sum
}

// natural returns the width of a column's widest cell on one line.
func natural(t Table, column int, st style) (width float64) {
	bold := st
	bold.weight = font.Bold
	see := func(cells []Cell, st style) {
		at := 0
		for _, cell := range cells {
			if at == column && max(cell.Columns, 1) == 1 {
				width = max(width, measure(cell.Spans, st)+2*padX+0.05)
			}
			at += max(cell.Columns, 1)
		}
	}
	see(t.Header, bold)
	for _, r := range t.Rows {
		if r.Group {
			see(r.Cells, bold)
		} else {
			see(r.Cells, st)
		}
	}
	return width
}
