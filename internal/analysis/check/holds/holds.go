package holds

import (
	_ "embed" // the help
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/reach"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/contents"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeTooLarge: contents do not go into the space that is to hold them.
	//
	// Example: six cells of 46 and 4 around, 280, in a drawer of 279.
	CodeTooLarge diag.Code = "contents-do-not-fit"
	// CodePasses: a thing does not go through its opening.
	//
	// Example: a tablet of 250 by 180 by 8 through an opening of 175 by 100.
	CodePasses diag.Code = "thing-does-not-pass"
	// CodeLid: a hinged lid strikes a cap or a shoulder as it opens.
	//
	// Example: a lid that passes at 132.5 over caps that reach 133.
	CodeLid diag.Code = "lid-strikes"
	// CodeGrip: too little stands out of its cell to be picked up.
	//
	// Example: bottles of 58 between dividers of 50.
	CodeGrip diag.Code = "too-little-to-grip"
	// CodeFinger: too little room between two rods for a finger.
	//
	// Example: handles of 25 at a pitch of 35.
	CodeFinger diag.Code = "no-room-for-a-finger"
	// CodeLining: a lining narrows a channel so that its rod rides on the edges.
	//
	// Example: a handle of 25 in a channel of a 25.4 cutter with 1 of felt.
	CodeLining diag.Code = "lining-lifts"
	// CodeLong: a rod is longer than its stopped channel.
	//
	// Example: a gouge of 262 in a channel whose flat bottom is 260 long.
	CodeLong diag.Code = "longer-than-channel"
	// CodeUsual: sizes were taken from a table and not measured.
	//
	// Example: like = "spice jar".
	CodeUsual diag.Code = "usual-sizes"
	// CodeNowhere: nothing says where contents stand.
	//
	// Example: jars without in = space.inside.
	CodeNowhere diag.Code = "contents-nowhere"
	// CodeHolds: everything goes in and comes out.
	//
	// Example: six cells of 46 and 4 around in a drawer of 280.
	CodeHolds diag.Code = "contents-fit"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "holds", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, contents.Analysis, contents.Stows},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, index: bodies.Of(c), out: verdict.Of("holds", c), spaces: map[address.Address]*piece.Space{}, by: map[address.Address]*piece.Contents{}}
	for i := range c.Piece.Spaces {
		j.spaces[c.Piece.Spaces[i].Address] = &c.Piece.Spaces[i]
	}
	for i := range c.Piece.Contents {
		x := &c.Piece.Contents[i]
		j.by[x.Address] = x
		if x.Lot != nil {
			j.usual(x)
			j.passes(x)
			j.grip(x)
			j.lid(x)
		}
	}
	j.stowed(contents.Stows.Get(c))
	j.rods(contents.Analysis.Get(c))
	return j.out.Done(CodeHolds, message.New("check.holds.right")), nil
})

type judge struct {
	*analysis.Context
	index  *bodies.Index
	out    *verdict.Findings
	spaces map[address.Address]*piece.Space
	by     map[address.Address]*piece.Contents
}

func label(c *piece.Contents) message.Arg { return message.Text("contents", c.Label) }

// usual tells of sizes that nobody measured.
func (j *judge) usual(c *piece.Contents) {
	if c.From == "" {
		return
	}
	j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Note, Code: CodeUsual, Address: c.Address, Where: c.Where, Source: "contents.usual (" + c.Status + ")",
		Text: message.New("check.holds.usual", label(c), message.Text("thing", c.From), message.Word("status", "figure-status."+c.Status))})
}

var directions = [3]string{"size.wide", "size.deep", "size.high"}

// stowed holds what contents need against what their space has.
func (j *judge) stowed(all []plan.Stowed) {
	told := map[address.Address]bool{}
	for i := range all {
		s := &all[i]
		c := j.by[s.Of]
		if s.In == "" {
			j.out.Unknown(CodeNowhere, message.New("check.holds.nowhere", label(c)), c.Address, c.Where)
			continue
		}
		space := j.spaces[s.In]
		if space == nil {
			continue // the space could not be worked out, which has been told
		}
		j.out.Judged()
		for axis := range 3 {
			row := axis == slices.Index([]string{"right", "back", "up"}, s.Along)
			if s.Spare[axis].Nm >= 0 || row && told[s.In] {
				continue
			}
			told[s.In] = told[s.In] || row
			j.tooLarge(c, s, space, axis, row)
		}
	}
}

