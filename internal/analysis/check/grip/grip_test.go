package grip_test

import (
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/grip"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
)

// scoop changes the first drawer's scoop.
func scoop(b *trial.Builder, change func(*piece.Dip)) {
	for i := range b.Piece.Cuts {
		if c := &b.Piece.Cuts[i]; c.Address == "drawer[1].front.scoop" {
			change(c.Dip)
		}
	}
}

func TestScoop(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*trial.Builder)
		status plan.Status
		code   diag.Code
	}{
		{"the chest's own", func(*trial.Builder) {}, plan.Pass, grip.CodeFits},
		{"as narrow as may be", func(b *trial.Builder) { scoop(b, func(d *piece.Dip) { d.Chord = b.Fig("chord", 400) }) }, plan.Pass, grip.CodeFits},
		{"narrow by a hair", func(b *trial.Builder) { scoop(b, func(d *piece.Dip) { d.Chord = b.Fig("chord", 399) }) }, plan.Fail, grip.CodeNarrow},
		{"as shallow as may be", func(b *trial.Builder) { scoop(b, func(d *piece.Dip) { d.Depth = b.Fig("depth", 150) }) }, plan.Pass, grip.CodeFits},
		{"shallow by a hair", func(b *trial.Builder) { scoop(b, func(d *piece.Dip) { d.Depth = b.Fig("depth", 149) }) }, plan.Fail, grip.CodeShallow},
		// The tray's top lies at 26.8 of 60; heads of 12 half sunk stand 6 above.
		{"down to the heads", func(b *trial.Builder) { scoop(b, func(d *piece.Dip) { d.Depth = b.Fig("depth", 272) }) }, plan.Pass, grip.CodeFits},
		{"a hair below the heads", func(b *trial.Builder) { scoop(b, func(d *piece.Dip) { d.Depth = b.Fig("depth", 273) }) }, plan.Fail, grip.CodeBlocked},
		{"without heads, down to the tray", func(b *trial.Builder) {
			b.Piece.Contents = nil
			scoop(b, func(d *piece.Dip) { d.Depth = b.Fig("depth", 332) })
		}, plan.Pass, grip.CodeFits},
		{"a knob", func(b *trial.Builder) {
			scoop(b, func(d *piece.Dip) { d.Open = piece.EdgeLow })
			b.Piece.Hardware = append(b.Piece.Hardware, piece.Hardware{Address: "drawer[1].hardware.knob", Kind: "knob 25", Count: 1, On: "drawer[1].front"})
		}, plan.Pass, grip.CodeFits},
		{"no grip", func(b *trial.Builder) { scoop(b, func(d *piece.Dip) { d.Open = piece.EdgeLow }) }, plan.Fail, grip.CodeNoGrip},
		{"no front", func(b *trial.Builder) { b.Find("drawer[1].front").Show = "" }, plan.Unknown, grip.CodeNoFront},
	} {
		b := checktest.Chest()
		c.change(b)
		t.Log(c.name)
		checktest.Want(t, checktest.Run(t, b, checktest.Shop(), grip.Analysis), c.status, c.code)
	}
}

// At least 20 of the front is left below: 40 of a front of 60 may go.
func TestBelow(t *testing.T) {
	for depth, codes := range map[int64][]diag.Code{399: {grip.CodeBlocked}, 400: {grip.CodeBlocked}, 401: {grip.CodeBelow, grip.CodeBlocked}} {
		b := checktest.Chest()
		b.Piece.Contents = nil
		scoop(b, func(d *piece.Dip) { d.Depth = b.Fig("depth", depth) })
		checktest.Want(t, checktest.Run(t, b, checktest.Shop(), grip.Analysis), plan.Fail, codes...)
	}
}

// The remedy rewrites the depth where it stands, and that makes it pass.
func TestRemedy(t *testing.T) {
	b := checktest.Chest()
	b.Piece.File = "chest.piece.hcl"
	scoop(b, func(d *piece.Dip) {
		d.Depth = b.Fig("depth", 149)
		checktest.Written(b, &d.Depth, 40, 44)
	})
	got := checktest.Want(t, checktest.Run(t, b, checktest.Shop(), grip.Analysis), plan.Fail, grip.CodeShallow)
	if e := got[0].Remedy[0].Edits; len(e) != 1 || e[0].New != "15" || e[0].Start != 40 || e[0].File != "chest.piece.hcl" {
		t.Errorf("%+v", e)
	}
}
