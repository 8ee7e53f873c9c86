package gluejoint

import (
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/checktest"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
)

// panel is 200 wide with a cut along it from 80 to 86.4.
func panel(kind piece.CutKind) *trial.Builder {
	b := trial.New()
	b.Part("tray", trial.GrainRight, 0, 6000, 0, 2000, 0, 200)
	b.Slot("tray", "cut", kind, piece.FaceHigh, piece.AlongLength, 0, 6000, 800, 864, 32, 32)
	checktest.Materials(b)
	return b
}

func TestJoints(t *testing.T) {
	for at, code := range map[int64]string{799: "strip-joints-on-lands", 800: "strip-joint-in-cut", 832: "strip-joint-in-cut", 864: "strip-joint-in-cut", 865: "strip-joints-on-lands"} {
		b := panel(piece.Channel)
		c := &analysis.Context{Piece: &b.Piece, Ledger: b.Ledger}
		w := plan.Workpiece{Kind: plan.PanelPiece, From: []string{"a", "b"}, Parts: []address.Address{"tray"}, Joints: []piece.Figure{b.Fig("joint", at)}}
		got := judge(c, []plan.Workpiece{w})
		if len(got) != 1 || string(got[0].Code) != code {
			t.Errorf("%d: %+v", at, got)
		}
	}
}

func TestAcrossAndHoles(t *testing.T) {
	b := panel(piece.Channel)
	b.Piece.Cuts = nil
	b.Slot("tray", "across", piece.Trough, piece.FaceHigh, piece.AlongWidth, 0, 2000, 1000, 1400, 60, 0)
	b.Piece.Cuts = append(b.Piece.Cuts, piece.Cut{Address: "tray.hole", Part: "tray", Kind: piece.Hole,
		Bore: &piece.Bore{Open: piece.FaceHigh, At: [2]piece.Figure{b.Fig("x", 3000), b.Fig("y", 500)}, Diameter: b.Fig("d", 100), Depth: b.Fig("deep", 100)}})
	c := &analysis.Context{Piece: &b.Piece, Ledger: b.Ledger}
	for at, code := range map[int64]string{1200: "strip-joints-on-lands", 449: "strip-joints-on-lands", 450: "strip-joint-in-cut", 550: "strip-joint-in-cut", 551: "strip-joints-on-lands"} {
		w := plan.Workpiece{Kind: plan.PanelPiece, From: []string{"a", "b"}, Parts: []address.Address{"tray"}, Joints: []piece.Figure{b.Fig("joint", at)}}
		if got := judge(c, []plan.Workpiece{w}); len(got) != 1 || string(got[0].Code) != code {
			t.Errorf("%d: %+v", at, got)
		}
	}
}

func TestUnknown(t *testing.T) {
	b := panel(piece.Channel)
	c := &analysis.Context{Piece: &b.Piece, Ledger: b.Ledger}
	w := plan.Workpiece{Kind: plan.PanelPiece, From: []string{"a", "b", "c"}, Parts: []address.Address{"tray"}, Joints: []piece.Figure{b.Fig("joint", 100)}}
	checktest.Want(t, judge(c, []plan.Workpiece{w}), plan.Unknown, CodeJoints)
}

// What is glued up for a row of channels has its joints on lands.
func TestBlanks(t *testing.T) {
	b := trial.New()
	b.Part("tray", trial.GrainRight, 0, 6000, 0, 3000, 0, 150)
	for i := range int64(14) {
		c := b.Slot("tray", "channel", piece.Channel, piece.FaceHigh, piece.AlongLength, 0, 6000, 80+i*206, 208+i*206, 64, 64)
		c.Address, c.Series, c.Nth = c.Part.Nth("channel", int(i)+1), "tray.channel", int(i)+1
	}
	s := piece.Series{Address: "tray.channel", Part: "tray", Kind: piece.Channel, Across: piece.AlongWidth, Whole: b.Find("tray").Width}
	s.Terms = checktest.Terms(b, &s)
	b.Piece.Series = append(b.Piece.Series, s)
	checktest.Materials(b)
	checktest.Want(t, checktest.Run(t, b, checktest.Shop(), Analysis), plan.Pass, CodeOnLand)
	// Without the row the joints are kept clear of the channels all the same.
	b.Piece.Series = nil
	checktest.Want(t, checktest.Run(t, b, checktest.Shop(), Analysis), plan.Pass, CodeOnLand)
}

func TestGoodChest(t *testing.T) {
	checktest.Want(t, checktest.Run(t, checktest.Chest(), checktest.Shop(), Analysis), plan.Pass, CodeOnLand)
}
