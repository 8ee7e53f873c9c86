package season

import (
	_ "embed" // the help

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/analysis/movement"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeBinds: a fit has no clearance left when the wood is wettest.
	//
	// Example: 0.5 over a drawer front of cherry 200 high.
	CodeBinds diag.Code = "fit-binds"
	// CodeLoose: a fit is looser than its wood asks for.
	//
	// Example: 5 over a drawer front of 60.
	CodeLoose diag.Code = "fit-too-loose"
	// CodeFitUnknown: the clearance of a fit over the seasons is not known.
	//
	// Example: a fit of a timber that the catalogue does not have.
	CodeFitUnknown diag.Code = "fit-season-unknown"
	// CodeCrossGrain: solid wood is glued across its grain over a width that moves.
	//
	// Example: a board 200 wide glued across another.
	CodeCrossGrain diag.Code = "glued-across-the-grain"
	// CodeGives: solid wood is nailed across its grain over a width that moves: the nails
	// bend, or the wood splits at them.
	//
	// Example: a batten nailed across a top 400 wide.
	CodeGives diag.Code = "nailed-across-the-grain"
	// CodeScrewed: solid wood is screwed tight across its grain over a width that moves.
	//
	// Example: a table's top of 400 with three screws up through each kicker.
	CodeScrewed diag.Code = "screwed-across-the-grain"
	// CodeSlot: the slots of screws are shorter than the wood moves.
	//
	// Example: slots of 2 each side under a top of ash 400 wide.
	CodeSlot diag.Code = "slots-too-short"
	// CodeTray: loose parts have too little room to grow.
	//
	// Example: a tray 176 wide with 0.5 of room in a drawer.
	CodeTray diag.Code = "loose-part-binds"
	// CodeTrayUnknown: what a loose part grows is not known.
	//
	// Example: a tray of a timber that the catalogue does not have.
	CodeTrayUnknown diag.Code = "loose-part-unknown"
	// CodeMoves: everything can move as its wood asks.
	//
	// Example: a tray 176 wide with 4 of room.
	CodeMoves diag.Code = "seasons-pass"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "season", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, movement.Analysis, movement.Seasons},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, index: bodies.Of(c), out: verdict.Of("season", c)}
	j.fits(movement.Analysis.Get(c))
	j.pairs(movement.Seasons.Get(c).Pairs)
	j.screws()
	for _, m := range j.index.Moves() {
		j.loose(m)
	}
	return j.out.Done(CodeMoves, message.New("check.season.moves")), nil
})

type judge struct {
	*analysis.Context
	index *bodies.Index
	out   *verdict.Findings
}

// fits judges every fit by its clearances over the seasons, and as it is stated.
func (j *judge) fits(clearances []plan.Clearance) {
	by := map[address.Address][]plan.Clearance{}
	for _, c := range clearances {
		by[c.Fit] = append(by[c.Fit], c)
	}
	for i := range j.Piece.Fits {
		f := &j.Piece.Fits[i]
		own := by[f.Address]
		for _, s := range []struct {
			across string
			leave  piece.Figure
		}{{"sides", f.Sides}, {"above", f.Above}, {"behind", f.Behind}} {
			if s.leave.Nm < 0 {
				j.binds(f, s.across, s.leave, "", "check.fit-clearance (practice)")
			}
		}
		for _, c := range own {
			j.clearance(f, c)
		}
		if len(own) == 0 {
			j.noClearance(f)
		}
	}
}

// noClearance tells a fit of solid wood across the grain whose movement is not
// known.
func (j *judge) noClearance(f *piece.Fit) {
	for _, m := range j.index.Moves() {
		if m.Fit != f {
			continue
		}
		for _, p := range m.Parts {
			if local, _ := p.Frame.LocalOf(piece.Up); local == piece.AlongWidth && !j.index.Sheet(p) {
				material, _ := j.index.Material(p)
				j.out.Unknown(CodeFitUnknown, message.New("check.season.fit-unknown", message.Address("fit", f.Address), message.Text("mark", j.out.Mark(p.Address)), message.Text("wood", material.Species)),
					f.Address, f.Where, p.Address)
				return
			}
		}
	}
}

func (j *judge) clearance(f *piece.Fit, c plan.Clearance) {
	j.out.Judged()
	wall := c.AtDry.Nm < c.AtWet.Nm // it takes of the clearance when it shrinks
	if least := c.AtWet; least.Nm < 0 || wall && c.AtDry.Nm < 0 {
		if wall {
			least = c.AtDry
		}
		j.binds(f, c.Across, least, c.Moves, verdict.Cite(timber.SourceNarrow))
		return
	}
	if wall || c.Across == "behind" || j.Piece.Whole(f) {
		return // room at the back, or around what is put in once, hurts nobody
	}
	play := j.out.Limit("play at wet end", verdict.Practice("check.play-at-wet-end", 1500*unit.Micrometre))
	if c.AtWet.Nm <= play.Nm {
		return
	}
	enough := j.Ledger.Sum(string(f.Address)+".enough at dry", c.GrowsWet, c.ShrinksDry, play.Figure)
	less := j.Ledger.Less(string(f.Address)+".spare", c.AtWet, play.Figure)
	j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Note, Code: CodeLoose, Address: f.Address, Where: f.Where,
		Is: verdict.Figure(c.AtDry), Limit: &enough, Source: play.Source, Figures: j.out.Moistures(false),
		Text: message.New("check.season.loose", message.Address("fit", f.Address), message.Word("across", "fit."+c.Across), message.Length("is", c.AtDry.Nm),
			message.Length("limit", enough.Nm), message.LengthRounded("less", less.Nm, unit.Down)),
	}, c.Moves)
}

func (j *judge) binds(f *piece.Fit, across string, is piece.Figure, moves address.Address, source string) {
	none := j.Ledger.Leaf("no clearance", 0, ledger.HouseRule, source)
	x := plan.Finding{Status: plan.Fail, Severity: diag.Error, Code: CodeBinds, Address: f.Address, Where: f.Where, Is: &is, Limit: &none, Source: source, Figures: j.out.Moistures(true),
		Text: message.New("check.season.binds", message.Address("fit", f.Address), message.Word("across", "fit."+across), message.LengthRounded("over", -is.Nm, unit.Up)),
	}
	var leave piece.Figure
	switch across {
	case "sides":
		leave = f.Sides
	case "above":
		leave = f.Above
	case "behind":
		leave = f.Behind
	}
	to := leave.Nm - is.Nm
	x.Remedy = []diag.Remedy{j.out.Rewrite(message.New("check.season.leave", message.LengthRounded("to", to, unit.Up)), leave, to, unit.Up)}
	j.out.Add(x, moves)
}

// moves reports whether a part changes its size along an axis with the seasons.
func (j *judge) moves(p *piece.Part, a piece.Axis) bool {
	local, _ := p.Frame.LocalOf(a)
	return !j.index.Sheet(p) && local != piece.AlongLength
}
