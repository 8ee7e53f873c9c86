package typeset

import "fmt"

// NoteKind says what had to give way.
type NoteKind uint8

// The kinds of note.
const (
	Shrunk     NoteKind = iota + 1 // a drawing was larger than its column
	Squeezed                       // a table's columns asked for more than the width
	Dropped                        // a table had more columns than the width has room for
	RowSplit                       // a row was taller than a column
	TooDeep                        // blocks nested deeper than six
	TooLong                        // more pages than [MaxPages]; the rest is left out
	BadDrawing                     // a drawing has no area, or one that is no number
)

// Note tells the caller what had to give way to keep the promises.
type Note struct {
	Kind NoteKind
	// Name is that of the drawing or the address of the table.
	Name string
	// Wanted and Got are the two numbers that clash: millimetres, or pages.
	Wanted, Got float64
}

// String prints the note for tests and logs.
func (n Note) String() string {
	kind := [...]string{"", "shrunk", "squeezed", "columns dropped", "row split", "too deep", "too long", "bad drawing"}
	return fmt.Sprintf("%s %q: wanted %.1f, got %.1f", kind[min(int(n.Kind), len(kind)-1)], n.Name, n.Wanted, n.Got)
}

// mostNotes bounds the notes.
const mostNotes = 100

func (c *composer) note(n Note) {
	if len(c.notes) < mostNotes {
		c.notes = append(c.notes, n)
	}
}
