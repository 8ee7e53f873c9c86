package stock

import (
	_ "embed" // the tables
	"strings"
	"sync"
	"unicode"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Grain says how the grain of a sheet's faces runs.
type Grain string

// The directions of grain.
const (
	AlongLength Grain = "length"
	AlongWidth  Grain = "width"
	NoGrain     Grain = "none"
)

// Sheet is one sheet of board material, or several alike.
type Sheet struct {
	Name string
	// Material is the kind: "birch plywood", "MDF".
	Material string
	// Nominal is the thickness that it is sold as; Measured what it measures, zero
	// where nobody has measured yet.
	Nominal, Measured unit.Length
	// Length and Width are as bought; Trim comes off each edge before use.
	Length, Width, Trim unit.Length
	Grain               Grain
	Quantity            int
	Price               Price
}

// Count returns how many sheets there are.
func (s Sheet) Count() int { return max(1, s.Quantity) }

// Thickness returns what the sheet measures: the maker's own figure where there
// is one, otherwise the nominal thickness with the range of the material's
// standard. A fit must not be cut to a figure that was not measured: Low and High
// then differ, or its status is not [figure.Stated].
func (s Sheet) Thickness() figure.Of[unit.Length] {
	if s.Measured > 0 {
		return figure.Exactly(s.Measured, figure.Source{Key: "stock.sheet-measured", Status: figure.Stated})
	}
	return UsualThickness(s.Material, s.Nominal)
}

// Check reports a sheet that cannot be. Keys: "figure.length-range",
// "stock.too-many", "stock.unknown-grain".
func (s Sheet) Check() error {
	for _, l := range []struct {
		quantity        string
		got, least, top unit.Length
	}{
		{"quantity.length", s.Length, unit.MM(10), maxBoard}, {"quantity.width", s.Width, unit.MM(10), maxBoard},
		{"quantity.thickness", s.Nominal, unit.Millimetre / 2, unit.MM(100)}, {"quantity.measured", s.Measured, 0, unit.MM(100)},
		{"quantity.trim", s.Trim, 0, max(1, min(s.Length, s.Width)/3)},
	} {
		if err := figure.LengthRange("stock.sheet", l.quantity, l.got, l.least, l.top); err != nil {
			return err
		}
	}
	if s.Grain != AlongLength && s.Grain != AlongWidth && s.Grain != NoGrain {
		return figure.Refuse("stock.unknown-grain", message.Text("sheet", s.Name), message.Text("grain", string(s.Grain)))
	}
	if s.Quantity < 0 || s.Quantity > maxQuantity {
		return figure.Refuse("stock.too-many", message.Text("sheet", s.Name), message.Count("got", s.Quantity), message.Count("most", maxQuantity))
	}
	return s.Price.Check()
}

//go:embed data/thickness_tolerances.csv
var tolerancesCSV string

// tolerance is one row: nominal thicknesses from over up to to.
type tolerance struct {
	family              string
	over, to            unit.Length
	plus, minus         unit.Length
	plusRate, minusRate unit.Length // per mille of the nominal
	source              figure.Source
}

var tolerancesOnce = sync.OnceValue(func() []tolerance {
	var out []tolerance
	for _, row := range figure.MustTable("thickness_tolerances.csv", tolerancesCSV).Rows() {
		t := tolerance{family: row.Text("family")}
		t.over, _ = row.Millimetres("over_mm")
		t.to, _ = row.Millimetres("to_mm")
		t.plus, _ = row.Millimetres("plus_mm")
		t.minus, _ = row.Millimetres("minus_mm")
		plus, _ := row.Count("plus_per_mille")
		minus, _ := row.Count("minus_per_mille")
		t.plusRate, t.minusRate = unit.Length(plus), unit.Length(minus)
		t.source = figure.Source{Key: "stock.tolerance." + strings.ReplaceAll(t.family, " ", "-"), Title: row.Text("source"), Clause: row.Text("clause"), Status: row.Status("status")}
		if err := row.Err(); err != nil {
			panic("stock: " + err.Error())
		}
		out = append(out, t)
	}
	return out
})

// Plus and minus of a nominal thickness, cut to a tenth of a millimetre as makers
// print them where the tolerance grows with the thickness.
func (t tolerance) of(nominal unit.Length) (plus, minus unit.Length) {
	by := func(fixed, rate unit.Length) unit.Length {
		l := fixed + nominal*rate/1000
		if rate > 0 {
			l = l.Round(unit.Millimetre/10, unit.Down)
		}
		return l
	}
	return by(t.plus, t.plusRate), by(t.minus, t.minusRate)
}

// UsualThickness returns a nominal thickness with the range that the material's
// standard allows: EN 315, PS 1 or HP-1 for plywoods, EN 622-1, EN 312. A
// material that no table knows has no range and status "memory". The material's
// last words count: "birch plywood" is plywood.
func UsualThickness(material string, nominal unit.Length) figure.Of[unit.Length] {
	name := strings.ToLower(material)
	if name == "ply" || strings.HasSuffix(name, " ply") {
		name += "wood"
	}
	best := tolerance{}
	for _, t := range tolerancesOnce() {
		if strings.HasSuffix(name, t.family) && len(t.family) > len(best.family) && nominal > t.over-1 && nominal <= t.to {
			best = t
		}
	}
	if best.family == "" {
		return figure.Exactly(nominal, figure.Source{Key: "stock.nominal", Status: figure.Memory})
	}
	plus, minus := best.of(nominal)
	return figure.Between(nominal, nominal-minus, nominal+plus, best.source)
}

// ParseSheetName takes the thickness out of a sheet's name: "birch plywood 6",
// "18 mm MDF", "3/4 in plywood", `plywood 23/32"`. A bare number counts in
// millimetres, a bare fraction in inches.
//
// Errors: "stock.sheet-name" where no thickness, two, or no material stands in it.
func ParseSheetName(name string) (material string, nominal unit.Length, err error) {
	refusal := figure.Refuse("stock.sheet-name", message.Text("name", clip(name))).Or("stock.say-material-and-thickness")
	if len(name) > maxName {
		return "", 0, refusal
	}
	var words, size []string
	ended := false // the thickness is one run of words
	for _, w := range strings.Fields(name) {
		digit := strings.ContainsFunc(w, unicode.IsDigit)
		isUnit := len(size) > 0 && !ended && (w == "mm" || w == "in" || w == "inch" || w == `"`)
		switch {
		case (digit && !ended) || isUnit:
			size = append(size, w)
		case digit:
			return "", 0, refusal
		default:
			ended = len(size) > 0
			words = append(words, w)
		}
	}
	text := strings.Join(size, " ")
	bare := unit.Millimetre
	if strings.ContainsAny(text, "/⁄") {
		bare = unit.Inch
	}
	nominal, bad := unit.Parse(text, bare)
	if bad != nil || len(words) == 0 || figure.LengthRange("stock.sheet", "quantity.thickness", nominal, unit.Millimetre/2, unit.MM(100)) != nil {
		return "", 0, refusal
	}
	return strings.Join(words, " "), nominal, nil
}

const maxName = 80

func clip(s string) string {
	if len(s) > maxName {
		return strings.ToValidUTF8(s[:maxName], "")
	}
	return s
}

//go:embed data/sheet_sizes.csv
var sheetSizesCSV string

// SheetSize is a size that sheets are sold in.
type SheetSize struct {
	Length, Width unit.Length
	// Where and Materials say who sells it and in what, in English.
	Where, Materials string
	Source           figure.Source
}

// SheetSizes returns the sizes that sheets are sold in, the commonest first.
func SheetSizes() []SheetSize { return append([]SheetSize(nil), sheetSizesOnce()...) }

var sheetSizesOnce = sync.OnceValue(func() []SheetSize {
	var out []SheetSize
	for _, row := range figure.MustTable("sheet_sizes.csv", sheetSizesCSV).Rows() {
		s := SheetSize{Where: row.Text("where"), Materials: row.Text("material")}
		s.Length, _ = row.Millimetres("length_mm")
		s.Width, _ = row.Millimetres("width_mm")
		s.Source = figure.Source{Key: "stock.sheet-size", Title: row.Text("source"), Status: row.Status("status")}
		if err := row.Err(); err != nil {
			panic("stock: " + err.Error())
		}
		out = append(out, s)
	}
	return out
})
