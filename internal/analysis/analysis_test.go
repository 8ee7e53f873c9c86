package analysis_test

import (
	"slices"
	"strings"
	"testing"

	"scantling/internal/analysis"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/plan"
)

func constant(name string, value int, requires ...analysis.Analysis) *analysis.Of[int] {
	return analysis.Declare(analysis.Info{Name: name, Doc: "Answers " + name + ".", Kind: analysis.Derive, Requires: requires},
		func(*analysis.Context) (int, diag.List) { return value, nil })
}

// TestRun: in the order of needs, results with their types, findings sorted.
func TestRun(t *testing.T) {
	one := constant("one", 1)
	two := constant("two", 2)
	sum := analysis.Declare(analysis.Info{Name: "sum", Doc: "Adds.", Kind: analysis.Derive, Requires: []analysis.Analysis{one, two}},
		func(c *analysis.Context) (string, diag.List) {
			return strings.Repeat("x", one.Get(c)+two.Get(c)), diag.List{{Code: "told"}}
		})
	var check analysis.Check = analysis.Declare(analysis.Info{Name: "check", Doc: "Is it three?", Kind: analysis.Judge, Requires: []analysis.Analysis{sum}},
		func(c *analysis.Context) ([]plan.Finding, diag.List) {
			return []plan.Finding{{Check: "check", Address: "b"}, {Check: "check", Address: "a", Text: message.New(sum.Get(c))}}, nil
		})
	var c analysis.Context
	r, err := analysis.Run(&c, []analysis.Analysis{check, sum, one, two})
	if err != nil {
		t.Fatal(err)
	}
	if want := []string{"one", "two", "sum", "check"}; !slices.Equal(r.Ran, want) || len(r.LeftOut) != 0 {
		t.Errorf("ran %v", r.Ran)
	}
	if s, ok := sum.Result(&c); !ok || s != "xxx" {
		t.Errorf("sum is %q", s)
	}
	if len(r.Findings) != 2 || r.Findings[0].Address != "a" || r.Findings[0].Text.Key != "xxx" || len(r.Diagnostics) != 1 {
		t.Errorf("%+v", r)
	}
}

// TestLeftOut: on a broken piece only what can work despite errors runs.
func TestLeftOut(t *testing.T) {
	one := constant("one", 1)
	hardy := analysis.Declare(analysis.Info{Name: "hardy", Doc: "Works always.", Kind: analysis.Derive, DespiteErrors: true},
		func(*analysis.Context) (int, diag.List) { return 7, nil })
	leans := analysis.Declare(analysis.Info{Name: "leans", Doc: "Leans on one.", Kind: analysis.Derive, DespiteErrors: true, Requires: []analysis.Analysis{one}},
		func(*analysis.Context) (int, diag.List) { return 8, nil })
	c := analysis.Context{Broken: true}
	r, err := analysis.Run(&c, []analysis.Analysis{leans, one, hardy})
	if err != nil || !slices.Equal(r.Ran, []string{"hardy"}) || !slices.Equal(r.LeftOut, []string{"one", "leans"}) {
		t.Errorf("%+v %v", r, err)
	}
	if _, ok := one.Result(&c); ok {
		t.Error("an analysis that was left out has a result")
	}
}

// TestValidate: each mistake is named.
func TestValidate(t *testing.T) {
	info := analysis.Info{Name: "loop", Doc: "Goes round.", Kind: analysis.Derive}
	info.Requires = make([]analysis.Analysis, 1)
	loop := analysis.Declare(info, func(*analysis.Context) (int, diag.List) { return 0, nil })
	info.Requires[0] = loop // the slice is shared
	one := constant("one", 1)
	cases := []struct {
		list []analysis.Analysis
		want string
	}{
		{[]analysis.Analysis{nil}, "nil"},
		{[]analysis.Analysis{constant("", 1)}, "no proper name"},
		{[]analysis.Analysis{one, constant("one", 2)}, "twice"},
		{[]analysis.Analysis{analysis.Declare(analysis.Info{Name: "x", Kind: analysis.Derive}, func(*analysis.Context) (int, diag.List) { return 0, nil })}, "no text"},
		{[]analysis.Analysis{analysis.Declare(analysis.Info{Name: "x", Doc: "Yes."}, func(*analysis.Context) (int, diag.List) { return 0, nil })}, "no kind"},
		{[]analysis.Analysis{constant("two", 2, one)}, "not in the list"},
		{[]analysis.Analysis{loop}, "loop → loop"},
	}
	for _, c := range cases {
		if err := analysis.Validate(c.list); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("want %q, got %v", c.want, err)
		}
	}
	if _, err := analysis.Run(&analysis.Context{}, []analysis.Analysis{loop}); err == nil {
		t.Error("a circle is run")
	}
}

// TestReadsOnlyWhatItRequires: anything else is our own mistake.
func TestReadsOnlyWhatItRequires(t *testing.T) {
	one := constant("one", 1)
	panics := func(name string, a analysis.Analysis) {
		defer func() {
			if recover() == nil {
				t.Errorf("%s: no panic", name)
			}
		}()
		_, _ = analysis.Run(&analysis.Context{}, []analysis.Analysis{one, a})
	}
	panics("result", analysis.Declare(analysis.Info{Name: "thief", Doc: "Reads one.", Kind: analysis.Derive},
		func(c *analysis.Context) (int, diag.List) { return one.Get(c), nil }))
	panics("solids", analysis.Declare(analysis.Info{Name: "looker", Doc: "Reads solids.", Kind: analysis.Derive},
		func(c *analysis.Context) (int, diag.List) { return c.Shapes().Len(), nil }))
}
