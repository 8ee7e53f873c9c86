// Package share works out what things need and shares room among them: round
// grooves for rods, the pitch of a row, rows that close, things dealt out to
// drawers and trays, play and finger room.
//
// In: sizes of things, cutters of the shop, widths, as unit.Length. Out: depths,
// mouths, rows whose terms add up to the width exactly, groups in the given
// order. All functions are pure and quick enough for sizes to depend on them.
//
// Exact: everything is whole nanometres. Roots are taken of exact 128-bit
// products and rounded once to the nearest nanometre; what a division leaves
// over is shared along the series one nanometre at a time.
//
// Frame: a row lies along the width of its part, counted from the edge where it
// starts; grooves are seen at their end, depths from the surface down.
//
// The package must not know parts, joints, species or documents.
//
// Glossary: the mouth of a groove is its width at the surface; a rod's sit is how
// deep it lies under the surface, its proud what stands above; land is what is
// left between two mouths, margin what is left beyond the outer ones; pitch is
// from centre to centre; a bundle is what stays together when things are dealt
// out.
package share
