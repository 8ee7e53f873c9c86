package verdict_test

import (
	"strings"
	"testing"

	"scantling/internal/analysis"
	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// run gives a function the findings of a check on the chest.
func run(t *testing.T, b *trial.Builder, do func(c *analysis.Context, f *verdict.Findings)) {
	t.Helper()
	check := analysis.Declare(analysis.Info{Name: "any", Doc: "Any.", Kind: analysis.Judge, Requires: []analysis.Analysis{marks.Analysis}},
		func(c *analysis.Context) ([]plan.Finding, diag.List) {
			do(c, verdict.Of("any", c))
			return nil, nil
		})
	c := &analysis.Context{Piece: &b.Piece, Shop: checktest.Shop(), Ledger: b.Ledger}
	if _, err := analysis.Run(c, []analysis.Analysis{marks.Analysis, check}); err != nil {
		t.Fatal(err)
	}
}

// The same fault of one line of the document is told once, with all its marks.
func TestOnce(t *testing.T) {
	run(t, checktest.Chest(), func(_ *analysis.Context, f *verdict.Findings) {
		where := diag.Place{File: "a", Start: 7, End: 9}
		f.Add(plan.Finding{Status: plan.Fail, Code: "x", Where: where, Address: "a"}, "drawer[1].front")
		f.Add(plan.Finding{Status: plan.Fail, Code: "x", Where: where, Address: "b"}, "drawer[2].front", "case.top")
		f.Add(plan.Finding{Status: plan.Fail, Code: "y", Where: where, Address: "b"})
		f.Add(plan.Finding{Status: plan.Fail, Code: "x", Address: "a"})
		f.Add(plan.Finding{Status: plan.Fail, Code: "x", Address: "b"})
		got := f.Done("right", message.New("any"))
		if len(got) != 4 || len(got[0].Marks) != 2 || got[0].Check != "any" || f.Mark("case.top") != got[0].Marks[1] || f.Mark("gone") != "gone" {
			t.Errorf("%+v", got)
		}
	})
	run(t, checktest.Chest(), func(_ *analysis.Context, f *verdict.Findings) {
		got := f.Done("right", message.New("any"))
		if len(got) != 1 || got[0].Status != plan.Pass || got[0].Code != "right" || got[0].Idle != "idle.any" || got[0].Right() || got[0].Text.Key != "check.idle" {
			t.Errorf("nothing to judge: %+v", got)
		}
		f.Judged()
		if got := f.Done("right", message.New("any")); len(got) != 1 || !got[0].Right() || got[0].Text.Key != "any" {
			t.Errorf("%+v", got)
		}
	})
}

// Only what was written as such is rewritten, in the document's own unit.
func TestRewrite(t *testing.T) {
	b := checktest.Chest()
	b.Piece.File = "a"
	where := diag.Place{File: "a", Start: 3, End: 5}
	given := func(origin ledger.Origin, at diag.Place) ledger.ID {
		return b.Ledger.Given(ledger.Entry{Name: "n", Value: unit.OfLength(unit.MM(7)), Origin: origin, Where: at})
	}
	inches := *b
	inches.Piece.Units = "in"
	same := b.Ledger.Same("s", b.Ledger.Figure(given(ledger.Document, where)))
	for _, c := range []struct {
		b    *trial.Builder
		id   ledger.ID
		to   unit.Length
		side unit.Rounding
		want string
	}{
		{b, same.Entry, 12345678, unit.Down, "12.34"},
		{b, same.Entry, 12345678, unit.Up, "12.35"},
		{b, same.Entry, unit.MM(12), unit.Up, "12"},
		{b, b.Ledger.Sum("sum", same, same).Entry, unit.MM(12), unit.Up, ""},
		{b, given(ledger.Measured, where), unit.MM(12), unit.Up, ""},
		{b, given(ledger.Document, diag.Place{File: "other", Start: 3, End: 5}), unit.MM(12), unit.Up, ""},
		{b, given(ledger.Document, diag.Place{}), unit.MM(12), unit.Up, ""},
		{&inches, same.Entry, unit.Inch * 3 / 8, unit.Up, "0.375"},
		{&inches, same.Entry, unit.Inch*3/8 + 1, unit.Up, "0.390625"},
	} {
		run(t, c.b, func(ctx *analysis.Context, f *verdict.Findings) {
			r := f.Rewrite(message.New("any"), ledger.Figure{Nm: unit.MM(7), Entry: c.id}, c.to, c.side)
			switch {
			case c.want == "" && len(r.Edits) != 0, c.want != "" && (len(r.Edits) != 1 || r.Edits[0].New != c.want || r.Edits[0].Start != 3 || r.Edits[0].End != 5):
				t.Errorf("%s: %+v", c.want, r.Edits)
			}
		})
	}
}

func TestLimitAndSeason(t *testing.T) {
	run(t, checktest.Chest(), func(c *analysis.Context, f *verdict.Findings) {
		l := f.Limit("any rule", verdict.Practice("check.any", unit.MM(3)))
		if e, _ := c.Ledger.Entry(l.Entry); !l.Known || l.Source != "check.any (practice)" || e.Origin != ledger.HouseRule || e.Status != "practice" {
			t.Errorf("%+v %+v", l, e)
		}
		checktest.Rule(c.Shop, "any rule", unit.MM(5))
		if l := f.Limit("any rule", verdict.Practice("check.any", unit.MM(3))); l.Nm != unit.MM(5) || l.Source != "house.any rule: habit (stated)" {
			t.Errorf("%+v", l)
		}
		if got := verdict.Cite(timber.SourceEMC); !strings.Contains(got, "Wood Handbook") || !strings.Contains(got, "Equation 4-5") || !strings.HasSuffix(got, "(read)") {
			t.Error(got)
		}
		size := c.Ledger.Leaf("size", unit.MM(100), ledger.Document, "")
		// Flat-sawn cherry moves 0.00248 a percent; 8.5 to 11 and to 7 percent.
		m := c.Piece.Materials[0]
		if grows, shrinks, err := f.Season("s", m, size); err != nil || grows.Nm != 620_000 || shrinks.Nm != 372_000 {
			t.Errorf("%v %v %v", grows, shrinks, err)
		}
		m.Cut = "quarter"
		if grows, _, err := f.Season("s", m, size); err != nil || grows.Nm != 315_000 {
			t.Errorf("quarter-sawn %v %v", grows, err)
		}
		if grows, _, err := f.Season("s", c.Piece.Materials[1], size); err != nil || grows.Nm != 0 {
			t.Errorf("ply %v %v", grows, err)
		}
		// Sawn nobody knows how: the greatest counts, and the range reaches down to quarter-sawn.
		m.Cut = ""
		grows, _, _ := f.Season("s", m, size)
		if q := f.Grows(m, size, grows); len(q) != 1 || !q[0].Value.Equal(unit.OfLength(620*unit.Micrometre)) ||
			!q[0].Low.Equal(unit.OfLength(315*unit.Micrometre)) || !q[0].High.Equal(q[0].Value) || q[0].Source.Status == "" {
			t.Errorf("range %+v", q)
		}
		c.Shop.Climate.Season = timber.Season{}
		if _, _, err := f.Season("s", m, size); err == nil {
			t.Error("a season without air")
		}
	})
}

func TestHelp(t *testing.T) {
	if got := verdict.Help("// Package land judges land.\n//\n// More: 1.5 mm.\npackage land\n\n// not this\n"); got != "Judges land.\n\nMore: 1.5 mm." {
		t.Errorf("%q", got)
	}
	if verdict.Help("package x") != "" || verdict.Help("") != "" || verdict.Help("// Package\npackage x") != "Package" {
		t.Error("odd sources")
	}
}
