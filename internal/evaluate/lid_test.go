package evaluate

import (
	"strings"
	"testing"

	"scantling/internal/document"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// chest evaluates the closed box of testdata with more added to it.
func chest(t *testing.T, more string, changes ...string) Result {
	t.Helper()
	src := (coded{how: "added to evaluate/testdata/chest.piece.hcl", example: more}).sourcesOf(t)
	text := string(src.Document.Text)
	for i := 0; i+1 < len(changes); i += 2 {
		if !strings.Contains(text, changes[i]) {
			t.Fatalf("%q is not there", changes[i])
		}
		text = strings.ReplaceAll(text, changes[i], changes[i+1])
	}
	src.Document = document.Source{Name: src.Document.Name, Text: []byte(text)}
	return Piece(src)
}

const lidAt70 = `
cut "lid" {
  kind  = "lid"
  on    = chest
  base  = 70
  kerf  = 3
  clean = 0.5
}
`

// TestLid: of a closed box of 100, 70 stay, 3 of kerf and twice 0.5 are lost, 26 are the
// lid; each of four walls is sawn through from its outside, the board on top goes off,
// divider and bottom stay; the room between bottom and top loses what the box loses.
func TestLid(t *testing.T) {
	r := chest(t, lidAt70)
	if len(r.Diagnostics) > 0 || len(r.Piece.Sawn) != 1 {
		t.Fatalf("%v, %d lids", r.Diagnostics, len(r.Piece.Sawn))
	}
	s := r.Piece.Sawn[0]
	for _, c := range []struct {
		name string
		is   piece.Figure
		want float64
	}{
		{"base", s.Base, 70}, {"takes", s.Takes, 4}, {"lid", s.Lid, 26}, {"whole", s.Whole, 100}, {"kerf", s.Kerf, 3}, {"clean", s.Clean, 0.5},
		{"lost from", s.Lost.Low, 70}, {"lost to", s.Lost.High, 74}, {"wide", s.Size[0], 300}, {"deep", s.Size[1], 200},
	} {
		if c.is.Nm != unit.FromMillimetres(c.want) || r.Ledger.Figure(c.is.Entry).Nm != c.is.Nm {
			t.Errorf("%s is %v, want %v", c.name, c.is.Nm, c.want)
		}
	}
	if len(s.Walls) != 4 || len(s.Over) != 1 || s.Over[0] != "chest.board[2]" {
		t.Errorf("walls %v, over %v", s.Walls, s.Over)
	}
	if high := r.Piece.High(); high != unit.MM(96) {
		t.Errorf("shut it is %v high", high)
	}
	if clear := r.Piece.Spaces[0].Clear[piece.Up].Nm; clear != unit.MM(100-2*12-4) {
		t.Errorf("%v clear inside", clear)
	}
	n := 0
	for _, c := range r.Piece.Cuts {
		if c.Kind != piece.LidKerf {
			continue
		}
		n++
		low, high := c.Slot.Near.Nm, c.Slot.Far.Nm
		if low > high || min(low, unit.MM(100)-high) != unit.MM(26) || high-low != unit.MM(4) || c.Slot.Depth.Nm != unit.MM(12) || c.AfterGlueUp != "chest" {
			t.Errorf("%s: %+v", c.Address, *c.Slot)
		}
	}
	if n != 4 {
		t.Errorf("%d walls are sawn", n)
	}
}

// TestLidFigures: what a lid takes may be part of the sizes of the box that it is sawn
// off; its height may be said in the place of the base's, and the base by a face.
func TestLidFigures(t *testing.T) {
	r := chest(t, strings.Replace(lidAt70, "base  = 70", "high  = 26", 1), "high   = 100", "high   = 96 + cut.lid.takes")
	if len(r.Diagnostics) > 0 || r.Piece.Sawn[0].Base.Nm != unit.MM(70) || r.Piece.Sawn[0].Whole.Nm != unit.MM(100) || r.Piece.Spaces[0].Clear[piece.Up].Nm != unit.MM(72) {
		t.Errorf("%v %+v", r.Diagnostics, r.Piece.Sawn)
	}
	r = chest(t, strings.Replace(lidAt70, "base  = 70", "base  = chest.divider.top + 10", 1))
	if len(r.Diagnostics) > 0 || r.Piece.Sawn[0].Base.Nm != unit.MM(70) {
		t.Errorf("%v %+v", r.Diagnostics, r.Piece.Sawn)
	}
	r = chest(t, strings.Replace(lidAt70, "  kerf  = 3\n  clean = 0.5\n", "  saw   = \"hand\"\n", 1))
	if len(r.Diagnostics) > 0 || r.Piece.Sawn[0].Takes.Nm != handsawsKerf+2*usualClean || !r.Piece.Sawn[0].ByHand {
		t.Errorf("%v %+v", r.Diagnostics, r.Piece.Sawn)
	}
	for _, bad := range []string{"kerf  = 0", "kerf  = -3", "clean = -1"} {
		word, _, _ := strings.Cut(bad, " ")
		was := map[string]string{"kerf": "kerf  = 3", "clean": "clean = 0.5"}[word]
		if r := chest(t, strings.Replace(lidAt70, was, bad, 1)); !r.Diagnostics.HasErrors() {
			t.Errorf("%s is taken", bad)
		}
	}
}

// TestLidOfPart: a lid is sawn off a group, not off a part.
func TestLidOfPart(t *testing.T) {
	r := chest(t, strings.Replace(lidAt70, "on    = chest", "on    = chest.divider", 1))
	if len(r.Diagnostics) != 1 {
		t.Errorf("%v", r.Diagnostics)
	}
}
