package optimise_test

import (
	"cmp"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

// linear is an integer program in the form that CBC reads ("CPLEX LP format").
type linear struct {
	goal, rows    strings.Builder
	whole, bounds strings.Builder
}

func (l *linear) String() string {
	return fmt.Sprintf("Minimize\n obj:%s\nSubject To\n%sBounds\n%sGenerals\n%s\nEnd\n", l.goal.String(), l.rows.String(), l.bounds.String(), l.whole.String())
}

// commonOf returns the greatest length that divides all lengths of p, found by
// trying, apart from the engine's own.
func commonOf(p problem.Problem) int64 {
	g := int64(p.Kerf)
	add := func(l unit.Length) {
		for b := int64(l); b != 0; {
			g, b = b, g%b
		}
	}
	for _, part := range p.Parts {
		add(part.Length)
	}
	for _, s := range p.Stock {
		for _, c := range s.Clear() {
			add(c.Length)
		}
	}
	return g
}

// assignment is the model "so many of each part in each clear length of each
// board that is bought" (Kantorovich, "Mathematical methods of organizing and
// planning production", Management Science 6, 1960). The bought boards of a kind
// come first among them.
func assignment(p problem.Problem) string {
	var l linear
	g := commonOf(p)
	need := make([]strings.Builder, len(p.Parts))
	for i, s := range p.Stock {
		n := boardsAtMost(p, s)
		if s.Limit > 0 {
			n = min(n, s.Limit)
		}
		for b := range n {
			fmt.Fprintf(&l.goal, " + %d y%d_%d", s.Cost, i, b)
			fmt.Fprintf(&l.bounds, " y%d_%d <= 1\n", i, b)
			fmt.Fprintf(&l.whole, " y%d_%d", i, b)
			if b > 0 {
				fmt.Fprintf(&l.rows, " y%d_%d - y%d_%d <= 0\n", i, b, i, b-1)
			}
			for c, clear := range s.Clear() {
				room := (int64(clear.Length) + int64(p.Kerf)) / g
				any := false
				for k, part := range p.Parts {
					w := (int64(part.Length) + int64(p.Kerf)) / g
					if part.Quantity == 0 || w > room {
						continue
					}
					any = true
					fmt.Fprintf(&l.rows, " + %d a%d_%d_%d_%d", w, i, b, c, k)
					fmt.Fprintf(&need[k], " + a%d_%d_%d_%d", i, b, c, k)
					fmt.Fprintf(&l.whole, " a%d_%d_%d_%d", i, b, c, k)
				}
				if any {
					fmt.Fprintf(&l.rows, " - %d y%d_%d <= 0\n", room, i, b)
				}
			}
		}
	}
	for k, part := range p.Parts {
		if part.Quantity > 0 {
			fmt.Fprintf(&l.rows, "%s >= %d\n", need[k].String(), part.Quantity)
		}
	}
	return l.String()
}

// boardsAtMost is a number of boards of a kind that suffices: of two boards
// without defects, one is more than half full, or one would do.
func boardsAtMost(p problem.Problem, s problem.Stock) int {
	if len(s.Defects) > 0 {
		return p.Pieces()
	}
	total := unit.Length(0)
	for _, part := range p.Parts {
		total += unit.Length(part.Quantity) * (part.Length + p.Kerf)
	}
	return min(p.Pieces(), 1+int(2*total/(s.Usable(problem.Boards).Length+p.Kerf)))
}

// arcFlow is the model of a flow along the length of the boards, one arc for
// each place where a part may lie, long parts first (Valério de Carvalho,
// "Exact solution of bin-packing problems using column generation and
// branch-and-bound", Annals of Operations Research 86, 1999). Boards are clear
// from trim to trim.
func arcFlow(p problem.Problem) string {
	var l linear
	g := commonOf(p)
	w := func(k int) int { return int((int64(p.Parts[k].Length) + int64(p.Kerf)) / g) }
	order := make([]int, len(p.Parts))
	for k := range order {
		order[k] = k
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Compare(w(b), w(a)) })
	top := 0
	rooms := make([]int, len(p.Stock))
	for i, s := range p.Stock {
		rooms[i] = int((int64(s.Usable(problem.Boards).Length) + int64(p.Kerf)) / g)
		top = max(top, rooms[i])
	}
	balance := map[int]*strings.Builder{}
	at := func(u int) *strings.Builder {
		if balance[u] == nil {
			balance[u] = &strings.Builder{}
		}
		return balance[u]
	}
	reached := make([]bool, top+1)
	reached[0] = true
	for _, k := range order {
		var need strings.Builder
		// copies[u] is the least number of k with which u is reached.
		copies := make([]int, top+1)
		for u := range top + 1 - w(k) {
			if !reached[u] || copies[u] >= p.Parts[k].Quantity {
				continue
			}
			v := u + w(k)
			if !reached[v] {
				reached[v], copies[v] = true, copies[u]+1
			}
			x := fmt.Sprintf("x%d_%d", k, u)
			fmt.Fprintf(at(u), " - %s", x)
			fmt.Fprintf(at(v), " + %s", x)
			fmt.Fprintf(&need, " + %s", x)
			fmt.Fprintf(&l.whole, " %s", x)
		}
		fmt.Fprintf(&l.rows, "%s >= %d\n", need.String(), p.Parts[k].Quantity)
	}
	for i, s := range p.Stock {
		fmt.Fprintf(&l.goal, " + %d y%d", s.Cost, i)
		fmt.Fprintf(at(rooms[i]), " - y%d", i)
		fmt.Fprintf(at(0), " + y%d", i)
		fmt.Fprintf(&l.whole, " y%d", i)
		if s.Limit > 0 {
			fmt.Fprintf(&l.bounds, " y%d <= %d\n", i, s.Limit)
		}
	}
	last := -1
	for u := range top + 1 {
		if balance[u] == nil {
			continue
		}
		if last >= 0 { // what is wasted
			fmt.Fprintf(at(last), " - r%d", last)
			fmt.Fprintf(at(u), " + r%d", last)
		}
		last = u
	}
	for u := range top + 1 {
		if balance[u] != nil {
			fmt.Fprintf(&l.rows, "%s = 0\n", balance[u].String())
		}
	}
	return l.String()
}

// verdict is what CBC has to say.
type verdict struct {
	cost    int64 // math.MaxInt64: no solution
	optimal bool
}

// runCBC gives a model to CBC for so many seconds.
func runCBC(t *testing.T, cbc, model string, seconds float64) verdict {
	t.Helper()
	file := filepath.Join(t.TempDir(), "order.lp")
	if err := os.WriteFile(file, []byte(model), 0o600); err != nil {
		t.Fatal(err)
	}
	limit := strconv.FormatFloat(seconds, 'f', 2, 64)
	out, err := exec.CommandContext(t.Context(), cbc, file, "timeMode", "elapsed", "sec", limit, "solve", "quit").CombinedOutput()
	if err != nil {
		t.Fatalf("cbc: %v\n%s", err, out)
	}
	v := verdict{cost: math.MaxInt64, optimal: strings.Contains(string(out), "Result - Optimal solution found")}
	if _, rest, ok := strings.Cut(string(out), "Objective value:"); ok && !strings.Contains(string(out), "No feasible solution found") {
		f, err := strconv.ParseFloat(strings.Fields(rest)[0], 64)
		if err != nil {
			t.Fatal(err)
		}
		v.cost = int64(math.Round(f))
	}
	return v
}
