package scantling_test

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"testing"

	"scantling"
	"scantling/internal/outside"
	"scantling/internal/world"
)

// TestStatedTimber plans the demonstration piece in a shop whose cherry moves twice as
// much as the catalogue's: every front grows twice as much, and the ledger still holds.
func TestStatedTimber(t *testing.T) {
	files := map[string][]byte{}
	for _, name := range []string{demo, "shop.hcl"} {
		text, err := os.ReadFile(filepath.Join(outside.Root(), "examples", "needle-chest", name))
		if err != nil {
			t.Fatal(err)
		}
		files[name] = text
	}
	files["shop.hcl"] = append(files["shop.hcl"], "\ntimber \"Cherry, black\" {\n  like       = \"black cherry\"\n  tangential = 0.00496\n}\n"...)
	w, err := world.NewMemory(files, world.Date{Year: 2026, Month: 3, Day: 1}, 0)
	if err != nil {
		t.Fatal(err)
	}
	got, err := scantling.Plan(context.Background(), w, demo, scantling.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if faults := got.Plan.Unsound(); len(faults) > 0 {
		t.Error(faults[0])
	}
	was := planDemo(t, nil)
	if len(got.Plan.Clearances) == 0 || len(got.Plan.Clearances) != len(was.Plan.Clearances) {
		t.Fatalf("%d clearances, %d before", len(got.Plan.Clearances), len(was.Plan.Clearances))
	}
	for i, c := range got.Plan.Clearances {
		before := was.Plan.Clearances[i]
		if c.Size.Nm != before.Size.Nm || c.Species != "Cherry, black" {
			continue // the drawers have become lower, to leave the room
		}
		if now, then := c.GrowsWet.Nm.Millimetres(), before.GrowsWet.Nm.Millimetres(); math.Abs(now-2*then) > 0.001 {
			t.Errorf("%s: grows %g, was %g", c.Fit, now, then)
		}
	}
	for i, p := range got.Plan.Seasons.Parts {
		before := was.Plan.Seasons.Parts[i]
		if p.Species == "Cherry, black" && p.Width.Size.Nm == before.Width.Size.Nm {
			if now, then := p.Width.Grows.Value.Float(), before.Width.Grows.Value.Float(); math.Abs(now-2*then) > 0.001*now {
				t.Errorf("%v: grows %g, was %g", p.Parts, now, then)
			}
		}
	}
}
