package contents_test

import (
	"math"
	"testing"

	"scantling/internal/analysis/contents"
	"scantling/internal/document"
	"scantling/internal/evaluate"
)

// TestGouges: a whole tray for seven gouges with octagonal handles, 25 across
// corners, in channels 8 deep by a 25.4 core-box cutter. By hand: a pitch of
// 25 + 13 = 38, lands of 38 - 23.597 = 14.403; each sinks 8, stands 17.0 proud with
// a corner down and 16.03 on a flat; first centre 25 and width 6 · 38 + 50 = 278.
func TestGouges(t *testing.T) {
	tray := `scantling = 1

piece "Tray for gouges" {
}

contents "gouges" {
  rod    = 25
  sides  = 8
  each   = 7
  length = 262
  play   = 8
  finger = 13
}

material "tray" {
  asks      = "black cherry board"
  thickness = 20
}

part "tray" {
  of     = material.tray
  grain  = "back"
  left   = 0
  wide   = (contents.gouges.count - 1) * contents.gouges.pitch + 50
  front  = 0
  deep   = 320
  bottom = 0
}

series "channel" {
  kind   = "channel"
  on     = part.tray
  side   = "top"
  runs   = "back"
  holds  = contents.gouges
  cutter = "core box 25.4"
  depth  = 8
  pitch  = contents.gouges.pitch
  middle = 160
  flat   = contents.gouges.place
}
`
	shop := `scantling = 1

shop "Small" {
}

board "cherry" {
  species   = "black cherry"
  length    = 1100
  width     = 150
  thickness = 27
  count     = 1
}

cutter "core box 25.4" {
  kind           = "core box"
  diameter       = 25.4
  cutting_length = 19
}
`
	r := evaluate.Piece(evaluate.Sources{Document: document.Source{Name: "tray.piece.hcl", Text: []byte(tray)}, Shop: document.Source{Name: "s.shop.hcl", Text: []byte(shop)}})
	for _, d := range r.Diagnostics {
		t.Fatalf("line %d: %s %v", d.Where.Line, d.Code, d.Text)
	}
	r.Ledger.Learn(contents.Functions())
	held := contents.Derive(r.Piece, r.Ledger)
	if len(held) != 7 {
		t.Fatalf("%d held", len(held))
	}
	for _, h := range held {
		for what, is := range map[string][2]float64{
			"sinks": {h.Sinks.Nm.Millimetres(), 8}, "proud": {h.Proud.Nm.Millimetres(), 17}, "on a flat": {h.OnFlat.Nm.Millimetres(), 16.032},
		} {
			if math.Abs(is[0]-is[1]) > 0.001 {
				t.Errorf("%s %s: %.4f, want %.3f", h.Thing, what, is[0], is[1])
			}
		}
	}
	if land := held[3].Land.Nm.Millimetres(); math.Abs(land-14.403) > 0.001 {
		t.Errorf("land %.4f", land)
	}
	if w := r.Piece.Parts[0].Width.Nm.Millimetres(); w != 278 {
		t.Errorf("%v wide", w)
	}
	for _, d := range r.Ledger.Verify() {
		t.Error(d)
	}
}
