package typeset

import (
	"strings"
	"unicode/utf8"

	"scantling/internal/font"
	"scantling/internal/page"
)

// fragment is a stretch of one style inside a word.
type fragment struct {
	text  string
	style style
	width float64 // millimetres
}

// word is what stands between two places where a line may break.
type word struct {
	parts []fragment
	width float64
	// space is the text between this word and the one before ("" or " ").
	space bool
	// hard starts a new line before the word.
	hard bool
}

// run is a stretch of one style on a finished line.
type run struct {
	text  string
	style style
	x     float64
	width float64
}

// line is one finished line.
type line struct {
	runs  []run
	width float64
	size  float64 // of the largest type on it
}

// breakLines breaks spans into lines no wider than width.
func breakLines(spans []Span, base style, width float64) []line {
	var b breaker
	b.width = width
	for _, w := range splitWords(spans, base) {
		b.word(w)
	}
	b.flush()
	return b.lines
}

// measure returns the width of the spans on one line (the widest of their lines).
func measure(spans []Span, base style) (width float64) {
	for _, l := range breakLines(spans, base, 1e9) {
		width = max(width, l.width)
	}
	return width
}

func (st style) of(s Span) style {
	if s.Bold {
		st.weight = font.Bold
	}
	if s.Colour != page.Ink {
		st.colour = s.Colour
	}
	if s.Link != "" {
		st.link, st.colour = s.Link, page.Act
	}
	if s.Address != "" {
		st.address = s.Address
	}
	return st
}

// splitWords cuts spans at their spaces and after hyphens and dashes.
func splitWords(spans []Span, base style) (words []word) {
	var cur word
	end := func() {
		if len(cur.parts) > 0 || cur.hard {
			words = append(words, cur)
		}
		cur = word{}
	}
	for _, s := range spans {
		st := base.of(s)
		text := strings.ToValidUTF8(s.Text, "\uFFFD")
		from := 0
		cut := func(to int) {
			if to > from {
				f := fragment{text: text[from:to], style: st}
				f.width = page.TextWidth(st.weight, st.size, f.text)
				cur.parts = append(cur.parts, f)
				cur.width += f.width
			}
			from = to
		}
		for i, r := range text {
			switch {
			case r == '\n':
				cut(i)
				end()
				cur.hard = true
				from = i + 1
			case (r == ' ' || r == '\t' || r == '\r') && !font.IsFractionSpace(text, i) && !besideTimes(text, i):
				cut(i)
				end()
				cur.space = true
				from = i + 1
			case (r == '-' || r == '–') && i > from && i+utf8.RuneLen(r) < len(text) && breaksAfter(text[i-1], text[i+utf8.RuneLen(r)]):
				cut(i + utf8.RuneLen(r))
				end()
			}
		}
		cut(len(text))
	}
	end()
	return words
}

// besideTimes reports whether the space at byte i stands beside a times sign, as
// sizes ("350 × 80 × 12") are not broken.
func besideTimes(s string, i int) bool {
	return strings.HasSuffix(s[:i], "×") && i+1 < len(s) && s[i+1] != ' ' ||
		strings.HasPrefix(s[i+1:], "× ") && i > 0 && s[i-1] != ' '
}

// breaksAfter reports whether a hyphen between two letters may end a line; one
// before a figure (a minus) may not.
func breaksAfter(before, after byte) bool {
	letter := func(b byte) bool { return b >= 'a' && b <= 'z' || b >= 'A' && b <= 'Z' || b >= 0x80 }
	return letter(before) && letter(after)
}

// breaker fills lines one word after another.
type breaker struct {
	width float64
	lines []line
	cur   []fragment
	used  float64
	open  bool // a line has been started
}

func (b *breaker) word(w word) {
	if w.hard {
		b.flushHard()
	}
	if len(w.parts) == 0 {
		return
	}
	space := 0.0
	if w.space && len(b.cur) > 0 {
		st := b.cur[len(b.cur)-1].style
		space = page.TextWidth(st.weight, st.size, " ")
	}
	if len(b.cur) > 0 && b.used+space+w.width > b.width {
		b.flush()
		space = 0
	}
	if space > 0 {
		last := &b.cur[len(b.cur)-1]
		last.text += " "
		b.used += space
	}
	if w.width > b.width {
		b.long(w)
		return
	}
	b.add(w.parts...)
}

func (b *breaker) add(parts ...fragment) {
	for _, f := range parts {
		b.used += f.width
		if n := len(b.cur); n > 0 && b.cur[n-1].style == f.style {
			b.cur[n-1].text += f.text
			continue
		}
		b.cur = append(b.cur, f)
	}
}

// long sets a word that no line holds, broken between any two characters.
func (b *breaker) long(w word) {
	for _, f := range w.parts {
		from := 0
		used, before := b.used, ""
		for i, r := range f.text {
			// With the kerning to the character before.
			wide := page.TextWidth(f.style.weight, f.style.size, before+string(r)) -
				page.TextWidth(f.style.weight, f.style.size, before)
			before = string(r)
			if used+wide > b.width && (i > from || len(b.cur) > 0) {
				b.add(fragment{f.text[from:i], f.style, used - b.used})
				b.flush()
				from, used = i, 0
				wide = page.TextWidth(f.style.weight, f.style.size, before)
			}
			used += wide
		}
		b.add(fragment{f.text[from:], f.style, used - b.used})
	}
}

func (b *breaker) flushHard() {
	if len(b.cur) == 0 {
		b.lines = append(b.lines, line{})
		return
	}
	b.flush()
}

// flush ends the line.
func (b *breaker) flush() {
	if len(b.cur) == 0 {
		return
	}
	var l line
	for i, f := range b.cur {
		if i == len(b.cur)-1 {
			f.text = strings.TrimRight(f.text, " ")
		}
		if f.text == "" {
			continue
		}
		w := page.TextWidth(f.style.weight, f.style.size, f.text)
		l.runs = append(l.runs, run{f.text, f.style, l.width, w})
		l.width += w
		l.size = max(l.size, f.style.size)
	}
	b.lines = append(b.lines, l)
	b.cur, b.used = nil, 0
}
