package optimise_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"scantling/internal/optimise"
	"scantling/internal/optimise/conform"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/problems"
	"scantling/internal/outside"
)

var (
	publishedSets = flag.String("published", "", "measure these published sets: names separated by commas, boards, sheets, or all")
	publishedWork = flag.Int64("published-work", 0, "work units for each instance, 0: the set's own")
	publishedOnly = flag.String("published-only", "", "only instances whose names contain this")
	publishedList = flag.Bool("published-list", false, "print a line for each instance")
	publishedOut  = flag.String("published-out", "", "write the tables to this file (Markdown)")
	// The date and the machine are passed in: nothing that is written asks a clock
	// for the day.
	publishedDate    = flag.String("published-date", "undated", "the day of the measurement")
	publishedMachine = flag.String("published-machine", "unnamed", "the machine")

	workers = flag.Int("published-workers", 1, "workers")
)

// measured is what one set gave.
type measured struct {
	set, variant                  string
	instances, best, proved, over int
	targets                       int
	gap                           float64
	worstOver                     float64
	seconds                       []float64
	work                          []int64
}

// job is a set and one way of cutting it.
type job struct {
	set, variant string
	rules        problems.Rules
	work         int64
}

func jobs() []job {
	var out []job
	for _, s := range []string{"falkenauer-t", "falkenauer-u", "hard28", "scholl-1", "scholl-2", "scholl-3", "schwerin", "waescher"} {
		out = append(out, job{set: "1d-" + s, variant: "min-bins", work: 4_000_000_000})
	}
	out = append(out,
		job{set: "1d-multilength", variant: "min-cost", work: 1_000_000_000},
		job{set: "1d-pattern-reduction", variant: "min-bins of the given solution", work: 1_000_000_000},
	)
	return append(out, sheetJobs()...)
}

func sheetJobs() []job {
	rip, cross := problem.Rip, problem.Crosscut
	c := func(stages int, first problem.Direction) problem.Cutting {
		return problem.Cutting{Stages: stages, First: first}
	}
	const noTurn, turn = "; no rotation", "; rotation"
	minBins, maxValue := "min-bins; guillotine, ", "max-value; guillotine, "
	const second = 400_000_000
	return []job{
		{set: "2d-furniture-a", variant: minBins + "unlimited stages" + noTurn, work: 40 * second},
		{set: "2d-furniture-a", variant: minBins + "unlimited stages" + turn, work: 5 * second, rules: problems.Rules{Turn: true}},
		{set: "2d-class", variant: minBins + "3 stages non-exact, first cut horizontal" + noTurn, work: 5 * second, rules: problems.Rules{Cutting: c(3, rip)}},
		{set: "2d-class", variant: minBins + "3 stages non-exact, first cut horizontal" + turn, work: 5 * second, rules: problems.Rules{Cutting: c(3, rip), Turn: true}},
		{set: "2d-3stage-csp", variant: minBins + "3 stages homogenous, first cut vertical" + noTurn, work: 4 * second, rules: problems.Rules{Cutting: c(3, cross)}},
		{set: "2d-multisheet-cintra", variant: "min-cost; guillotine, 2 stages non-exact, first cut horizontal" + noTurn, work: 10 * second, rules: problems.Rules{Cutting: c(2, rip)}},
		{set: "2d-multisheet-cintra", variant: "min-cost; guillotine, 2 stages non-exact, first cut horizontal" + turn, work: 10 * second, rules: problems.Rules{Cutting: c(2, rip), Turn: true}},
		{set: "2d-knapsack-classic", variant: maxValue + "unlimited stages" + noTurn, work: 20 * second},
		{set: "2d-knapsack-classic", variant: maxValue + "2 stages non-exact, first cut horizontal" + noTurn, work: 10 * second, rules: problems.Rules{Cutting: c(2, rip)}},
		{set: "2d-knapsack-classic", variant: maxValue + "2 stages non-exact, first cut vertical" + noTurn, work: 10 * second, rules: problems.Rules{Cutting: c(2, cross)}},
		{set: "2d-knapsack-atp", variant: maxValue + "2 stages non-exact, first cut horizontal" + noTurn, work: 10 * second, rules: problems.Rules{Cutting: c(2, rip)}},
		{set: "2d-knapsack-atp", variant: maxValue + "2 stages non-exact, first cut vertical" + noTurn, work: 10 * second, rules: problems.Rules{Cutting: c(2, cross)}},
		{set: "2d-knapsack-atp", variant: maxValue + "3 stages non-exact, first cut vertical" + noTurn, work: 10 * second, rules: problems.Rules{Cutting: c(3, cross)}},
		{set: "2d-knapsack-unconstrained", variant: maxValue + "unlimited stages, any number of copies" + noTurn, work: 20 * second},
		{set: "2d-knapsack-unconstrained", variant: maxValue + "unlimited stages, any number of copies" + turn, work: 20 * second, rules: problems.Rules{Turn: true}},
		{set: "2d-knapsack-velasco", variant: maxValue + "unlimited stages" + noTurn, work: 10 * second},
	}
}

// instances returns the folder of the published sets, or skips.
func instances(t *testing.T) string {
	t.Helper()
	return outside.Folder(t, "published cutting instances", "cutting/instances")
}

