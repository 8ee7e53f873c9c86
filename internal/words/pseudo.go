package words

import "strings"

// Brackets of the pseudo-language: round every text of the catalogue, and round
// every figure, mark and word of the author.
const (
	textOpen, textClose = "⟪", "⟫"
	ownOpen, ownClose   = "⟨", "⟩"
)

// accents gives every letter of English an accented one.
var accents = strings.NewReplacer(
	"a", "á", "b", "ƀ", "c", "ç", "d", "ð", "e", "é", "f", "ƒ", "g", "ĝ", "h", "ĥ", "i", "í", "j", "ĵ",
	"k", "ķ", "l", "ĺ", "m", "ɱ", "n", "ñ", "o", "ó", "p", "þ", "q", "ɋ", "r", "ŕ", "s", "š", "t", "ţ",
	"u", "ú", "v", "ṽ", "w", "ŵ", "x", "ẋ", "y", "ý", "z", "ž",
	"A", "Á", "B", "Ɓ", "C", "Ç", "D", "Ð", "E", "É", "F", "Ƒ", "G", "Ĝ", "H", "Ĥ", "I", "Í", "J", "Ĵ",
	"K", "Ķ", "L", "Ĺ", "M", "Ṁ", "N", "Ñ", "O", "Ó", "P", "Þ", "Q", "Ɋ", "R", "Ŕ", "S", "Š", "T", "Ţ",
	"U", "Ú", "V", "Ṽ", "W", "Ŵ", "X", "Ẋ", "Y", "Ý", "Z", "Ž",
)

func accented(t template) template {
	out := make(template, len(t))
	for i, p := range t {
		p.plain = accents.Replace(p.plain)
		forms := p.forms
		p.forms = nil
		for _, f := range forms {
			p.forms = append(p.forms, accented(f))
		}
		out[i] = p
	}
	return out
}

// Bypassed returns the words of a text, written in the pseudo-language, that did
// not come from the catalogue: runs of plain Latin letters outside the brackets
// that mark figures and the author's own words ([Words.Own]). It also finds
// ⟦keys⟧ that have no entry.
func Bypassed(text string) []string {
	var found []string
	for text != "" {
		plain, rest, _ := strings.Cut(text, ownOpen)
		found = append(found, strings.FieldsFunc(plain, func(r rune) bool {
			return (r < 'a' || r > 'z') && (r < 'A' || r > 'Z')
		})...)
		_, text, _ = strings.Cut(rest, ownClose)
	}
	return found
}
