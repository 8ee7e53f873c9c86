package share

import (
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// MaxGroups bounds the groups that things are dealt out to.
const MaxGroups = 256

// Deal divides things into n groups, in their order, so that the widest group is
// as narrow as can be and, among such divisions, the groups are as equal as can
// be (least sum of squares of their widths). Every thing lands exactly once; with
// fewer things than groups the last groups are empty. A bundle that must stay
// together is dealt as one thing. Ties put more into the earlier group.
//
// Errors: "share.no-groups" for n below 1 or above [MaxGroups];
// "share.too-many-things"; "figure.length-range" for a width below zero or a
// total above a kilometre.
func Deal[T any](things []T, width func(T) unit.Length, n int) ([][]T, error) {
	if n < 1 || n > MaxGroups {
		return nil, figure.Refuse("share.no-groups", message.Count("got", n), message.Count("most", MaxGroups))
	}
	if len(things) > MaxThings {
		return nil, tooMany(len(things))
	}
	upTo := make([]unit.Length, len(things)+1)
	for i, t := range things {
		w := width(t)
		if err := figure.LengthRange("share.deal", "quantity.thing", w, 0, maxRadius); err != nil {
			return nil, err
		}
		upTo[i+1] = upTo[i] + w
	}
	if err := figure.LengthRange("share.deal", "quantity.total", upTo[len(things)], 0, unit.MaxLength); err != nil {
		return nil, err
	}
	ends := balanced(upTo, min(n, max(1, len(things))))
	out := make([][]T, n)
	from := 0
	for k, to := range ends {
		out[k] = things[from:to:to]
		from = to
	}
	return out, nil
}

// widest returns the least width that lets n groups in order hold everything.
func widest(upTo []unit.Length, n int) unit.Length {
	low, high := unit.Length(0), upTo[len(upTo)-1]
	for i := 1; i < len(upTo); i++ {
		low = max(low, upTo[i]-upTo[i-1])
	}
	for low < high {
		middle := low + (high-low)/2
		if groups(upTo, middle) <= n {
			high = middle
		} else {
			low = middle + 1
		}
	}
	return low
}

// groups counts the groups needed when none may be wider than limit.
func groups(upTo []unit.Length, limit unit.Length) int {
	count, start := 1, unit.Length(0)
	for i := 1; i < len(upTo); i++ {
		if upTo[i]-start > limit {
			count++
			start = upTo[i-1]
		}
	}
	return count
}

// squares is a sum of squares of widths in micrometres, which stays below 2^63
// for a total of a kilometre; micrometres tell any two divisions apart that a
// maker could.
type squares int64

const never squares = 1<<63 - 1

// balanced returns where each of n groups ends. best[k][i] is the least sum of
// squares for the first i things in k groups, none empty, none above the limit.
func balanced(upTo []unit.Length, n int) []int {
	m := len(upTo) - 1
	limit := widest(upTo, n)
	best := make([]squares, m+1)
	for i := range best {
		best[i] = never
	}
	best[0] = 0
	ends := make([][]int32, n+1) // ends[k][i]: where group k starts
	for k := 1; k <= n; k++ {
		next := make([]squares, m+1)
		ends[k] = make([]int32, m+1)
		for i := range next {
			next[i] = never
		}
		for i := min(k, m); i <= m-(n-k); i++ {
			for j := max(i-1, 0); j >= k-1; j-- {
				w := upTo[i] - upTo[j]
				if w > limit {
					break
				}
				if best[j] == never {
					continue
				}
				um := squares(w / unit.Micrometre)
				if sum := best[j] + um*um; sum <= next[i] && (sum < next[i] || int32(j) > ends[k][i]) {
					next[i], ends[k][i] = sum, int32(j)
				}
			}
		}
		best = next
	}
	out := make([]int, n)
	for k, i := n, m; k > 0; k-- {
		out[k-1] = i
		i = int(ends[k][i])
	}
	return out
}
