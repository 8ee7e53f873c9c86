package cutting

import (
	"fmt"

	"scantling/internal/analysis/blanks"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/optimise/problem"
	"scantling/internal/shop"
	"scantling/internal/stock"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// FeedOf returns the least piece that the shop's table saw may be fed: how long it
// must be, and how wide between the fence and the blade. Of several saws it is the
// one that takes the shortest work, then the narrowest; zero where the shop has none.
func FeedOf(s *shop.Shop) problem.Feed {
	var out problem.Feed
	for i, m := range s.Of(tool.TableSaw) {
		least := m.Tool.Completed().Least
		f := problem.Feed{Long: least.Length.Value, Short: least.Width.Value}
		if i == 0 || f.Long < out.Long || f.Long == out.Long && f.Short < out.Short {
			out = f
		}
	}
	return out
}

// Of returns the shop's stock as it can be cut and bought. edge is what comes
// off each edge of a board to make it straight. A sheet lies with its grain along
// its length.
func Of(s *shop.Shop, edge unit.Length, l *ledger.Ledger) []Stock {
	bought := func(id, what string, nm unit.Length, where diag.Place) ledger.Figure {
		return l.Figure(l.Given(ledger.Entry{Name: id + "." + what, Value: unit.OfLength(nm), Origin: ledger.Bought, Source: "the shop's rack", Where: where}))
	}
	rule := func(id, what string, nm unit.Length, source string) ledger.Figure {
		return l.Leaf(id+"."+what, nm, ledger.HouseRule, source)
	}
	const house, practice = "the shop's trims", "common practice, no source"
	var out []Stock
	for _, b := range s.Boards {
		price, _ := b.Stock.Cost()
		length, width, thickness := b.Stock.SoldAs()
		var defects []Defect
		for i, d := range b.Stock.Defects {
			id := fmt.Sprintf("%s.defect %d", b.ID, i+1)
			defects = append(defects, Defect{
				Kind: string(d.Kind), From: bought(id, "from", d.From, b.Where), To: bought(id, "to", d.To, b.Where),
				Near: bought(id, "near", d.Near, b.Where), Far: bought(id, "far", d.Far, b.Where),
			})
		}
		out = append(out, Stock{
			ID: b.ID, Label: b.ID, Length: bought(b.ID, "length", b.Stock.Length, b.Where), Width: bought(b.ID, "width", b.Stock.Width, b.Where),
			Thickness: bought(b.ID, "thickness", b.Stock.Thickness, b.Where), End: rule(b.ID, "end trim", blanks.Trim(s, s.TrimEnds), house), Edge: rule(b.ID, "edge trim", edge, practice),
			Have: b.Have, Price: int64(price), Buyable: true, Defects: defects, Sold: [3]unit.Length{length, width, thickness},
			Kind: fmt.Sprint("board\n", b.Species, "\n", b.Sawn, "\n", b.Stock.Surface, "\n", int64(b.Stock.Thickness)),
		})
	}
	for _, sh := range s.Sheets {
		price, _ := sh.Stock.Cost()
		length, width := blanks.AlongGrain(sh)
		trim := blanks.Trim(s, s.TrimEdges)
		out = append(out, Stock{
			ID: sh.ID, Label: sh.ID, Sheet: true, Length: bought(sh.ID, "length", length, sh.Where), Width: bought(sh.ID, "width", width, sh.Where),
			Thickness: bought(sh.ID, "thickness", sh.Stock.Thickness().Value, sh.Where), End: rule(sh.ID, "end trim", trim, house), Edge: rule(sh.ID, "edge trim", trim, house),
			Have: sh.Have, Price: int64(price), Buyable: true, Turns: sh.Stock.Grain == stock.NoGrain,
			Sold: [3]unit.Length{sh.Stock.Length, sh.Stock.Width, sh.Stock.Nominal},
			Kind: fmt.Sprint("sheet\n", sh.Stock.Material, "\n", sh.Stock.Grain == stock.NoGrain, "\n", int64(sh.Stock.Thickness().Value)),
		})
	}
	return out
}
