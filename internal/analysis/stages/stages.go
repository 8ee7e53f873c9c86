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
// their stages filled in. Stages and measures are in the order in which they can
// be taken: that of the document, but none before what it reads has been cut.
func Derive(p *piece.Piece, rows []plan.PartRow, l *ledger.Ledger) ([]plan.Stage, []plan.Measure, []plan.PartRow) {
	s := splitter{piece: p, measures: inOrder(p), number: map[address.Address]int{}, waits: map[address.Address][]address.Address{}}
	for i, m := range s.measures {
		s.number[m.Address] = i + 1
	}
	for _, part := range p.Parts {
		s.waits[part.Address] = part.CutAfter
	}
	rows = slices.Clone(rows)
	return s.stages(rows), s.readings(rows, l), rows
}

type splitter struct {
	piece *piece.Piece
	// measures are in the order in which they are taken, number counts them from 1.
	measures []piece.Measure
	number   map[address.Address]int
	// waits are the measures that a part waits for.
	waits map[address.Address][]address.Address
}

// stages shares the rows out by the latest measure that any member waits for.
func (s splitter) stages(rows []plan.PartRow) []plan.Stage {
	byWait := map[int][]int{} // measure number → row indices
	for i, row := range rows {
		latest := 0
		for _, m := range row.Members {
			for _, w := range s.waits[m] {
				latest = max(latest, s.number[w])
			}
		}
		byWait[latest] = append(byWait[latest], i)
	}
	var out []plan.Stage
	for wait := 0; wait <= len(s.measures); wait++ {
		members := byWait[wait]
		if len(members) == 0 {
			continue
		}
		stage := plan.Stage{ID: strconv.Itoa(len(out) + 1), Title: message.New("stage.now")}
		if wait > 0 {
			stage.Title = message.New("stage.after", message.Text("measure", s.measures[wait-1].Label))
		}
		for _, m := range s.measures[:wait] {
			if slices.ContainsFunc(members, func(i int) bool { return s.waitsFor(rows[i], m.Address) }) {
				stage.Needs = append(stage.Needs, m.Address)
			}
		}
		for _, i := range members {
			rows[i].Stage = stage.ID
			stage.Marks = append(stage.Marks, rows[i].Mark)
		}
		out = append(out, stage)
	}
	return out
}

// waitsFor reports whether any part of the row waits for the measure.
func (s splitter) waitsFor(row plan.PartRow, measure address.Address) bool {
	return slices.ContainsFunc(row.Members, func(a address.Address) bool { return slices.Contains(s.waits[a], measure) })
}

// readings lists what every measure takes.
func (s splitter) readings(rows []plan.PartRow, l *ledger.Ledger) []plan.Measure {
	spaces := map[address.Address]piece.Space{}
	for _, x := range s.piece.Spaces {
		spaces[x.Address] = x
	}
	parts := map[address.Address]piece.Part{}
	for _, part := range s.piece.Parts {
		parts[part.Address] = part
	}
	var out []plan.Measure
	for _, m := range s.measures {
		entry := plan.Measure{Address: m.Address, Label: m.Label}
		between := s.piece.Between(&m)
		for _, of := range m.Of {
			for _, what := range m.Take {
				planned := l.Leaf("even", 0, ledger.Derived, "")
				if x, ok := spaces[of]; ok {
					planned = ofSpace(x, what, planned)
				} else if part, ok := parts[of]; ok {
					planned = ofPart(part, what, planned)
				}
				inPlace := slices.Contains(between, of) && piece.TakenBetween(what)
				if inPlace {
					planned = s.drawn(of, what, planned)
				}
				entry.Readings = append(entry.Readings, plan.Reading{Of: of, What: what, Planned: planned, Found: found(l, planned, of, what, inPlace)})
			}
		}
		for _, row := range rows {
			if s.waitsFor(row, m.Address) {
				entry.Marks = append(entry.Marks, row.Mark)
			}
		}
		out = append(out, entry)
	}
	return out
}

// drawn is a size of a part that is read where it goes, as it is drawn: once it is read,
// the part is as large as that.
func (s splitter) drawn(of address.Address, what string, size ledger.Figure) ledger.Figure {
	for _, x := range s.piece.InPlace {
		if x.Part == of && (x.Along == piece.AlongLength) == (what == "length") {
			return x.Drawn
		}
	}
	return size
}

// found returns the reading that a figure rests on, where the record has it. No figure
// rests on how far diagonals differ, nor on what was read where a part goes: these are
// found by name.
func found(l *ledger.Ledger, f ledger.Figure, of address.Address, what string, between bool) *ledger.Figure {
	if what == "diagonals" || between {
		for _, e := range l.Entries() {
			if e.Origin == ledger.Measured && e.Name == string(of)+"."+what {
				f := l.Figure(e.ID)
				return &f
			}
		}
		return nil
	}
	if e, ok := l.Entry(f.Entry); !ok || e.Origin != ledger.Measured && e.Origin != ledger.FromMeasured {
		return nil
	}
	name := string(of) + "." + what
	for _, e := range l.Explain(f.Entry) {
		if e.Origin == ledger.Measured && e.Name == name {
			f := l.Figure(e.ID)
			return &f
		}
	}
	return nil
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
