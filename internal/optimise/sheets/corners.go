package sheets

import (
	"scantling/internal/optimise/corner"
	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
)

// How wide the beam of corner fillings is, and how many it gives at the same prices.
const (
	cornerWidth = 100
	mostCorners = 20
	// One task in so many does without them.
	cornersEvery = 4
)

// corners adds fillings in any number of stages that keep to what is left.
func (o *oracle) corners(ask cover.Ask, reply *cover.Reply, meter *work.Meter) {
	m := o.models[0]
	if m.p.Cutting.Stages != 0 || len(m.p.Sequences) > 0 || m.p.Feed != (problem.Feed{}) {
		return
	}
	for i := range m.stock {
		if ask.Stock[i] == 0 || len(m.stock[i].defects) > 0 {
			continue
		}
		if o.fillers == nil {
			o.fillers = make([]corner.Filler, len(m.stock))
		}
		q := corner.Question{X: m.stock[i].x, Y: m.stock[i].y, Pieces: m.order(largest), Left: ask.Left, Value: ask.Value,
			Floor: ask.Price[i], Width: cornerWidth, Most: mostCorners}
		for _, root := range o.fillers[i].Fill(q, meter) {
			if p := m.parcelled(i, root); p != nil && worth(p, ask.Value) > ask.Price[i] {
				reply.Found = append(reply.Found, p)
			}
		}
	}
}
