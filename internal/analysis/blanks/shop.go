package blanks

import (
	"scantling/internal/ledger"
	"scantling/internal/shop"
	"scantling/internal/stock"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// Of returns what the derivation must know of a shop: its stock, what its
// machines need and take, and its allowances, where the rules "allowance end",
// "allowance edge", "allowance strip", "allowance planed", "allowance rough" and
// "gang length" say something else than the usual.
func Of(s *shop.Shop, l *ledger.Ledger) ([]Stock, Limits, Allowances) {
	return stockOf(s), limitsOf(s), allowancesOf(s, l)
}

// JointEdge comes off each edge of a board to make it straight. Common practice,
// no source.
const JointEdge = 2500 * unit.Micrometre

func stockOf(s *shop.Shop) []Stock {
	var out []Stock
	for _, b := range s.Boards {
		out = append(out, Stock{
			ID: b.ID, Species: b.Species, Planed: b.Stock.Surface == stock.Planed, Finished: b.Stock.Surface == stock.Finished,
			Length: b.Stock.Length, Width: b.Stock.Width, Thickness: b.Stock.Thickness,
			End: Trim(s, s.TrimEnds), Edge: JointEdge, Have: b.Have,
		})
	}
	for _, sh := range s.Sheets {
		length, width := AlongGrain(sh)
		trim := Trim(s, s.TrimEdges)
		out = append(out, Stock{
			ID: sh.ID, Species: sh.Stock.Material, Sheet: true,
			Length: length, Width: width, Thickness: sh.Stock.Thickness().Value,
			End: trim, Edge: trim, Have: sh.Have, Turns: sh.Stock.Grain == stock.NoGrain,
		})
	}
	return out
}

// Trim returns what comes off a side of the stock where the shop trims so much: at
// least the saw cut itself, nothing where it does not trim.
func Trim(s *shop.Shop, trim unit.Length) unit.Length {
	if trim <= 0 {
		return 0
	}
	return max(trim, Kerf(s))
}

// AlongGrain returns a sheet's size along its grain and across it: a sheet whose
// grain runs across its width lies turned. Without grain it lies as it is sold.
func AlongGrain(s shop.Sheet) (length, width unit.Length) {
	if s.Stock.Grain == stock.AlongWidth {
		return s.Stock.Width, s.Stock.Length
	}
	return s.Stock.Length, s.Stock.Width
}

// limitsOf takes the best machine of each kind: the one that takes the shortest
// or the widest work.
func limitsOf(s *shop.Shop) Limits {
	var out Limits
	least := func(kind tool.Kind) (length unit.Length, widest unit.Length, any bool) {
		for _, m := range s.Of(kind) {
			c := m.Tool.Completed()
			if l := c.Least.Length.Value; !any || l < length {
				length = l
			}
			widest = max(widest, c.Greatest.Width.Value)
			any = true
		}
		return length, widest, any
	}
	joint, jointWide, hasJointer := least(tool.Jointer)
	plane, planeWide, hasPlaner := least(tool.ThicknessPlaner)
	rout, _, _ := least(tool.RouterTable)
	if hasJointer {
		out.LeastPlane, out.Joint = joint, jointWide
	}
	if hasPlaner {
		out.LeastPlane, out.Plane = max(out.LeastPlane, plane), planeWide
	}
	out.LeastRout = rout
	for i, m := range s.Of(tool.TableSaw) {
		if w := m.Tool.Completed().Least.Width.Value; i == 0 || w < out.LeastRip {
			out.LeastRip = w
		}
	}
	for _, m := range s.Of(tool.BandSaw) {
		if c := m.Tool.Completed(); c.Greatest.Thickness.Value > out.Resaw {
			out.Resaw, out.ResawKerf = c.Greatest.Thickness.Value, c.Kerf.Value
		}
	}
	return out
}

func allowancesOf(s *shop.Shop, l *ledger.Ledger) Allowances {
	a := Usual(l)
	for _, rule := range []struct {
		name string
		to   *ledger.Figure
	}{
		{"allowance end", &a.End}, {"allowance edge", &a.Edge}, {"allowance strip", &a.Strip},
		{"allowance planed", &a.Planed}, {"allowance rough", &a.Rough},
	} {
		if r, ok := s.Rule(rule.name); ok {
			if nm, isLength := r.Value.Length(); isLength && nm >= 0 {
				*rule.to = l.Leaf(rule.name, nm, ledger.HouseRule, r.Why)
			}
		}
	}
	if r, ok := s.Rule("gang length"); ok {
		if nm, isLength := r.Value.Length(); isLength && nm > 0 {
			a.Gang = nm
		}
	}
	if kerf := Kerf(s); kerf > 0 {
		a.Kerf = l.Leaf("kerf", kerf, ledger.HouseRule, "the shop's saw")
	}
	return a
}

// Kerf is what the shop's saw turns to dust: the table saw's, else the band
// saw's; 0 if the shop names no saw.
func Kerf(s *shop.Shop) unit.Length {
	for _, kind := range []tool.Kind{tool.TableSaw, tool.MitreSaw, tool.BandSaw} {
		for _, m := range s.Of(kind) {
			if k := m.Tool.Completed().Kerf.Value; k > 0 {
				return k
			}
		}
	}
	return 0
}
