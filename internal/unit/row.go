package unit

import (
	"cmp"
	"slices"
)

// ShowRow rounds the terms of a sum for showing, so that the figures as printed
// add up to the figure printed for their sum: what a reader adds up closes.
//
// The sum is rounded as s says; each term is then the multiple of [Show.Step]
// below it or, for as many terms as it takes, the one above: those with the
// greatest rests, earlier terms first among equals. So each term is shown
// within one step of its value, and a term that is a multiple of the step is
// shown as it is. Terms may be negative. With Both, the row closes in the
// master; for the other system call it again with [Show.In].
func ShowRow(terms []Length, s Show) []Length {
	step := s.Step()
	shown := make([]Length, len(terms))
	order := make([]int, len(terms))
	var sum, low Length
	for i, t := range terms {
		shown[i], order[i] = t.Round(step, Down), i
		sum, low = sum+t, low+shown[i]
	}
	slices.SortStableFunc(order, func(i, j int) int {
		return cmp.Compare(terms[j]-shown[j], terms[i]-shown[i])
	})
	for _, i := range order[:int((s.Round(sum)-low)/step)] {
		shown[i] += step
	}
	return shown
}

// Member is a term of a row that is shown in a coarser unit: one that is printed
// elsewhere too keeps the figure that it has there.
type Member struct {
	Length Length
	// Kept says that its figure is fixed: it is rounded to the side Toward.
	Kept   bool
	Toward Rounding
}

// CloseRow rounds the members of a row so that they add up, as printed, to the
// row's total rounded as s says. Members that are kept are rounded each to its own
// side; the others share what is left as [ShowRow] shares it, each within a step of
// its value. Where that cannot be done, one member takes the difference and takes
// is its index: the largest that is not kept, or else the largest; -1 if none does.
func CloseRow(members []Member, s Show) (shown []Length, takes int) {
	step := s.Step()
	shown = make([]Length, len(members))
	var free []int
	var sum, low Length
	may := 0 // members that may go up
	for i, m := range members {
		sum += m.Length
		side := m.Toward
		if !m.Kept {
			side, free = Down, append(free, i)
		}
		shown[i] = m.Length.Round(step, side)
		low += shown[i]
		if !m.Kept && shown[i] != m.Length {
			may++
		}
	}
	rest := int((s.Round(sum) - low) / step)
	if rest >= 0 && rest <= may {
		slices.SortStableFunc(free, func(i, j int) int {
			return cmp.Compare(members[j].Length-shown[j], members[i].Length-shown[i])
		})
		for _, i := range free[:rest] {
			shown[i] += step
		}
		return shown, -1
	}
	among := free
	if len(among) == 0 {
		for i := range members {
			among = append(among, i)
		}
	}
	takes = slices.MaxFunc(among, func(i, j int) int { return cmp.Compare(members[i].Length.Abs(), members[j].Length.Abs()) })
	for _, i := range free {
		if i != takes { // the others to the nearest, so that one alone is off
			near := members[i].Length.Round(step, Nearest)
			low, shown[i] = low+near-shown[i], near
		}
	}
	shown[takes] += s.Round(sum) - low
	return shown, takes
}
