// Package pdf writes a [page.Document] as a tagged PDF 1.7 file.
//
// In: pages, structure tree, outline and anchors. Out: the bytes of the file.
// The same document gives the same bytes on every machine: there are no dates,
// and the file's identifier is a hash of its content.
//
// Units: the pages' millimetres become points, rounded to a thousandth; the
// frame turns from Y down to Y up. Arcs become cubic Béziers (PDF has no arcs).
//
// What a reader of the file gets: text that can be searched and copied, with
// fractions as "3/8"; headings, lists, tables with header cells, figures with
// their description, links, in reading order; head, foot and rules marked as
// artifacts; an outline; language and title. It is a tagged PDF (ISO
// 32000-1:2008 clause 14.8); conformance to PDF/UA (ISO 14289) is not claimed.
//
// The file is written with the standard library alone. A general PDF library was
// tried first: it gave wrong table tags, random identifiers and 4.5 MB more of
// WebAssembly than this package.
//
// The package knows pages and faces and nothing else.
package pdf
