package limits

import (
	_ "embed" // the help

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/cutting"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeShort: a workpiece is too short for a machine.
	//
	// Example: a strip of 280 at a thicknesser that takes 305.
	CodeShort diag.Code = "workpiece-too-short"
	// CodeLong: a workpiece is too long for a machine.
	//
	// Example: a board of 2400 at a machine that takes 2000.
	CodeLong diag.Code = "workpiece-too-long"
	// CodeNarrow: a workpiece is too narrow for a machine.
	//
	// Example: a strip of 4 at a saw that rips 5.
	CodeNarrow diag.Code = "workpiece-too-narrow"
	// CodeWide: a workpiece is too wide for a machine.
	//
	// Example: a board of 320 at a thicknesser of 300, over a jointer of 400.
	CodeWide diag.Code = "workpiece-too-wide"
	// CodeThin: a workpiece is too thin for a machine.
	//
	// Example: a divider of 3 at a thicknesser that planes to 4.
	CodeThin diag.Code = "workpiece-too-thin"
	// CodeThick: a workpiece is too thick for a machine.
	//
	// Example: a leg of 80 at a saw with 75 of height.
	CodeThick diag.Code = "workpiece-too-thick"
	// CodeNoMachine: the shop names no machine for a task.
	//
	// Example: rough boards in a shop without jointer, thicknesser and hand tools.
	CodeNoMachine diag.Code = "machine-unknown"
	// CodeWidthUnknown: nobody has said how wide the thicknesser planes that is to take a
	// panel.
	//
	// Example: a panel of 278 at a thicknesser without most_width.
	CodeWidthUnknown diag.Code = "machine-width-unknown"
	// CodeNone: nothing says what the parts are made from.
	//
	// Example: parts of a timber that no board in the rack is of.
	CodeNone diag.Code = "workpieces-unknown"
	// CodeWithin: everything stays within the machines.
	//
	// Example: blanks of 320 at machines that take 305.
	CodeWithin diag.Code = "machines-within"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "limits", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, cutting.Strips},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, index: bodies.Of(c), out: verdict.Of("limits", c), member: map[string]address.Address{}}
	for _, row := range marks.Analysis.Get(c) {
		j.member[row.Mark] = row.Members[0]
	}
	pieces := cutting.Strips.Get(c).Workpieces
	if len(pieces) == 0 || c.Shop == nil {
		j.out.Unknown(CodeNone, message.New("check.limits.none"), "", diag.Place{})
	} else {
		for _, w := range pieces {
			j.workpiece(w)
		}
		j.unsaid()
	}
	return j.out.Done(CodeWithin, message.New("check.limits.within")), nil
})

type judge struct {
	*analysis.Context
	index  *bodies.Index
	out    *verdict.Findings
	member map[string]address.Address
	// panel is the widest that goes to a thicknesser of which nobody has said how wide it
	// planes, at its machine.
	panel   plan.Workpiece
	planing string
}

// task is something that is done to a workpiece, with the kinds of machine that
// do it, the one that is meant first.
type task struct {
	word  string
	kinds []tool.Kind
}

var (
	jointing = task{"task.joint", []tool.Kind{tool.Jointer, tool.ThicknessPlaner, tool.HandTools}}
	planing  = task{"task.plane", []tool.Kind{tool.ThicknessPlaner, tool.HandTools}}
	sawing   = task{"task.saw", []tool.Kind{tool.TableSaw, tool.BandSaw, tool.MitreSaw, tool.HandTools}}
	routing  = task{"task.rout", []tool.Kind{tool.RouterTable, tool.Router, tool.HandTools}}
)

// workpiece judges one workpiece at every task that is done to it.
func (j *judge) workpiece(w plan.Workpiece) {
	rough := w.Thickness
	if b, ok := j.Shop.Board(w.Stock); ok {
		rough = j.Ledger.Leaf(b.ID+".thickness", b.Stock.Thickness, ledger.Bought, "the shop's rack")
	}
	_, sheet := j.Shop.Sheet(w.Stock)
	switch w.Kind {
	case plan.BlankPiece, plan.StripPiece:
		if sheet && w.Width.Nm > w.Length.Nm {
			w.Length, w.Width = w.Width, w.Length // its longer side goes along the fence
		}
		j.at(sawing, w, rough)
		if !sheet {
			j.at(jointing, w, rough)
			if rough.Nm > w.Thickness.Nm || w.Stock == "" {
				j.at(planing, w, w.Thickness)
			}
		}
	case plan.PanelPiece, plan.NarrowPanel:
		if !w.InWidths {
			j.at(planing, w, w.Thickness)
		}
	case plan.TestPiece:
		j.at(routing, w, w.Thickness)
		return
	default:
		return
	}
	if !sheet && j.routed(w) {
		j.at(routing, w, w.Thickness)
	}
}

