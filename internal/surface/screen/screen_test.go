package screen_test

import (
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"

	"scantling"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/outside"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/surface/screen"
	"scantling/internal/unit"
	"scantling/internal/words"
	"scantling/internal/world"
)

const demo = "needle-chest.piece.hcl"

// chest plans the demonstration piece, with another value of one input.
func chest(t *testing.T, name, value string) (*scantling.Result, []byte) {
	t.Helper()
	files := map[string][]byte{}
	for _, f := range []string{demo, "shop.hcl"} {
		data, err := os.ReadFile(filepath.Join(outside.Root(), "examples", "needle-chest", f))
		if err != nil {
			t.Fatal(err)
		}
		files[f] = data
	}
	w, err := world.NewMemory(files, world.Date{Year: 2026, Month: 1, Day: 2}, 1<<20)
	if err != nil {
		t.Fatal(err)
	}
	o := scantling.Options{}
	if name != "" {
		o.Inputs = map[string]string{name: value}
	}
	r, err := scantling.Plan(context.Background(), w, demo, o)
	if err != nil {
		t.Fatal(err)
	}
	return r, files[demo]
}

func build(r *scantling.Result, w *words.Words, document []byte) *screen.State {
	return screen.Build(screen.Source{Plan: r.Plan, Solids: r.Solids(), Words: w, Document: document, Revision: "r", File: demo})
}

var made = sync.OnceValues(func() (*scantling.Result, []byte) { return chest(new(testing.T), "", "") })

// Every class of every drawing is in the style sheet that they share, and no
// drawing brings a style of its own, which the pages' policy would refuse.
func TestDrawingsShareOneStyleSheet(t *testing.T) {
	r, doc := made()
	text, err := json.Marshal(build(r, r.Words(), doc))
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(string(text), "style=") || strings.Contains(string(text), `\u003cstyle`) {
		t.Error("a drawing has a style of its own")
	}
	sheet, used := screen.StyleSheet(), map[string]bool{}
	for _, m := range regexp.MustCompile(`class=\\"([^"\\]*)\\"`).FindAllStringSubmatch(string(text), -1) {
		for class := range strings.FieldsSeq(m[1]) {
			used[class] = true
		}
	}
	if len(used) < 4 {
		t.Fatalf("classes found: %v", used)
	}
	for class := range used {
		if !strings.Contains(sheet, "."+class+" {") {
			t.Errorf("class %q is not in the style sheet", class)
		}
	}
}

// A row that a reader adds up adds up as printed.
func TestRowsAddUpAsPrinted(t *testing.T) {
	r, doc := made()
	rows := build(r, r.Words(), doc).Rows
	if len(rows) == 0 {
		t.Fatal("no rows")
	}
	for _, row := range rows {
		sum := 0.0
		for _, term := range row.Terms {
			sum += millimetres(t, term.Figure) * float64(term.Count)
		}
		if total := millimetres(t, row.Total); sum-total > 1e-6 || total-sum > 1e-6 {
			t.Errorf("%s: %v, printed as %s", row.Title, sum, row.Total)
		}
	}
}

