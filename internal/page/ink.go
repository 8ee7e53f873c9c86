package page

// Colour is a role, not a shade: every writer has its own table of shades (on
// paper [Colour.RGB], on a screen the style sheet's variable [Colour.Name]).
// Colour is never the only sign of anything.
type Colour uint8

// The roles. Fill roles are for areas; each On role is the text that stands on
// the fill of the same name.
const (
	Ink Colour = iota
	InkSoft
	Rule
	Act
	Error
	Warn
	OK
	Note
	Ground // the paper itself, to blot out what lies below
	Bench  // a faint tint for headers and boxes
	Straw
	Sky
	Rust
	Sea
	Plum
	Slate
	Chalk
	OnStraw
	OnSky
	OnRust
	OnSea
	OnPlum
	OnSlate
	OnChalk
	colours
)

// palette holds name and print shade of each role; the shades are those of the
// style sheet's day look on white paper.
var palette = [colours]struct {
	name string
	rgb  uint32
}{
	Ink: {"ink", 0x16191C}, InkSoft: {"ink-soft", 0x454B50}, Rule: {"rule", 0x6A7074},
	Act: {"act", 0x0A4F70}, Error: {"error", 0x8B1A12}, Warn: {"warn", 0x8C5A00}, OK: {"ok", 0x00614A}, Note: {"note", 0x3F3A78},
	Ground: {"paper", 0xFFFFFF}, Bench: {"bench", 0xF1EFE9},
	Straw: {"fill-straw", 0xEBCB78}, Sky: {"fill-sky", 0x86BFE0}, Rust: {"fill-rust", 0xBF5226}, Sea: {"fill-sea", 0x16806A},
	Plum: {"fill-plum", 0x8F5796}, Slate: {"fill-slate", 0x2A3C4C}, Chalk: {"fill-chalk", 0xE9E6DE},
	OnStraw: {"on-straw", 0x16191C}, OnSky: {"on-sky", 0x16191C}, OnRust: {"on-rust", 0xFFFFFF}, OnSea: {"on-sea", 0xFFFFFF},
	OnPlum: {"on-plum", 0xFFFFFF}, OnSlate: {"on-slate", 0xFFFFFF}, OnChalk: {"on-chalk", 0x16191C},
}

// Colours lists the roles in order.
func Colours() []Colour {
	all := make([]Colour, colours)
	for i := range all {
		all[i] = Colour(i)
	}
	return all
}

// Name returns the role's name, which is also the style sheet's variable
// without its two dashes. An unknown role is ink.
func (c Colour) Name() string {
	if c >= colours {
		c = Ink
	}
	return palette[c].name
}

// RGB returns the role's shade on white paper (sRGB).
func (c Colour) RGB() (r, g, b uint8) {
	if c >= colours {
		c = Ink
	}
	v := palette[c].rgb
	return uint8(v >> 16), uint8(v >> 8), uint8(v)
}

// Fills lists the roles for the areas of parts, in the order to use them.
var Fills = []Colour{Straw, Sky, Chalk, Sea, Rust, Plum, Slate}

// On returns the role of text that stands on a fill; on anything else ink.
func (c Colour) On() Colour {
	if c >= Straw && c <= Chalk {
		return c - Straw + OnStraw
	}
	return Ink
}

// Width is the width of a drawn line in hundredths of a millimetre. Only the
// widths of ISO 128-20:1996 clause 4.1 (each √2 times the last) that suit A4
// are used (series from memory).
type Width uint8

// The widths, and the two that a drawing on A4 needs: thick and thin are 2 : 1
// (ISO 128-24 line group 0.5; from memory).
const (
	W018 Width = 18
	W025 Width = 25
	W035 Width = 35
	W050 Width = 50
	W070 Width = 70

	Thin  = W025
	Thick = W050
)

// Widths lists the widths in order.
var Widths = []Width{W018, W025, W035, W050, W070}

// Millimetres returns the width in millimetres.
func (w Width) Millimetres() float64 { return float64(w) / 100 }

// Dash is the kind of a line.
type Dash uint8

// The kinds of line, named by their use.
const (
	Solid  Dash = iota
	Hidden      // dashed: edges that cannot be seen
	Centre      // long dash, dot: axes and centre lines
	Before      // long dash, two dots: where something was or moves to
)

// Pattern returns the lengths of marks and spaces in turn, in millimetres, for
// a line of that width; nil for a solid line. Marks are 12, 24 and 0.5 and
// spaces 3 widths as in ISO 128-20:1996 table 2 (from memory), with the long
// dash kept to 16 widths so that short axes still show a dot.
func (d Dash) Pattern(w Width) []float64 {
	var marks []float64
	switch d {
	case Hidden:
		marks = []float64{10, 3}
	case Centre:
		marks = []float64{16, 3, 0.5, 3}
	case Before:
		marks = []float64{16, 3, 0.5, 3, 0.5, 3}
	default:
		return nil
	}
	// Dashes are taken from a line of at least 0.25 mm, or they run together.
	mm := max(w, W025).Millimetres()
	for i := range marks {
		marks[i] *= mm
	}
	return marks
}
