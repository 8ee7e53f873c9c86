package optimise_test

import (
	"flag"
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"scantling/internal/optimise"
	"scantling/internal/optimise/conform"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/problems"
	"scantling/internal/outside"
)

var besideSeconds = flag.Float64("beside-seconds", 0, "give CBC this many seconds for each model if the engine took less")

// besideWork is the engine's budget beside CBC.
const besideWork = 1_000_000_000

// TestBesideCBC cuts the orders of several lengths with the engine and with CBC
// in one run and the same time, and checks that the engine's answer is never the
// dearer one and that neither contradicts what the other proved. CBC is given
// two models, each for as long as the engine took (at least a second), and the
// better answer counts. Ordinary runs take the first few orders.
func TestBesideCBC(t *testing.T) {
	cbc := outside.Program(t, "orders of several lengths beside CBC", "cbc")
	set := readSet(t, "1d-multilength")
	all := outside.Long() || *publishedSets != ""
	if !all {
		set.Instances = set.Instances[:2]
	}
	b := beside{set: set.Name}
	for _, in := range set.Instances {
		b.one(t, cbc, in)
	}
	if all {
		fmt.Println(b.row())
		if mean := 100 * b.gap / float64(b.instances); mean > 0.3 {
			t.Errorf("mean gap to the bound %.2f %%, at most 0.3 is wanted", mean)
		}
	}
	if *publishedOut != "" {
		writeTables(t, []string{b.row()}, besideHead)
	}
}

// beside sums up a set that was cut both ways.
type beside struct {
	set                                      string
	instances, cheaper, equal, dearer, empty int
	gap, lead                                float64 // sums of shares
	seconds, given                           []float64
}

func (b *beside) one(t *testing.T, cbc string, in problems.Instance) {
	p, err := in.Problem(problems.Rules{})
	if err != nil {
		t.Fatal(err)
	}
	start := time.Now()
	a, err := optimise.Solve(t.Context(), p, problem.Budget{Work: besideWork, Workers: *workers})
	seconds := time.Since(start).Seconds()
	if err != nil {
		t.Fatalf("%s: %v", in.Name, err)
	}
	if err := conform.Verify(p, a); err != nil {
		t.Errorf("%s: %v", in.Name, err)
	}
	given := max(seconds, *besideSeconds, 1)
	v := runCBC(t, cbc, arcFlow(p), given)
	if !v.optimal {
		if w := runCBC(t, cbc, assignment(p), given); w.optimal || w.cost < v.cost {
			v = w
		}
	}
	b.instances++
	b.seconds, b.given = append(b.seconds, seconds), append(b.given, given)
	b.gap += float64(a.Cost-a.Bound) / float64(a.Cost)
	switch cost := int64(a.Cost); {
	case v.cost == math.MaxInt64:
		b.empty++
	case cost < v.cost:
		b.cheaper++
		b.lead += float64(v.cost-cost) / float64(cost)
	case cost == v.cost:
		b.equal++
	default:
		b.dearer++
		t.Errorf("%s: cost %d, CBC has %d after %.1f s", in.Name, cost, v.cost, given)
	}
	if v.optimal && int64(a.Cost) < v.cost || int64(a.Bound) > v.cost {
		t.Errorf("%s: cost %d, bound %d; CBC has %d, optimal: %v", in.Name, a.Cost, a.Bound, v.cost, v.optimal)
	}
	if *publishedList {
		fmt.Printf("  %-10s cost %d bound %d %v %.2f s; CBC %d optimal %v in %.2f s for each model\n", in.Name, a.Cost, a.Bound, a.Status, seconds, v.cost, v.optimal, given)
	}
}

const besideHead = "| set | instances | cheaper than CBC | equal | dearer | CBC without an answer | CBC dearer by, where it has one | our mean gap | our median s | our worst s | CBC's longest s | date | machine |\n" +
	"| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | --- | --- |\n"

func (b *beside) row() string {
	slices.Sort(b.seconds)
	answers := max(1, b.cheaper+b.equal+b.dearer)
	return fmt.Sprintf("| %s | %d | %d | %d | %d | %d | %.2f %% | %.2f %% | %.2f | %.2f | 2 × %.1f | %s | %s |", b.set, b.instances, b.cheaper, b.equal, b.dearer, b.empty,
		100*b.lead/float64(answers), 100*b.gap/float64(b.instances), b.seconds[len(b.seconds)/2], b.seconds[len(b.seconds)-1], slices.Max(b.given), *publishedDate, *publishedMachine)
}
