package cutting

import (
	"fmt"

	"scantling/internal/analysis/blanks"
	"scantling/internal/ledger"
	"scantling/internal/shop"
	"scantling/internal/stock"
	"scantling/internal/unit"
)

// Of returns the shop's stock as it can be cut and bought. edge is what comes
// off each edge of a board to make it straight. A sheet lies with its grain along
// its length.
func Of(s *shop.Shop, edge unit.Length, l *ledger.Ledger) []Stock {
	leaf := func(id, what string, nm unit.Length) ledger.Figure {
		return l.Leaf(id+"."+what, nm, ledger.Bought, "the shop's rack")
	}
	var out []Stock
	for _, b := range s.Boards {
		price, _ := b.Stock.Cost()
		length, width, thickness := b.Stock.SoldAs()
		out = append(out, Stock{
			ID: b.ID, Label: b.ID, Length: leaf(b.ID, "length", b.Stock.Length), Width: leaf(b.ID, "width", b.Stock.Width),
			Thickness: leaf(b.ID, "thickness", b.Stock.Thickness), End: leaf(b.ID, "end trim", blanks.Trim(s, s.TrimEnds)), Edge: leaf(b.ID, "edge trim", edge),
			Have: b.Have, Price: int64(price), Buyable: true, Sold: [3]unit.Length{length, width, thickness},
			Kind: fmt.Sprint("board\n", b.Species, "\n", b.Sawn, "\n", b.Stock.Surface, "\n", int64(b.Stock.Thickness)),
		})
	}
	for _, sh := range s.Sheets {
		price, _ := sh.Stock.Cost()
		length, width := blanks.AlongGrain(sh)
		trim := blanks.Trim(s, s.TrimEdges)
		out = append(out, Stock{
			ID: sh.ID, Label: sh.ID, Sheet: true, Length: leaf(sh.ID, "length", length), Width: leaf(sh.ID, "width", width),
			Thickness: leaf(sh.ID, "thickness", sh.Stock.Thickness().Value), End: leaf(sh.ID, "end trim", trim), Edge: leaf(sh.ID, "edge trim", trim),
			Have: sh.Have, Price: int64(price), Buyable: true, Turns: sh.Stock.Grain == stock.NoGrain,
			Sold: [3]unit.Length{sh.Stock.Length, sh.Stock.Width, sh.Stock.Nominal},
			Kind: fmt.Sprint("sheet\n", sh.Stock.Material, "\n", sh.Stock.Grain == stock.NoGrain, "\n", int64(sh.Stock.Thickness().Value)),
		})
	}
	return out
}
