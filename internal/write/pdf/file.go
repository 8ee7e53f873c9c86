package pdf

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf16"
)

// ref is the number of an object in the file.
type ref int

func (r ref) String() string { return strconv.Itoa(int(r)) + " 0 R" }

// file gathers objects. Streams are written at once; all other objects are
// packed into object streams at the end (ISO 32000-1 clause 7.5.7).
type file struct {
	buf    bytes.Buffer
	places []place // by object number, from 1
	zip    *zlib.Writer
	plain  bool // no compression, for tests
}

// place is where an object lies: at an offset, or at an index of an object stream.
type place struct {
	offset int
	in     ref
	index  int
	body   string // of an object that is not written yet
}

func newFile(plain bool) *file {
	f := &file{plain: plain, places: make([]place, 1)}
	f.buf.WriteString("%PDF-1.7\n%\xE2\xE3\xCF\xD3\n")
	return f
}

// reserve returns a number for an object that is set later.
func (f *file) reserve() ref {
	f.places = append(f.places, place{})
	return ref(len(f.places) - 1)
}

func (f *file) set(r ref, body string) { f.places[r].body = body }

func (f *file) add(body string) ref {
	r := f.reserve()
	f.set(r, body)
	return r
}

// stream writes a stream; dict holds its own entries, without length and filter.
func (f *file) stream(r ref, dict string, data []byte) {
	filter := ""
	if !f.plain {
		var z bytes.Buffer
		if f.zip == nil {
			f.zip = zlib.NewWriter(&z)
		} else {
			f.zip.Reset(&z)
		}
		f.zip.Write(data) // to memory: cannot fail
		f.zip.Close()
		data, filter = z.Bytes(), " /Filter /FlateDecode"
	}
	f.places[r].offset = f.buf.Len()
	fmt.Fprintf(&f.buf, "%d 0 obj\n<<%s /Length %d%s>>\nstream\n", int(r), dict, len(data), filter)
	f.buf.Write(data)
	f.buf.WriteString("\nendstream\nendobj\n")
}

// perStream is how many objects go into one object stream.
const perStream = 200

// pack writes the objects that are not streams.
func (f *file) pack() {
	var todo []ref
	for i := 1; i < len(f.places); i++ {
		if f.places[i].body != "" {
			todo = append(todo, ref(i))
		}
	}
	for len(todo) > 0 {
		n := min(perStream, len(todo))
		s := f.reserve()
		var index, body strings.Builder
		for i, r := range todo[:n] {
			fmt.Fprintf(&index, "%d %d ", int(r), body.Len())
			body.WriteString(f.places[r].body)
			body.WriteByte('\n')
			f.places[r] = place{in: s, index: i}
		}
		f.stream(s, fmt.Sprintf("/Type /ObjStm /N %d /First %d", n, index.Len()), []byte(index.String()+body.String()))
		todo = todo[n:]
	}
}

// finish writes objects, cross-reference stream and trailer to w.
func (f *file) finish(w io.Writer, root, info ref) error {
	f.pack()
	hash := sha256.Sum256(f.buf.Bytes())
	x := f.reserve()
	start := f.buf.Len()
	f.places[x].offset = start
	var table []byte
	for i, p := range f.places {
		kind, a, b := 1, p.offset, 0
		switch {
		case i == 0:
			kind, b = 0, 65535
		case p.in != 0:
			kind, a, b = 2, int(p.in), p.index
		}
		table = append(table, byte(kind), byte(a>>24), byte(a>>16), byte(a>>8), byte(a), byte(b>>8), byte(b))
	}
	f.stream(x, fmt.Sprintf("/Type /XRef /Size %d /W [1 4 2] /Root %v /Info %v /ID [<%x> <%x>]",
		len(f.places), root, info, hash[:16], hash[:16]), table)
	fmt.Fprintf(&f.buf, "startxref\n%d\n%%%%EOF\n", start)
	_, err := w.Write(f.buf.Bytes())
	return err
}

// text returns a string object: UTF-16 with byte order mark, in hexadecimal.
func text(s string) string {
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", u)
	}
	b.WriteByte('>')
	return b.String()
}

// ascii returns a string object of plain characters; others become "?".
func ascii(s string) string {
	var b strings.Builder
	b.WriteByte('(')
	for _, r := range s {
		switch {
		case r == '(' || r == ')' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r < ' ' || r > '~':
			b.WriteByte('?')
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte(')')
	return b.String()
}
