package plan_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"scantling/internal/analysis"
	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/contents"
	"scantling/internal/analysis/cost"
	"scantling/internal/analysis/cutting"
	"scantling/internal/analysis/marks"
	"scantling/internal/analysis/operations"
	"scantling/internal/analysis/rows"
	"scantling/internal/analysis/setups"
	"scantling/internal/analysis/stages"
	"scantling/internal/joinery"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// chest is the plan of the trial chest as JSON, made once; each test reads a plan
// of its own from it.
var chest = func() []byte {
	b := checktest.Chest()
	for i := range b.Piece.Parts {
		if strings.HasPrefix(string(b.Piece.Parts[i].Address), "drawer") {
			b.Piece.Parts[i].CutAfter = b.Piece.Parts[i].CutAfter[:0]
			b.Piece.Parts[i].CutAfter = append(b.Piece.Parts[i].CutAfter, "measure.openings")
		}
	}
	s := checktest.Shop()
	s.Boards[0].Have, s.Boards[0].Stock.Width, s.Boards[0].Stock.Length = 1, unit.MM(140), unit.MM(480) // panels, boards cut alike, boards to buy
	cuts, lowered, _ := joinery.Lower(&b.Piece, b.Ledger)
	c := &analysis.Context{Piece: &b.Piece, Cuts: cuts, Joints: lowered, Shop: s, Ledger: b.Ledger}
	report, err := analysis.Run(c, []analysis.Analysis{
		marks.Analysis, stages.Analysis, cutting.Strips, cutting.Analysis, rows.Analysis,
		operations.Analysis, setups.Analysis, contents.Analysis, cost.Analysis,
	})
	if err != nil || len(report.LeftOut) > 0 {
		panic(err)
	}
	cards, bought := setups.Analysis.Get(c), cost.Analysis.Get(c)
	staged := stages.Analysis.Get(c)
	p := &plan.Plan{
		Schema: plan.Schema, Piece: &b.Piece, Ledger: b.Ledger, Parts: staged.Rows, Stages: staged.Stages, Measures: staged.Measures,
		Workpieces: cutting.Strips.Get(c).Workpieces, Diagrams: cutting.Analysis.Get(c).Diagrams, Rows: rows.Analysis.Get(c),
		Operations: cards.Operations, Setups: cards.Setups, Held: contents.Analysis.Get(c), Buying: bought.Buying, Cost: bought.Cost,
	}
	data, err := json.Marshal(p)
	if err != nil {
		panic(err)
	}
	return data
}()

func read(t testing.TB) *plan.Plan {
	t.Helper()
	var p plan.Plan
	if err := json.Unmarshal(chest, &p); err != nil {
		t.Fatal(err)
	}
	for _, f := range []ledger.Functions{contents.Functions(), rows.Functions()} {
		p.Ledger.Learn(f)
	}
	return &p
}

// TestSound: the plan of a good piece contradicts itself nowhere, and has all that
// the mutants below change.
func TestSound(t *testing.T) {
	p := read(t)
	for _, f := range p.Unsound() {
		t.Error(f)
	}
	panels := 0
	for _, w := range p.Workpieces {
		if w.Kind == plan.PanelPiece {
			panels++
		}
	}
	many := slices.ContainsFunc(p.Diagrams, func(d plan.Diagram) bool { return d.Count > 1 })
	if panels == 0 || len(p.Stages) < 2 || len(p.Rows) == 0 || len(p.Piece.Series) == 0 || len(p.Setups) == 0 || len(p.Held) == 0 || p.Cost.Total == 0 || !many {
		t.Errorf("%d panels, %d stages, %d rows, %d series, %d cards, %d held, %d to pay, several boards cut alike: %v", panels, len(p.Stages), len(p.Rows), len(p.Piece.Series), len(p.Setups), len(p.Held), p.Cost.Total, many)
	}
}

// other returns a figure of the same ledger that is longer by ten: right by
// itself, wrong where it is put.
func other(p *plan.Plan, f plan.Figure) plan.Figure {
	return p.Ledger.Sum("mutant", f, p.Ledger.Leaf("mutant", unit.MM(10), ledger.Document, ""))
}

