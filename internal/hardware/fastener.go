package hardware

import (
	_ "embed" // the tables
	"slices"
	"strconv"
	"strings"
	"sync"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Wood says how hard the wood is that a hole is drilled in.
type Wood int

// Hard and soft wood.
const (
	HardWood Wood = iota
	SoftWood
)

// Screw is a wood screw.
type Screw struct {
	Name                 string // its size: "4.0", "no. 8"
	Diameter, Root, Head unit.Length
	Length               unit.Length
	Source               figure.Source
}

// Pin is a pin or nail.
type Pin struct {
	Name                   string
	Diameter, Head, Length unit.Length
	Source                 figure.Source
}

// Dowel is a plain dowel bought cut to length.
type Dowel struct {
	Diameter, Length unit.Length
	Source           figure.Source
}

//go:embed data/screws.csv
var screwsCSV string

//go:embed data/pins.csv
var pinsCSV string

//go:embed data/dowels.csv
var dowelsCSV string

// fasteners reads what the fastener tables have in common and takes each length.
func fasteners(name, text string, take func(row *figure.Row, length unit.Length, source figure.Source)) {
	for _, row := range figure.MustTable(name, text).Rows() {
		source := figure.Source{Key: "hardware." + strings.TrimSuffix(name, ".csv"), Title: row.Text("source"), Status: row.Status("status")}
		for word := range strings.FieldsSeq(row.Text("lengths_mm")) {
			length, err := unit.Parse(word, unit.Millimetre)
			if err != nil {
				panic("hardware: " + name + ": " + err.Error())
			}
			take(row, length, source)
		}
		if err := row.Err(); err != nil {
			panic("hardware: " + err.Error())
		}
	}
}

var screwsOnce = sync.OnceValue(func() []Screw {
	var out []Screw
	fasteners("screws.csv", screwsCSV, func(row *figure.Row, length unit.Length, source figure.Source) {
		s := Screw{Name: row.Text("name"), Length: length, Source: source}
		s.Diameter, _ = row.Millimetres("diameter_mm")
		s.Root, _ = row.Millimetres("root_mm")
		s.Head, _ = row.Millimetres("head_mm")
		out = append(out, s)
	})
	return out
})

var pinsOnce = sync.OnceValue(func() []Pin {
	var out []Pin
	fasteners("pins.csv", pinsCSV, func(row *figure.Row, length unit.Length, source figure.Source) {
		p := Pin{Name: row.Text("name"), Length: length, Source: source}
		p.Diameter, _ = row.Millimetres("diameter_mm")
		p.Head, _ = row.Millimetres("head_mm")
		out = append(out, p)
	})
	return out
})

var dowelsOnce = sync.OnceValue(func() []Dowel {
	var out []Dowel
	fasteners("dowels.csv", dowelsCSV, func(row *figure.Row, length unit.Length, source figure.Source) {
		d := Dowel{Length: length, Source: source}
		d.Diameter, _ = row.Millimetres("diameter_mm")
		out = append(out, d)
	})
	return out
})

// Screws returns the screws of the table, in its order.
func Screws() []Screw { return slices.Clone(screwsOnce()) }

// Pins returns the pins and nails of the table.
func Pins() []Pin { return slices.Clone(pinsOnce()) }

// Dowels returns the dowels of the table.
func Dowels() []Dowel { return slices.Clone(dowelsOnce()) }

// DowelDiameters returns the diameters that dowels are sold in, rising.
func DowelDiameters() []unit.Length {
	var out []unit.Length
	for _, d := range dowelsOnce() {
		out = append(out, d.Diameter)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// FindScrew returns the screw of a size name ("4.0", "4", "no. 8") and a
// length: that length or the nearest shorter one sold.
//
// Errors: "hardware.unknown-size" with the sizes known; "hardware.no-length" with
// the shortest sold.
func FindScrew(name string, length unit.Length) (Screw, error) {
	return pick("screw", name, length, screwsOnce(), func(s Screw) (string, unit.Length) { return s.Name, s.Length })
}

// FindPin returns the pin of a name and length, as [FindScrew].
func FindPin(name string, length unit.Length) (Pin, error) {
	return pick("pin", name, length, pinsOnce(), func(p Pin) (string, unit.Length) { return p.Name, p.Length })
}

// FindDowel returns the dowel of a diameter and length, as [FindScrew].
func FindDowel(diameter, length unit.Length) (Dowel, error) {
	name := func(d unit.Length) string { return strconv.FormatInt(int64(d), 10) }
	return pick("dowel", name(diameter), length, dowelsOnce(), func(d Dowel) (string, unit.Length) { return name(d.Diameter), d.Length })
}

func pick[T any](kind, name string, length unit.Length, all []T, of func(T) (string, unit.Length)) (T, error) {
	var best, none T
	var longest, shortest unit.Length
	known := false
	for _, f := range all {
		n, l := of(f)
		if !sameName(n, name) {
			continue
		}
		known = true
		if l <= length && l > longest {
			best, longest = f, l
		}
		if shortest == 0 || l < shortest {
			shortest = l
		}
	}
	switch {
	case !known:
		return none, figure.Refuse("hardware.unknown-size", message.Word("kind", kind), message.Text("name", clip(name))).Or("hardware.measure-and-state")
	case longest == 0:
		return none, figure.Refuse("hardware.no-length", message.Word("kind", kind), message.Text("name", clip(name)), message.Length("length", length), message.Length("shortest", shortest)).
			Or("hardware.longer")
	}
	return best, nil
}

// sameName compares size names: case, "no." and trailing zeros do not count.
func sameName(a, b string) bool { return bareName(a) == bareName(b) }

func bareName(s string) string {
	s = strings.ToLower(strings.TrimSpace(s))
	s = strings.TrimPrefix(s, "#")
	if rest, ok := strings.CutPrefix(s, "no."); ok {
		return "no " + strings.TrimSpace(rest)
	}
	if strings.Contains(s, ".") && !strings.Contains(s, " ") {
		return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
	}
	return s
}

const maxName = 80

func clip(s string) string {
	if len(s) > maxName {
		return strings.ToValidUTF8(s[:maxName], "")
	}
	return s
}

// Holes are what a screw is drilled for.
type Holes struct {
	// Lead is for the thread, Clearance for the shank in the part that it holds,
	// Sink is the width of the countersink.
	Lead, Clearance, Sink figure.Of[unit.Length]
}

// Holes returns the holes for the screw: the lead 90 % of the root in hardwood,
// 70 % in softwood (Wood Handbook FPL-GTR-190, 2010, chapter 8, from memory);
// clearance the diameter and 0.5, countersink the head and 0.5 (common practice).
// To the tenth of a millimetre.
func (s Screw) Holes(w Wood) Holes {
	lead := figure.Source{Key: "hardware.lead-hole", Title: "Wood Handbook FPL-GTR-190", Edition: "2010", Clause: "chapter 8", Status: figure.Memory}
	tenth := func(l unit.Length) unit.Length { return l.Round(unit.Millimetre/10, unit.Nearest) }
	hard, soft := tenth(s.Root*9/10), tenth(s.Root*7/10)
	use := hard
	if w == SoftWood {
		use = soft
	}
	clear, sink := tenth(s.Diameter+unit.Millimetre/2), tenth(s.Head+unit.Millimetre/2)
	return Holes{
		figure.Between(use, soft, hard, lead),
		figure.Between(clear, tenth(s.Diameter), clear, figure.PracticeSource("hardware.clearance-hole")),
		figure.Between(sink, tenth(s.Head), sink, figure.PracticeSource("hardware.countersink")),
	}
}

// Lead returns the hole to drill for a pin near an end or in hard wood: 80 % of
// its diameter. Common practice, no source.
func (p Pin) Lead() figure.Of[unit.Length] {
	return figure.Between((p.Diameter*8/10).Round(unit.Millimetre/10, unit.Nearest), p.Diameter*6/10, p.Diameter, figure.PracticeSource("hardware.pin-lead"))
}
