package font

import (
	"slices"
	"strings"
)

// FractionSize is the size of the digits of a fraction in em of the text: small
// enough for two in the height of a line, large enough to read at arm's length.
const FractionSize = 0.68

// How a fraction is stacked, in em: the bar lies on the middle of the capitals.
const (
	barThick    = 0.06
	barClear    = 0.07  // between the bar and the digits
	barOver     = 0.05  // what the bar stands out beyond the wider number
	fractionGap = 0.13  // between a whole number and its fraction
	bearing     = 0.035 // before and after a fraction
	maxDigits   = 5
)

// vulgar lists the characters that are fractions by themselves.
var vulgar = map[rune][2]string{
	'¼': {"1", "4"}, '½': {"1", "2"}, '¾': {"3", "4"}, '⅓': {"1", "3"}, '⅔': {"2", "3"},
	'⅕': {"1", "5"}, '⅖': {"2", "5"}, '⅗': {"3", "5"}, '⅘': {"4", "5"}, '⅙': {"1", "6"}, '⅚': {"5", "6"},
	'⅛': {"1", "8"}, '⅜': {"3", "8"}, '⅝': {"5", "8"}, '⅞': {"7", "8"},
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

// fractionAt returns the fraction at the start of the text and how many
// characters it takes, or zero if none starts here.
func fractionAt(s []rune) (num, den string, n int) {
	if len(s) == 0 {
		return "", "", 0
	}
	if v, ok := vulgar[s[0]]; ok {
		return v[0], v[1], 1
	}
	num = digitsOf(s, superscripts)
	a := len(num)
	if a == 0 || a > maxDigits || a >= len(s) || s[a] != '⁄' {
		return "", "", 0
	}
	den = digitsOf(s[a+1:], subscripts)
	if len(den) == 0 || len(den) > maxDigits {
		return "", "", 0
	}
	return num, den, a + 1 + len(den)
}

// The raised and lowered digits with which a fraction may be written.
var (
	superscripts = []rune("⁰¹²³⁴⁵⁶⁷⁸⁹")
	subscripts   = []rune("₀₁₂₃₄₅₆₇₈₉")
)

// digitsOf returns the number at the start of the text, written in plain digits
// or all in those of the given set, as plain digits.
func digitsOf(s, set []rune) string {
	if n := digits(s); n > 0 {
		return string(s[:n])
	}
	var out []byte
	for _, r := range s {
		i := slices.Index(set, r)
		if i < 0 {
			break
		}
		out = append(out, '0'+byte(i))
	}
	return string(out)
}

func startsFraction(s []rune) bool {
	_, _, n := fractionAt(s)
	return n > 0
}

func digits(s []rune) (n int) {
	for n < len(s) && isDigit(s[n]) {
		n++
	}
	return n
}

// IsFractionSpace reports whether the space at byte i of s stands between a
// whole number and its fraction, where no line may break.
func IsFractionSpace(s string, i int) bool {
	if i <= 0 || i >= len(s) || s[i] != ' ' || !isDigit(rune(s[i-1])) {
		return false
	}
	return startsFraction([]rune(s[i+1 : min(len(s), i+1+32)]))
}

// Fractions turns the slash of inch fractions written plainly ("5 3/8 in") into
// the fraction slash that is drawn as a stacked fraction. Only a fraction whose
// denominator is a power of two up to 128 and greater than its numerator, and
// that is not part of a longer number, date or path, is turned.
func Fractions(s string) string {
	if !strings.Contains(s, "/") {
		return s
	}
	r := []rune(s)
	var out strings.Builder
	for i := 0; i < len(r); {
		if n := plainFraction(r, i); n > 0 {
			out.WriteString(strings.Replace(string(r[i:i+n]), "/", "⁄", 1))
			i += n
			continue
		}
		out.WriteRune(r[i])
		i++
	}
	return out.String()
}

func plainFraction(r []rune, i int) int {
	if i > 0 && (isDigit(r[i-1]) || strings.ContainsRune("/.,", r[i-1])) {
		return 0
	}
	a := digits(r[i:])
	if a == 0 || a > 3 || i+a >= len(r) || r[i+a] != '/' {
		return 0
	}
	b := digits(r[i+a+1:])
	if b == 0 || b > 3 {
		return 0
	}
	end := i + a + 1 + b
	if end < len(r) && r[end] == '/' {
		return 0
	}
	num, den := number(r[i:i+a]), number(r[i+a+1:end])
	if den < 2 || den > 128 || den&(den-1) != 0 || num == 0 || num >= den {
		return 0
	}
	return end - i
}

func number(r []rune) (n int) {
	for _, d := range r {
		n = 10*n + int(d-'0')
	}
	return n
}

// fraction adds a stacked fraction to the line.
func (l *layer) fraction(num, den string) {
	l.flush()
	reading := num + "/" + den
	if l.afterDigit {
		l.x += fractionGap
		reading = " " + reading
	}
	a, b := l.face.number(num), l.face.number(den)
	wide := max(a.Width, b.Width) + 2*barOver
	x := l.x + bearing
	axis := float64(l.face.CapHeight / 2)
	l.clusters++
	a.X, a.Y = x+float64((wide-a.Width)/2), -(axis + barThick/2 + barClear)
	b.X, b.Y = x+float64((wide-b.Width)/2), -(axis-barThick/2-barClear)+float64(FractionSize*l.face.CapHeight)
	bar := Piece{Kind: Bar, X: x, Y: -(axis + barThick/2), Scale: 1, Width: wide}
	a.Reading = reading
	for _, p := range []Piece{a, bar, b} {
		p.Cluster = l.clusters
		l.line.Pieces = append(l.line.Pieces, p)
	}
	l.reach(-a.Y+float64(FractionSize*l.face.CapHeight)+0.01, b.Y+0.01)
	l.x = x + wide + bearing
	l.line.Width = l.x
	l.afterDigit = false
}

// BarThick is the thickness of a fraction's bar in em of the text.
const BarThick = barThick

// number lays the digits of a fraction out at its size.
func (f *Face) number(s string) Piece {
	p := Piece{Kind: Glyphs, Scale: FractionSize, Text: s}
	for _, r := range s {
		g := f.cmap[r]
		p.Glyphs = append(p.Glyphs, Placed{g, p.Width})
		p.Width += float64(FractionSize * f.Advance(g))
	}
	return p
}
