package sequence

import (
	_ "embed" // the tables
	"strings"
	"sync"

	"scantling/internal/figure"
)

//go:embed data/glues.csv
var gluesCSV string

//go:embed data/finishes.csv
var finishesCSV string

// glueTimes are minutes: to put it together, in clamps, until it is hard.
type glueTimes struct{ open, clamp, cure int }

// finishTimes are minutes between coats and until the last is hard; oil tells a
// drying oil, whose rags heat up.
type finishTimes struct {
	recoat, cure int
	oil          bool
}

var glues = sync.OnceValue(func() map[string]glueTimes {
	out := map[string]glueTimes{}
	for _, row := range figure.MustTable("glues.csv", gluesCSV).Rows() {
		open, _ := row.Count("open_min")
		clamp, _ := row.Count("clamp_min")
		cure, _ := row.Count("cure_min")
		row.Status("status")
		out[row.Text("glue")] = glueTimes{int(open), int(clamp), int(cure)}
		if err := row.Err(); err != nil {
			panic("sequence: " + err.Error())
		}
	}
	return out
})

var finishes = sync.OnceValue(func() map[string]finishTimes {
	out := map[string]finishTimes{}
	for _, row := range figure.MustTable("finishes.csv", finishesCSV).Rows() {
		recoat, _ := row.Count("recoat_min")
		cure, _ := row.Count("cure_min")
		row.Status("status")
		out[row.Text("finish")] = finishTimes{int(recoat), int(cure), row.Text("oil") == "yes"}
		if err := row.Err(); err != nil {
			panic("sequence: " + err.Error())
		}
	}
	return out
})

// glueOf returns the times of a glue; those of pva where the glue is not in the
// table, which are the shortest clamp and the usual cure.
func glueOf(name string) glueTimes {
	if g, ok := glues()[strings.ToLower(name)]; ok {
		return g
	}
	return glues()["pva"]
}

// finishOf returns the times of a finish, a day between coats where it is not in
// the table.
func finishOf(name string) finishTimes {
	if f, ok := finishes()[strings.ToLower(name)]; ok {
		return f
	}
	return finishTimes{recoat: 24 * 60, cure: 7 * 24 * 60}
}

func slug(s string) string { return strings.ReplaceAll(s, " ", "-") }