// routed reports whether a part of the workpiece has straight cuts.
func (j *judge) routed(w plan.Workpiece) bool {
	for _, a := range w.Parts {
		if p := j.index.Part(a); p != nil && len(j.index.Slots(p)) > 0 {
			return true
		}
	}
	return false
}

// at judges a workpiece at one task, as thick as it then is.
func (j *judge) at(k task, w plan.Workpiece, thick plan.Figure) {
	size := tool.Size{Length: w.Length.Nm, Width: w.Width.Nm, Thickness: thick.Nm}
	var first []tool.Excess
	found := false
	j.out.Judged()
	for _, kind := range k.kinds {
		for _, m := range j.Shop.Of(kind) {
			machine := m.Tool.Completed()
			machine.Name = m.ID
			excess := machine.Check(size)
			if len(excess) == 0 {
				if k.word == planing.word && w.Kind == plan.PanelPiece && kind == tool.ThicknessPlaner && !machine.Greatest.Width.Known() && w.Width.Nm > j.panel.Width.Nm {
					j.panel, j.planing = w, m.ID
				}
				for _, e := range first {
					j.add(k, w, thick, e, m.ID)
				}
				return
			}
			if !found {
				first, found = excess, true
			}
		}
	}
	if !found {
		j.out.Unknown(CodeNoMachine, message.New("check.limits.no-machine", message.Word("task", k.word)), address.Address("shop").Keyed("task", k.word), diag.Place{})
		return
	}
	for _, e := range first {
		j.add(k, w, thick, e, "")
	}
}

// unsaid asks how wide the thicknesser planes that the widest panel is to go through. A
// board comes to it over a jointer that is narrower still; a panel does not.
func (j *judge) unsaid() {
	if j.planing == "" {
		return
	}
	part := j.member[j.panel.Mark]
	where := diag.Place{}
	if p := j.index.Part(part); p != nil {
		where = p.Where
	}
	j.out.Unknown(CodeWidthUnknown, message.New("check.limits.width-unknown", message.Text("mark", j.panel.Mark), message.Text("machine", j.planing),
		message.LengthRounded("is", j.panel.Width.Nm, unit.Up)), part, where, part)
}

// add tells one limit that is broken; other is the machine that does it instead.
func (j *judge) add(k task, w plan.Workpiece, thick plan.Figure, e tool.Excess, other string) {
	is := map[tool.Dimension]plan.Figure{tool.DimensionLength: w.Length, tool.DimensionWidth: w.Width, tool.DimensionThickness: thick}[e.Dimension]
	limit := j.out.Stated(e.Limit)
	args := []message.Arg{
		message.Text("mark", w.Mark), message.Word("piece", "workpiece."+string(w.Kind)), message.Word("task", k.word), message.Word("size", "size."+string(e.Dimension)),
		message.Text("machine", e.Machine), message.Length("is", is.Nm), message.Length("limit", limit.Nm), message.Text("other", other),
	}
	x := plan.Finding{Status: plan.Fail, Severity: diag.Error, Code: codeOf(e), Is: &is, Limit: &limit.Figure, Source: limit.Source}
	switch {
	case other != "":
		x.Severity, x.Text = diag.Note, message.New("check.limits.other", args...)
	case e.Disputed():
		x.Severity, x.Text = diag.Warning, message.New("check.limits.disputed", append(args, message.Length("low", lenient(e)))...)
	case e.Short:
		x.Text = message.New("check.limits.under", args...)
	default:
		x.Text = message.New("check.limits.over", args...)
	}
	x.Address = j.member[w.Mark]
	if p := j.index.Part(x.Address); p != nil {
		x.Where = p.Where
	}
	j.out.Add(x, append([]address.Address{x.Address}, w.Parts...)...)
}

// lenient is the limit of the most lenient source.
func lenient(e tool.Excess) unit.Length {
	if e.Short {
		return e.Limit.Low
	}
	return e.Limit.High
}

func codeOf(e tool.Excess) diag.Code {
	codes := map[tool.Dimension][2]diag.Code{
		tool.DimensionLength: {CodeLong, CodeShort}, tool.DimensionWidth: {CodeWide, CodeNarrow}, tool.DimensionThickness: {CodeThick, CodeThin},
	}[e.Dimension]
	if e.Short {
		return codes[1]
	}
	return codes[0]
}