func readSet(t *testing.T, name string) problems.Set {
	t.Helper()
	f, err := os.Open(filepath.Join(instances(t), name+".json"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	set, err := problems.Read(f)
	if err != nil {
		t.Fatal(err)
	}
	return set
}

// TestPublished measures the published sets that are asked for with -published.
func TestPublished(t *testing.T) {
	if *publishedSets == "" {
		t.Skip("left out: measuring the published sets (ask with -published all)")
	}
	var rows []string
	classical, sets := measured{set: "1d: all 238 classical", variant: "min-bins"}, 0
	for _, j := range jobs() {
		if !j.asked(*publishedSets) {
			continue
		}
		m := measure(t, j)
		fmt.Println(m.row())
		rows = append(rows, m.row())
		if strings.HasPrefix(j.set, "1d-") && j.variant == "min-bins" {
			classical.join(m)
			sets++
		}
	}
	if sets == 8 {
		fmt.Println(classical.row())
		rows = append(rows, classical.row())
	}
	if *publishedOut != "" {
		writeTables(t, rows, publishedHead)
	}
}

// asked says whether a job belongs to the sets named.
func (j job) asked(sets string) bool {
	for name := range strings.SplitSeq(sets, ",") {
		if name == "all" || name == j.set || name == "boards" && strings.HasPrefix(j.set, "1d-") || name == "sheets" && strings.HasPrefix(j.set, "2d-") {
			return true
		}
	}
	return false
}

func measure(t *testing.T, j job) measured {
	m := measured{set: j.set, variant: j.variant}
	for _, in := range readSet(t, j.set).Instances {
		if !strings.Contains(in.Name, *publishedOnly) {
			continue
		}
		target, ok := targetOf(in, j.variant)
		if !ok && j.set != "1d-multilength" && (j.set != "2d-furniture-a" || j.rules.Turn) {
			continue
		}
		p, err := in.Problem(j.rules)
		if err != nil {
			t.Errorf("%s: %v", in.Name, err)
			continue
		}
		if *publishedFine != 0 {
			p = finer(p, *publishedFine)
		}
		units := j.work
		if *publishedWork > 0 {
			units = *publishedWork
		}
		start := time.Now()
		a, err := optimise.Solve(t.Context(), p, problem.Budget{Work: units, Workers: *workers})
		seconds := time.Since(start).Seconds()
		if err != nil {
			t.Errorf("%s: %v", in.Name, err)
			continue
		}
		if err := conform.Verify(p, a); err != nil {
			t.Errorf("%s: %v", in.Name, err)
		}
		m.note(t, in.Name, p, a, target, ok, seconds)
	}
	return m
}

func targetOf(in problems.Instance, variant string) (problems.Target, bool) {
	for _, t := range in.Targets {
		if t.Variant == variant && t.BestKnown != nil {
			return t, true
		}
	}
	return problems.Target{}, false
}

func (m *measured) note(t *testing.T, name string, p problem.Problem, a problem.Answer, target problems.Target, known bool, seconds float64) {
	m.instances++
	m.seconds = append(m.seconds, seconds)
	m.work = append(m.work, a.Work)
	cost, bound := float64(a.Cost), float64(a.Bound)
	sign := 1.0
	if p.Goal == problem.MostValue {
		sign = -1
	}
	m.gap += sign * (cost - bound) / max(cost, 1)
	if a.Status == problem.Proved {
		m.proved++
	}
	mark := "="
	best := 0.0
	if known {
		m.targets++
		best = *target.BestKnown
		over := sign * (cost - best) / best
		m.worstOver = max(m.worstOver, over)
		switch {
		case over <= 1e-9:
			m.best++
			if over < -1e-9 {
				mark = "<"
				if target.Proved && !strings.Contains(m.variant, "homogenous") {
					t.Errorf("%s: %g is better than the proved %g", name, cost, best)
				}
			}
		default:
			m.over++
			mark = ">"
		}
		if target.Proved && sign*(bound-best) > 1e-6 && name != refuted && !strings.Contains(m.variant, "homogenous") {
			t.Errorf("%s: bound %g contradicts the proved %g", name, bound, best)
		}
	}
	if *publishedList {
		fmt.Printf("  %-28s cost %-10g %s best %-10g bound %-10g %-8v by %-9v %7.2f s %6d M\n", name, cost, mark, best, bound, a.Status, a.Proof, seconds, a.Work/1_000_000)
	}
}

// join adds the figures of another set.
func (m *measured) join(o measured) {
	m.instances, m.best, m.proved, m.over = m.instances+o.instances, m.best+o.best, m.proved+o.proved, m.over+o.over
	m.targets, m.gap, m.worstOver = m.targets+o.targets, m.gap+o.gap, max(m.worstOver, o.worstOver)
	m.seconds, m.work = append(m.seconds, o.seconds...), append(m.work, o.work...)
}

func (m *measured) row() string {
	s := slices.Sorted(slices.Values(m.seconds))
	if len(s) == 0 {
		return fmt.Sprintf("| %s | nothing measured |", m.set)
	}
	return fmt.Sprintf("| %s | %s | %d | %d of %d | %d | %.2f %% | %.2f %% | %.2f | %.2f | %d M | %s | %s |", m.set, m.variant,
		m.instances, m.best, m.targets, m.proved, 100*m.gap/float64(m.instances), 100*m.worstOver,
		s[len(s)/2], s[len(s)-1], slices.Max(m.work)/1_000_000, *publishedDate, *publishedMachine)
}