// tooLarge says which size is missed, by how much, and what would do.
func (j *judge) tooLarge(c *piece.Contents, s *plan.Stowed, space *piece.Space, axis int, row bool) {
	over := -s.Spare[axis].Nm
	has := s.Has[axis]
	needs := j.Ledger.Less(string(c.Address)+".needs", has, s.Spare[axis])
	args := []message.Arg{label(c), message.Word("size", directions[axis]), message.LengthRounded("is", needs.Nm, unit.Up),
		message.LengthRounded("limit", has.Nm, unit.Down), message.LengthRounded("over", over, unit.Up)}
	f := plan.Finding{Status: plan.Fail, Severity: diag.Error, Code: CodeTooLarge, Address: c.Address, Where: c.Where, Is: &needs, Limit: &has, Source: "contents.inside (computed)"}
	if row {
		beside := make([]message.Arg, len(s.Beside))
		for i, b := range s.Beside {
			beside[i] = message.Text("", j.by[b].Label)
		}
		f.Text = message.New("check.holds.beside", append(args, message.List("beside", beside...))...)
	} else {
		f.Text = message.New("check.holds.too-large", args...)
		f.Remedy = append(f.Remedy, j.fewer(c, s, axis)...)
	}
	f.Remedy = append(f.Remedy, j.less(c, s, axis, over)...)
	if !slices.ContainsFunc(f.Remedy, func(r diag.Remedy) bool { return len(r.Edits) > 0 }) {
		f.Remedy = append(f.Remedy, reach.Rewrite(j.Context, message.New("check.holds.roomier", message.Word("size", directions[axis]), message.LengthRounded("to", needs.Nm, unit.Up)), has, needs.Nm, unit.Up))
	}
	f.Near = append(f.Near, string(space.Address))
	j.out.Add(f)
}

// fewer says how many go in as the space is.
func (j *judge) fewer(c *piece.Contents, s *plan.Stowed, axis int) []diag.Remedy {
	n, word := []int{c.Lot.Columns, c.Lot.Rows, c.Lot.Stack}[axis], []string{"columns", "rows", "stack"}[axis]
	cell := c.Lot.Size[2].Nm
	if axis < 2 {
		cell = c.Lot.Cell[axis].Nm + c.Lot.Divider.Nm
	}
	over := -s.Spare[axis].Nm
	drop := int((over + cell - 1) / max(cell, 1))
	if drop >= n {
		return nil
	}
	left := c.Lot.Places() / n * (n - drop)
	return []diag.Remedy{{Text: message.New("check.holds.fewer", message.Word("what", "lot."+word), message.Count("to", n-drop), message.Count("places", left))}}
}

// less offers to take what is missing from one of the rooms that the document
// gives, where that is enough: what is left over them, around them, for fingers,
// and of the play as long as half a millimetre stays.
func (j *judge) less(c *piece.Contents, s *plan.Stowed, axis int, over unit.Length) []diag.Remedy {
	figure := map[string]piece.Figure{"above": c.Lot.Above, "around": c.Lot.Around, "finger": c.Finger, "play": c.Play}
	for _, a := range s.Sums[axis] {
		room, known := figure[a.Word]
		if !known || a.Times < 1 {
			continue
		}
		to := room.Nm - (over+unit.Length(a.Times)-1)/unit.Length(a.Times)
		if to < 0 || a.Word == "play" && to < unit.Millimetre/2 {
			continue
		}
		return []diag.Remedy{j.out.Rewrite(message.New("check.holds.less", message.Word("what", "room."+a.Word), message.LengthRounded("to", to, unit.Down)), room, to, unit.Down)}
	}
	return nil
}
