package font

import (
	_ "embed"
	"fmt"
	"sync"
)

//go:embed data/AtkinsonHyperlegibleNext-Regular.ttf
var regularTTF []byte

//go:embed data/AtkinsonHyperlegibleNext-Bold.ttf
var boldTTF []byte

// Licence is the text under which the embedded faces may be passed on.
//
//go:embed data/OFL.txt
var Licence string

// Weight chooses a face.
type Weight uint8

// The embedded weights.
const (
	Regular Weight = iota
	Bold
)

// Weights lists the embedded weights in order.
var Weights = []Weight{Regular, Bold}

// Family is the family name of the faces, for style sheets.
const Family = "Atkinson Hyperlegible Next"

// GID is the number of a glyph in its face. Zero is the glyph for "missing".
type GID uint16

// Face is one parsed TrueType face. It is immutable.
type Face struct {
	// PostScript is the PostScript name of the face.
	PostScript string
	// Ascent and Descent are the line's reach above and below the baseline,
	// CapHeight that of a capital H; all in em, all positive.
	Ascent, Descent, CapHeight float64
	// Box is the face's own bounding box xMin, yMin, xMax, yMax in em with Y up.
	Box [4]float64

	data     []byte
	tables   map[string][]byte
	em       float64
	advances []uint16
	offsets  []uint32 // of glyphs in glyf, one more than glyphs
	cmap     map[rune]GID
	ascii    [128]GID // the same, for plain characters
	kern     []pairKern
}

var faces = [...]func() *Face{
	Regular: sync.OnceValue(func() *Face { return mustParse(regularTTF, "AtkinsonHyperlegibleNext-Regular") }),
	Bold:    sync.OnceValue(func() *Face { return mustParse(boldTTF, "AtkinsonHyperlegibleNext-Bold") }),
}

// Of returns the face of a weight; an unknown weight gives Regular.
func Of(w Weight) *Face {
	if int(w) >= len(faces) {
		w = Regular
	}
	return faces[w]()
}

func mustParse(data []byte, name string) *Face {
	f, err := parse(data)
	if err != nil {
		panic(fmt.Sprintf("font: embedded face %s: %v", name, err))
	}
	f.PostScript = name
	return f
}

// Glyph returns the glyph of a character, and false where the face has none.
func (f *Face) Glyph(r rune) (GID, bool) {
	if r >= 0 && int(r) < len(f.ascii) {
		g := f.ascii[r]
		return g, g != 0
	}
	g, ok := f.cmap[r]
	return g, ok
}

// Advance returns the width of a glyph in em.
func (f *Face) Advance(g GID) float64 { return float64(f.units(g)) / f.em }

// Units returns the width of a glyph in thousandths of an em, as PDF counts.
func (f *Face) Units(g GID) int { return int(float64(f.Advance(g)*1000) + 0.5) }

func (f *Face) units(g GID) uint16 {
	if int(g) >= len(f.advances) {
		return 0
	}
	return f.advances[g]
}

// Kern returns what is added to the advance between two glyphs, in em.
func (f *Face) Kern(a, b GID) float64 {
	if int(a) >= len(f.advances) || int(b) >= len(f.advances) {
		return 0
	}
	sum := 0
	for i := range f.kern {
		sum += int(f.kern[i].value(a, b))
	}
	return float64(sum) / f.em
}

// ink returns the glyph's box in em with Y up, and false for a blank glyph.
func (f *Face) ink(g GID) (box [4]float64, ok bool) {
	d := f.outline(g)
	if len(d) < 10 {
		return box, false
	}
	for i := range box {
		box[i] = float64(int16(be16(d, 2+2*i))) / f.em
	}
	return box, true
}

// outline returns the glyph's bytes in glyf; empty for a blank glyph.
func (f *Face) outline(g GID) []byte {
	if int(g)+1 >= len(f.offsets) {
		return nil
	}
	from, to := f.offsets[g], f.offsets[g+1]
	glyf := f.tables["glyf"]
	if from >= to || int64(to) > int64(len(glyf)) {
		return nil
	}
	return glyf[from:to]
}
