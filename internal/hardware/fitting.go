package hardware

import (
	_ "embed" // the table
	"slices"
	"strings"
	"sync"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// FittingKind is a kind of fitting.
type FittingKind string

// The kinds of fitting.
const (
	Knob       FittingKind = "knob"
	Pull       FittingKind = "pull" // a bow on two screws
	TurnButton FittingKind = "turn-button"
	Hinge      FittingKind = "hinge"
	Catch      FittingKind = "catch"
	Runner     FittingKind = "runner" // a strip that a drawer runs on
	Slide      FittingKind = "slide"  // two members that run in each other
	Button     FittingKind = "button" // holds a table's top to its rails
)

// kinds are all of them.
var kinds = []FittingKind{Knob, Pull, TurnButton, Hinge, Catch, Runner, Slide, Button}

// FittingKinds returns the kinds of fitting, in the order in which they are told.
func FittingKinds() []FittingKind { return slices.Clone(kinds) }

// Fitting is a fitting with the sizes that matter to the wood; those that do not
// apply are zero.
type Fitting struct {
	Kind FittingKind
	Name string
	// Length is along a hinge's knuckle or a turn-button, or between the two screws of a
	// pull; Width across (a hinge opened flat); Thickness of a leaf or button.
	Length, Width, Thickness unit.Length
	// Diameter is a knob's, a hinge's knuckle or a ball catch's barrel; Projection how
	// far a knob or a pull stands off.
	Diameter, Projection unit.Length
	// Depth is how deep a ball catch is let in, or how far a button's tongue goes in.
	Depth unit.Length
	// Plate is the thickness of a catch's plate or of a button's tongue; the plate's
	// other sizes.
	PlateLength, PlateWidth, Plate unit.Length
	// Screws is how many in all (of a slide, in each member), of the size and length.
	Screws      int
	Screw       string
	ScrewLength unit.Length
	Source      figure.Source
}

//go:embed data/fittings.csv
var fittingsCSV string

var fittingsOnce = sync.OnceValue(func() []Fitting {
	var out []Fitting
	for _, row := range figure.MustTable("fittings.csv", fittingsCSV).Rows() {
		f := Fitting{Kind: FittingKind(row.Text("kind")), Name: row.Text("name"), Screw: row.Text("screw")}
		f.Length, _ = row.Millimetres("length_mm")
		f.Width, _ = row.Millimetres("width_mm")
		f.Thickness, _ = row.Millimetres("thickness_mm")
		f.Diameter, _ = row.Millimetres("diameter_mm")
		f.Projection, _ = row.Millimetres("projection_mm")
		f.Depth, _ = row.Millimetres("depth_mm")
		f.PlateLength, _ = row.Millimetres("plate_length_mm")
		f.PlateWidth, _ = row.Millimetres("plate_width_mm")
		f.Plate, _ = row.Millimetres("plate_mm")
		f.ScrewLength, _ = row.Millimetres("screw_length_mm")
		f.Screws, _ = row.Count("screws")
		f.Source = figure.Source{Key: "hardware.fitting." + string(f.Kind), Title: row.Text("source"), Status: row.Status("status")}
		if err := row.Err(); err != nil {
			panic("hardware: " + err.Error())
		}
		out = append(out, f)
	}
	return out
})

// Fittings returns the fittings of a kind in the table's order.
func Fittings(kind FittingKind) []Fitting {
	return slices.DeleteFunc(slices.Clone(fittingsOnce()), func(f Fitting) bool { return f.Kind != kind })
}

// FindFitting returns the fitting of the name.
//
// Errors: "hardware.unknown-fitting" with the names of the same kind, or all.
func FindFitting(name string) (Fitting, error) {
	var same, all []message.Arg
	for _, f := range fittingsOnce() {
		if strings.EqualFold(f.Name, strings.TrimSpace(name)) {
			return f, nil
		}
		arg := message.Text("", f.Name)
		all = append(all, arg)
		if strings.Contains(strings.ToLower(name), string(f.Kind)) {
			same = append(same, arg)
		}
	}
	if len(same) == 0 {
		same = all
	}
	return Fitting{}, figure.Refuse("hardware.unknown-fitting", message.Text("name", clip(name)), message.List("known", same...)).Or("hardware.measure-and-state")
}

// Check reports a fitting, from a shop document, that cannot be. Keys:
// "hardware.unknown-kind", "figure.length-range", "hardware.screw-count".
func (f Fitting) Check() error {
	if !slices.Contains(kinds, f.Kind) {
		return figure.Refuse("hardware.unknown-kind", message.Text("kind", string(f.Kind)))
	}
	for _, l := range []unit.Length{f.Length, f.Width, f.Thickness, f.Diameter, f.Projection, f.ScrewLength, f.Depth, f.PlateLength, f.PlateWidth, f.Plate} {
		if err := figure.LengthRange("hardware.fitting", "quantity.size", l, 0, unit.Metre); err != nil {
			return err
		}
	}
	if f.Screws < 0 || f.Screws > 50 {
		return figure.Refuse("hardware.screw-count", message.Count("got", f.Screws), message.Count("most", 50))
	}
	return nil
}

// Leaf is the recess for one leaf of a hinge.
type Leaf struct{ Length, Width, Depth unit.Length }

// Leaf returns the recess that a hinge's leaf lies in: as long as the hinge, from
// the edge to the leaf's edge (half the flat width), as deep as half the knuckle
// so that the parts meet without a gap. Geometry; common practice is to stop a
// hair short. False for other fittings.
func (f Fitting) Leaf() (Leaf, bool) {
	if f.Kind != Hinge {
		return Leaf{}, false
	}
	return Leaf{f.Length, f.Width / 2, f.Diameter / 2}, true
}

// Reach returns how far a turn-button turned across swings past its screw: half
// its length. False for other fittings.
func (f Fitting) Reach() (unit.Length, bool) {
	if f.Kind != TurnButton {
		return 0, false
	}
	return f.Length / 2, true
}
