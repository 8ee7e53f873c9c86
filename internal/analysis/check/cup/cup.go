package cup

import (
	_ "embed" // the help

	"math"
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/analysis/movement"
	"scantling/internal/diag"
	"scantling/internal/mechanics"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeCups: a board machined on one face cups while it waits.
	//
	// Example: a tray 278 wide with channels 8 deep, its core three points wetter than the room.
	CodeCups diag.Code = "cups-while-it-waits"
	// CodeBinds: it cups so far that it takes up the room of its fit.
	//
	// Example: a grooved lid with 0.3 above it.
	CodeBinds diag.Code = "cup-takes-the-room"
	// CodeUnknown: which way and how far boards cup is not known.
	//
	// Example: the tray without a reading of its core.
	CodeUnknown diag.Code = "core-not-read"
	// CodeNoWood: how the wood of a board moves is not known.
	//
	// Example: a tray of a timber that the catalogue does not have.
	CodeNoWood diag.Code = "cup-not-known"
	// CodeFlat: what is machined on one face stays flat enough.
	//
	// Example: a tray 84 wide with channels 2 deep.
	CodeFlat diag.Code = "waits-flat"
)

// rule is the house's own limit.
const rule = "cup while it waits"

// usual is the cup that a board is let wait with. Common practice, no source.
var usual = verdict.Practice("check.cup", unit.Millimetre)

// points is how far a core that nobody read may be from what the room gives, in points
// of moisture content. Common practice, no source.
const points = 4

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "cup", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, movement.Seasons},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{index: bodies.Of(c), out: verdict.Of("cup", c)}
	j.house = j.out.Limit(rule, usual)
	for _, x := range movement.Seasons.Get(c).Cups {
		j.cup(x)
	}
	j.unread()
	return j.out.Done(CodeFlat, message.New("check.cup.flat")), nil
})

type judge struct {
	index *bodies.Index
	out   *verdict.Findings
	house verdict.Limit
	// open are the boards whose core must be read.
	open []plan.Cup
}

// cup judges equal boards as they lie flat on the bench, by the one with the least room.
func (j *judge) cup(x plan.Cup) {
	flat, ok := kept(x, mechanics.FlatOnBench)
	if !ok {
		return
	}
	j.out.Judged()
	at, limit, fit := x.Parts[0], j.house.Figure, address.Address("")
	for _, a := range x.Parts {
		if room, of, ok := j.room(a); ok && room.Nm < limit.Nm {
			at, limit, fit = a, room, of
		}
	}
	each, low, high, known := flat.PerPoint.Lengths()
	_, least, most, read := flat.Rise.Lengths()
	switch {
	case !known:
		if p := j.index.Part(at); p != nil {
			j.out.Unknown(CodeNoWood, message.New("check.cup.no-wood", message.Text("mark", j.out.Mark(at))), at, p.Where, x.Parts...)
		}
	case !read && points*max(away(each), away(low), away(high)) > limit.Nm:
		j.open = append(j.open, x)
	case read && max(away(least), away(most)) > limit.Nm:
		j.tell(x, flat, at, limit, fit)
	}
}

// tell adds the finding about a board that cups beyond a limit, its fit's where there is
// one.
func (j *judge) tell(x plan.Cup, flat plan.Kept, at address.Address, limit piece.Figure, fit address.Address) {
	p := j.index.Part(at)
	if p == nil {
		return
	}
	rise, least, most, _ := flat.Rise.Lengths()
	edge, _ := kept(x, mechanics.OnEdge)
	left, _, _, _ := edge.Rise.Lengths()
	code, key, cite := CodeCups, "check.cup.cups", j.house.Source
	if fit != "" {
		code, key, cite = CodeBinds, "check.cup.room", string(fit)+" (stated)"
	}
	f := flat.Rise.Figure()
	j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: code, Address: at, Where: p.Where, Is: &f, Limit: &limit,
		Figures: []plan.Quantity{verdict.Quantity(plan.RoleIs, flat.Rise), verdict.Quantity(plan.RoleWorst, flat.Worst), verdict.Quantity(plan.RoleLoad, x.Flatten)},
		Source:  cite + "; " + verdict.Cite(flat.Rise.Source),
		Text: message.New(key, message.Text("mark", j.out.Mark(at)), message.Length("wide", x.Width.Nm), message.Length("deep", x.Deep.Nm),
			message.Percent("core", x.Core.Float()), message.Percent("room", math.Round(x.Room.Float()*10)/10), message.Word("way", way(rise)),
			message.LengthRounded("high", max(away(least), away(most)), unit.Up), message.LengthRounded("limit", limit.Nm, unit.Down),
			message.Count("hours", int(flat.Worst.Value.Float())), message.LengthRounded("later", j.later(flat), unit.Nearest),
			message.LengthRounded("edge", away(left), unit.Up)),
	}, x.Parts...)
}

