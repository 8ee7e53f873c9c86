package pdf

import (
	"errors"
	"fmt"
	"io"
	"math"
	"strings"

	"scantling/internal/page"
)

// Options change how the file is written.
type Options struct {
	// Plain leaves streams uncompressed, so that tests can read them.
	Plain bool
}

// Write writes the document. It fails only if w does, or if the document has no
// pages, a page without a size, a place that is no number or a node that is not
// in the tree; the error says which.
func Write(w io.Writer, d page.Document, o Options) error {
	if err := check(d); err != nil {
		return err
	}
	wr := &writer{file: newFile(o.Plain), doc: d, faces: newFaces(), anchors: map[string]page.Anchor{}}
	for _, a := range d.Anchors {
		if _, twice := wr.anchors[a.Name]; !twice && a.Page >= 0 && a.Page < len(d.Pages) {
			wr.anchors[a.Name] = a
		}
	}
	return wr.write(w)
}

// writer holds what is shared by the parts of one file.
type writer struct {
	*file
	doc     page.Document
	faces   *faces
	anchors map[string]page.Anchor
	pages   []ref
	tree    *tree
}

func (w *writer) write(out io.Writer) error {
	root, pages, resources := w.reserve(), w.reserve(), w.reserve()
	for range w.doc.Pages {
		w.pages = append(w.pages, w.reserve())
	}
	w.tree = newTree(w)
	for i := range w.doc.Pages {
		w.page(i, pages, resources)
	}
	fonts := w.faces.write(w.file)
	w.set(resources, "<</Font <<"+fonts+">>>>")
	w.set(pages, fmt.Sprintf("<</Type /Pages /Count %d /Kids %s>>", len(w.pages), list(w.pages)))
	entries := fmt.Sprintf("<</Type /Catalog /Pages %v /MarkInfo <</Marked true>> /StructTreeRoot %v /ViewerPreferences <</DisplayDocTitle true>>", pages, w.tree.write())
	if w.doc.Language != "" {
		entries += " /Lang " + ascii(w.doc.Language)
	}
	if outline := w.outline(); outline != 0 {
		entries += fmt.Sprintf(" /Outlines %v /PageMode /UseOutlines", outline)
	}
	w.set(root, entries+">>")
	return w.finish(out, root, w.info())
}

func (w *writer) info() ref {
	var b strings.Builder
	b.WriteString("<</Producer (Scantling)")
	for _, e := range []struct{ key, value string }{
		{"Title", w.doc.Title}, {"Author", w.doc.Author}, {"Subject", w.doc.Subject},
	} {
		if e.value != "" {
			b.WriteString(" /" + e.key + " " + text(e.value))
		}
	}
	b.WriteString(">>")
	return w.add(b.String())
}

// page writes a page, its content and its links.
func (w *writer) page(i int, parent, resources ref) {
	p := w.doc.Pages[i]
	c := newContent(w, i)
	c.items(p.Items)
	content := w.reserve()
	w.stream(content, "", c.buf)
	body := fmt.Sprintf("<</Type /Page /Parent %v /MediaBox [0 0 %s %s] /Contents %v /Resources %v /StructParents %d /Tabs /S",
		parent, number(points(p.Size.Width)), number(points(p.Size.Height)), content, resources, i)
	if len(c.links) > 0 {
		body += " /Annots " + list(c.links)
	}
	w.set(w.pages[i], body+">>")
}

func list(refs []ref) string {
	var b strings.Builder
	b.WriteByte('[')
	for i, r := range refs {
		if i > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(r.String())
	}
	b.WriteByte(']')
	return b.String()
}

func finite(b page.Box) bool {
	sum := math.Abs(b.Min.X) + math.Abs(b.Min.Y) + math.Abs(b.Max.X) + math.Abs(b.Max.Y)
	return sum <= math.MaxFloat64
}

// check finds what cannot be written.
func check(d page.Document) error {
	if len(d.Pages) == 0 {
		return errors.New("pdf: the document has no pages")
	}
	for i, p := range d.Pages {
		if !(p.Size.Width > 0 && p.Size.Height > 0 && p.Size.Width < 5000 && p.Size.Height < 5000) {
			return fmt.Errorf("pdf: page %d is %v × %v mm; it must be more than 0 and less than 5000", i+1, p.Size.Width, p.Size.Height)
		}
		for k, it := range p.Items {
			if it.Shape == nil {
				return fmt.Errorf("pdf: page %d, item %d has no shape", i+1, k)
			}
			if b := it.Shape.Bounds(); !finite(b) {
				return fmt.Errorf("pdf: page %d, item %d (%T of %q): its place is no number: %v", i+1, k, it.Shape, it.Address, b)
			}
			if it.Node != page.Artifact && !d.Tree.Valid(it.Node) {
				return fmt.Errorf("pdf: page %d, item %d (%T of %q): node %d of %d", i+1, k, it.Shape, it.Address, it.Node, len(d.Tree))
			}
		}
	}
	for i, n := range d.Tree {
		if i > int(page.Root) && (n.Parent < page.Root || int(n.Parent) >= i) {
			return fmt.Errorf("pdf: node %d has node %d as its parent; a parent must come first", i, n.Parent)
		}
	}
	return nil
}
