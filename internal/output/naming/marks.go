package naming

import (
	"slices"
	"strings"

	"scantling/internal/address"
	"scantling/internal/plan"
)

// Marks shortens a list of marks: where every row of a family stands in it, the
// family's mark alone stands for them all ("C1" for C1.1 to C1.6).
func (n *Names) Marks(marks []string) []string {
	have := map[string]int{}
	for _, m := range marks {
		have[family(m)]++
	}
	var out []string
	for _, m := range marks {
		f := family(m)
		if f != m && have[f] == n.families[f] {
			m = f
		}
		if !slices.Contains(out, m) {
			out = append(out, m)
		}
	}
	return out
}

// Family is the mark that stands for all rows of a mark's family, or the mark
// itself where it is the only one.
func (n *Names) Family(mark string) string {
	if f := family(mark); n.families[f] > 1 {
		return f
	}
	return mark
}

// family is a mark up to its first point.
func family(mark string) string {
	f, _, _ := strings.Cut(mark, ".")
	return f
}

// RowOf returns the row that a part belongs to.
func (n *Names) RowOf(a address.Address) (plan.PartRow, bool) {
	r, ok := n.rows[a]
	return r, ok
}

// Mark returns the mark of a part, "" for anything else.
func (n *Names) Mark(a address.Address) string { return n.rows[a].Mark }
