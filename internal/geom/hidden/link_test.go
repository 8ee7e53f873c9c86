package hidden

import (
	"math"
	"testing"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
)

// A hole through a channel: the curve in which the two round faces meet is one
// closed chain, seen from above the circle of the hole.
func TestRoundMeetsRound(t *testing.T) {
	sides, caps := solid.Whole(3)
	channel := solid.Prism{
		Frame:   vec.Frame{Origin: at(50, 0, 20), U: at(-1, 0, 0), V: at(0, 0, 1), W: at(0, 1, 0)},
		Profile: polygon.RoundBottom(24, 12, 12), From: -1, To: 61, Sides: sides, Caps: caps,
	}
	all := []solid.Placed{{Solid: plate(channel, hole(50, 30, 8)), Frame: vec.World}}
	chainsOf := func(d Drawing) (list []Stroke) {
		for _, s := range d.Strokes {
			if s.Kind == Chain {
				list = append(list, s)
			}
		}
		return list
	}
	top := chainsOf(Draw(all, View{Sight: at(0, 0, -1), Up: at(0, 1, 0)}))
	if len(top) != 1 || top[0].From != top[0].To || len(top[0].Chords) < 16 {
		t.Fatalf("chains from above: %+v", top)
	}
	gap := 8 * (1 - math.Cos(math.Pi/32))
	for _, q := range top[0].Chords {
		if r := q.Sub(polygon.P2{X: 50, Y: 30}).Norm(); r > 8+1e-3 || r < 8-gap-1e-3 {
			t.Errorf("a point %.4f from the middle of the hole", r)
		}
	}
	if top[0].Tags != [2]solid.Tag{2, 3} {
		t.Errorf("tags %v", top[0].Tags)
	}
	// Seen at a slant, part of it is hidden: chains, and no loose short lines.
	iso := Draw(all, View{Sight: at(-1, -1, -1), Up: at(0, 0, 1), Hidden: true})
	if n := len(chainsOf(iso)); n < 2 || n > 4 {
		t.Errorf("%d chains at a slant", n)
	}
	if n := count(iso, func(s Stroke) bool { return s.Kind == Line && s.Tags == [2]solid.Tag{2, 3} }); n > 0 {
		t.Errorf("%d loose chords of the curve", n)
	}
	writeSVG(t, "chain", iso)
}
