package operations

import (
	"testing"

	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// TestDrill: a press with a throat of 160. Work of 40 by 40 stands on any side, of 80 by 40
// on its edge too, of 81 no more; ends never go under it; in the middle of 321 it does not
// reach, in that of 320 it does; and without a drill of the size it is the hand's.
func TestDrill(t *testing.T) {
	shop := Workshop{
		Machines: []tool.Machine{{Name: "press", Kind: tool.DrillPress}},
		Cutters:  []tool.Cutter{{Name: "drill 8", Shape: tool.Drill, Diameter: unit.MM(8), CuttingLength: unit.MM(60)}},
		Reach:    map[string]unit.Length{"press": unit.MM(160)},
	}
	for _, c := range []struct {
		open                  piece.Side
		wide, thick, over, by int64 // tenths
		machine               string
	}{
		{piece.FaceHigh, 400, 400, 200, 80, "press"},
		{piece.EdgeHigh, 400, 400, 200, 80, "press"},
		{piece.EdgeLow, 800, 400, 200, 80, "press"},
		{piece.EdgeLow, 801, 400, 200, 80, Hand},
		{piece.EndLow, 400, 400, 200, 80, Hand},
		{piece.FaceLow, 3200, 200, 1600, 80, "press"},
		{piece.FaceLow, 3210, 200, 1605, 80, Hand},
		{piece.FaceLow, 400, 400, 200, 81, Hand},
	} {
		figure := func(tenths int64) piece.Figure { return piece.Figure{Nm: unit.Length(tenths) * unit.Millimetre / 10} }
		w := work{size: [3]piece.Figure{figure(5800), figure(c.wide), figure(c.thick)}}
		bore := piece.Bore{Open: c.open, At: [2]piece.Figure{figure(500), figure(c.over)}, Diameter: figure(c.by), Depth: figure(200)}
		if way := otherWay(shop, ledger.New(nil), piece.Cut{Kind: piece.Hole, Bore: &bore}, nil, w); way.Machine != c.machine {
			t.Errorf("%+v: %s", c, way.Machine)
		}
	}
}
