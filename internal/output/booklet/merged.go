package booklet

import (
	"fmt"
	"slices"

	"scantling/internal/message"
	"scantling/internal/plan"
)

// mergedRow is the placements that need the same settings: one row of a card.
type mergedRow struct {
	placements []plan.Placement
	pieces     int
}

func (r mergedRow) marks() []string {
	var out []string
	for _, p := range r.placements {
		out = append(out, p.Mark)
	}
	return out
}

// merged puts placements of the same settings and sides together. A placement
// moves up to an earlier row only if no row between has its mark: the order of
// work on one part stays.
func merged(list []plan.Placement) []mergedRow {
	var rows []mergedRow
	for _, p := range list {
		into := -1
		for i := len(rows) - 1; i >= 0; i-- {
			if samePlacement(rows[i].placements[0], p) {
				into = i
			}
			if into >= 0 || slices.Contains(rows[i].marks(), p.Mark) {
				break
			}
		}
		if into < 0 {
			rows = append(rows, mergedRow{})
			into = len(rows) - 1
		}
		rows[into].placements = append(rows[into].placements, p)
		rows[into].pieces += p.Pieces
	}
	return rows
}

func samePlacement(a, b plan.Placement) bool {
	key := func(p plan.Placement) string {
		k := fmt.Sprint(p.Down, p.Fence, p.Leads, p.Turn, p.Feed.Key, argsKey(p.Feed.Args), p.Note.Key, argsKey(p.Note.Args))
		for _, s := range p.Settings {
			k += fmt.Sprint("\n", s.Word, s.Figure.Nm)
			for _, f := range s.Passes {
				k += fmt.Sprint(" ", f.Nm)
			}
		}
		return k
	}
	return key(a) == key(b)
}

func argsKey(list []message.Arg) string { return fmt.Sprint(list) }
