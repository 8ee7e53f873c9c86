package problem

import (
	"fmt"

	"scantling/internal/unit"
)

// Check returns the first [Fault] of p, or nil. A problem that passes can be
// handed to the engine; whether limited stock yields all parts shows only in
// the solving.
func (p Problem) Check() error {
	checks := []func() *Fault{
		p.checkCounts, p.checkSettings, p.checkStock, p.checkParts,
		p.checkSequences, p.checkFit,
	}
	for _, check := range checks {
		if f := check(); f != nil {
			return f
		}
	}
	return nil
}

func fault(r Reason, part, stock int, format string, args ...any) *Fault {
	return &Fault{Reason: r, Part: part, Stock: stock, Text: fmt.Sprintf(format, args...)}
}

func (p Problem) checkCounts() *Fault {
	switch {
	case len(p.Parts) == 0:
		return fault(Empty, -1, -1, "no parts: there is nothing to cut")
	case len(p.Stock) == 0:
		return fault(Empty, -1, -1, "no stock: list at least one board or sheet")
	case len(p.Parts) > MaxKinds:
		return fault(Count, -1, -1, "%d kinds of parts: at most %d are accepted", len(p.Parts), MaxKinds)
	case len(p.Stock) > MaxStock:
		return fault(Count, -1, -1, "%d kinds of stock: at most %d are accepted", len(p.Stock), MaxStock)
	}
	total := 0
	for i, part := range p.Parts {
		if part.Quantity < 0 || part.Quantity > MaxPieces {
			return fault(Count, i, -1, "%s: quantity %d is not between 0 and %d", name("part", part.ID, i), part.Quantity, MaxPieces)
		}
		total += part.Quantity
		if total > MaxPieces {
			return fault(Count, i, -1, "more than %d pieces are wanted: split the order", MaxPieces)
		}
	}
	if total == 0 {
		return fault(Empty, -1, -1, "all quantities are zero: there is nothing to cut")
	}
	for i, s := range p.Stock {
		if s.Limit < 0 || s.Limit > MaxPieces {
			return fault(Count, -1, i, "%s: limit %d is not between 0 (no limit) and %d", name("stock", s.ID, i), s.Limit, MaxPieces)
		}
		if len(s.Defects) > MaxDefects {
			return fault(Count, -1, i, "%s: %d defects, at most %d are accepted", name("stock", s.ID, i), len(s.Defects), MaxDefects)
		}
	}
	return nil
}

func (p Problem) checkSettings() *Fault {
	switch {
	case p.Form != Boards && p.Form != Sheets:
		return fault(Malformed, -1, -1, "form %d is neither boards nor sheets", p.Form)
	case p.Goal != LeastCost && p.Goal != MostValue:
		return fault(Malformed, -1, -1, "goal %d is neither least cost nor most value", p.Goal)
	case p.Goal == MostValue && (p.Form != Sheets || len(p.Stock) != 1):
		return fault(Malformed, -1, -1, "the greatest value is sought on one sheet only: give one kind of stock")
	case p.Goal == MostValue && len(p.Sequences) > 0:
		return fault(Malformed, -1, -1, "sequences cannot be kept when the greatest value is sought")
	case p.Cutting.Stages != 0 && p.Cutting.Stages != 2 && p.Cutting.Stages != 3:
		return fault(Malformed, -1, -1, "%d stages: 2, 3 or 0 (no limit) are known", p.Cutting.Stages)
	case p.Cutting.First < Any || p.Cutting.First > Rip:
		return fault(Malformed, -1, -1, "first direction %d is not known", p.Cutting.First)
	}
	for _, l := range []struct {
		what string
		l    unit.Length
	}{
		{"kerf", p.Kerf}, {"feed length", p.Feed.Long}, {"feed width", p.Feed.Short},
		{"useful length", p.Useful.Length}, {"useful width", p.Useful.Width},
	} {
		if l.l < 0 || l.l > unit.MaxLength {
			return fault(BadSize, -1, -1, "%s of %s mm is not between 0 and %s", l.what, mm(l.l), mm(unit.MaxLength))
		}
	}
	return nil
}

