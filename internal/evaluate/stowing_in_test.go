package evaluate

import (
	"testing"

	"scantling/internal/unit"
)

// TestInDrawers: contents dealt out among the drawers of a repeated group, in
// inches: by hand, jars of 1 3/4 with 1/16 of play in 4 by 3 are 7 1/4 by 5 7/16.
func TestInDrawers(t *testing.T) {
	r := Piece(Sources{Document: text("d.piece.hcl", `scantling = 1

piece "Chest" {
  units = "in"
}

contents "jars" {
  kind     = "jar"
  count    = 45
  among    = 4
  diameter = "1 3/4"
  tall     = "3 3/4"
  play     = "1/16"
  columns  = 4
  in       = drawer.inside
}

group "drawer" {
  repeat = 4
  left   = 0
  front  = 0
  bottom = (nth - 1) * 5

  space "inside" {
    left   = 0
    wide   = contents.jars.wide
    front  = 0
    deep   = contents.jars.deep
    bottom = 0
    high   = contents.jars.high + "1/8 in"
  }
}
`)})
	if len(r.Diagnostics) > 0 {
		tell(t, r.Diagnostics)
		t.FailNow()
	}
	verify(t, r)
	c := r.Piece.Contents[0]
	if len(c.In) != 4 || c.In[3] != "drawer[4].inside" || c.Each() != 12 || c.Lot.Rows != 3 {
		t.Errorf("%+v", c)
	}
	for axis, want := range []string{"7 1/4", "5 7/16", "3 3/4"} {
		if got := inches(c.Lot.Needs[axis].Nm); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}

func inches(l unit.Length) string { return unit.Show{System: unit.Inches, Denominator: 64}.Format(l) }
