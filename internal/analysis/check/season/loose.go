package season

import (
	"cmp"
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/timber"
)

// loose judges the solid parts of a drawer that no joint holds: side by side
// between the walls of what they lie in they must have room to grow.
func (j *judge) loose(m bodies.Move) {
	held := map[address.Address]bool{}
	for i := range j.Piece.Joints {
		held[j.Piece.Joints[i].A], held[j.Piece.Joints[i].B] = true, true
	}
	for _, axis := range []piece.Axis{piece.Right, piece.Back} {
		var rest []*piece.Part
		for _, p := range m.Parts {
			if !held[p.Address] && j.moves(p, axis) {
				rest = append(rest, p)
			}
		}
		for len(rest) > 0 {
			var row []*piece.Part
			row, rest = beside(rest, axis)
			j.row(m, row, axis, held)
		}
	}
}

// beside takes the first part and all that lie in one line with it along an axis.
func beside(parts []*piece.Part, a piece.Axis) (row, rest []*piece.Part) {
	first := bodies.Body(parts[0])
	for _, p := range parts {
		b := bodies.Body(p)
		in := true
		for other := range b {
			in = in && (other == int(a) || b[other].Overlaps(first[other]))
		}
		if in {
			row = append(row, p)
		} else {
			rest = append(rest, p)
		}
	}
	slices.SortStableFunc(row, func(p, q *piece.Part) int { return cmp.Compare(p.Extent[a].Low.Nm, q.Extent[a].Low.Nm) })
	return row, rest
}

// row judges loose parts in one line between the nearest walls.
func (j *judge) row(m bodies.Move, row []*piece.Part, a piece.Axis, held map[address.Address]bool) {
	low, high, ok := j.walls(m, row, a, held)
	if !ok {
		return // free on one side
	}
	name := string(row[0].Address) + ".room"
	terms, grows := []piece.Figure{high, low}, []piece.Figure{}
	for _, p := range row {
		local, _ := p.Frame.LocalOf(a)
		size := p.Sizes()[local]
		material, _ := j.index.Material(p)
		g, _, err := j.out.Season(string(p.Address)+".across", material, size)
		if err != nil {
			j.out.Unknown(CodeTrayUnknown, message.New("check.season.loose-unknown", message.Text("mark", j.out.Mark(p.Address)), message.Text("wood", material.Species)), p.Address, p.Where, p.Address)
			return
		}
		terms, grows = append(terms, size), append(grows, g)
	}
	j.out.Judged()
	room, growth := j.Ledger.Less(name, terms...), j.Ledger.Sum(name+".growth", grows...)
	if room.Nm >= growth.Nm {
		return
	}
	var parts []address.Address
	for _, p := range row {
		parts = append(parts, p.Address)
	}
	j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Error, Code: CodeTray, Address: row[0].Address, Where: row[0].Where,
		Is: &room, Limit: &growth, Source: verdict.Cite(timber.SourceNarrow), Figures: j.out.Moistures(true),
		Text: message.New("check.season.loose-binds", message.Text("mark", j.out.Mark(row[0].Address)), message.Count("count", len(row)), message.Length("is", room.Nm),
			message.Length("limit", growth.Nm), message.Length("miss", growth.Nm-room.Nm)),
	}, parts...)
}

// walls returns the faces of jointed parts of the drawer that are nearest to a
// row on both sides.
func (j *judge) walls(m bodies.Move, row []*piece.Part, a piece.Axis, held map[address.Address]bool) (low, high piece.Figure, ok bool) {
	first, last := bodies.Body(row[0]), row[len(row)-1].Extent[a].High
	foundLow, foundHigh := false, false
	for _, p := range m.Parts {
		b := bodies.Body(p)
		if !held[p.Address] {
			continue
		}
		faces := true
		for other := range b {
			faces = faces && (other == int(a) || b[other].Overlaps(first[other]))
		}
		switch {
		case !faces:
		case b[a].High <= first[a].Low && (!foundLow || b[a].High > low.Nm):
			low, foundLow = p.Extent[a].High, true
		case b[a].Low >= last.Nm && (!foundHigh || b[a].Low < high.Nm):
			high, foundHigh = p.Extent[a].Low, true
		}
	}
	return low, high, foundLow && foundHigh
}
