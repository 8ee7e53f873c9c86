package mechanics

import (
	_ "embed" // the table
	"math"
	"sync"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Gravity is a specific gravity: oven-dry mass over the volume at test, relative to
// water.
type Gravity float64

const handbook, edition = "Wood Handbook FPL-GTR-190", "2010"

// Sources of the withdrawal formulas: all from memory; the nail's agrees within 1
// lbf/in with a published table of nine species that was read.
var (
	SourceNail    = figure.Source{Key: "mechanics.nail", Title: handbook, Edition: edition, Clause: "Equation 8-1", Status: figure.Memory}
	SourceScrew   = figure.Source{Key: "mechanics.screw", Title: handbook, Edition: edition, Clause: "Equation 8-10", Status: figure.Memory}
	SourceLag     = figure.Source{Key: "mechanics.lag", Title: handbook, Edition: edition, Clause: "Equation 8-13", Status: figure.Memory}
	SourceLateral = figure.Source{Key: "mechanics.lateral", Title: handbook, Edition: edition, Clause: "Table 8-4", Status: figure.Read}
)

// NailWithdrawal returns the ultimate pull that draws a bright nail out of side
// grain: 54.12 G^(5/2) D L, in newtons and millimetres.
func NailWithdrawal(g Gravity, diameter, deep unit.Length) Force {
	x := float64(g)
	return Force(54.12 * x * x * math.Sqrt(x) * diameter.Millimetres() * deep.Millimetres())
}

// OldNailWithdrawal returns the same by the earlier form, on the specific gravity
// by oven-dry volume: 6900 G^(5/2) D L in pounds and inches (FPL Technical Note
// 236, 1958).
func OldNailWithdrawal(ovendry Gravity, diameter, deep unit.Length) Force {
	x := float64(ovendry)
	return Pounds(6900 * x * x * math.Sqrt(x) * diameter.Millimetres() / perInch * deep.Millimetres() / perInch)
}

// ScrewWithdrawal returns the ultimate pull that draws a wood screw out of side
// grain: 108.25 G^2 D L, L being the thread in the wood.
func ScrewWithdrawal(g Gravity, diameter, thread unit.Length) Force {
	return Force(108.25 * float64(g) * float64(g) * diameter.Millimetres() * thread.Millimetres())
}

// LagWithdrawal returns the ultimate pull that draws a lag screw out of side grain:
// 125.4 G^(3/2) D^(3/4) L.
func LagWithdrawal(g Gravity, diameter, thread unit.Length) Force {
	root := math.Sqrt(diameter.Millimetres())
	return Force(125.4 * float64(g) * math.Sqrt(float64(g)) * root * math.Sqrt(root) * thread.Millimetres())
}

// EndGrain is what is left of a screw's withdrawal in end grain: about three
// quarters, and unreliable (Wood Handbook, chapter 8, from memory).
var EndGrain = figure.Between(Ratio(0.75), 0.5, 0.75, figure.Source{Key: "mechanics.end-grain", Title: handbook, Edition: edition, Clause: "chapter 8", Status: figure.Memory})

// InPlywood is what is left of a nail's withdrawal in plywood: 15 to 30 % less than
// in solid wood of its thickness.
var InPlywood = figure.Between(Ratio(0.775), 0.7, 0.85, figure.Source{Key: "mechanics.nail-in-plywood", Title: handbook, Edition: edition, Clause: "page 8-6", Status: figure.Read})

// Safety is what an ultimate load is divided by for use. The Wood Handbook's loads
// are those of tests; design loads were about a fifth to a sixth of them.
var Safety = figure.Between(Ratio(5), 5, 6, figure.Source{Key: "mechanics.safety", Title: handbook, Edition: edition, Clause: "chapter 8", Status: figure.Memory})

// Allowable returns an ultimate load with the safety factor taken out; low and high
// by the factor's range.
func Allowable(ultimate Force) figure.Of[Force] {
	return figure.Between(ultimate/Force(Safety.Value), ultimate/Force(Safety.High), ultimate/Force(Safety.Low), Safety.Source)
}

//go:embed data/lateral_k.csv
var lateralCSV string

// Lateral is the row of the table of side loads for one density of wood.
type Lateral struct {
	nail, screw, lag float64
	low, high        Gravity
	softwood         bool
	Source           figure.Source
}

var lateralOnce = sync.OnceValue(func() []Lateral {
	var out []Lateral
	for _, row := range figure.MustTable("lateral_k.csv", lateralCSV).Rows() {
		x := Lateral{softwood: row.Text("wood") == "softwood", Source: SourceLateral}
		for column, to := range map[string]*float64{"k_nail": &x.nail, "k_screw": &x.screw, "k_lag": &x.lag} {
			*to, _ = row.Number(column)
		}
		low, _ := row.Number("sg_low")
		high, _ := row.Number("sg_high")
		x.low, x.high, x.Source.Status = Gravity(low), Gravity(high), row.Status("status")
		if err := row.Err(); err != nil {
			panic("mechanics: " + err.Error())
		}
		out = append(out, x)
	}
	return out
})

// LateralOf returns the row of Table 8-4 for a wood. Between two rows (0.475) the
// lighter one counts. Error: "mechanics.no-lateral" outside the table.
func LateralOf(g Gravity, softwood bool) (Lateral, error) {
	var best Lateral
	found := false
	for _, x := range lateralOnce() {
		if x.softwood == softwood && g >= x.low && (!found || x.low > best.low) && g < x.high+0.01 {
			best, found = x, true
		}
	}
	if !found {
		return Lateral{}, figure.Refuse("mechanics.no-lateral", message.Ratio("gravity", float64(g)))
	}
	return best, nil
}

// Nail returns the side load of a nail: K D^(3/2). Nails want ten diameters of
// depth in the holding part in hardwood for it.
func (l Lateral) Nail(diameter unit.Length) Force { return NailLateral(Ratio(l.nail), diameter) }

// Screw returns the side load of a wood screw: K D^2. It wants seven diameters of
// depth in the holding part.
func (l Lateral) Screw(diameter unit.Length) Force { return ScrewLateral(Ratio(l.screw), diameter) }

// NailLateral returns K D^(3/2), with K for newtons and millimetres.
func NailLateral(k Ratio, diameter unit.Length) Force {
	d := diameter.Millimetres()
	return Force(float64(k) * d * math.Sqrt(d))
}

// ScrewLateral returns K D^2, with K for newtons and millimetres.
func ScrewLateral(k Ratio, diameter unit.Length) Force {
	d := diameter.Millimetres()
	return Force(float64(k) * d * d)
}
