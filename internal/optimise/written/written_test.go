package written_test

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scantling/internal/optimise"
	"scantling/internal/optimise/conform"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/written"
	"scantling/internal/unit"
)

// TestManual reads and answers every example of the manual, and checks that the
// manual names every field.
func TestManual(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "..", "docs", "CUTTING-PROBLEM.md"))
	if err != nil {
		t.Fatal(err)
	}
	manual := string(text)
	blocks := strings.Split(manual, "```json\n")[1:]
	if len(blocks) < 2 {
		t.Fatalf("%d examples", len(blocks))
	}
	for i, b := range blocks {
		example, _, _ := strings.Cut(b, "```")
		q, err := written.Read([]byte(example))
		if err != nil {
			t.Errorf("example %d: %v", i+1, err)
			continue
		}
		a, err := optimise.Solve(context.Background(), q.Problem, problem.Budget{Work: 20_000_000, Workers: 1})
		if err != nil {
			t.Errorf("example %d: %v", i+1, err)
			continue
		}
		if err := conform.Verify(q.Problem, a); err != nil {
			t.Errorf("example %d: %v", i+1, err)
		}
		if out, err := written.Answer(q, a); err != nil || !strings.Contains(string(out), written.AnswerSchema) {
			t.Errorf("example %d: answer %.60s, %v", i+1, out, err)
		}
	}
	// What the reader knows, it says of a word that it does not know.
	for _, at := range []string{`"zz": 1`, `"stock": [{"zz": 1}]`, `"parts": [{"zz": 1}]`} {
		_, err := written.Read([]byte(`{"schema": "cutting-problem/1", "form": "boards", ` + at + `}`))
		_, known, ok := strings.Cut(err.Error(), "known are ")
		if !ok {
			t.Fatalf("%s: %v", at, err)
		}
		known, _, _ = strings.Cut(known, "\n")
		for name := range strings.SplitSeq(known, ", ") {
			if !strings.Contains(manual, "`"+name+"`") {
				t.Errorf("the manual does not name %s", name)
			}
		}
	}
}

func TestRead(t *testing.T) {
	const head = `{"schema": "cutting-problem/1", "form": "boards", `
	for _, c := range []struct{ name, text, want string }{
		{"empty", ``, "ends too soon"},
		{"not JSON", `{"schema" 1}`, "not JSON"},
		{"behind", `{} {}`, "behind the end"},
		{"deep", strings.Repeat("[", 40), "8 deep"},
		{"schema", `{"schema": "other/1"}`, "cutting-problem/1"},
		{"form", `{"schema": "cutting-problem/1", "form": "planks", "stock": [], "parts": []}`, "boards, sheets"},
		{"twice", head + `"kerf": 1, "kerf": 2}`, "said twice"},
		{"no stock", head + `"parts": [{"length": 1}]}`, "stock: this must be said"},
		{"negative", head + `"stock": [{"length": -3}], "parts": [{"length": 1}]}`, "stock[1]"},
		{"nought", head + `"stock": [{"length": 3}], "parts": [{"length": 0}]}`, "parts[1]"},
		{"length", head + `"stock": [{"length": "3 ells"}], "parts": [{"length": 1}]}`, "stock[1].length: this is no length"},
		{"huge", head + `"stock": [{"length": 1e30}], "parts": [{"length": 1}]}`, "stock[1].length"},
		{"count", head + `"stock": [{"length": 9}], "parts": [{"length": 1, "count": 1.5}]}`, "parts[1].count: \"1.5\" is no whole number"},
		{"absurd count", head + `"stock": [{"length": 9}], "parts": [{"length": 1, "count": 999999999999}]}`, "is no whole number from 0 to"},
		{"width of a board", head + `"stock": [{"length": 9, "width": 2}], "parts": [{"length": 1}]}`, "stock[1].width"},
		{"some costs", head + `"stock": [{"length": 9, "cost": 1}, {"length": 8}], "parts": [{"length": 1}]}`, "1 of 2 have a cost"},
		{"cost", head + `"stock": [{"length": 9, "cost": 1.005}], "parts": [{"length": 1}]}`, "at most two decimals"},
		{"together", head + `"stock": [{"length": 9}], "parts": [{"id": "a", "length": 1}], "together": [{"parts": ["b"]}]}`, `"b" is the id of no part`},
		{"names", head + `"stock": [{"length": 9}], "parts": [{"id": "a", "length": 1}, {"id": "a", "length": 2}]}`, "the name of another part"},
		{"stages", head + `"stages": 2, "stock": [{"length": 9}], "parts": [{"length": 1}]}`, "boards are only crosscut"},
	} {
		t.Run(c.name, func(t *testing.T) {
			q, err := written.Read([]byte(c.text))
			var faults written.Faults
			if !errors.As(err, &faults) {
				t.Fatalf("no faults but %v: %+v", err, q)
			}
			if !strings.Contains(err.Error(), c.want) || !strings.HasPrefix(err.Error(), "line ") {
				t.Errorf("said %q, wanted %q", err, c.want)
			}
		})
	}
}

// Eight 12 in less a kerf come out of 96 in less a kerf, written in either unit.
func TestMixedUnitsAreExact(t *testing.T) {
	q, err := written.Read([]byte(`{"schema": "cutting-problem/1", "form": "boards", "kerf": "3.2 mm",
		"stock": [{"length": "2435.2 mm"}], "parts": [{"length": "301.6 mm", "count": 4}, {"length": 301.6, "count": 4}]}`))
	if err != nil {
		t.Fatal(err)
	}
	if q.Problem.Parts[0].Length != 12*unit.Inch-q.Problem.Kerf || q.Problem.Stock[0].Length != 96*unit.Inch-q.Problem.Kerf {
		t.Fatalf("read %v", q.Problem)
	}
	a, err := optimise.Solve(context.Background(), q.Problem, problem.Budget{Work: 1_000_000, Workers: 1})
	if err != nil || a.Cost != 1 {
		t.Errorf("%d boards, %v: eight go into one", a.Cost, err)
	}
}

func FuzzRead(f *testing.F) {
	f.Add([]byte(`{"schema":"cutting-problem/1","form":"sheets","kerf":"1/8","stock":[{"id":"a","length":96,"width":48,"cost":1.5,"count":2,"trim":{"low":1},"defects":[{"along":1,"across":1,"length":1,"width":1}]}],"parts":[{"id":"p","length":1,"width":1,"count":2,"turn":true}],"together":[{"parts":["p","p"],"row":"across"}],"feed":{"long":1,"short":1},"useful":{"length":1,"width":1}}`))
	f.Add([]byte(`{"schema":"cutting-problem/1","goal":"most value","form":"sheets","stock":null,"parts":[{"value":3}]}`))
	f.Add([]byte(`[[[[[[[[`))
	f.Fuzz(func(t *testing.T, data []byte) {
		q, err := written.Read(data)
		if err == nil && q.Problem.Check() != nil {
			var fault *problem.Fault
			if errors.As(q.Problem.Check(), &fault) && fault.Reason != problem.TooLong {
				t.Errorf("read without a word, but %v", fault)
			}
		}
	})
}
