package naming

import (
	"scantling/internal/address"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// CutRow is one row of a part's table of cuts: one cut, or equal ones of one
// series or joint. Its letter ties it to the drawing.
type CutRow struct {
	Letter string
	Cuts   []piece.Cut
}

// CutRows lists the cuts of a part as rows, in the order of the piece.
func CutRows(p *piece.Piece, part address.Address) []CutRow {
	var rows []CutRow
	for _, c := range p.Cuts {
		if c.Part != part {
			continue
		}
		if n := len(rows); n > 0 && alike(rows[n-1].Cuts[0], c) {
			rows[n-1].Cuts = append(rows[n-1].Cuts, c)
			continue
		}
		rows = append(rows, CutRow{Letter: letter(len(rows)), Cuts: []piece.Cut{c}})
	}
	return rows
}

// alike reports whether two neighbouring cuts share a row: of one series or
// joint, of one size, into one side.
func alike(a, b piece.Cut) bool {
	if a.Kind != b.Kind || a.Slot == nil || b.Slot == nil {
		return false
	}
	series := a.Series != "" && a.Series == b.Series || a.Kind == piece.Socket && a.Joint != "" && a.Joint == b.Joint
	s, t := a.Slot, b.Slot
	return series && s.Open == t.Open && s.Run == t.Run && s.Depth.Nm == t.Depth.Nm && s.Corner.Nm == t.Corner.Nm &&
		Wide(s) == Wide(t) && s.From.Nm == t.From.Nm && s.To.Nm == t.To.Nm
}

// Wide is how wide a slot's path is.
func Wide(s *piece.Slot) unit.Length { return s.Far.Nm - s.Near.Nm }

// Radius of a dip's arc: (chord² + 4 depth²) / (8 depth).
func Radius(d *piece.Dip) unit.Length {
	c, h := d.Chord.Nm.Millimetres(), d.Depth.Nm.Millimetres()
	if h == 0 {
		return 0
	}
	return unit.FromMillimetres((float64(c*c) + float64(4*h*h)) / float64(8*h))
}

// letter returns a, b, ... z, aa, ab, ... for 0, 1, ...
func letter(n int) string {
	s := ""
	for n++; n > 0; n = (n - 1) / 26 {
		s = string(rune('a'+(n-1)%26)) + s
	}
	return s
}
