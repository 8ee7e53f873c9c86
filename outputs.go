package scantling

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"

	"scantling/internal/output/booklet"
	"scantling/internal/output/drawing"
	"scantling/internal/output/table"
	"scantling/internal/output/view3d"
	"scantling/internal/page"
	"scantling/internal/typeset"
	"scantling/internal/unit"
	"scantling/internal/words"
	"scantling/internal/write/csv"
	"scantling/internal/write/gltf"
	"scantling/internal/write/pdf"
	"scantling/internal/write/svg"
)

// File is one output: a slash-separated name below the output folder, and bytes.
type File struct {
	Name string
	Data []byte
}

// Words returns the words that the plan is put into: the shop's region and
// currency, the edition's units.
func (r *Result) Words() *words.Words {
	return r.words(words.English, r.Plan.Units(), unit.Spaced)
}

// words speaks in one system of units: no line of a plan mixes two.
func (r *Result) words(language words.Language, system unit.System, style unit.Style) *words.Words {
	show := r.Shop.Show(system)
	show.Style = style
	return words.New(language, words.Region(r.Shop.Region), show, words.Currency(r.Shop.Currency))
}

// Second returns the words of the sheet of second sizes, nil where the edition has
// none.
func (r *Result) Second() *words.Words {
	if system, ok := r.Plan.Second(); ok {
		return r.words(words.English, system, unit.Spaced)
	}
	return nil
}

// Booklet returns the booklet as a tagged PDF.
func (r *Result) Booklet(paper page.Paper) ([]byte, error) {
	doc, _ := r.Pages(paper, words.English)
	var out bytes.Buffer
	if err := pdf.Write(&out, doc, pdf.Options{}); err != nil {
		return nil, fmt.Errorf("the booklet cannot be written: %w", err)
	}
	return out.Bytes(), nil
}

// Pages sets the booklet in a language, and says what had to give way. Fractions
// of an inch are set as signs.
func (r *Result) Pages(paper page.Paper, language words.Language) (page.Document, []typeset.Note) {
	w := r.words(language, r.Plan.Units(), unit.Signs)
	o := booklet.Options{Paper: paper, Language: r.Shop.Region, ThirdAngle: r.thirdAngle(), Show: w.Show()}
	if system, ok := r.Plan.Second(); ok {
		o.Second = r.words(language, system, unit.Signs)
	}
	return booklet.Compose(r.Plan, r.Solids(), w, o)
}

// thirdAngle reports whether drawings are arranged as American readers expect.
func (r *Result) thirdAngle() bool { return words.Region(r.Shop.Region) == words.American }

// Scene returns the finished piece as binary glTF.
func (r *Result) Scene() ([]byte, error) {
	var out bytes.Buffer
	s, _ := view3d.Whole(r.Plan, r.Solids())
	if err := gltf.Write(&out, s); err != nil {
		return nil, fmt.Errorf("the 3D view cannot be written: %w", err)
	}
	return out.Bytes(), nil
}

// JSON returns the plan as stored data.
func (r *Result) JSON() ([]byte, error) {
	data, err := json.MarshalIndent(r.Plan, "", " ")
	if err != nil {
		return nil, fmt.Errorf("the plan cannot be written: %w", err)
	}
	return append(data, '\n'), nil
}

// Files returns everything that a plan is handed over as.
func (r *Result) Files() ([]File, error) {
	var files []File
	add := func(name string, data []byte, err error) error {
		files = append(files, File{name, data})
		return err
	}
	for _, make := range []func() error{
		func() error { data, err := r.JSON(); return add("plan.json", data, err) },
		func() error {
			data, err := r.table(table.Parts(r.Plan, "", r.Words()), r.Plan.Units())
			return add("parts.csv", data, err)
		},
		func() error {
			system, ok := r.Plan.Second()
			if !ok {
				return nil
			}
			data, err := r.table(table.Second(r.Plan, system, r.Second()), system)
			return add("parts-"+string(system)+".csv", data, err)
		},
		func() error {
			data, err := r.table(table.Buying(r.Plan, r.Words()), r.Plan.Units())
			return add("buying.csv", data, err)
		},
		func() error {
			data, err := r.table(table.Wood(r.Plan, r.Words()), r.Plan.Units())
			return add("wood.csv", data, err)
		},
		func() error {
			data, err := r.table(table.Load(r.Plan, r.Words(), false), r.Plan.Units())
			return add("load.csv", data, err)
		},
		func() error { data, err := r.Booklet(page.A4); return add("booklet.pdf", data, err) },
		func() error { data, err := r.Booklet(page.Letter); return add("booklet-letter.pdf", data, err) },
		func() error { data, err := r.Scene(); return add("piece.glb", data, err) },
	} {
		if err := make(); err != nil {
			return nil, err
		}
	}
	return append(files, r.Drawings()...), nil
}

func (r *Result) table(t table.Table, system unit.System) ([]byte, error) {
	out := csv.Table{Rows: t.Rows}
	// A column of lengths names its unit: a table of bare figures stands alone.
	for _, c := range t.Columns {
		heading := c.Heading
		if c.Length {
			heading += " (" + string(system) + ")"
		}
		out.Header = append(out.Header, heading)
	}
	var data bytes.Buffer
	err := csv.Write(&data, out, csv.Options{Mark: true})
	return data.Bytes(), err
}

// Room for a drawing that stands by itself, in millimetres on paper.
const drawingWidth, drawingHeight = 260.0, 180.0

// Drawings returns every drawing as SVG: the piece, its parts, its diagrams.
func (r *Result) Drawings() []File {
	w := r.Words()
	var files []File
	add := func(name string, d page.Drawing) {
		files = append(files, File{"drawings/" + fileName(name) + ".svg", svg.Drawing(d, svg.Options{})})
	}
	for _, look := range []drawing.Look{drawing.LookIsometric, drawing.LookFront, drawing.LookRight, drawing.LookTop} {
		add("piece "+string(look), drawing.Whole(r.Plan, r.Solids(), drawing.WholeOptions{Look: look, Marks: look == drawing.LookIsometric}, drawingWidth, drawingHeight, w))
	}
	for _, row := range r.Plan.Parts {
		d, _ := drawing.Part(r.Plan, row, r.Solids(), drawing.PartOptions{ThirdAngle: r.thirdAngle()}, drawingWidth, drawingHeight, w)
		add("part "+row.Mark, d)
	}
	for _, d := range r.Plan.Diagrams {
		add("diagram "+d.ID, drawing.Diagram(d, drawingWidth, drawingHeight, w))
	}
	return files
}

// fileName keeps letters, digits, points and hyphens of a name.
func fileName(name string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == '.', r == '-':
			return r
		}
		return '-'
	}, name)
}
