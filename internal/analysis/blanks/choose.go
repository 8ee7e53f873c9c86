package blanks

import (
	"cmp"
	"slices"

	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// stockFor returns the stock that a row's parts come out of: of what is thick and
// large enough, what the material names, else what the rack holds, else what the
// machines' least length fits on, else the thinnest, then the widest.
func (d *deriver) stockFor(row plan.PartRow) (Stock, bool) {
	var fits []Stock
	for _, s := range d.Stock {
		if d.answers(row, s) && d.thick(row, s) && d.large(row, s) {
			fits = append(fits, s)
		}
	}
	if len(fits) == 0 {
		return Stock{}, false
	}
	worse := func(b bool) int {
		if b {
			return 0
		}
		return 1
	}
	own := d.own[row.Material]
	return slices.MinFunc(fits, func(a, b Stock) int {
		return cmp.Or(
			worse(own != "" && a.ID == own)-worse(own != "" && b.ID == own),
			worse(a.Have > 0)-worse(b.Have > 0),
			worse(a.usable() >= d.least(row))-worse(b.usable() >= d.least(row)),
			cmp.Compare(a.Thickness, b.Thickness),
			cmp.Compare(b.Width, a.Width),
		)
	}), true
}

func (d *deriver) answers(row plan.PartRow, s Stock) bool {
	return s.Species == row.Species && s.Sheet == row.Sheet
}

// thick reports whether the part comes out of the stock's thickness: a sheet has
// just that, a board that and what planing takes.
func (d *deriver) thick(row plan.PartRow, s Stock) bool {
	if s.Sheet {
		return s.Thickness == row.Thickness.Nm
	}
	if d.own[row.Material] == s.ID && s.Thickness == row.Thickness.Nm {
		return true // the material says no thickness but the board's
	}
	return s.Thickness-d.planing(s) >= row.Thickness.Nm
}

// large reports whether the blank lies on the stock when that is trimmed. A
// board may be too narrow: then it is glued up.
func (d *deriver) large(row plan.PartRow, s Stock) bool {
	if !s.Sheet {
		return s.usable() >= row.Length.Nm+2*d.Allowances.End.Nm
	}
	length, width := s.usable(), s.Width-2*s.Edge
	lies := func(l, w unit.Length) bool { return l <= length && w <= width }
	return lies(row.Length.Nm, row.Width.Nm) || s.Turns && lies(row.Width.Nm, row.Length.Nm)
}

func (d *deriver) planing(s Stock) unit.Length {
	switch {
	case s.Sheet || s.Finished:
		return 0
	case s.Planed:
		return d.Allowances.Planed.Nm
	}
	return d.Allowances.Rough.Nm
}

// refuse reports a row that no stock serves, with the two figures that clash: of
// the stock of that wood the thickest, and of what is thick enough the longest.
func (d *deriver) refuse(row plan.PartRow) {
	var thickest, longest, widest unit.Length
	any, thick := false, false
	for _, s := range d.Stock {
		if !d.answers(row, s) {
			continue
		}
		any = true
		if thickest == 0 || s.Sheet && (s.Thickness-row.Thickness.Nm).Abs() < (thickest-row.Thickness.Nm).Abs() || !s.Sheet && s.Thickness > thickest {
			thickest = s.Thickness
		}
		if d.thick(row, s) {
			thick = true
			longest, widest = max(longest, s.usable()), max(widest, s.Width-2*s.Edge)
		}
	}
	mark, species := message.Text("mark", row.Mark), message.Text("species", row.Species)
	var text message.Message
	switch {
	case !any:
		text = message.New("blanks.no-wood", mark, species)
	case !thick && row.Sheet:
		text = message.New("blanks.no-sheet", mark, species, message.Length("thickness", row.Thickness.Nm), message.Length("nearest", thickest))
	case !thick:
		text = message.New("blanks.no-stock", mark, species,
			message.Length("length", row.Length.Nm), message.Length("thickness", row.Thickness.Nm), message.Length("thickest", thickest))
	case row.Sheet:
		text = message.New("blanks.sheet-too-small", mark, species, message.Length("length", row.Length.Nm), message.Length("width", row.Width.Nm),
			message.Length("longest", longest), message.Length("widest", widest))
	default:
		text = message.New("blanks.too-long", mark, species, message.Length("needs", row.Length.Nm+2*d.Allowances.End.Nm),
			message.Length("length", row.Length.Nm), message.Length("longest", longest))
	}
	d.complain(row, text)
}

// complain reports a row that cannot be made, at its part.
func (d *deriver) complain(row plan.PartRow, text message.Message) {
	i := slices.IndexFunc(d.Piece.Parts, func(p piece.Part) bool { return p.Address == row.Members[0] })
	x := diag.Diagnostic{Severity: diag.Error, Code: CodeNoStock, Address: row.Members[0], Text: text}
	if i >= 0 {
		x.Where = d.Piece.Parts[i].Where
	}
	d.diags = append(d.diags, x)
}
