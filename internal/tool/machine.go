package tool

import (
	_ "embed" // the table
	"strings"
	"sync"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Kind is a kind of machine; its text is the trade's name in plain English.
type Kind string

// The kinds of machine.
const (
	TableSaw        Kind = "table saw"
	MitreSaw        Kind = "mitre saw"
	BandSaw         Kind = "band saw"
	Jointer         Kind = "jointer"
	ThicknessPlaner Kind = "thickness planer"
	RouterTable     Kind = "router table"
	Router          Kind = "router"
	DrillPress      Kind = "drill press"
	Sander          Kind = "sander"
	HandTools       Kind = "hand tools"
)

// Kinds returns all kinds in the order above.
func Kinds() []Kind {
	return []Kind{TableSaw, MitreSaw, BandSaw, Jointer, ThicknessPlaner, RouterTable, Router, DrillPress, Sander, HandTools}
}

// Plunges is whether a router can be lowered into the work while it turns.
type Plunges int

// What may be known of it; nobody has said is the zero value.
const (
	PlungesUnsaid Plunges = iota
	PlungesYes
	PlungesNo
)

// Size is what a machine meets: the length along the grain, the width and the
// thickness of a workpiece as it lies there.
type Size struct{ Length, Width, Thickness unit.Length }

// Limits bound a workpiece; an unknown figure bounds nothing.
type Limits struct{ Length, Width, Thickness figure.Of[unit.Length] }

// Machine is one machine of a shop.
type Machine struct {
	Name string
	Kind Kind

	// Least and Greatest bound the workpiece. A thickness planer's greatest width
	// is its opening, a saw's greatest thickness its height of cut.
	Least, Greatest Limits
	// Kerf is what a saw turns to dust.
	Kerf figure.Of[unit.Length]
	// Accuracy is how far a size that was set comes out, plus or minus.
	Accuracy figure.Of[unit.Length]
	// PassDepth is the most that one pass may take.
	PassDepth figure.Of[unit.Length]
	// Hands is the least distance of a hand from the cutter.
	Hands figure.Of[unit.Length]
	// PushBelow is the size of work under which a push block or stick is used:
	// width at saw and jointer, length at the thickness planer.
	PushBelow figure.Of[unit.Length]

	// LeastSpeed and GreatestSpeed bound the spindle; zero is not known. A machine
	// of one speed has both equal.
	LeastSpeed, GreatestSpeed Speed
	// Plunges says whether a router can be lowered into the work while it turns.
	Plunges Plunges
	// Base is from the spindle's centre to the edge of a router's base that runs
	// against stops; zero is not known.
	Base unit.Length
	// Collets are the shank diameters that the machine holds; none listed holds any.
	Collets []unit.Length
}

//go:embed data/machines.csv
var machinesCSV string

var machinesOnce = sync.OnceValue(func() map[Kind]Machine {
	m, err := loadMachines()
	if err != nil {
		panic("tool: " + err.Error())
	}
	return m
})

func loadMachines() (map[Kind]Machine, error) {
	out := map[Kind]Machine{}
	for _, row := range figure.MustTable("machines.csv", machinesCSV).Rows() {
		kind, limit := Kind(row.Text("machine")), row.Text("limit")
		value, _ := row.Millimetres("value_mm")
		low, _ := row.Millimetres("low_mm")
		high, _ := row.Millimetres("high_mm")
		source := figure.Source{Key: "tool." + strings.ReplaceAll(string(kind), " ", "-") + "." + limit, Title: row.Text("source"), Status: row.Status("status")}
		m := out[kind]
		m.Name, m.Kind = string(kind), kind
		if to := m.figure(limit); to != nil {
			*to = figure.Between(value, low, high, source)
		} else {
			return nil, figure.Refuse("tool.unknown-limit", message.Text("limit", limit))
		}
		if err := row.Err(); err != nil {
			return nil, err
		}
		out[kind] = m
	}
	return out, nil
}

// figure returns the place of a limit that the table names.
func (m *Machine) figure(limit string) *figure.Of[unit.Length] {
	switch limit {
	case "least_length":
		return &m.Least.Length
	case "least_thickness":
		return &m.Least.Thickness
	case "kerf":
		return &m.Kerf
	case "accuracy":
		return &m.Accuracy
	case "pass_depth":
		return &m.PassDepth
	case "hands":
		return &m.Hands
	case "push_below":
		return &m.PushBelow
	}
	return nil
}

// Usual returns a machine with the published limits of its kind, or with none
// where nothing is published. Sources stand at each figure.
func Usual(kind Kind) Machine {
	m, ok := machinesOnce()[kind]
	if !ok {
		return Machine{Name: string(kind), Kind: kind}
	}
	return m
}

// Completed returns the machine with every figure that its owner did not state
// taken from the usual one of its kind.
func (m Machine) Completed() Machine {
	usual := Usual(m.Kind)
	fill := func(to *figure.Of[unit.Length], from figure.Of[unit.Length]) {
		if !to.Known() {
			*to = from
		}
	}
	fill(&m.Least.Length, usual.Least.Length)
	fill(&m.Least.Width, usual.Least.Width)
	fill(&m.Least.Thickness, usual.Least.Thickness)
	fill(&m.Kerf, usual.Kerf)
	fill(&m.Accuracy, usual.Accuracy)
	fill(&m.PassDepth, usual.PassDepth)
	fill(&m.Hands, usual.Hands)
	fill(&m.PushBelow, usual.PushBelow)
	return m
}

// Stated returns a figure that the maker states for this machine.
func Stated(limit string, l unit.Length) figure.Of[unit.Length] {
	return figure.Exactly(l, figure.Source{Key: "tool.stated." + limit, Status: figure.Stated})
}

// Dimension names a size of a workpiece.
type Dimension string

// The three sizes, as keys of words.
const (
	DimensionLength    Dimension = "length"
	DimensionWidth     Dimension = "width"
	DimensionThickness Dimension = "thickness"
)

// Excess is one limit that a workpiece breaks.
type Excess struct {
	Machine   string
	Kind      Kind
	Dimension Dimension
	// Short is true below the least, false above the greatest.
	Short bool
	Got   unit.Length
	// Limit is the figure that was broken. Where Got lies between its Low and its
	// High the verdict depends on whom one believes.
	Limit figure.Of[unit.Length]
}

// By returns how much the limit is missed by.
func (e Excess) By() unit.Length { return (e.Limit.Value - e.Got).Abs() }

// Disputed reports whether some source would let the workpiece pass.
func (e Excess) Disputed() bool {
	if e.Short {
		return e.Got >= e.Limit.Low
	}
	return e.Got <= e.Limit.High
}

// Message returns key "tool.workpiece-too-short", "-too-narrow", "-too-thin",
// "-too-long", "-too-wide" or "-too-thick" with the two figures.
func (e Excess) Message() message.Message {
	word := map[Dimension][2]string{DimensionLength: {"long", "short"}, DimensionWidth: {"wide", "narrow"}, DimensionThickness: {"thick", "thin"}}[e.Dimension]
	which := word[0]
	if e.Short {
		which = word[1]
	}
	return message.New("tool.workpiece-too-"+which, message.Text("machine", e.Machine), message.Length("got", e.Got), message.Length("limit", e.Limit.Value))
}

// Check returns every limit of the machine that the workpiece breaks, none if it
// can be worked there. Sizes of zero are not judged.
func (m Machine) Check(s Size) []Excess {
	var out []Excess
	for _, d := range []struct {
		name            Dimension
		got             unit.Length
		least, greatest figure.Of[unit.Length]
	}{
		{DimensionLength, s.Length, m.Least.Length, m.Greatest.Length},
		{DimensionWidth, s.Width, m.Least.Width, m.Greatest.Width},
		{DimensionThickness, s.Thickness, m.Least.Thickness, m.Greatest.Thickness},
	} {
		if d.got <= 0 {
			continue
		}
		if d.least.Known() && d.got < d.least.Value {
			out = append(out, Excess{m.Name, m.Kind, d.name, true, d.got, d.least})
		}
		if d.greatest.Known() && d.got > d.greatest.Value {
			out = append(out, Excess{m.Name, m.Kind, d.name, false, d.got, d.greatest})
		}
	}
	return out
}

// Takes reports why the machine cannot hold the cutter: its shank fits no collet
// (key "tool.no-collet").
func (m Machine) Takes(c Cutter) error {
	if c.Shank == 0 || len(m.Collets) == 0 {
		return nil
	}
	for _, collet := range m.Collets {
		if collet == c.Shank {
			return nil
		}
	}
	return figure.Refuse("tool.no-collet", message.Text("machine", m.Name), message.Text("cutter", c.Name), message.Length("shank", c.Shank)).
		Or("tool.other-cutter")
}
