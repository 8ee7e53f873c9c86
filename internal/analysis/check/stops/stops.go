package stops

import (
	_ "embed" // the help
	"strings"

	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// Codes of the findings.
const (
	// CodeNoStop: nothing stops a drawer when it is pushed in.
	//
	// Example: a drawer in a case without back and without stops.
	CodeNoStop diag.Code = "stop-missing"
	// CodeBackStops: only the case's back stops a drawer.
	//
	// Example: a drawer in a case with a back, without stops behind the front.
	CodeBackStops diag.Code = "back-is-the-stop"
	// CodeNoOutStop: nothing keeps a drawer from falling out.
	//
	// Example: a drawer without a turn-button.
	CodeNoOutStop diag.Code = "out-stop-missing"
	// CodeCaptive: a drawer cannot be taken out.
	//
	// Example: stops on the divider in front of a drawer back that reaches down to it.
	CodeCaptive diag.Code = "drawer-captive"
	// CodeBehind: no room is left behind the drawer in the driest season.
	//
	// Example: 2 of room behind a drawer in a case that loses 3.
	CodeBehind diag.Code = "no-room-behind"
	// CodeBehindUnknown: what the case loses in the driest season is not known.
	//
	// Example: a case of a timber that the catalogue does not have.
	CodeBehindUnknown diag.Code = "room-behind-unknown"
	// CodeNoSpace: nothing says in which space a drawer moves.
	//
	// Example: a fit inside a space that the piece does not have.
	CodeNoSpace diag.Code = "drawer-space-unknown"
	// CodeStopped: every drawer has its stops and room behind.
	//
	// Example: stops behind the front, a turn-button, 8 clear behind.
	CodeStopped diag.Code = "drawers-stopped"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "stops", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, index: bodies.Of(c), out: verdict.Of("stops", c)}
	for _, m := range j.index.Moves() {
		switch {
		case len(m.Parts) == 0:
		case m.Space == nil:
			j.out.Unknown(CodeNoSpace, message.New("check.stops.no-space", message.Address("group", m.Group.Address)), m.Group.Address, m.Group.Where)
		default:
			j.move(m)
		}
	}
	return j.out.Done(CodeStopped, message.New("check.stops.stopped")), nil
})

type judge struct {
	*analysis.Context
	index *bodies.Index
	out   *verdict.Findings
}

// fail adds a finding about a drawer.
func (j *judge) fail(m bodies.Move, code diag.Code, text message.Message, is, limit *plan.Figure, source string) {
	x := plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: code, Text: text, Address: m.Group.Address, Where: m.Group.Where, Is: is, Limit: limit, Source: source}
	if f := m.Fronts(); len(f) > 0 {
		j.out.Add(x, f[0].Address)
		return
	}
	j.out.Add(x)
}

func (j *judge) move(m bodies.Move) {
	j.out.Judged()
	name := message.Address("group", m.Group.Address)
	const practice = "check.drawer-stops (practice)"
	behind, before := j.meets(m, true), j.meets(m, false)
	switch {
	case behind == nil:
		j.fail(m, CodeNoStop, message.New("check.stops.no-stop", name), nil, nil, practice)
	case behind.Extent[piece.Back].Low.Nm >= m.Extent[piece.Back].High.Nm && !block(behind, m):
		room := j.Ledger.Less(string(m.Group.Address)+".behind", behind.Extent[piece.Back].Low, m.Extent[piece.Back].High)
		j.fail(m, CodeBackStops, message.New("check.stops.back", name, message.Text("mark", j.out.Mark(behind.Address)), message.Length("is", room.Nm)), &room, nil, practice)
	}
	switch {
	case before != nil:
		j.fail(m, CodeCaptive, message.New("check.stops.captive", name, message.Text("mark", j.out.Mark(before.Address))), nil, nil, practice)
	case !j.held(m):
		j.fail(m, CodeNoOutStop, message.New("check.stops.no-out-stop", name), nil, nil, practice)
	}
	j.behind(m)
}

