package pdf

import (
	"crypto/sha256"
	"fmt"
	"slices"
	"strings"
	"unicode/utf16"

	"scantling/internal/font"
)

// faces gathers the glyphs that a document uses of each face.
type faces struct {
	used [2]map[font.GID]rune
}

func newFaces() *faces {
	return &faces{used: [2]map[font.GID]rune{{}, {}}}
}

func (f *faces) name(w font.Weight) string {
	if w == font.Bold {
		return "/B"
	}
	return "/R"
}

// use notes the glyphs of a piece and what each says.
func (f *faces) use(w font.Weight, p font.Piece) {
	if w != font.Bold {
		w = font.Regular
	}
	runes := []rune(p.Text)
	for i, g := range p.Glyphs {
		if _, ok := f.used[w][g.GID]; !ok && i < len(runes) {
			f.used[w][g.GID] = runes[i]
		}
	}
}

// write writes the subsets and returns the entries of the font resources.
func (f *faces) write(file *file) string {
	var entries strings.Builder
	for _, w := range font.Weights {
		if len(f.used[w]) == 0 {
			continue
		}
		var glyphs []font.GID
		for g := range f.used[w] {
			glyphs = append(glyphs, g)
		}
		slices.Sort(glyphs)
		fmt.Fprintf(&entries, "%s %v ", f.name(w), f.face(file, font.Of(w), glyphs, f.used[w]))
	}
	return entries.String()
}

// face writes one composite font with glyph numbers as its codes (ISO 32000-1
// clause 9.7).
func (f *faces) face(file *file, face *font.Face, glyphs []font.GID, says map[font.GID]rune) ref {
	data := face.Subset(glyphs)
	name := "/" + subsetTag(data) + "+" + face.PostScript
	program, unicode := file.reserve(), file.reserve()
	file.stream(program, fmt.Sprintf("/Length1 %d", len(data)), data)
	file.stream(unicode, "", toUnicode(glyphs, says))
	mil := func(em float64) string { return number(em * 1000) }
	descriptor := file.add(fmt.Sprintf(
		"<</Type /FontDescriptor /FontName %s /Flags 4 /ItalicAngle 0 /StemV 80 /Ascent %s /Descent -%s /CapHeight %s /FontBBox [%s %s %s %s] /FontFile2 %v>>",
		name, mil(face.Ascent), mil(face.Descent), mil(face.CapHeight),
		mil(face.Box[0]), mil(face.Box[1]), mil(face.Box[2]), mil(face.Box[3]), program))
	var widths strings.Builder
	for _, g := range glyphs {
		fmt.Fprintf(&widths, "%d [%d] ", g, face.Units(g))
	}
	descendant := file.add(fmt.Sprintf(
		"<</Type /Font /Subtype /CIDFontType2 /BaseFont %s /CIDSystemInfo <</Registry (Adobe) /Ordering (Identity) /Supplement 0>> /FontDescriptor %v /DW 0 /W [%s] /CIDToGIDMap /Identity>>",
		name, descriptor, widths.String()))
	return file.add(fmt.Sprintf(
		"<</Type /Font /Subtype /Type0 /BaseFont %s /Encoding /Identity-H /DescendantFonts [%v] /ToUnicode %v>>", name, descendant, unicode))
}

// subsetTag returns the six letters that mark a subset (clause 9.6.4), taken
// from the subset's own bytes.
func subsetTag(data []byte) string {
	sum := sha256.Sum256(data)
	var tag [6]byte
	for i := range tag {
		tag[i] = 'A' + sum[i]%26
	}
	return string(tag[:])
}

// toUnicode writes the character map from glyph numbers to Unicode (clause 9.10.3).
func toUnicode(glyphs []font.GID, says map[font.GID]rune) []byte {
	var b strings.Builder
	b.WriteString("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n" +
		"/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n" +
		"/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n" +
		"1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n")
	for len(glyphs) > 0 {
		n := min(100, len(glyphs))
		fmt.Fprintf(&b, "%d beginbfchar\n", n)
		for _, g := range glyphs[:n] {
			fmt.Fprintf(&b, "<%04X> <", g)
			for _, u := range utf16.Encode([]rune{says[g]}) {
				fmt.Fprintf(&b, "%04X", u)
			}
			b.WriteString(">\n")
		}
		b.WriteString("endbfchar\n")
		glyphs = glyphs[n:]
	}
	b.WriteString("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n")
	return []byte(b.String())
}
