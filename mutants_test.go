package scantling_test

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"scantling/internal/geom/solid"
	"scantling/internal/plan"
)

func sortIntervals(all []solid.Interval) {
	slices.SortFunc(all, func(a, b solid.Interval) int {
		switch {
		case a.Enter < b.Enter:
			return -1
		case a.Enter > b.Enter:
			return 1
		}
		return 0
	})
}

// TestMutantsOfThePlan changes lengths of the stored plan by 0.1 mm, one at a
// time, and holds that the plan's own checks, read back from JSON, notice.
func TestMutantsOfThePlan(t *testing.T) {
	r := planDemo(t, nil)
	data, err := json.Marshal(r.Plan)
	if err != nil {
		t.Fatal(err)
	}
	places := lengthsIn(data)
	const seed, tries = 7, 250
	random := rand.New(rand.NewPCG(seed, 2))
	random.Shuffle(len(places), func(i, j int) { places[i], places[j] = places[j], places[i] })
	if testing.Short() && len(places) > 60 {
		places = places[:60]
	} else if len(places) > tries {
		places = places[:tries]
	}
	survived := 0
	for _, p := range places {
		mutant := slices.Concat(data[:p.from], []byte(fmt.Sprint(p.nm+100_000)), data[p.to:])
		var q plan.Plan
		if err := json.Unmarshal(mutant, &q); err != nil {
			continue // refused when it is read
		}
		q.Ledger.Learn(r.Functions())
		if len(q.Unsound()) == 0 {
			survived++
			t.Logf("survived: %s", data[max(0, p.from-80):min(len(data), p.to+40)])
		}
	}
	t.Logf("seed %d: %d of %d mutants survived (of %d lengths in the plan)", seed, survived, len(places), len(lengthsIn(data)))
	if survived*100 > len(places) {
		t.Errorf("%d of %d mutants survived: more than one in a hundred", survived, len(places))
	}
}

type length struct {
	from, to int
	nm       int64
}

// lengthsIn finds the whole numbers behind "nm": keys that are figures.
func lengthsIn(data []byte) []length {
	var out []length
	for i := 0; i+5 < len(data); i++ {
		if string(data[i:i+5]) != `"nm":` {
			continue
		}
		from := i + 5
		to := from
		for to < len(data) && (data[to] == '-' || data[to] >= '0' && data[to] <= '9') {
			to++
		}
		var nm int64
		if _, err := fmt.Sscan(string(data[from:to]), &nm); err == nil && to+9 < len(data) && string(data[to:to+9]) == `,"entry":` {
			out = append(out, length{from, to, nm})
		}
	}
	return out
}