func (p Problem) checkStock() *Fault {
	for i, s := range p.Stock {
		who := name("stock", s.ID, i)
		if s.Cost < 0 || s.Cost > MaxCost {
			return fault(Range, -1, i, "%s: cost %d is not between 0 and %d", who, s.Cost, int64(MaxCost))
		}
		sizes := []unit.Length{s.Length}
		trims := []unit.Length{s.Trim.Start, s.Trim.End}
		if p.Form == Sheets {
			sizes = append(sizes, s.Width)
			trims = append(trims, s.Trim.Low, s.Trim.High)
		}
		for _, l := range sizes {
			if l <= 0 || l > unit.MaxLength {
				return fault(BadSize, -1, i, "%s: size %s mm is not above 0 and at most %s", who, mm(l), mm(unit.MaxLength))
			}
		}
		for _, l := range trims {
			if l < 0 || l > unit.MaxLength {
				return fault(BadSize, -1, i, "%s: trim %s mm is not between 0 and %s", who, mm(l), mm(unit.MaxLength))
			}
		}
		if u := s.Usable(p.Form); u.Length <= 0 || p.Form == Sheets && u.Width <= 0 {
			return fault(BadSize, -1, i, "%s: its trims leave nothing of %s × %s mm", who, mm(s.Length), mm(s.Width))
		}
		for _, d := range s.Defects {
			if f := p.checkDefect(i, s, d); f != nil {
				return f
			}
		}
	}
	return nil
}

func (p Problem) checkDefect(i int, s Stock, d Box) *Fault {
	bad := d.Length <= 0 || d.Along < -unit.MaxLength || d.Along > unit.MaxLength || d.Length > unit.MaxLength
	if p.Form == Sheets {
		bad = bad || d.Width <= 0 || d.Across < -unit.MaxLength || d.Across > unit.MaxLength || d.Width > unit.MaxLength
	}
	if bad {
		return fault(BadSize, -1, i, "%s: a defect must have a size above 0 and lie within %s mm of the start", name("stock", s.ID, i), mm(unit.MaxLength))
	}
	return nil
}

func (p Problem) checkParts() *Fault {
	for i, part := range p.Parts {
		who := name("part", part.ID, i)
		if part.Length <= 0 || part.Length > unit.MaxLength {
			return fault(BadSize, i, -1, "%s: length %s mm is not above 0 and at most %s", who, mm(part.Length), mm(unit.MaxLength))
		}
		if p.Form == Sheets && (part.Width <= 0 || part.Width > unit.MaxLength) {
			return fault(BadSize, i, -1, "%s: width %s mm is not above 0 and at most %s", who, mm(part.Width), mm(unit.MaxLength))
		}
		if part.Value < 0 || part.Value > MaxCost {
			return fault(Range, i, -1, "%s: value %d is not between 0 and %d", who, part.Value, int64(MaxCost))
		}
	}
	return nil
}

func (p Problem) checkSequences() *Fault {
	if len(p.Sequences) > MaxPieces {
		return fault(Count, -1, -1, "%d sequences: at most %d are accepted", len(p.Sequences), MaxPieces)
	}
	seen := make([]int, len(p.Parts))
	for _, s := range p.Sequences {
		if len(s.Parts) == 0 || len(s.Parts) > MaxPieces {
			return fault(Malformed, -1, -1, "a sequence holds %d parts: at least 1 and at most %d are accepted", len(s.Parts), MaxPieces)
		}
		if s.Direction != Crosscut && (s.Direction != Rip || p.Form == Boards) {
			return fault(Malformed, -1, -1, "a sequence must say whether its parts lie in a row along the grain or across it (on boards: along)")
		}
		for _, i := range s.Parts {
			if i < 0 || i >= len(p.Parts) {
				return fault(Malformed, -1, -1, "a sequence names part number %d of %d", i+1, len(p.Parts))
			}
			seen[i]++
		}
	}
	for i, n := range seen {
		if n > 0 && n != p.Parts[i].Quantity {
			return fault(Malformed, i, -1, "%s: %d wanted, but %d stand in sequences: put all or none of them there", name("part", p.Parts[i].ID, i), p.Parts[i].Quantity, n)
		}
	}
	return nil
}
