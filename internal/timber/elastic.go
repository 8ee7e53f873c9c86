package timber

import (
	_ "embed" // the table
	"slices"
	"sync"

	"scantling/internal/figure"
)

//go:embed data/elastic.csv
var elasticCSV string

// Part is one modulus as a part of the modulus along the grain.
type Part float64

// Elastic holds a wood's other moduli as parts of that along the grain.
type Elastic struct {
	// Tangential and Radial are the moduli of elasticity across the grain, along
	// and across the growth rings.
	Tangential, Radial figure.Of[Part]
	// RigidRadial and RigidTangential are the moduli of rigidity when a board bends
	// along its grain with its thickness radial (flat-sawn) or tangential.
	RigidRadial, RigidTangential figure.Of[Part]
}

// Across returns the modulus across the grain in a board's width, as a part of that
// along the grain; between both where the sawing is unknown.
func (e Elastic) Across(s Sawn) figure.Of[Part] {
	switch s {
	case FlatSawn:
		return e.Tangential
	case QuarterSawn:
		return e.Radial
	}
	return between(e.Tangential, e.Radial)
}

// Rigid returns the modulus of rigidity of a board bent flatwise along its grain, as
// a part of the modulus of elasticity.
func (e Elastic) Rigid(s Sawn) figure.Of[Part] {
	switch s {
	case FlatSawn:
		return e.RigidRadial
	case QuarterSawn:
		return e.RigidTangential
	}
	return between(e.RigidRadial, e.RigidTangential)
}

func between(a, b figure.Of[Part]) figure.Of[Part] {
	return figure.Between((a.Value+b.Value)/2, min(a.Low, b.Low), max(a.High, b.High), a.Source)
}

type elasticTable struct {
	own                map[string]Elastic
	hardwood, softwood Elastic
}

var elasticOnce = sync.OnceValue(func() elasticTable {
	out := elasticTable{own: map[string]Elastic{}}
	var hard, soft [4][]Part
	kinds := map[string]Kind{}
	for _, s := range Default().All() {
		kinds[s.Name] = s.Kind
	}
	for _, row := range figure.MustTable("elastic.csv", elasticCSV).Rows() {
		source := figure.Source{Key: "timber.elastic", Title: movementTitle, Edition: movementEdition, Clause: "Table 5-1", Status: row.Status("status")}
		var all [4]figure.Of[Part]
		for i, column := range []string{"et_el", "er_el", "glr_el", "glt_el"} {
			x, ok := row.Number(column)
			if !ok { // the table has no figure: its neighbour's
				x = float64(all[max(0, i-1)].Value)
			}
			all[i] = figure.Exactly(Part(x), source)
			if kinds[row.Text("name")] == Softwood {
				soft[i] = append(soft[i], Part(x))
			} else {
				hard[i] = append(hard[i], Part(x))
			}
		}
		if err := row.Err(); err != nil {
			panic("timber: " + err.Error())
		}
		out.own[row.Text("name")] = Elastic{all[0], all[1], all[2], all[3]}
	}
	out.hardwood, out.softwood = middle(hard), middle(soft)
	return out
})

// middle is the median of each ratio with the range of all woods of the kind.
func middle(columns [4][]Part) Elastic {
	var all [4]figure.Of[Part]
	source := figure.Source{Key: "timber.elastic", Title: movementTitle, Edition: movementEdition, Clause: "Table 5-1, range of all woods of the kind", Status: figure.Memory}
	for i, c := range columns {
		slices.Sort(c)
		all[i] = figure.Between(c[len(c)/2], c[0], c[len(c)-1], source)
	}
	return Elastic{all[0], all[1], all[2], all[3]}
}

// Elastic returns the wood's elastic ratios (Wood Handbook FPL-GTR-190, 2010, Table
// 5-1, from memory); for a wood that the table lacks the median of the hardwoods or
// softwoods in it, with their whole range.
func (s Species) Elastic() Elastic {
	t := elasticOnce()
	if e, ok := t.own[s.Name]; ok {
		return e
	}
	if s.Kind == Softwood {
		return t.softwood
	}
	return t.hardwood
}