// TestMutants changes one thing at a time; every change is noticed, and for the
// reason that it was made for.
func TestMutants(t *testing.T) {
	panel := func(p *plan.Plan) *plan.Workpiece {
		return &p.Workpieces[slices.IndexFunc(p.Workpieces, func(w plan.Workpiece) bool { return w.Kind == plan.PanelPiece })]
	}
	alike := func(p *plan.Plan) *plan.Diagram {
		return &p.Diagrams[slices.IndexFunc(p.Diagrams, func(d plan.Diagram) bool { return d.Count > 1 })]
	}
	several := func(p *plan.Plan) *plan.Diagram {
		return &p.Diagrams[slices.IndexFunc(p.Diagrams, func(d plan.Diagram) bool { return len(d.Pieces) > 1 && len(d.Cuts) > 1 && len(d.Left) > 0 })]
	}
	card := func(p *plan.Plan) *plan.Setup {
		return &p.Setups[slices.IndexFunc(p.Setups, func(s plan.Setup) bool { return len(s.Sums) > 0 })]
	}
	placement := func(p *plan.Plan) *plan.Placement {
		for i := range p.Setups {
			for k := range p.Setups[i].Placements {
				if len(p.Setups[i].Placements[k].Sums) > 0 {
					return &p.Setups[i].Placements[k]
				}
			}
		}
		return nil
	}
	for _, c := range []struct {
		name   string
		change func(p *plan.Plan)
		want   string
	}{
		{"a figure that is not its entry's", func(p *plan.Plan) { p.Held[0].Depth.Nm++ }, "names entry"},
		{"a figure without an entry", func(p *plan.Plan) { p.Held[0].Proud.Entry = 0 }, "not in the ledger"},
		{"a figure of another entry", func(p *plan.Plan) { p.Workpieces[0].Length.Entry = p.Workpieces[0].Thickness.Entry }, "names entry"},
		{"an entry with another value", func(p *plan.Plan) {
			e := p.Ledger.Entries()
			i := slices.IndexFunc(e, func(x ledger.Entry) bool { return x.Op == ledger.OpAdd })
			e[i].Value = unit.OfLength(1)
		}, "its arithmetic gives"},
		{"an entry with another origin", func(p *plan.Plan) {
			e := p.Ledger.Entries()
			e[slices.IndexFunc(e, func(x ledger.Entry) bool { return x.Op == ledger.OpAdd })].Origin = ledger.Measured
		}, "follows from its arguments"},
		{"an entry that rests on a later one", func(p *plan.Plan) {
			e := p.Ledger.Entries()
			i := slices.IndexFunc(e, func(x ledger.Entry) bool { return x.Op == ledger.OpAdd })
			e[i].Args[0] = e[i].ID + 1
		}, "does not come before"},
		{"a part that is not its extent", func(p *plan.Plan) { p.Piece.Parts[0].Length = other(p, p.Piece.Parts[0].Length) }, "its extent"},
		{"a row that is not its part", func(p *plan.Plan) { p.Parts[0].Width = other(p, p.Parts[0].Width) }, "is not the size of"},
		{"a space that is not its extent", func(p *plan.Plan) { p.Piece.Spaces[0].Clear[1] = other(p, p.Piece.Spaces[0].Clear[1]) }, "clear size"},
		{"a row that does not close", func(p *plan.Plan) { p.Rows[0].Terms[0].Figure = other(p, p.Rows[0].Terms[0].Figure) }, "its total is"},
		{"a row with another total", func(p *plan.Plan) { p.Rows[0].Total = other(p, p.Rows[0].Total) }, "its total is"},
		{"a row with a term below nought", func(p *plan.Plan) {
			x := &p.Rows[0].Terms[0].Figure
			*x = p.Ledger.Less("mutant", *x, p.Ledger.Leaf("mutant", unit.Metre, ledger.Document, ""))
		}, "below nought"},
		{"a series that does not close", func(p *plan.Plan) { p.Piece.Series[0].Terms = p.Piece.Series[0].Terms[1:] }, "series"},
		{"a sum of a card", func(p *plan.Plan) { card(p).Sums[0].Total = other(p, card(p).Sums[0].Total) }, "a sum adds up to"},
		{"a sum of a placement", func(p *plan.Plan) { s := placement(p); s.Sums[0].Terms = s.Sums[0].Terms[1:] }, "a sum adds up to"},
		{"a panel wider than its strips", func(p *plan.Plan) { panel(p).Width = p.Ledger.Leaf("mutant", unit.Metre, ledger.Document, "") }, "make no panel"},
		{"a panel with a strip less", func(p *plan.Plan) { w := panel(p); w.From = w.From[1:] }, "make no panel"},
		{"a panel without its joints", func(p *plan.Plan) { panel(p).Joints = nil }, "make no panel"},
		{"a workpiece twice", func(p *plan.Plan) { p.Workpieces = append(p.Workpieces, p.Workpieces[0]) }, "there are two of"},
		{"a workpiece from nowhere", func(p *plan.Plan) { panel(p).From[0] = "elsewhere" }, "which is nowhere"},
		{"a workpiece that is not cut", func(p *plan.Plan) { d := several(p); d.Pieces = d.Pieces[1:] }, "is cut 0 times"},
		{"a workpiece that is cut twice", func(p *plan.Plan) { d := several(p); d.Pieces[0].Workpiece = d.Pieces[1].Workpiece }, "is cut 2 times"},
		{"a count that is not that of the workpieces", func(p *plan.Plan) { alike(p).Count++ }, "boards are cut"},
		{"a workpiece of a further board left out", func(p *plan.Plan) { alike(p).Pieces[0].Also = nil }, "boards are cut"},
		{"a workpiece of a further board that is another", func(p *plan.Plan) { alike(p).Pieces[0].Also[0] = "elsewhere" }, "there is no workpiece"},
		{"a place with another mark", func(p *plan.Plan) { several(p).Pieces[0].Mark = "Z9" }, "is marked"},
		{"a piece off the board", func(p *plan.Plan) { d := several(p); d.Pieces[0].Rect.Along = d.Length }, "leaves the stock"},
		{"a piece of another size", func(p *plan.Plan) { r := &several(p).Pieces[0].Rect; r.Length = r.Width }, "is not the size of its workpiece"},
		{"a piece turned", func(p *plan.Plan) { several(p).Pieces[0].Turned = true }, "is not the size of its workpiece"},
		{"two pieces in one place", func(p *plan.Plan) {
			d := several(p)
			d.Pieces[1].Rect.Along, d.Pieces[1].Rect.Across = d.Pieces[0].Rect.Along, d.Pieces[0].Rect.Across
		}, "nearer than a kerf"},
		{"a wider kerf", func(p *plan.Plan) { d := several(p); d.Kerf = other(p, d.Kerf) }, "nearer than a kerf"},
		{"thinner stock", func(p *plan.Plan) { d := several(p); d.Thickness = d.Kerf }, "thicker than the stock"},
		{"a rest on a piece", func(p *plan.Plan) { d := several(p); d.Left[0].Rect = d.Pieces[0].Rect }, "a rest lies"},
		{"a rest off the board", func(p *plan.Plan) { d := several(p); d.Left[0].Rect.Length = d.Length; d.Left[0].Rect.Along = d.Kerf }, "a rest lies"},
		{"a cut that misses", func(p *plan.Plan) {
			c := several(p).Cuts
			c[0].At = p.Ledger.Leaf("mutant", 9*unit.Metre, ledger.Document, "")
		}, "misses what it cuts"},
		{"cuts with another order", func(p *plan.Plan) { c := several(p).Cuts; c[0], c[1] = c[1], c[0] }, "misses what it cuts"},
		{"waste that does not add up", func(p *plan.Plan) { several(p).Waste.Kerf += 5 }, "the waste adds up to"},
		{"a row of another stage", func(p *plan.Plan) { p.Parts[0].Stage = "9" }, "is of stage"},
		{"a row in no stage", func(p *plan.Plan) { p.Stages[0].Marks = p.Stages[0].Marks[1:] }, "is of stage"},
		{"a row in two stages", func(p *plan.Plan) { p.Stages[1].Marks = append(p.Stages[1].Marks, p.Stages[0].Marks[0]) }, "stands in two stages"},
		{"a line that is not its price", func(p *plan.Plan) { p.Buying[0].Sum++ }, "to get at"},
		{"fewer to get than are missing", func(p *plan.Plan) {
			b := &p.Buying[0]
			b.Get--
			b.Sum -= b.Price
			p.Cost.Timber -= b.Price
			p.Cost.Total -= b.Price
		}, "to get at"},
		{"a sum of a kind", func(p *plan.Plan) { p.Cost.Timber++; p.Cost.Total++ }, "the lines come to"},
		{"the whole cost", func(p *plan.Plan) { p.Cost.Total++ }, "its parts come to"},
	} {
		p := read(t)
		c.change(p)
		got := p.Unsound()
		if !slices.ContainsFunc(got, func(s string) bool { return strings.Contains(s, c.want) }) {
			t.Errorf("%s: not noticed as %q, but %d others: %q", c.name, c.want, len(got), got[:min(3, len(got))])
		}
	}
}

// TestOverall: the box around all parts, wherever it stands.
func TestOverall(t *testing.T) {
	b := trial.New()
	b.Part("a", trial.GrainRight, -100, 3000, 0, 1000, 500, 680)
	b.Part("b", trial.GrainRight, 0, 3200, -50, 900, 0, 180)
	p := plan.Plan{Piece: &b.Piece}
	if got, want := p.Overall(), [3]unit.Length{unit.MM(330), unit.MM(105), unit.MM(68)}; got != want {
		t.Errorf("%v, want %v", got, want)
	}
	none := plan.Plan{Piece: &piece.Piece{}}
	if none.Overall() != [3]unit.Length{} {
		t.Error("nothing has a size")
	}
}

func BenchmarkUnsound(b *testing.B) {
	p := read(b)
	for b.Loop() {
		p.Unsound()
	}
	b.ReportMetric(float64(len(p.Ledger.Entries())), "entries")
}
