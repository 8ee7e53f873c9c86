package problem

import "scantling/internal/unit"

// checkFit looks for a part or a sequence that lies on no piece of stock. Under
// MostValue such a part is merely left out.
func (p Problem) checkFit() *Fault {
	if p.Goal == MostValue {
		return nil
	}
	for i, part := range p.Parts {
		if part.Quantity == 0 {
			continue
		}
		if f := p.checkLies(i, "", part.Size, part.Turn && p.Form == Sheets); f != nil {
			return f
		}
	}
	for _, s := range p.Sequences {
		row := p.Row(s)
		if f := p.checkLies(s.Parts[0], "sequence from ", row, false); f != nil {
			return f
		}
	}
	return nil
}

// Row returns the size of the block that a sequence is cut from, the kerfs
// between its parts included.
func (p Problem) Row(s Sequence) Size {
	var row Size
	for n, i := range s.Parts {
		part := p.Parts[i]
		along, across := &row.Length, &row.Width
		size := part.Size
		if s.Direction == Rip {
			along, across = across, along
			size.Length, size.Width = size.Width, size.Length
		}
		if n > 0 {
			*along += p.Kerf
		}
		*along += size.Length
		*across = max(*across, size.Width)
	}
	if p.Form == Boards {
		row.Width = 0
	}
	return row
}

// checkLies reports a rectangle that fits no stock, measured against the stock
// that it misses by least.
func (p Problem) checkLies(part int, what string, s Size, turn bool) *Fault {
	best, over, axis, have, limit := -1, unit.Length(0), "", unit.Length(0), unit.Length(0)
	try := func(i int, room, s Size) bool {
		dl, dw := s.Length-room.Length, s.Width-room.Width
		if p.Form == Boards {
			dw = 0
		}
		if dl <= 0 && dw <= 0 {
			return true
		}
		if miss := max(dl, 0) + max(dw, 0); best < 0 || miss < over {
			best, over = i, miss
			axis, have, limit = "long", s.Length, room.Length
			if dl <= 0 {
				axis, have, limit = "wide", s.Width, room.Width
			}
		}
		return false
	}
	clear := false
	for i, stock := range p.Stock {
		for _, room := range p.rooms(stock) {
			clear = true
			if try(i, room, s) || turn && try(i, room, Size{s.Width, s.Length}) {
				return nil
			}
		}
	}
	who := what + name("part", p.Parts[part].ID, part)
	if !clear {
		f := fault(TooLong, part, -1, "%s: no stock has any clear room", who)
		return f
	}
	f := fault(TooLong, part, best, "%s is %s mm %s; the nearest stock, %s, has %s mm clear there: %s mm too little. Stock with %s mm clear would do",
		who, mm(have), axis, name("stock", p.Stock[best].ID, best), mm(limit), mm(have-limit), mm(have))
	f.Have, f.Limit = have, limit
	return f
}
