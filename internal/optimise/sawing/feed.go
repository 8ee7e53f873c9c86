package sawing

import "scantling/internal/optimise/problem"

// Feeds says whether every piece that is put to the saw is large enough.
func Feeds(root *problem.Node, feed problem.Feed, form problem.Form) bool {
	if feed == (problem.Feed{}) {
		return true
	}
	for n := range root.Nodes() {
		if n.Kind != problem.Sawn {
			continue
		}
		long, short := n.Length, n.Width
		if form == problem.Boards {
			short = feed.Short
		} else if short > long {
			long, short = short, long
		}
		if long < feed.Long || short < feed.Short {
			return false
		}
	}
	return true
}
