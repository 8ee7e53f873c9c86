package rehearsal

import (
	"cmp"
	"slices"

	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// Name is the check's name in findings.
const Name = "rehearsal"

// Codes of findings.
const (
	// CodeDone says that the whole plan was carried out and the piece is made.
	CodeDone diag.Code = "rehearsal-done"
	// CodeOrder says that a step or operation comes before what it needs.
	CodeOrder diag.Code = "rehearsal-order"
	// CodeSize says that work does not have the size that an operation starts from
	// or ends with.
	CodeSize diag.Code = "rehearsal-size"
	// CodeCut says that a cut does not land where the design has it.
	CodeCut diag.Code = "rehearsal-cut"
	// CodeMissing says that a cut, a part or an operation is never made.
	CodeMissing diag.Code = "rehearsal-missing"
	// CodeTwice says that something is made twice.
	CodeTwice diag.Code = "rehearsal-twice"
	// CodeMachine says that a machine may not be fed with the work.
	CodeMachine diag.Code = "rehearsal-machine"
	// CodeHold says that no wood is left to hold or guide the work by.
	CodeHold diag.Code = "rehearsal-hold"
	// CodeTrapped says that a pass is a trapped cut.
	CodeTrapped diag.Code = "rehearsal-trapped"
	// CodeSum says that a printed sum does not close.
	CodeSum diag.Code = "rehearsal-sum"
	// CodeDiagram says that a cutting diagram cannot be sawn as it is printed.
	CodeDiagram diag.Code = "rehearsal-diagram"
)

// Input is the printed plan and what it is judged by.
type Input struct {
	Plan *plan.Plan
	// Cuts are all cuts of the design.
	Cuts []piece.Cut
	// Machines are the shop's, with their limits.
	Machines []tool.Machine
	// Cutters are the shop's; a card must say the size of the one that it names.
	Cutters []tool.Cutter
}

// Report is how much was carried out.
type Report struct {
	Steps, Operations, Placements, Passes, Cuts, Sums int
}

// Check carries the plan out and returns its findings: failures, or one pass.
func Check(in Input) ([]plan.Finding, Report) {
	r := newRehearsal(in)
	r.diagrams()
	r.order()
	r.sizes()
	r.settings()
	r.cuts()
	if len(r.findings) == 0 {
		r.findings = []plan.Finding{{
			Check: Name, Status: plan.Pass, Severity: diag.Note, Code: CodeDone,
			Text: message.New("rehearsal.done", message.Count("operations", r.report.Operations), message.Count("cuts", r.report.Cuts), message.Count("steps", r.report.Steps)),
		}}
	}
	slices.SortStableFunc(r.findings, func(a, b plan.Finding) int {
		return cmp.Or(cmp.Compare(a.Code, b.Code), address.Compare(a.Address, b.Address))
	})
	return r.findings, r.report
}

type rehearsal struct {
	Input
	findings []plan.Finding
	report   Report
	row      map[string]plan.PartRow
	op       map[string]plan.Operation
	card     map[string]plan.Setup
	machine  map[string]tool.Machine
	cut      map[address.Address]piece.Cut
	work     map[string]plan.Workpiece
	// at is when an operation is done: the number of its step, then its place in
	// the list.
	at map[string]int
	// blankOf is what each part is cut from.
	blankOf  map[address.Address]plan.Workpiece
	lengthOf map[address.Address]unit.Length // finished, by part
}

func newRehearsal(in Input) *rehearsal {
	r := &rehearsal{
		Input: in, row: map[string]plan.PartRow{}, op: map[string]plan.Operation{}, card: map[string]plan.Setup{},
		machine: map[string]tool.Machine{}, cut: map[address.Address]piece.Cut{}, work: map[string]plan.Workpiece{},
		at: map[string]int{}, blankOf: map[address.Address]plan.Workpiece{}, lengthOf: map[address.Address]unit.Length{},
	}
	for _, row := range in.Plan.Parts {
		r.row[row.Mark] = row
		for _, m := range row.Members {
			r.lengthOf[m] = row.Length.Nm
		}
	}
	for _, m := range in.Machines {
		r.machine[m.Name] = m
	}
	for _, c := range in.Cuts {
		r.cut[c.Address] = c
	}
	for _, w := range in.Plan.Workpieces {
		if _, twice := r.work[w.ID]; twice {
			r.fail(CodeTwice, "rehearsal.workpiece-twice", "", message.Text("id", w.ID))
		}
		r.work[w.ID] = w
		if w.Kind == plan.BlankPiece || w.Kind == plan.PanelPiece {
			for _, p := range w.Parts {
				r.blankOf[p] = w
			}
		}
	}
	for _, op := range in.Plan.Operations {
		if _, twice := r.op[op.ID]; twice {
			r.fail(CodeTwice, "rehearsal.operation-twice", "", message.Text("id", op.ID))
		}
		r.op[op.ID] = op
	}
	for _, c := range in.Plan.Setups {
		if _, twice := r.card[c.ID]; twice {
			r.fail(CodeTwice, "rehearsal.card-twice", "", message.Text("id", c.ID))
		}
		r.card[c.ID] = c
	}
	return r
}

// fail adds a failure.
func (r *rehearsal) fail(code diag.Code, key string, about address.Address, args ...message.Arg) {
	r.findings = append(r.findings, plan.Finding{
		Check: Name, Status: plan.Fail, Severity: diag.Error, Code: code, Address: about, Text: message.New(key, args...),
	})
}

// same reports whether two lengths are one, to a micrometre: settings of round
// cutters come out of a square root and are rounded to the nanometre more than
// once.
func same(a, b unit.Length) bool { return (a - b).Abs() <= unit.Micrometre }
