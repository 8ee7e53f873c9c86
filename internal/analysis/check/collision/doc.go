// Package collision judges whether two finished parts claim the same wood.
//
// In: the parts with all their cuts, and their solids. Out: a failure for every
// pair that overlaps, with how deep they are in each other and whether a joint
// stands between them; unknown for every part whose solid is unverified and is
// needed, and every pair that could not be judged; a pass if nothing was found
// and there was something to look at.
//
// Most pairs are cleared exactly, without solids: boxes that hold all the wood of
// either, bodies less their square cuts, share nothing. Only the others are
// judged on finished solids. What has been measured as clear counts as clear for
// what moves in it, although the parts round it are drawn where they were planned.
// The depth is how far one of the two would have to
// move to be clear, by the kernel. Less than [Limit] is nothing: parts that touch
// are computed in frames of their own and may differ by rounding.
package collision
