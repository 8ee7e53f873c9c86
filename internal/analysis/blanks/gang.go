package blanks

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// gangs reports whether the row's parts are too short for the machines and may
// share a longer blank: a part with channels of its own keeps a blank to itself.
func (d *deriver) gangs(row plan.PartRow) bool {
	return row.Length.Nm+2*d.Allowances.End.Nm < d.least(row) && len(d.series[row.Members[0]]) == 0
}

// profile is what parts must share to come out of one blank.
type profile struct {
	stock            Stock
	material, stage  string
	width, thickness unit.Length
}

// gang puts short parts of one profile end to end on common blanks.
func (d *deriver) gang(rows []plan.PartRow) {
	type share struct {
		row    plan.PartRow
		member address.Address
	}
	var order []profile
	byProfile := map[profile][]share{}
	for _, row := range rows {
		stock, _ := d.stockFor(row)
		p := profile{stock, row.Material, row.Stage, row.Width.Nm, row.Thickness.Nm}
		if _, ok := byProfile[p]; !ok {
			order = append(order, p)
		}
		for _, m := range row.Members {
			byProfile[p] = append(byProfile[p], share{row, m})
		}
	}
	counts := map[string]int{}
	for _, p := range order {
		shares := byProfile[p]
		for len(shares) > 0 {
			first := shares[0].row
			counts[first.Mark]++
			id := blankID(first.Mark, counts[first.Mark])
			terms := []ledger.Figure{d.Allowances.End, d.Allowances.End}
			n, long := 0, 2*d.Allowances.End.Nm
			var parts []address.Address
			for _, s := range shares {
				next := long + s.row.Length.Nm
				if n > 0 {
					next += d.Allowances.Kerf.Nm
				}
				if n > 0 && next > min(d.Allowances.Gang, p.stock.usable()) {
					break
				}
				if n > 0 {
					terms = append(terms, d.Allowances.Kerf)
				}
				terms = append(terms, s.row.Length)
				parts, long, n = append(parts, s.member), next, n+1
			}
			shares = slices.Delete(shares, 0, n)
			length, why := d.gangLength(id, first, p.stock, parts, terms)
			d.blank(first, p.stock, counts[first.Mark], parts, length, why)
		}
	}
}

// gangLength is the parts' lengths, the kerfs between them and both ends'
// allowance, or what the machines need if that is more.
func (d *deriver) gangLength(id string, row plan.PartRow, s Stock, parts []address.Address, terms []ledger.Figure) (ledger.Figure, []message.Message) {
	length := d.Ledger.Sum(id+".length", terms...)
	least := d.least(row)
	why := message.New("blanks.ganged", message.Count("parts", len(parts)), message.Length("part", row.Length.Nm), message.Length("least", least))
	if len(parts) == 1 {
		why = message.New("blanks.kept-long", message.Length("part", row.Length.Nm), message.Length("least", least))
	}
	if length.Nm < least && least <= s.usable() {
		limit := d.Ledger.Leaf("machines.least-length", least, ledger.HouseRule, "the shop's machines")
		length = d.Ledger.Greatest(id+".length", length, limit)
	}
	return length, []message.Message{why}
}
