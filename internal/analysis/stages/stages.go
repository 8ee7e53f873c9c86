package stages

import (
	"slices"
	"strconv"

	"scantling/internal/address"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// Derive returns the stages, the measures with their readings, and the rows with
// their stages filled in.
func Derive(p *piece.Piece, rows []plan.PartRow, l *ledger.Ledger) ([]plan.Stage, []plan.Measure, []plan.PartRow) {
	order := map[address.Address]int{}
	for i, m := range p.Measures {
		order[m.Address] = i + 1
	}
	waits := map[address.Address]int{}
	for _, part := range p.Parts {
		for _, m := range part.CutAfter {
			waits[part.Address] = max(waits[part.Address], order[m])
		}
	}
	byWait := map[int][]int{} // measure number → row indices
	rows = slices.Clone(rows)
	for i, row := range rows {
		latest := 0
		for _, m := range row.Members {
			latest = max(latest, waits[m])
		}
		byWait[latest] = append(byWait[latest], i)
	}
	var stages []plan.Stage
	for wait := 0; wait <= len(p.Measures); wait++ {
		members := byWait[wait]
		if len(members) == 0 {
			continue
		}
		stage := plan.Stage{ID: strconv.Itoa(len(stages) + 1), Title: message.New("stage.now")}
		if wait > 0 {
			m := p.Measures[wait-1]
			stage.Title = message.New("stage.after", message.Text("measure", m.Label))
			stage.Needs = []address.Address{m.Address}
		}
		for _, i := range members {
			rows[i].Stage = stage.ID
			stage.Marks = append(stage.Marks, rows[i].Mark)
		}
		stages = append(stages, stage)
	}
	return stages, measures(p, rows, order, waits, l), rows
}

func measures(p *piece.Piece, rows []plan.PartRow, order, waits map[address.Address]int, l *ledger.Ledger) []plan.Measure {
	spaces := map[address.Address]piece.Space{}
	for _, s := range p.Spaces {
		spaces[s.Address] = s
	}
	parts := map[address.Address]piece.Part{}
	for _, part := range p.Parts {
		parts[part.Address] = part
	}
	var out []plan.Measure
	for _, m := range p.Measures {
		entry := plan.Measure{Address: m.Address, Label: m.Label}
		for _, of := range m.Of {
			for _, what := range m.Take {
				planned := l.Leaf("even", 0, ledger.Derived, "")
				if s, ok := spaces[of]; ok {
					planned = ofSpace(s, what, planned)
				} else if part, ok := parts[of]; ok {
					planned = ofPart(part, what, planned)
				}
				entry.Readings = append(entry.Readings, plan.Reading{Of: of, What: what, Planned: planned})
			}
		}
		for _, row := range rows {
			if slices.ContainsFunc(row.Members, func(a address.Address) bool { return waits[a] == order[m.Address] }) {
				entry.Marks = append(entry.Marks, row.Mark)
			}
		}
		out = append(out, entry)
	}
	return out
}

// ofSpace returns the planned size behind a reading of a space; readings that
// compare ("diagonals") are planned as even, nought.
func ofSpace(s piece.Space, what string, even ledger.Figure) ledger.Figure {
	switch what {
	case "width", "width front", "width back":
		return s.Clear[piece.Right]
	case "depth", "depth left", "depth right":
		return s.Clear[piece.Back]
	case "height", "height left", "height right", "height front", "height back":
		return s.Clear[piece.Up]
	}
	return even
}

func ofPart(p piece.Part, what string, even ledger.Figure) ledger.Figure {
	switch what {
	case "length":
		return p.Length
	case "width":
		return p.Width
	case "thickness":
		return p.Thickness
	}
	return even
}
