package rehearsal

import (
	"slices"
	"testing"

	"scantling/internal/diag"
	"scantling/internal/figure"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// TestDiagramsAreFed: a cut whose piece in hand is shorter than the saw takes is told,
// by a hair; so is a workpiece on a defect.
func TestDiagramsAreFed(t *testing.T) {
	at := func(mm int64) plan.Figure { return plan.Figure{Nm: unit.MM(mm)} }
	board := plan.Diagram{
		ID: "board #1", Count: 1, Length: at(1000), Width: at(100), Thickness: at(20), Kerf: at(3),
		Cuts: []plan.SawCut{
			{N: 1, Kind: "crosscut", In: plan.Rect{Along: at(0), Across: at(0), Length: at(1000), Width: at(100)}, At: at(850)},
			{N: 2, Kind: "crosscut", In: plan.Rect{Along: at(853), Across: at(0), Length: at(147), Width: at(100)}, At: at(70)},
		},
		Pieces: []plan.Placed{{Workpiece: "blank.1", Mark: "1", Rect: plan.Rect{Along: at(853), Across: at(0), Length: at(70), Width: at(100)}}},
	}
	p := &plan.Plan{
		Diagrams:   []plan.Diagram{board},
		Workpieces: []plan.Workpiece{{ID: "blank.1", Kind: plan.BlankPiece, Count: 1, Length: at(70), Width: at(100), Thickness: at(20)}},
	}
	told := func(least unit.Length, defects ...plan.Defect) []diag.Code {
		p.Diagrams[0].Defects = defects
		saw := tool.Machine{Name: "table saw", Kind: tool.TableSaw}
		saw.Least.Length = figure.Exactly(least, figure.PracticeSource("test"))
		r := newRehearsal(Input{Plan: p, Machines: []tool.Machine{saw}})
		r.diagrams()
		var out []diag.Code
		for _, f := range r.findings {
			out = append(out, f.Code)
		}
		return out
	}
	if got := told(unit.MM(147)); len(got) != 0 {
		t.Errorf("just long enough: %v", got)
	}
	if got := told(unit.MM(147) + 1); !slices.Contains(got, CodeMachine) {
		t.Errorf("a hair too short: %v", got)
	}
	knot := plan.Defect{Kind: "knot", Rect: plan.Rect{Along: at(900), Across: at(0), Length: at(30), Width: at(10)}}
	if got := told(unit.MM(100), knot); !slices.Contains(got, CodeDiagram) {
		t.Errorf("on a knot: %v", got)
	}
	knot.Rect.Along = at(923)
	if got := told(unit.MM(100), knot); len(got) != 0 {
		t.Errorf("beside a knot: %v", got)
	}
}
