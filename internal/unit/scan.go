package unit

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// MaxText is how many bytes of text a quantity may take.
const MaxText = 64

type tokenKind int

const (
	tokEnd    tokenKind = iota
	tokNumber           // 18, 17.6, 136,5, .5
	tokVulgar           // ½
	tokSlash            // / and its typographic twins
	tokHyphen           // - and its typographic twins
	tokPlus
	tokColon
	tokWord // letters, % and °, in lower case; or " or '
)

type token struct {
	kind  tokenKind
	text  string
	frac  [2]int64 // of tokVulgar
	comma bool     // of tokNumber: written with a comma
	at    int      // byte of the text it starts at
	space bool     // white space stands before it
	after bool     // white space, or the end, stands behind it
}

// twins are the signs that stand for another.
var twins = map[rune]rune{
	'″': '"', '”': '"', '“': '"', '˝': '"',
	'′': '\'', '’': '\'', '‘': '\'', '´': '\'',
	'⁄': '/', '∕': '/',
	'−': '-', '–': '-', '‐': '-', '‑': '-',
	'μ': 'µ',
}

// scan takes a text apart. It has at most MaxText tokens, with an end behind.
func scan(text string) ([]token, *ParseError) {
	if len(text) > MaxText {
		return nil, &ParseError{Fault: FaultTooLong, Text: strings.ToValidUTF8(text[:MaxText], "\uFFFD")}
	}
	if !utf8.ValidString(text) {
		return nil, &ParseError{Fault: FaultNotText, Text: strings.ToValidUTF8(text, "\uFFFD")}
	}
	var toks []token
	rest, at, space := text, 0, false
	for rest != "" {
		r, size := utf8.DecodeRuneInString(rest)
		if unicode.IsSpace(r) {
			if space = true; len(toks) > 0 {
				toks[len(toks)-1].after = true
			}
		} else {
			tok, n := scanOne(rest, len(toks) > 0 && toks[len(toks)-1].kind == tokWord && !space)
			if n == 0 {
				return nil, &ParseError{Fault: FaultUnexpected, Text: text, Word: rest[:size], At: at}
			}
			tok.at, tok.space = at, space
			toks, size, space = append(toks, tok), n, false
		}
		rest, at = rest[size:], at+size
	}
	if len(toks) > 0 {
		toks[len(toks)-1].after = true
	}
	return append(toks, token{kind: tokEnd, at: at, space: true}), nil
}

// scanOne reads one token at the start of s and says how many bytes it takes,
// none if no token starts so.
func scanOne(s string, afterWord bool) (token, int) {
	r, size := utf8.DecodeRuneInString(s)
	if t, ok := twins[r]; ok {
		r = t
	}
	if n := numberLength(s); n > 0 {
		digits := strings.Replace(s[:n], ",", ".", 1)
		return token{kind: tokNumber, text: digits, comma: digits != s[:n]}, n
	}
	if f, ok := vulgar[r]; ok {
		return token{kind: tokVulgar, frac: f, text: s[:size]}, size
	}
	if digits, n := smallDigits(s); n > 0 && !afterWord {
		return token{kind: tokNumber, text: digits}, n
	}
	switch r {
	case '/':
		return token{kind: tokSlash, text: s[:size]}, size
	case '-':
		return token{kind: tokHyphen, text: s[:size]}, size
	case '+':
		return token{kind: tokPlus, text: s[:size]}, size
	case ':':
		return token{kind: tokColon, text: s[:size]}, size
	case '"':
		return token{kind: tokWord, text: `"`}, size
	case '\'':
		if second, n := utf8.DecodeRuneInString(s[size:]); n > 0 && (second == '\'' || twins[second] == '\'') {
			return token{kind: tokWord, text: `"`}, size + n
		}
		return token{kind: tokWord, text: `'`}, size
	}
	if n := wordLength(s); n > 0 {
		return token{kind: tokWord, text: strings.ToLower(s[:n])}, n
	}
	return token{}, 0
}

// numberLength returns the length of the decimal number at the start of s.
// Whether a comma is a decimal comma is judged later.
func numberLength(s string) int {
	n := digitsLength(s)
	if n < len(s) && (s[n] == '.' || s[n] == ',') {
		if more := digitsLength(s[n+1:]); more > 0 {
			return n + 1 + more
		}
	}
	return n
}

func digitsLength(s string) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}

// smallDigits reads raised or lowered digits, as printed fractions have them.
func smallDigits(s string) (string, int) {
	const raised, lowered = "⁰¹²³⁴⁵⁶⁷⁸⁹", "₀₁₂₃₄₅₆₇₈₉"
	var digits []byte
	n := 0
	for _, r := range s {
		i := strings.IndexRune(raised, r)
		before := raised
		if i < 0 {
			i, before = strings.IndexRune(lowered, r), lowered
		}
		if i < 0 {
			break
		}
		digits = append(digits, byte('0'+utf8.RuneCountInString(before[:i])))
		n += utf8.RuneLen(r)
	}
	return string(digits), n
}

// wordLength returns the length of the word at the start of s: letters, signs
// of units, and a full stop behind.
func wordLength(s string) int {
	n := 0
	for _, r := range s {
		if !unicode.IsLetter(r) && !strings.ContainsRune("%°º", r) && !(n > 0 && (r == '²' || r == '³')) {
			break
		}
		n += utf8.RuneLen(r)
	}
	if n > 0 && strings.HasPrefix(s[n:], ".") && digitsLength(s[n+1:]) == 0 {
		n++
	}
	return n
}
