package contents

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/share"
	"scantling/internal/unit"
)

// Stows is [Stow] as a declared analysis.
var Stows = analysis.Declare(analysis.Info{
	Name: "stowing", Kind: analysis.Derive,
	Doc: "What room do jars, boxes, sheets and coins need, what have they, and what is spare?",
}, func(c *analysis.Context) ([]plan.Stowed, diag.List) {
	return Stow(c.Piece, c.Ledger), nil
})

var along = [3]string{"right", "back", "up"}

// Stow returns how every lot stands in each of the spaces that hold it, in the
// order of the contents; once and without a space where the document names none.
//
// Several contents of one space stand in a row: in the direction in which all of
// them fit, else in that in which least is missing, the first of right, back, up.
func Stow(p *piece.Piece, l *ledger.Ledger) []plan.Stowed {
	spaces := map[address.Address]piece.Space{}
	for _, s := range p.Spaces {
		spaces[s.Address] = s
	}
	var out []plan.Stowed
	for i := range p.Contents {
		c := &p.Contents[i]
		if c.Lot == nil {
			continue
		}
		left := c.All()
		for _, at := range inOrNowhere(c.In) {
			here := min(left, c.Each())
			left -= here
			s := plan.Stowed{Of: c.Address, In: at, Count: here, Places: c.Lot.Places(), Needs: c.Lot.Needs, Sums: c.Lot.Sums}
			if grams, ok := c.Grams(); ok {
				s.Grams = float64(grams * float64(here))
			}
			if space, ok := spaces[at]; ok {
				s.Has = space.Clear
				for axis := range 3 {
					s.Spare[axis] = l.Less(string(c.Address)+".spare."+along[axis], s.Has[axis], s.Needs[axis])
				}
				s.More = more(c, space)
			}
			out = append(out, s)
		}
	}
	beside(out, l)
	return out
}

func inOrNowhere(in []address.Address) []address.Address {
	if len(in) == 0 {
		return []address.Address{""}
	}
	return in
}

// more returns how many cells besides its own a space would take of a lot.
func more(c *piece.Contents, s piece.Space) int {
	lot := c.Lot
	g := share.Grid{Cell: [2]unit.Length{lot.Cell[0].Nm, lot.Cell[1].Nm}, Divider: lot.Divider.Nm, Around: lot.Around.Nm}
	fit, _, err := g.FitIn([2]unit.Length{s.Clear[0].Nm, s.Clear[1].Nm - c.Finger.Nm})
	if err != nil {
		return 0
	}
	stack, err := share.HowMany(lot.Size[2].Nm, 0, s.Clear[2].Nm-c.Lining.Nm-lot.Above.Nm)
	if err != nil || fit.Columns < lot.Columns || fit.Rows < lot.Rows || stack < lot.Stack {
		return 0
	}
	return fit.Columns*fit.Rows*min(stack, share.MaxThings) - lot.Places()
}

// beside lays the contents of one space in a row.
func beside(all []plan.Stowed, l *ledger.Ledger) {
	in := map[address.Address][]int{}
	var order []address.Address
	for i, s := range all {
		if s.Has[0].Entry == 0 {
			continue
		}
		if in[s.In] == nil {
			order = append(order, s.In)
		}
		in[s.In] = append(in[s.In], i)
	}
	for _, at := range order {
		group := in[at]
		if len(group) < 2 {
			continue
		}
		axis := inRow(all, group)
		name := string(at) + ".spare." + along[axis]
		terms := []piece.Figure{all[group[0]].Has[axis]}
		for _, i := range group {
			terms = append(terms, all[i].Needs[axis])
		}
		spare := l.Less(name, terms...)
		for _, i := range group {
			all[i].Along, all[i].Spare[axis], all[i].More = along[axis], spare, 0
			for _, k := range group {
				if k != i && !slices.Contains(all[i].Beside, all[k].Of) {
					all[i].Beside = append(all[i].Beside, all[k].Of)
				}
			}
		}
	}
}

// inRow chooses the direction in which several contents of one space lie beside
// each other: the one that misses least.
func inRow(all []plan.Stowed, group []int) int {
	best, least := 0, unit.Length(-1)
	for axis := range 3 {
		over := unit.Length(0)
		for other := range 3 {
			need := unit.Length(0)
			for _, i := range group {
				if other == axis {
					need += all[i].Needs[other].Nm
				} else {
					need = max(need, all[i].Needs[other].Nm)
				}
			}
			over += max(0, need-all[group[0]].Has[other].Nm)
		}
		if least < 0 || over < least {
			best, least = axis, over
		}
	}
	return best
}
