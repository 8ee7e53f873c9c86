// Package collision judges whether two finished parts claim the same wood.
//
// In: the finished solids of all parts where they stand. Out: a failure for every
// pair whose solids overlap, with how deep they are in each other and whether a
// joint stands between them; unknown for every part whose solid is unverified and
// every pair that could not be judged; a pass if nothing was found and there was
// something to look at.
//
// The depth is how far one of the two would have to move to be clear, by the
// kernel, on the faceted solids. Less than [Limit] is nothing: parts that touch
// are computed in frames of their own and may differ by rounding.
package collision
