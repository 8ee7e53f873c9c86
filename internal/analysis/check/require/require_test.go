package require_test

import (
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/require"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
)

func TestRequire(t *testing.T) {
	for _, c := range []struct {
		name     string
		rules    []piece.Require
		status   plan.Status
		severity diag.Severity
		code     diag.Code
	}{
		{"none", nil, plan.Pass, diag.Note, require.CodeKept},
		{"kept", []piece.Require{{Address: "require.a", Holds: true, Text: "room"}}, plan.Pass, diag.Note, require.CodeKept},
		{"broken", []piece.Require{{Address: "require.a", Text: "room"}}, plan.Fail, diag.Error, require.CodeBroken},
		{"warned of", []piece.Require{{Address: "require.a", Text: "room", Warn: true}}, plan.Fail, diag.Warning, require.CodeBroken},
	} {
		b := trial.New()
		b.Part("side", trial.LeftSide, 0, 140, 0, 2000, 0, 4000)
		checktest.Materials(b)
		b.Piece.Requires = c.rules
		got := checktest.Run(t, b, checktest.Shop(), require.Analysis)
		checktest.Want(t, got, c.status, c.code)
		if got[0].Severity != c.severity {
			t.Errorf("%s: %s, wanted %s", c.name, got[0].Severity, c.severity)
		}
	}
}
