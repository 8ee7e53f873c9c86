package strength_test

import (
	"slices"
	"testing"

	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// TestUpright: an upright of 20 in the middle of a shelf of 900 leaves two spans of 440 if
// it stands on the floor, or over a foot under the bottom. It holds nothing up if it hangs
// from the shelf, nor if it stands on a bottom that bridges the same 900. A bottom that
// lies on the floor bridges nothing.
func TestUpright(t *testing.T) {
	b := bookcase()
	b.Part("post", trial.LeftSide, 4590, 4790, 0, 3000, 0, 4000)
	if got := shelfOf(t, derive(t, b, nil), "shelf"); got.Span.Nm != unit.MM(440) || got.On != "" {
		t.Errorf("span %v over a post on the floor", got.Span.Nm)
	}
	b = post()
	if got := shelfOf(t, derive(t, b, nil), "shelf"); got.Span.Nm != unit.MM(900) || got.On != "bottom" {
		t.Errorf("span %v over a post on a bottom that bends", got.Span.Nm)
	}
	b.Part("foot", trial.LeftSide, 4590, 4790, 0, 3000, 0, 500)
	s := derive(t, b, nil)
	if got := shelfOf(t, s, "shelf"); got.Span.Nm != unit.MM(440) || got.On != "" {
		t.Errorf("span %v over a post over a foot", got.Span.Nm)
	}
	if got := shelfOf(t, s, "bottom"); got.Span.Nm != unit.MM(440) {
		t.Errorf("span %v of a bottom on a foot", got.Span.Nm)
	}
	hanging := bookcase()
	hanging.Part("post", trial.LeftSide, 4590, 4790, 0, 3000, 3000, 4000)
	hanging.Joint("joint.post", piece.ButtJoint, "post", "shelf", 0, nil)
	if got := shelfOf(t, derive(t, hanging, nil), "shelf"); got.Span.Nm != unit.MM(900) {
		t.Errorf("span %v over what hangs from it", got.Span.Nm)
	}
	floor := bookcase()
	p := floor.Find("bottom")
	p.Extent[piece.Up].Low, p.Extent[piece.Up].High = floor.Fig("low", 0), floor.Fig("high", 190)
	if s := derive(t, floor, nil); slices.ContainsFunc(s.Shelves, func(x plan.Shelf) bool { return x.Part == "bottom" }) {
		t.Error("a bottom on the floor sags")
	}
}

// post is the bookcase with a post from its bottom to its shelf.
func post() *trial.Builder {
	b := bookcase()
	b.Part("post", trial.LeftSide, 4590, 4790, 0, 3000, 690, 4000)
	b.Joint("joint.post", piece.ButtJoint, "post", "bottom", 0, nil)
	return b
}

// TestHandsDown: jars of 20 kg stand on the shelf and of 10 kg on the bottom, both 900 x
// 300 x 19 of red oak (705.6 kg/m3) and 912 long with what lies in its housings. Both bend alike, under half
// of what lies on both, and the post brings 5/8 of half the difference of 10 kg: 5/8 x 5 x
// 9.80665 = 30.65 N. The top has no post under it.
func TestHandsDown(t *testing.T) {
	b := post()
	b.Space("low", 190, 9190, 0, 3000, 690, 4000)
	b.Space("high", 190, 9190, 0, 3000, 4190, 8000)
	b.Piece.Spaces[0].Bounds[4], b.Piece.Spaces[1].Bounds[4] = "bottom.top", "shelf.top"
	jars(b, 10, 1000, "low")
	jars(b, 10, 2000, "high")
	s := derive(t, b, nil)
	const own = 0.912 * 0.3 * 0.019 * 705.6
	const inertia = 300 * 19 * 19 * 19 / 12.0
	sag := 5.0 / 384 * (15 + own) * 9.80665 * 900 * 900 * 900 / (12500 * inertia) * (1 + 0.96/0.089*(19.0/900)*(19.0/900))
	low, high := load(shelfOf(t, s, "bottom"), "contents"), load(shelfOf(t, s, "shelf"), "contents")
	near(t, "bottom's own load", low.Load, (10+own)*9.80665, 0.001)
	near(t, "the post's", low.Upright, 5.0/8*5*9.80665, 0.005)
	near(t, "bottom", low.AtOnce, sag, 0.002)
	near(t, "shelf", high.AtOnce, sag, 0.002)
	near(t, "bottom after years", low.Lasting, 1.6*sag, 0.002)
	if high.Upright.Known() || load(shelfOf(t, s, "top"), "contents").Upright.Known() {
		t.Error("no upright stands on the shelf")
	}
	// A post at a quarter leaves 672.5 of the shelf to bend by itself; on a bottom ten
	// times as stiff that is more than what all go down.
	side := post()
	x := &side.Find("post").Extent[piece.Right]
	x.Low, x.High = side.Fig("low", 2265), side.Fig("high", 2465)
	b2 := side.Find("bottom")
	b2.Thickness = side.Fig("thick", 600)
	side.Space("high", 190, 9190, 0, 3000, 4190, 8000)
	side.Piece.Spaces[0].Bounds[4] = "shelf.top"
	jars(side, 10, 2000, "high")
	part := (20 + own) * 672.5 / 900
	near(t, "beside a post", load(shelfOf(t, derive(t, side, nil), "shelf"), "contents").AtOnce,
		5.0/384*part*9.80665*672.5*672.5*672.5/(12500*inertia)*(1+0.96/0.089*(19.0/672.5)*(19.0/672.5)), 0.002)
}
