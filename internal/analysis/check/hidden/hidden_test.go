package hidden_test

import (
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/hidden"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/unit"
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

// What the joint leaves as clearance is no hole, up to a hairline more than what
// nobody sees; an opening is as wide as its strips are together.
func TestClearance(t *testing.T) {
	clear := func(across, deep int64) func(*trial.Builder) {
		return func(b *trial.Builder) {
			b.Piece.Cuts = nil
			b.Joint("joint.groove", piece.GrooveJoint, "bottom", "side", 40, func(j *piece.Joint) { j.ClearAcross, j.ClearDeep = b.Fig("across", across), b.Fig("deep", deep) })
		}
	}
	for _, c := range []struct {
		name   string
		b      *trial.Builder
		rule   int64
		status plan.Status
		code   diag.Code
	}{
		{"half a millimetre deep", side(0, 3000, clear(2, 5)), 0, plan.Pass, hidden.CodeHidden},
		{"a millimetre both ways", side(0, 3000, clear(10, 10)), 0, plan.Pass, hidden.CodeHidden},
		{"a hair more than a millimetre deep", side(0, 3000, clear(0, 11)), 0, plan.Fail, hidden.CodeShows},
		{"a hair more than a millimetre across", side(0, 3000, clear(11, 0)), 0, plan.Fail, hidden.CodeShows},
		{"the house sees less", side(0, 3000, clear(0, 11)), 6, plan.Pass, hidden.CodeHidden},
		{"the house sees more", side(0, 3000, clear(0, 5)), 2, plan.Fail, hidden.CodeShows},
	} {
		t.Log(c.name)
		s := checktest.Shop()
		if c.rule > 0 {
			checktest.Rule(s, "hairline", unit.Length(c.rule)*trial.Tenth)
		}
		checktest.Want(t, checktest.RunFaulty(t, c.b, s, hidden.Analysis), c.status, c.code)
	}
}

// An opening that is told in strips of less than a hairline is as wide as they are
// together.
func TestStrips(t *testing.T) {
	strips := func(list ...[4]int64) []bodies.Box {
		var out []bodies.Box
		for _, s := range list {
			mm := func(n int64) unit.Length { return unit.Length(n) * trial.Tenth }
			out = append(out, bodies.Box{{Low: 0, High: 1}, {Low: mm(s[0]), High: mm(s[1])}, {Low: mm(s[2]), High: mm(s[3])}})
		}
		return out
	}
	for _, c := range []struct {
		name       string
		open       []bodies.Box
		wide, deep int64
	}{
		{"nothing", nil, 0, 0},
		{"a hairline", strips([4]int64{0, 5, 0, 40}), 0, 0},
		{"two hairlines side by side", strips([4]int64{0, 4, 0, 40}, [4]int64{4, 8, 0, 30}), 8, 30},
		{"two hairlines apart", strips([4]int64{0, 4, 0, 40}, [4]int64{5, 9, 0, 40}), 0, 0},
		{"ten steps", strips([4]int64{0, 4, 0, 40}, [4]int64{4, 8, 0, 36}, [4]int64{8, 12, 0, 32}, [4]int64{12, 16, 0, 28}), 16, 28},
		{"round a corner", strips([4]int64{0, 4, 0, 40}, [4]int64{4, 40, 0, 4}), 0, 0},
		{"one over the other", strips([4]int64{0, 6, 0, 40}, [4]int64{2, 8, 10, 20}), 6, 40},
	} {
		got, _ := hidden.Widest(c.open, piece.Back, piece.Up, unit.Millimetre/2)
		if w, d := got[piece.Back].Size(), got[piece.Up].Size(); w != unit.Length(c.wide)*trial.Tenth || d != unit.Length(c.deep)*trial.Tenth {
			t.Errorf("%s: %v by %v", c.name, w, d)
		}
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