func millimetres(t *testing.T, shown string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(strings.TrimSuffix(shown, " mm"), 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// In inches the fields count in the document's unit still, and figures are shown
// as fractions.
func TestInches(t *testing.T) {
	r, doc := chest(t, "edition", `"in"`)
	s := build(r, r.Words(), doc)
	if !strings.HasSuffix(s.Piece.Overall[0].Value, " in") || s.Piece.Units != "inches" {
		t.Errorf("overall %v in %s", s.Piece.Overall, s.Piece.Units)
	}
	for _, in := range s.Inputs {
		if in.Name == "needle_length" && (in.Value != "350" || in.Unit != "mm" || !strings.HasSuffix(in.Shown, " in")) {
			t.Errorf("%+v", in)
		}
	}
}

// What the state says comes from the catalogue; what does not is found by the
// pseudo-language.
func TestNoProseBesideTheCatalogue(t *testing.T) {
	r, doc := made()
	s := build(r, words.New(words.Pseudo, words.British, unit.Show{}, "EUR"), doc)
	var texts []string
	for _, f := range append(s.Cost, s.Piece.Overall...) {
		texts = append(texts, f.Label, f.Value)
	}
	for _, f := range s.Findings {
		texts = append(texts, f.Word, f.Status, f.Text)
	}
	for _, in := range s.Inputs {
		texts = append(texts, in.Limits, in.Origin, in.Shown)
	}
	for _, c := range s.Setups {
		texts = append(texts, c.Machine, c.Speed, c.Caption)
		for _, x := range c.Settings {
			texts = append(texts, x.Word, x.Figure)
		}
		for _, p := range c.Placements {
			texts = append(texts, p.Offer)
		}
	}
	for _, d := range s.Diagrams {
		texts = append(texts, d.Caption)
	}
	for _, m := range s.Measures {
		for _, x := range m.Readings {
			texts = append(texts, x.Word, x.Planned)
		}
	}
	if len(texts) < 50 {
		t.Fatalf("%d texts", len(texts))
	}
	for _, text := range texts {
		if found := words.Bypassed(text); found != nil {
			t.Errorf("%q: %v is not from the catalogue", text, found)
		}
	}
}

// Steppers go from the least to the greatest value and know where they stand.
func TestStops(t *testing.T) {
	mm := func(n float64) unit.Value { return unit.OfLength(unit.FromMillimetres(n)) }
	for _, c := range []struct {
		name   string
		in     piece.Input
		units  string
		at     float64
		first  string
		second string
		last   string
		n      int
	}{
		{"a count", piece.Input{Value: unit.OfCount(3), From: unit.OfCount(2), To: unit.OfCount(5)}, "mm", 1, "2", "3", "5", 4},
		{"a narrow length", piece.Input{Value: mm(14), From: mm(12), To: mm(18)}, "mm", 2, "12", "13", "18", 7},
		{"between two stops", piece.Input{Value: mm(14.5), From: mm(12), To: mm(18)}, "mm", 2.5, "12", "13", "18", 7},
		{"a wide length", piece.Input{Value: mm(350), From: mm(250), To: mm(400)}, "mm", 20, "250", "255", "400", 31},
		{"a short last step", piece.Input{Value: mm(18), From: mm(12), To: mm(18), Step: mm(4)}, "mm", 2, "12", "16", "18", 3},
		{"within the last step", piece.Input{Value: mm(17), From: mm(12), To: mm(18), Step: mm(4)}, "mm", 1.5, "12", "16", "18", 3},
		{"inches", piece.Input{Value: mm(25.4), From: mm(12.7), To: mm(50.8)}, "in", 8, "1/2 in", "9/16 in", "2", 25},
		{"far apart", piece.Input{Value: mm(0), From: mm(0), To: mm(1e6), Step: mm(1)}, "mm", 0, "0", "3125", "1000000", 321},
		{"nothing between", piece.Input{Value: mm(5), From: mm(5), To: mm(5)}, "mm", 0, "", "", "", 0},
	} {
		c.in.Name, c.in.Label = "x", "X"
		p := &plan.Plan{Piece: &piece.Piece{Units: c.units, Inputs: []piece.Input{c.in}}}
		s := screen.Build(screen.Source{Plan: p, Words: words.New(words.English, words.British, unit.Show{}, "")})
		got := s.Inputs[0]
		if len(got.Stops) != c.n || got.At != c.at {
			t.Errorf("%s: %d stops, at %v; want %d, %v", c.name, len(got.Stops), got.At, c.n, c.at)
			continue
		}
		if c.n > 0 && (got.Stops[0].Value != c.first || got.Stops[1].Value != c.second || got.Stops[c.n-1].Value != c.last) {
			t.Errorf("%s: %v", c.name, got.Stops)
		}
	}
}

// Findings: the sign by status and severity, worst first, and the page they concern.
func TestFindings(t *testing.T) {
	f := func(check string, status plan.Status, s diag.Severity, near ...string) plan.Finding {
		return plan.Finding{Check: check, Status: status, Severity: s, Near: near, Remedy: []diag.Remedy{
			{Text: message.New("server.nothing")}, {Text: message.New("server.moved"), Edits: []diag.Edit{{File: check}}},
		}}
	}
	p := &plan.Plan{
		Piece: &piece.Piece{}, Setups: []plan.Setup{{ID: "card"}}, Steps: []plan.Step{{ID: "step"}},
		Findings: []plan.Finding{
			f("land", plan.Pass, diag.Error), f("rehearsal", plan.Unknown, diag.Error), f("blanks", plan.Fail, diag.Warning),
			f("collisions", plan.Fail, diag.Error), f("collisions", plan.Fail, diag.Error, "card"), f("collisions", plan.Fail, diag.Note, "step"), f("x", "", diag.Error),
			{Check: "stops", Status: plan.Pass, Severity: diag.Note, Idle: "idle.stops", Text: message.New("check.idle", message.Word("what", "idle.stops"))},
		},
	}
	s := screen.Build(screen.Source{Plan: p, Words: words.New(words.English, words.British, unit.Show{}, "")})
	want := []struct {
		id   string
		sign screen.Sign
		page string
	}{
		{"finding-4", screen.StopSign, "holds"}, {"finding-5", screen.StopSign, "set"}, {"finding-3", screen.CheckSign, "timber"},
		{"finding-2", screen.NoteSign, "build"}, {"finding-6", screen.NoteSign, "build"}, {"finding-7", screen.NoteSign, "holds"}, {"finding-1", screen.RightSign, "holds"},
		{"finding-8", screen.IdleSign, "holds"}, // nothing to judge is not right
	}
	for i, w := range want {
		if got := s.Findings[i]; got.ID != w.id || got.Sign != w.sign || got.Page != w.page || got.Word == "" {
			t.Errorf("%d: %+v, want %v", i, got, w)
		}
	}
	if s.Tally[0].Count != 2 || s.Tally[3].Count != 1 {
		t.Errorf("tally %v", s.Tally)
	}
	// A remedy is found again by its id; one of words only cannot be applied.
	r := s.Findings[2].Remedies
	if r[0].Applies || !r[1].Applies {
		t.Errorf("remedies %v", r)
	}
	if got, ok := screen.FindRemedy(p, nil, r[1].ID); !ok || got.Edits[0].File != "blanks" {
		t.Errorf("%s: %v, %v", r[1].ID, got, ok)
	}
	if _, ok := screen.FindRemedy(p, nil, "finding-99.1"); ok {
		t.Error("a remedy that is none was found")
	}
}

func BenchmarkBuild(b *testing.B) {
	r, doc := made()
	for b.Loop() {
		build(r, r.Words(), doc)
	}
}