// later is what is left of a rise after two weeks: as much of it as of a point's.
func (j *judge) later(k plan.Kept) unit.Length {
	each, _, _, _ := k.PerPoint.Lengths()
	after, _, _, _ := k.Later.Lengths()
	rise, _, _, _ := k.Rise.Lengths()
	if each == 0 {
		return 0
	}
	return away(unit.FromMillimetres(rise.Millimetres() * after.Millimetres() / each.Millimetres()))
}

// room is what the fit of a moving group leaves across the thickness of a part that is its
// outside there, with the fit's address; false where it is in none.
func (j *judge) room(part address.Address) (piece.Figure, address.Address, bool) {
	p := j.index.Part(part)
	if p == nil {
		return piece.Figure{}, "", false
	}
	axis, _ := p.Frame.Thickness.Axis()
	for _, m := range j.index.Moves() {
		if m.Fit == nil || !m.Has(part) || p.Extent[axis].Low.Nm > m.Extent[axis].Low.Nm && p.Extent[axis].High.Nm < m.Extent[axis].High.Nm {
			continue
		}
		of := map[piece.Axis]piece.Figure{piece.Right: m.Fit.Sides, piece.Up: m.Fit.Above, piece.Back: m.Fit.Behind}[axis]
		return of, m.Fit.Address, of.Nm > 0
	}
	return piece.Figure{}, "", false
}

// unread tells once of all boards whose core must be read, and where the reading goes.
func (j *judge) unread() {
	if len(j.open) == 0 {
		return
	}
	var parts []address.Address
	var boards []message.Arg
	worst, first := plan.Cup{}, j.index.Part(j.open[0].Parts[0])
	most := unit.Length(-1)
	for _, x := range j.open {
		parts = append(parts, x.Parts...)
		flat, _ := kept(x, mechanics.FlatOnBench)
		if each, _, _, _ := flat.PerPoint.Lengths(); away(each) > most {
			worst, most = x, away(each)
		}
		if p := j.index.Part(x.Parts[0]); p != nil {
			m, _ := j.index.Material(p)
			if m.Stock != "" && !slices.ContainsFunc(boards, func(a message.Arg) bool { return a.S == m.Stock }) {
				boards = append(boards, message.Text("", m.Stock))
			}
		}
	}
	if first == nil {
		return
	}
	key := "check.cup.unread"
	if len(boards) == 0 {
		key = "check.cup.unread-bought"
	}
	args := []message.Arg{message.Text("mark", j.out.Mark(worst.Parts[0])), message.Length("wide", worst.Width.Nm), message.Length("deep", worst.Deep.Nm),
		message.LengthRounded("each", most, unit.Nearest)}
	if len(boards) > 0 {
		args = append(args, message.List("boards", boards...))
	}
	j.out.Unknown(CodeUnknown, message.New(key, args...), first.Address, first.Where, parts...)
}

func kept(x plan.Cup, how mechanics.Keeping) (plan.Kept, bool) {
	for _, k := range x.Kept {
		if k.How == string(how) {
			return k, true
		}
	}
	return plan.Kept{}, false
}

// way is the word for the face that is hollow.
func way(rise unit.Length) string {
	if rise < 0 {
		return "cup.back"
	}
	return "cup.machined"
}

func away(l unit.Length) unit.Length { return max(l, -l) }
