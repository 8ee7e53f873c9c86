package exposed_test

import (
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/exposed"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// doweled is a board of 20 with a dowel of 8 in the middle of its end, 28 deep.
func doweled(more func(*trial.Builder)) *trial.Builder {
	b := trial.New()
	b.Part("board", trial.GrainRight, 0, 4000, 0, 600, 0, 200)
	b.Part("post", trial.SideLow, 4000, 4300, 0, 600, -1000, 1000)
	b.Joint("joint.dowel", piece.DowelJoint, "board", "post", 0, func(j *piece.Joint) {
		j.Dowels = &piece.Dowels{Diameter: b.Fig("diameter", 80), Count: 1, InA: b.Fig("in a", 280), InB: b.Fig("in b", 120)}
	})
	if more != nil {
		more(b)
	}
	return b
}

// groove is a cut across the board, from a place to another, so deep.
func groove(from, to, deep int64) func(*trial.Builder) {
	return func(b *trial.Builder) {
		b.Slot("board", "groove", piece.Groove, piece.FaceHigh, piece.AlongWidth, 0, 600, from, to, deep, 0)
	}
}

func TestExposed(t *testing.T) {
	for _, c := range []struct {
		name   string
		more   func(*trial.Builder)
		rule   int64
		status plan.Status
		code   diag.Code
	}{
		{"nothing but the dowel", nil, 0, plan.Pass, exposed.CodeCovered},
		{"2 over it", groove(3800, 3860, 40), 0, plan.Pass, exposed.CodeCovered},
		{"a tenth less", groove(3800, 3860, 41), 0, plan.Fail, exposed.CodeThin},
		{"flush with it", groove(3800, 3860, 60), 0, plan.Fail, exposed.CodeThin},
		{"into it", groove(3800, 3860, 61), 0, plan.Fail, exposed.CodeExposed},
		{"deep, 2 before its end", groove(3640, 3700, 150), 0, plan.Pass, exposed.CodeCovered},
		{"deep, a tenth nearer", groove(3640, 3701, 150), 0, plan.Fail, exposed.CodeThin},
		{"the house wants more", groove(3800, 3860, 40), 30, plan.Fail, exposed.CodeThin},
		{"the house puts up with less", groove(3800, 3860, 50), 10, plan.Pass, exposed.CodeCovered},
	} {
		t.Log(c.name)
		s := checktest.Shop()
		if c.rule > 0 {
			checktest.Rule(s, "over a dowel", unit.Length(c.rule)*trial.Tenth)
		}
		checktest.Want(t, checktest.Run(t, doweled(c.more), s, exposed.Analysis), c.status, c.code)
	}
}
