package holds

import (
	"errors"

	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/share"
	"scantling/internal/unit"
)

// passes holds one thing against the openings that it is put in through: the two
// sizes of a clear space that its open sides leave.
func (j *judge) passes(c *piece.Contents) {
	var thing [3]unit.Length
	for i, f := range c.Lot.Size {
		thing[i] = f.Nm
	}
	for _, at := range c.Through {
		s := j.spaces[at]
		if s == nil {
			continue
		}
		a, b := opening(s)
		over, err := share.Passes(thing, [2]unit.Length{a.Nm, b.Nm})
		if err != nil || over == 0 {
			continue
		}
		least := j.Ledger.Least(string(at)+".opening", a, b)
		is := j.Ledger.Least(string(c.Address)+".least", c.Lot.Size[0], c.Lot.Size[1], c.Lot.Size[2])
		if is.Nm <= least.Nm { // the next size is the one that does not pass
			least, is = j.Ledger.Greatest(string(at)+".opening", a, b), j.middle(c)
		}
		j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Error, Code: CodePasses, Address: c.Address, Where: c.Where, Is: &is, Limit: &least, Source: "contents.opening (computed)",
			Near: []string{string(at)},
			Text: message.New("check.holds.passes", label(c), message.LengthRounded("is", is.Nm, unit.Up), message.LengthRounded("limit", least.Nm, unit.Down), message.LengthRounded("over", is.Nm-least.Nm, unit.Up))})
	}
}

// middle is the size of a thing between its least and its greatest.
func (j *judge) middle(c *piece.Contents) piece.Figure {
	s, l, name := c.Lot.Size, j.Ledger, string(c.Address)+".middle"
	low, high := l.Least("", s[0], s[1]), l.Greatest("", s[0], s[1])
	return l.Greatest(name, low, l.Least("", high, s[2]))
}

// opening returns the two sizes that a thing passes between: across the direction
// in which the space is open at both sides or at one, else across its least size.
func opening(s *piece.Space) (a, b piece.Figure) {
	through, most := 0, -1
	for axis := range 3 {
		open := 0
		for _, bound := range s.Bounds[2*axis : 2*axis+2] {
			if bound == "" {
				open++
			}
		}
		if open > most || open == most && s.Clear[axis].Nm < s.Clear[through].Nm {
			through, most = axis, open
		}
	}
	return s.Clear[(through+1)%3], s.Clear[(through+2)%3]
}

// grip holds what stands out of the dividers against what thumb and finger want.
func (j *judge) grip(c *piece.Contents) {
	lot := c.Lot
	if lot.DividerHigh.Entry == 0 || lot.DividerHigh.Nm == 0 {
		return
	}
	limit := j.out.Limit("least grip", share.LeastGrip())
	stands := j.Ledger.Times(string(c.Address)+".stands", lot.Size[2], int64(lot.Stack), 1)
	proud := j.Ledger.Less(string(c.Address)+".proud", stands, lot.DividerHigh)
	if proud.Nm >= limit.Nm {
		return
	}
	to := stands.Nm - limit.Nm
	f := plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeGrip, Address: c.Address, Where: c.Where, Is: &proud, Limit: &limit.Figure, Source: limit.Source,
		Text: message.New("check.holds.grip", label(c), message.LengthRounded("is", proud.Nm, unit.Down), message.LengthRounded("limit", limit.Nm, unit.Up))}
	if to > 0 {
		f.Remedy = []diag.Remedy{j.out.Rewrite(message.New("check.holds.divider", message.LengthRounded("to", to, unit.Down)), lot.DividerHigh, to, unit.Down)}
	}
	j.out.Add(f)
}

// lid holds the swing of a hinged lid against the front row: what stands above the
// rim, at its cap and at its shoulder, with its play towards the lid.
func (j *judge) lid(c *piece.Contents) {
	lid, lot, l, name := c.Lot.Lid, c.Lot, j.Ledger, string(c.Address)+".lid"
	if lid == nil {
		lid = j.hinged(c)
	}
	if lid == nil {
		return
	}
	l.Learn(ledger.Functions{"swing": swing})
	// The centre of the front row, counted from the hinge line.
	cells := l.Times("", l.Sum("", lot.Cell[1], lot.Divider), int64(lot.Rows-1), 1)
	centre := l.Sum(name+".centre", lid.Back, lot.Around, cells, l.Half("", lot.Cell[1]))
	play := l.Half(name+".play", c.Play)
	top := l.Sum("", c.Lining, l.Times("", lot.Size[2], int64(lot.Stack), 1))
	cap := lot.Size[1]
	if lot.Cap.Nm > 0 {
		cap = lot.Cap
	}
	heights := []piece.Figure{top}
	widths := []piece.Figure{cap}
	if lot.Shoulder.Nm > 0 && lot.Stack == 1 {
		heights, widths = append(heights, l.Sum("", c.Lining, lot.Shoulder)), append(widths, lot.Diameter)
	}
	for i, word := range []string{"lid.top", "lid.shoulder"}[:len(heights)] {
		above := l.Less(name+".above", heights[i], lid.Rim)
		if above.Nm <= 0 {
			continue
		}
		reach := l.Sum(name+".reach", centre, l.Half("", widths[i]), play)
		passes, err := l.Call(name+".passes", "swing", lid.Arm.Entry, above.Entry)
		if err != nil || passes.Nm >= reach.Nm {
			continue
		}
		under := share.Swing{Arm: lid.Arm.Nm}.Under(reach.Nm)
		j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Error, Code: CodeLid, Address: c.Address, Where: c.Where, Is: &reach, Limit: &passes, Source: "contents.swing (computed)",
			Text: message.New("check.holds.lid", label(c), message.Word("what", word), message.LengthRounded("above", above.Nm, unit.Up),
				message.LengthRounded("is", reach.Nm, unit.Up), message.LengthRounded("limit", passes.Nm, unit.Down), message.LengthRounded("over", reach.Nm-passes.Nm, unit.Up), message.LengthRounded("under", under, unit.Down))})
	}
}

// swing is share.Swing.At for the ledger: the arm and the height.
func swing(args []unit.Value) (unit.Value, error) {
	var l [2]unit.Length
	if len(args) != 2 {
		return unit.Value{}, errSwing
	}
	for i, a := range args {
		length, ok := a.Length()
		if !ok || length < 0 || length > unit.MaxLength {
			return unit.Value{}, errSwing
		}
		l[i] = length
	}
	return unit.OfLength(share.Swing{Arm: l[0]}.At(l[1])), nil
}

var errSwing = errors.New("the swing of a lid takes its arm and a height")
