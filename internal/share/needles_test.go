package share

import (
	"fmt"
	"testing"

	"scantling/internal/unit"
)

// needles returns two of each size, as [Thing]s whose mouths are those of the
// channels that the cutters give, and each pair as a bundle.
func needles(t testing.TB, head unit.Length) (bundles [][]Thing) {
	for _, tenths := range []int64{20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100} {
		rod := unit.Length(tenths) * unit.Millimetre / 10
		c, err := ChannelFor(rod, noses, 0)
		if err != nil || !c.Half() {
			t.Fatalf("%v: %+v %v", rod.Millimetres(), c, err)
		}
		var pair []Thing
		for _, which := range []string{"a", "b"} {
			pair = append(pair, Thing{Key: fmt.Sprintf("%.1f %s", rod.Millimetres(), which), Mouth: c.Mouth, Body: rod, Head: head})
		}
		bundles = append(bundles, pair)
	}
	return bundles
}

// TestNeedleDrawers deals straight knitting needles to two to five drawers and
// lays each drawer's row: every needle once, pairs together, every row closed to
// the widest drawer's width, heads apart, spare channels where there is room.
func TestNeedleDrawers(t *testing.T) {
	for _, head := range []unit.Length{0, unit.MM(8), unit.MM(12)} {
		for _, lie := range []Lie{SameWay, HeadToTail} {
			for drawers := 2; drawers <= 5; drawers++ {
				rule := Rule{Land: LeastLand(unit.MM(5)).Value, Margin: unit.MM(6), Play: unit.MM(1), WallPlay: unit.Millimetre / 2, Lie: lie, Step: unit.Millimetre / 2}
				dealt, err := Deal(needles(t, head), func(pair []Thing) unit.Length { return 2 * rule.Takes(pair[0]) }, drawers)
				if err != nil {
					t.Fatal(err)
				}
				width, seen := unit.Length(0), map[string]int{}
				var rows [][]Thing
				for k, bundles := range dealt {
					var things []Thing
					for _, pair := range bundles {
						things = append(things, pair...)
					}
					row, err := Least(things, rule)
					if err != nil || len(things) == 0 || len(things)%2 != 0 {
						t.Fatalf("%d drawers, drawer %d: %d things, %v", drawers, k+1, len(things), err)
					}
					width = max(width, row.Width)
					rows = append(rows, things)
				}
				spares := 0
				for k, things := range rows {
					spare := things[len(things)-1]
					f, err := FillUp(things, rule, width, spare, func(n int) string { return fmt.Sprint("spare ", n) }, ToAll)
					if err != nil {
						t.Fatal(err)
					}
					if fault := faultOf(f.Row, f.Things, rule, ToAll); fault != "" || f.Row.Width != width {
						t.Fatalf("%d drawers, drawer %d: %s", drawers, k+1, fault)
					}
					for _, thing := range f.Things[:len(things)] {
						seen[thing.Key]++
					}
					spares += f.Spare
				}
				for key, n := range seen {
					if n != 1 {
						t.Errorf("%s lies in %d drawers", key, n)
					}
				}
				if len(seen) != 24 {
					t.Errorf("%d needles of 24", len(seen))
				}
				t.Logf("head %v, lie %d, %d drawers: row %v wide, %d spare channels", head.Millimetres(), lie, drawers, width.Millimetres(), spares)
			}
		}
	}
}
