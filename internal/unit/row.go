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
