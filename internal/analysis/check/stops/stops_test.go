package stops_test

import (
	"slices"
	"strings"
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/stops"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/timber"
)

func without(b *trial.Builder, what string) {
	b.Piece.Parts = slices.DeleteFunc(b.Piece.Parts, func(p piece.Part) bool { return strings.Contains(string(p.Address), what) })
	b.Piece.Joints = slices.DeleteFunc(b.Piece.Joints, func(j piece.Joint) bool {
		return strings.Contains(string(j.A), what) || strings.Contains(string(j.B), what)
	})
}

func TestStops(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*trial.Builder)
		status plan.Status
		codes  []diag.Code
	}{
		{"the chest's own", func(*trial.Builder) {}, plan.Pass, []diag.Code{stops.CodeStopped}},
		{"only the back", func(b *trial.Builder) { without(b, "stop[") }, plan.Fail, []diag.Code{stops.CodeBackStops, stops.CodeBackStops}},
		{"nothing at all", func(b *trial.Builder) { without(b, "stop["); without(b, "panel") }, plan.Fail, []diag.Code{stops.CodeNoStop, stops.CodeNoStop}},
		{"no turn-button", func(b *trial.Builder) { b.Piece.Hardware = b.Piece.Hardware[:1] }, plan.Fail, []diag.Code{stops.CodeNoOutStop}},
		{"a back that meets the stops", func(b *trial.Builder) {
			b.Piece.Cuts = slices.DeleteFunc(b.Piece.Cuts, func(c piece.Cut) bool { return strings.HasPrefix(string(c.Address), "drawer[1].back.notch") })
		}, plan.Fail, []diag.Code{stops.CodeCaptive}},
		{"a space that is not there", func(b *trial.Builder) { b.Piece.Spaces = b.Piece.Spaces[:1] }, plan.Unknown, []diag.Code{stops.CodeNoSpace}},
		{"a wood that nobody knows", func(b *trial.Builder) { b.Piece.Materials[0].Species = "unobtainium" }, plan.Unknown, []diag.Code{stops.CodeBehindUnknown, stops.CodeBehindUnknown}},
	} {
		b := checktest.Chest()
		c.change(b)
		t.Log(c.name)
		checktest.Want(t, checktest.Run(t, b, checktest.Shop(), stops.Analysis), c.status, c.codes...)
	}
}

// A side reaches further back. The case is 394 deep of flat-sawn cherry up to its back at 388; from 8.5 to 7 %
// it loses 388 × 0.00248 × 1.5 = 1.4434 (Wood Handbook, Table 13-5 and Equation
// 13-1).
func TestBehind(t *testing.T) {
	for room, code := range map[int64]diag.Code{15: stops.CodeStopped, 14: stops.CodeBehind} {
		b := checktest.Chest()
		for i := range b.Piece.Parts {
			if p := &b.Piece.Parts[i]; p.Address == "drawer[1].left" {
				p.Extent[piece.Back].High = b.Fig("rear", 3880-room)
			}
		}
		got := checktest.Run(t, b, checktest.Shop(), stops.Analysis)
		if len(got) != 1 || got[0].Code != code {
			t.Errorf("%d: %+v", room, got)
		} else if code == stops.CodeBehind && (got[0].Limit.Nm < 1443300 || got[0].Limit.Nm > 1443500) {
			t.Errorf("the case loses %d nm", got[0].Limit.Nm)
		}
	}
	s := checktest.Shop()
	s.Climate.Season = timber.Season{}
	checktest.Want(t, checktest.Run(t, checktest.Chest(), s, stops.Analysis), plan.Unknown, stops.CodeBehindUnknown, stops.CodeBehindUnknown)
}
