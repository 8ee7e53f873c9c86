package limits_test

import (
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/limits"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/shop"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

func board(long, wide, thick int64) *trial.Builder {
	b := trial.New()
	b.Part("board", trial.GrainRight, 0, long, 0, wide, 0, thick)
	checktest.Materials(b)
	return b
}

func TestLimits(t *testing.T) {
	for _, c := range []struct {
		name              string
		long, wide, thick int64
		change            func(*shop.Shop)
		severity          diag.Severity
		codes             []diag.Code
	}{
		{"an ordinary board", 6000, 1000, 140, nil, "", nil},
		// Blanks keep the length that jointer, thicknesser and router table ask for.
		{"a short part on a long blank", 300, 500, 140, nil, "", nil},
		{"thin by a hair", 6000, 1000, 39, nil, diag.Error, []diag.Code{limits.CodeThin}},
		{"as thin as may be", 6000, 1000, 40, nil, "", nil},
		{"thin, with hand tools", 6000, 1000, 39, func(s *shop.Shop) {
			s.Machines = append(s.Machines, shop.Machine{ID: "bench", Tool: tool.Machine{Name: "bench", Kind: tool.HandTools}})
		}, diag.Note, []diag.Code{limits.CodeThin}},
		{"a panel as wide as the thicknesser", 6000, 4050, 140, nil, "", nil},
		// Two widths of less are planed, and their joint is glued last.
		{"wider by a hair", 6000, 4051, 140, nil, "", nil},
		{"rough board too high for the saw", 6000, 1000, 140, func(s *shop.Shop) {
			s.Machines[0].Tool.Greatest.Thickness = tool.Stated("height", 26*unit.Millimetre)
		}, diag.Error, []diag.Code{limits.CodeThick}},
		{"as high as the saw", 6000, 1000, 140, func(s *shop.Shop) {
			s.Machines[0].Tool.Greatest.Thickness = tool.Stated("height", 27*unit.Millimetre)
		}, "", nil},
		{"longer than the jointer takes, but not the thicknesser", 6000, 1000, 140, func(s *shop.Shop) {
			s.Machines[1].Tool.Greatest.Length = tool.Stated("length", 600*unit.Millimetre)
		}, diag.Note, []diag.Code{limits.CodeLong}},
		{"sources differ", 6000, 1000, 50, func(s *shop.Shop) {
			s.Machines[2].Tool.Least.Thickness = tool.Usual(tool.ThicknessPlaner).Least.Thickness
			s.Machines[2].Tool.Least.Thickness.Value = unit.MM(6)
		}, diag.Warning, []diag.Code{limits.CodeThin}},
	} {
		s := checktest.Shop()
		if c.change != nil {
			c.change(s)
		}
		t.Log(c.name)
		got := checktest.Run(t, board(c.long, c.wide, c.thick), s, limits.Analysis)
		if c.codes == nil {
			checktest.Want(t, got, plan.Pass, limits.CodeWithin)
			continue
		}
		checktest.Want(t, got, plan.Fail, c.codes...)
		if got[0].Severity != c.severity {
			t.Errorf("%s: %s, want %s", c.name, got[0].Severity, c.severity)
		}
	}
}

// TestPanelWidthUnknown: 278 of panel at a thicknesser whose width nobody has stated is
// asked about; a board that comes over the jointer is not.
func TestPanelWidthUnknown(t *testing.T) {
	s := checktest.Shop()
	s.Machines[2].Tool.Greatest.Width = tool.Machine{}.Greatest.Width
	checktest.Want(t, checktest.Run(t, board(6000, 1000, 140), s, limits.Analysis), plan.Pass, limits.CodeWithin)
	got := checktest.Run(t, board(6000, 2780, 140), s, limits.Analysis)
	checktest.Want(t, got, plan.Unknown, limits.CodeWidthUnknown)
	if a, _ := got[0].Text.Arg("is"); a.Nm < unit.MM(278) {
		t.Errorf("the panel is given as %v wide", a.Nm)
	}
}

// A channelled panel is routed at the size that it has then.
func TestRouted(t *testing.T) {
	b := board(6000, 1000, 140)
	b.Slot("board", "channel", piece.Channel, piece.FaceHigh, piece.AlongLength, 0, 6000, 100, 164, 32, 32)
	s := checktest.Shop()
	checktest.Want(t, checktest.Run(t, b, s, limits.Analysis), plan.Pass, limits.CodeWithin)
	s.Machines[3].Tool.Greatest.Length = tool.Stated("length", 611*unit.Millimetre)
	checktest.Want(t, checktest.Run(t, b, s, limits.Analysis), plan.Fail, limits.CodeLong)
	s.Machines[3].Tool.Greatest.Length = tool.Stated("length", 612*unit.Millimetre)
	checktest.Want(t, checktest.Run(t, b, s, limits.Analysis), plan.Pass, limits.CodeWithin)
}

// A sheet lies with its longer side along the fence, however its grain runs.
func TestSheet(t *testing.T) {
	for long, code := range map[int64]diag.Code{1000: limits.CodeWithin, 1500: limits.CodeWithin, 1499: limits.CodeShort} {
		b := trial.New()
		wide := int64(2000)
		if long > 1000 {
			wide = 1400
		}
		b.Part("panel", trial.GrainRight, 0, long, 0, wide, 0, 60)
		checktest.Materials(b)
		got := checktest.Run(t, b, checktest.Shop(), limits.Analysis)
		if len(got) != 1 || got[0].Code != code {
			t.Errorf("%d: %+v", long, got)
		}
	}
}

func TestUnknown(t *testing.T) {
	s := checktest.Shop()
	s.Machines = s.Machines[:1] // the saw alone
	checktest.Want(t, checktest.Run(t, board(6000, 1000, 140), s, limits.Analysis), plan.Unknown, limits.CodeNoMachine, limits.CodeNoMachine)
	checktest.Want(t, checktest.Run(t, trial.New(), checktest.Shop(), limits.Analysis), plan.Unknown, limits.CodeNone)
}

func TestGoodChest(t *testing.T) {
	checktest.Want(t, checktest.Run(t, checktest.Chest(), checktest.Shop(), limits.Analysis), plan.Pass, limits.CodeWithin)
}
