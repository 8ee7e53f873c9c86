package ceiling

// Piece is a kind of piece as it may lie: its size with one kerf, in units.
type Piece struct {
	Kind   int
	Turned bool
	X, Y   int64
}

// Fits returns the pieces that are worth something, are left and lie within x by
// y, appended to out.
func Fits(out, pieces []Piece, x, y int64, value []int64, left []int) []Piece {
	for _, l := range pieces {
		if value[l.Kind] > 0 && left[l.Kind] > 0 && l.X <= x && l.Y <= y {
			out = append(out, l)
		}
	}
	return out
}

// Strip is a row of columns, each a stack of pieces, the widest first.
type Strip [][]Piece
