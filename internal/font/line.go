package font

// Kind says how a piece of a line is drawn.
type Kind uint8

// The kinds of piece.
const (
	Glyphs Kind = iota // glyphs of the face
	Drawn              // a sign drawn as an outline
	Bar                // the bar of a fraction: a filled rectangle
)

// Piece is one thing to draw on a line. Lengths are in em of the whole line.
type Piece struct {
	Kind Kind
	// X, Y is where the piece's own origin lies: for glyphs and signs the start
	// of their baseline, for a bar its top left corner.
	X, Y float64
	// Scale is the size of the piece's own em: 1, or FractionSize.
	Scale float64
	// Width is the piece's advance, or the length of a bar.
	Width float64
	// Text is what the glyphs or the sign say.
	Text string
	// Glyphs are the glyphs with the distance of each from X.
	Glyphs []Placed
	// Sign is the outline of a drawn sign, in em of the piece.
	Sign []Outline
	// Cluster groups the pieces that are read as one: the pieces of a fraction,
	// or a drawn sign. Zero stands alone and reads as its Text.
	Cluster int
	// Reading is what the cluster says, on its first piece.
	Reading string
}

// Placed is a glyph at a distance along its run.
type Placed struct {
	GID GID
	X   float64
}

// Line is a string laid out on one line.
type Line struct {
	Pieces []Piece
	// Width is the advance of the whole line in em.
	Width float64
	// Top and Bottom are how far the ink reaches above and below the baseline,
	// in em; both are zero for a line without ink.
	Top, Bottom float64
}

// MaxRunes bounds a line: Lay looks at no more characters than this.
const MaxRunes = 1 << 14

// Lay lays s out on one line. Line breaks and tabs become spaces; other
// control characters and what is not UTF-8 become the empty box.
func Lay(w Weight, s string) Line {
	l := layer{face: Of(w)}
	runes := []rune(s)
	if len(runes) > MaxRunes {
		runes = runes[:MaxRunes]
	}
	l.room = min(len(runes), 256)
	for len(runes) > 0 {
		if num, den, n := fractionAt(runes); n > 0 {
			l.fraction(num, den)
			runes = runes[n:]
			continue
		}
		r := plain(runes[0])
		switch {
		case r == '\u00AD' || r == '\u200B' || r == '\u2060' || r == '\uFEFF':
			// Zero width: a place where a line may or may not break.
		case r == ' ' && l.afterDigit && startsFraction(runes[1:]):
			// The fraction brings its own, narrower gap.
			runes = runes[1:]
			continue
		case HasSign(r):
			l.sign(r)
		default:
			l.glyph(r)
		}
		l.afterDigit = isDigit(r)
		runes = runes[1:]
	}
	l.flush()
	return l.line
}

// Width returns the advance of s in em.
func Width(w Weight, s string) float64 { return Lay(w, s).Width }

// plain maps characters that are drawn as others.
func plain(r rune) rune {
	switch r {
	case '\n', '\t', '\r', '\u00A0', '\u2009', '\u202F':
		return ' '
	case 'µ':
		return 'μ'
	case '\u2011':
		return '-'
	}
	return r
}

// layer gathers the pieces of one line.
type layer struct {
	face       *Face
	line       Line
	run        Piece
	said       []rune // by the run
	x          float64
	last       GID
	clusters   int
	room       int // glyphs to make room for
	afterDigit bool
}

// flush ends the run of glyphs that is being gathered.
func (l *layer) flush() {
	if len(l.run.Glyphs) > 0 {
		l.run.Width = l.x - l.run.X
		l.run.Text = string(l.said)
		l.line.Pieces = append(l.line.Pieces, l.run)
	}
	l.run = Piece{}
	l.said = l.said[:0]
	l.last = 0
	l.line.Width = l.x
}

func (l *layer) reach(top, bottom float64) {
	l.line.Top = max(l.line.Top, top)
	l.line.Bottom = max(l.line.Bottom, bottom)
}

// glyph adds one character to the run.
func (l *layer) glyph(r rune) {
	g, ok := l.face.Glyph(r)
	if !ok {
		l.sign(r)
		return
	}
	if len(l.run.Glyphs) == 0 {
		l.run = Piece{Kind: Glyphs, X: l.x, Scale: 1, Glyphs: make([]Placed, 0, l.room)}
	} else {
		l.x += l.face.Kern(l.last, g)
	}
	if box, ok := l.face.ink(g); ok {
		l.reach(box[3], -box[1])
	}
	l.run.Glyphs = append(l.run.Glyphs, Placed{g, l.x - l.run.X})
	l.said = append(l.said, r)
	l.x += l.face.Advance(g)
	l.last = g
}

// sign adds a drawn sign.
func (l *layer) sign(r rune) {
	l.flush()
	outlines, width := signOutlines(r, l.face == Of(Bold))
	l.clusters++
	l.line.Pieces = append(l.line.Pieces, Piece{
		Kind: Drawn, X: l.x, Scale: 1, Width: width, Text: string(r), Sign: outlines,
		Cluster: l.clusters, Reading: string(r),
	})
	l.reach(signTop, signBottom)
	l.x += width
	l.line.Width = l.x
}
