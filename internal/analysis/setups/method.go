package setups

import (
	"cmp"
	"slices"

	"scantling/internal/unit"
)

// Method is how a row of equal cuts is measured; its text is a key of words
// below "method.".
type Method string

// The methods.
const (
	OneEdge   Method = "one-edge"
	BothEdges Method = "both-edges"
	Spacers   Method = "spacers"
)

// Choice is what a method costs: settings of the fence, spacers to be made, and
// the greatest error that a land or a margin may then have.
type Choice struct {
	Method   Method
	Settings int
	Made     int // spacers
	Error    unit.Length
}

// Methods compares the ways to measure a row of n equal cuts, distinct of them
// at different distances when each is measured from the nearer edge, pitch apart
// evenly or not. fence is the accuracy of the machine, width that of the part's
// width, spacer that of a spacer.
//
// From one edge each cut carries one setting's error, a land two, and the far
// margin one and the width's. From both edges the land in the middle takes two
// and the width's. By spacers every land takes one spacer's, and the far margin
// all of them, the setting's and the width's. Arithmetic on the shop's figures;
// no source. The best comes first: the fewest settings and spacers among those
// within limit, or the least error if none is.
func Methods(n, distinct int, even bool, fence, width, spacer, limit unit.Length) []Choice {
	out := []Choice{{OneEdge, n, 0, max(2*fence, fence+width)}}
	if distinct < n {
		out = append(out, Choice{BothEdges, distinct, 0, 2*fence + width})
	}
	if even && n > 1 {
		out = append(out, Choice{Spacers, 1, n - 1, fence + unit.Length(n-1)*spacer + width})
	}
	slices.SortStableFunc(out, func(a, b Choice) int {
		within := cmp.Compare(beyond(a.Error, limit), beyond(b.Error, limit))
		if within != 0 {
			return within
		}
		if a.Error > limit {
			return cmp.Compare(a.Error, b.Error)
		}
		return cmp.Or(cmp.Compare(a.Settings+a.Made, b.Settings+b.Made), cmp.Compare(a.Error, b.Error))
	})
	return out
}

func beyond(e, limit unit.Length) int {
	if e > limit {
		return 1
	}
	return 0
}
