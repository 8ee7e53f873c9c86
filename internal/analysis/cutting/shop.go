package cutting

import (
	"scantling/internal/ledger"
	"scantling/internal/shop"
	"scantling/internal/unit"
)

// Of returns the shop's stock as it can be cut and bought. edge is what comes
// off each edge of a board to make it straight.
func Of(s *shop.Shop, edge unit.Length, l *ledger.Ledger) []Stock {
	leaf := func(id, what string, nm unit.Length) ledger.Figure {
		return l.Leaf(id+"."+what, nm, ledger.Bought, "the shop's rack")
	}
	var out []Stock
	for _, b := range s.Boards {
		price, _ := b.Stock.Cost()
		out = append(out, Stock{
			ID: b.ID, Label: b.ID, Length: leaf(b.ID, "length", b.Stock.Length), Width: leaf(b.ID, "width", b.Stock.Width),
			Thickness: leaf(b.ID, "thickness", b.Stock.Thickness), End: leaf(b.ID, "end trim", s.TrimEnds), Edge: leaf(b.ID, "edge trim", edge),
			Have: b.Have, Price: int64(price), Buyable: true,
		})
	}
	for _, sh := range s.Sheets {
		price, _ := sh.Stock.Cost()
		out = append(out, Stock{
			ID: sh.ID, Label: sh.ID, Sheet: true, Length: leaf(sh.ID, "length", sh.Stock.Length), Width: leaf(sh.ID, "width", sh.Stock.Width),
			Thickness: leaf(sh.ID, "thickness", sh.Stock.Thickness().Value), End: leaf(sh.ID, "end trim", s.TrimEdges), Edge: leaf(sh.ID, "edge trim", s.TrimEdges),
			Have: sh.Have, Price: int64(price), Buyable: true,
		})
	}
	return out
}
