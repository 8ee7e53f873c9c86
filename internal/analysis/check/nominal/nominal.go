package nominal

import (
	_ "embed" // the help

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/figure"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeCut: a cut is as wide as a sheet is called, not as it measures.
	//
	// Example: a groove of 6 for ply of 6 that measures 5.6.
	CodeCut diag.Code = "cut-by-nominal-size"
	// CodePart: a part is drawn as thick as its sheet is called.
	//
	// Example: a bottom 4 thick of ply that measures 3.8.
	CodePart diag.Code = "part-by-nominal-size"
	// CodeUnmeasured: nobody has measured a sheet.
	//
	// Example: a sheet block without thickness.
	CodeUnmeasured diag.Code = "sheet-not-measured"
	// CodeActual: everything goes by what the sheets measure.
	//
	// Example: a groove of 4 for ply of 3.8 with 0.2 of clearance.
	CodeActual diag.Code = "sheets-by-measure"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "nominal", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, index: bodies.Of(c), out: verdict.Of("nominal", c), sheets: map[string]sheet{}}
	j.measure()
	for i := range c.Piece.Parts {
		p := &c.Piece.Parts[i]
		j.part(p)
		for _, s := range j.index.Slots(p, piece.Groove, piece.Housing, piece.Rebate) {
			j.cut(s)
		}
	}
	return j.out.Done(CodeActual, message.New("check.nominal.actual")), nil
})

type judge struct {
	*analysis.Context
	index  *bodies.Index
	out    *verdict.Findings
	sheets map[string]sheet
	// order keeps the materials' order.
	order []string
}

// sheet is what a material of sheet goods is called and what it measures.
type sheet struct {
	id              string
	nominal, actual piece.Figure
}

// measure looks the sheets of the piece up in the shop.
func (j *judge) measure() {
	for _, m := range j.Piece.Materials {
		if !m.Sheet {
			continue
		}
		unmeasured := func(name string) {
			j.out.Unknown(CodeUnmeasured, message.New("check.nominal.unmeasured", message.Text("sheet", name)), address.Address("material").Child(m.Name), m.Where)
		}
		if j.Shop == nil {
			unmeasured(m.Asks)
			continue
		}
		s, ok := j.Shop.Sheet(m.Stock)
		if t := s.Stock.Thickness(); !ok || t.Source.Status != figure.Stated {
			unmeasured(m.Asks)
			continue
		}
		j.sheets[m.Name] = sheet{
			s.ID, j.Ledger.Leaf(s.ID+".nominal", s.Stock.Nominal, ledger.Bought, "the shop's rack"),
			j.Ledger.Leaf(s.ID+".measured", s.Stock.Thickness().Value, ledger.Bought, "the shop's rack"),
		}
		j.order = append(j.order, m.Name)
	}
}

// part holds a part of sheet goods against the sheet.
func (j *judge) part(p *piece.Part) {
	s, ok := j.sheets[p.Material]
	if ok {
		j.out.Judged()
	}
	if !ok || p.Thickness.Nm == s.actual.Nm {
		return
	}
	j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Error, Code: CodePart, Address: p.Address, Where: p.Where,
		Is: verdict.Figure(p.Thickness), Limit: verdict.Figure(s.actual), Source: "stock.sheet-measured (stated)",
		Text: message.New("check.nominal.part", message.Text("mark", j.out.Mark(p.Address)), message.Text("sheet", s.id), message.Length("is", p.Thickness.Nm), message.Length("limit", s.actual.Nm)),
	}, p.Address)
}

// cut holds a groove, housing or rebate against the sheet that goes in.
func (j *judge) cut(s bodies.Slot) {
	width := j.Ledger.Less(string(s.Cut.Address)+".width", s.Far, s.Near)
	limit := j.out.Limit("sheet clearance", verdict.Practice("check.sheet-clearance", 3*unit.Millimetre/10))
	sheets := j.order
	if s.Cut.Joint != "" {
		with := j.index.Part(s.Cut.With)
		if with == nil || j.sheets[with.Material].id == "" || !thick(s, with) {
			return
		}
		sheets = []string{with.Material}
	}
	for _, name := range sheets {
		of := j.sheets[name]
		fits := width.Nm >= of.actual.Nm && width.Nm <= of.actual.Nm+limit.Nm
		if fits {
			return // it takes this sheet, whatever others are called
		}
	}
	for _, name := range sheets {
		of := j.sheets[name]
		if width.Nm != of.nominal.Nm {
			continue
		}
		j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeCut, Address: s.Cut.Address, Where: s.Cut.Where,
			Is: &width, Limit: verdict.Figure(of.actual), Source: "stock.sheet-measured (stated)",
			Text: message.New("check.nominal.cut", message.Text("mark", j.out.Mark(s.Part.Address)), message.Word("cut", "cut."+string(s.Cut.Kind)), message.Text("sheet", of.id),
				message.Length("is", width.Nm), message.Length("limit", of.actual.Nm)),
			Remedy: j.narrower(s, of, limit.Nm),
		}, s.Part.Address)
		return
	}
}

// narrower is the remedy of a cut whose width is written as such: the measure and the
// clearance.
func (j *judge) narrower(s bodies.Slot, of sheet, clearance unit.Length) []diag.Remedy {
	width, ok := j.out.Added(s.Near, s.Far)
	if !ok {
		return nil
	}
	to := of.actual.Nm + clearance
	return []diag.Remedy{j.out.Rewrite(message.New("check.nominal.write", message.LengthRounded("to", to, unit.Down)), width, to, unit.Down)}
}

// thick reports whether a cut's width takes the thickness of what goes in.
func thick(s bodies.Slot, with *piece.Part) bool {
	axis, _ := s.Part.Frame.Directions()[s.Across].Axis()
	local, _ := with.Frame.LocalOf(axis)
	return local == piece.AlongThickness
}
