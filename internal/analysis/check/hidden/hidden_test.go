package hidden_test

import (
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/hidden"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
)

// side is a board with a groove that runs out at both ends, 4 wide and deep, cut
// for a bottom that fills it from a place to another.
func side(from, to int64, more func(*trial.Builder)) *trial.Builder {
	b := trial.New()
	b.Part("side", trial.GrainRight, 0, 3000, 0, 600, 0, 100)
	b.Part("bottom", trial.GrainRight, from, to, 80, 120, 60, 400)
	c := b.Slot("side", "groove", piece.Groove, piece.FaceHigh, piece.AlongLength, 0, 3000, 80, 120, 40, 0)
	c.Joint, c.With = "joint.groove", "bottom"
	if more != nil {
		more(b)
	}
	return b
}

func cover(left int64, low, high int64) func(*trial.Builder) {
	return func(b *trial.Builder) {
		b.Part("front", trial.Front, left-100, left, low, high, 0, 400)
	}
}

// slice takes end 1 of the side off along a slope that begins so far from the end at
// face 1 and ends so far from it at face 2.
func slice(one, two int64) func(*trial.Builder) {
	return func(b *trial.Builder) {
		f := func(n int64) piece.Figure { return b.Fig("slice", n) }
		b.Piece.Cuts = append(b.Piece.Cuts, piece.Cut{Address: "side.mitre", Kind: piece.Mitre, Part: "side", Slice: &piece.Slice{
			Off: piece.EndLow, To: [2]piece.Figure{f(600), f(100)}, At: [3]piece.Figure{f(one), f(one), f(two)},
		}})
	}
}

func TestHidden(t *testing.T) {
	for _, c := range []struct {
		name   string
		b      *trial.Builder
		status plan.Status
		codes  []diag.Code
	}{
		{"filled to both ends", side(0, 3000, nil), plan.Pass, []diag.Code{hidden.CodeHidden}},
		{"short by a hair at one end", side(1, 3000, nil), plan.Fail, []diag.Code{hidden.CodeShows}},
		{"short at one end, covered", side(1, 3000, cover(0, 0, 600)), plan.Pass, []diag.Code{hidden.CodeHidden}},
		{"covered all but a hair", side(1, 3000, cover(0, 0, 114)), plan.Fail, []diag.Code{hidden.CodeShows}},
		{"covered all but a hairline", side(1, 3000, cover(0, 0, 116)), plan.Pass, []diag.Code{hidden.CodeHidden}},
		{"cover a hair away", side(1, 3000, cover(-1, 0, 600)), plan.Fail, []diag.Code{hidden.CodeShows}},
		{"a groove that is not a joint's", side(1, 3000, func(b *trial.Builder) { b.Piece.Cuts[0].Joint = "" }), plan.Pass, []diag.Code{hidden.CodeHidden}},
		{"covered by what moves", side(1, 3000, func(b *trial.Builder) {
			cover(0, 0, 600)(b)
			b.Find("front").Group = "drawer"
			b.Piece.Groups = []piece.Group{{Address: "drawer", Inside: "opening"}}
		}), plan.Fail, []diag.Code{hidden.CodeShows}},
		{"its end mitred away", side(1, 3000, slice(0, 100)), plan.Pass, []diag.Code{hidden.CodeHidden}},
		{"its end mitred away but for the lower half of the groove", side(1, 3000, slice(-200, 50)), plan.Fail, []diag.Code{hidden.CodeShows}},
		{"for a part that is not there", side(0, 3000, func(b *trial.Builder) { b.Piece.Cuts[0].With = "gone" }), plan.Unknown, []diag.Code{hidden.CodeMate}},
	} {
		t.Log(c.name)
		checktest.Want(t, checktest.Run(t, c.b, checktest.Shop(), hidden.Analysis), c.status, c.codes...)
	}
}

// A groove that the joinery itself stops, and one that the document runs through
// a box joint.
func TestBoxJoint(t *testing.T) {
	b := trial.New()
	b.Part("front", trial.Front, 0, 2000, 0, 100, 0, 600)
	b.Part("side", trial.SideLow, 0, 100, 0, 3000, 0, 600)
	b.Part("bottom", trial.GrainBack, 60, 1960, 60, 2900, 140, 180)
	b.Joint("corner", piece.BoxJoint, "front", "side", 0, func(j *piece.Joint) { j.Finger = b.Fig("f", 120) })
	over := func(j *piece.Joint) { j.Over = []address.Address{"corner"} }
	b.Joint("groove.front", piece.GrooveJoint, "bottom", "front", 40, over)
	b.Joint("groove.side", piece.GrooveJoint, "bottom", "side", 40, over)
	checktest.Want(t, checktest.Run(t, b, checktest.Shop(), hidden.Analysis), plan.Pass, hidden.CodeHidden)
	// 14 to 18 up lies in the second finger, the side's: through it a groove shows,
	// and the joint's own then runs out as well, for the wood beyond is gone.
	c := b.Slot("side", "through", piece.Groove, piece.FaceHigh, piece.AlongLength, 0, 2900, 140, 180, 40, 0)
	c.Joint, c.With = "groove.side", "bottom"
	checktest.Want(t, checktest.Run(t, b, checktest.Shop(), hidden.Analysis), plan.Fail, hidden.CodeShows, hidden.CodeShows)
}

func TestGoodChest(t *testing.T) {
	checktest.Want(t, checktest.Run(t, checktest.Chest(), checktest.Shop(), hidden.Analysis), plan.Pass, hidden.CodeHidden)
}