// meets returns the part that the drawer's wood meets first on its way back or to
// the front, nil if there is none.
func (j *judge) meets(m bodies.Move, back bool) *piece.Part {
	var found *piece.Part
	var least bodies.Span
	for i := range j.Piece.Parts {
		p := &j.Piece.Parts[i]
		e := bodies.Body(p)
		if m.Has(p.Address) || !apiece(e, m, piece.Right) || !apiece(e, m, piece.Up) {
			continue
		}
		for _, o := range j.index.WoodOf(p) {
			for _, q := range m.Parts {
				for _, w := range j.index.WoodOf(q) {
					if !w[piece.Right].Overlaps(o[piece.Right]) || !w[piece.Up].Overlaps(o[piece.Up]) {
						continue
					}
					way := bodies.Span{Low: w[piece.Back].High, High: o[piece.Back].Low}
					if !back {
						way = bodies.Span{Low: o[piece.Back].High, High: w[piece.Back].Low}
					}
					if way.Size() >= 0 && (found == nil || way.Size() < least.Size()) {
						found, least = p, way
					}
				}
			}
		}
	}
	return found
}

// block reports whether a part is a stop that was put there for it, not the case's
// back: no wider than half of the drawer.
func block(p *piece.Part, m bodies.Move) bool {
	return 2*p.Extent[piece.Right].Size() <= m.Extent[piece.Right].High.Nm-m.Extent[piece.Right].Low.Nm
}

// apiece reports whether a box and a drawer share a stretch along an axis.
func apiece(b bodies.Box, m bodies.Move, a piece.Axis) bool {
	return b[a].Overlaps(bodies.Span{Low: m.Extent[a].Low.Nm, High: m.Extent[a].High.Nm})
}

// held reports whether hardware keeps the drawer from falling out.
func (j *judge) held(m bodies.Move) bool {
	for _, h := range j.Piece.Hardware {
		if h.Count == 0 || !m.Holds(h.On) && !m.Holds(h.Address) {
			continue
		}
		kind := strings.ToLower(strings.ReplaceAll(h.Kind, "-", " "))
		for _, word := range []string{"turn button", "stop", "runner", "slide", "chain"} {
			if strings.Contains(kind, word) {
				return true
			}
		}
	}
	return false
}

// behind judges the room behind the drawer when the case is driest.
func (j *judge) behind(m bodies.Move) {
	room := j.Ledger.Less(string(m.Group.Address)+".room", m.Space.Extent[piece.Back].High, m.Extent[piece.Back].High)
	var worst piece.Figure
	for i := range j.Piece.Parts {
		p := &j.Piece.Parts[i]
		if local, _ := p.Frame.LocalOf(piece.Back); m.Has(p.Address) || local == piece.AlongLength || !beside(p, m.Space) {
			continue
		}
		material, known := j.index.Material(p)
		stretch := j.Ledger.Less(string(p.Address)+".stretch", m.Space.Extent[piece.Back].High, p.Extent[piece.Back].Low)
		_, shrinks, err := j.out.Season(string(p.Address)+".depth", material, stretch)
		if err != nil || !known {
			j.out.Unknown(CodeBehindUnknown, message.New("check.stops.behind-unknown", message.Address("group", m.Group.Address), message.Text("mark", j.out.Mark(p.Address)), message.Text("wood", material.Species)),
				m.Group.Address, m.Group.Where, p.Address)
			return
		}
		if shrinks.Nm > worst.Nm || worst.Entry == 0 {
			worst = shrinks
		}
	}
	if worst.Entry == 0 || room.Nm >= worst.Nm {
		return
	}
	j.fail(m, CodeBehind, message.New("check.stops.behind", message.Address("group", m.Group.Address), message.Length("is", room.Nm), message.Length("limit", worst.Nm)),
		&room, &worst, "timber.movement-narrow")
}

// beside reports whether a part bounds a space at its left, right, top or bottom.
func beside(p *piece.Part, s *piece.Space) bool {
	b := bodies.Body(p)
	touch := func(a piece.Axis) bool {
		e := s.Extent[a]
		return b[a].High == e.Low.Nm || b[a].Low == e.High.Nm
	}
	share := func(a piece.Axis) bool {
		return b[a].Overlaps(bodies.Span{Low: s.Extent[a].Low.Nm, High: s.Extent[a].High.Nm})
	}
	return share(piece.Back) && (touch(piece.Right) && share(piece.Up) || touch(piece.Up) && share(piece.Right))
}
