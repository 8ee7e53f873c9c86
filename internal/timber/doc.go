// Package timber knows solid wood: the species of the catalogue with their
// figures, how much moisture wood takes up from the air, and how its sizes
// follow.
//
// In: names of woods as people say them, air (humidity, temperature) or moisture
// contents, sizes as unit.Length. Out: [Species] with sourced figures, [Moisture],
// changes of size and clearances as unit.Length, rounded once to the nanometre
// (parts down, openings up).
//
// Units: moisture in percent of the oven-dry mass, humidity in percent, air in
// degrees Celsius, movement coefficients per one percent of moisture, density in
// kg/m3. Sizes lie in the part's own axes: across the grain only, the length
// along the grain is taken as constant. Exact: nothing about wood; the formulas
// are evaluated in float64 with every product rounded before it is added, so
// that all machines agree.
//
// Data: data/species.csv and its neighbours, one source per group of fields and
// one status per field. Catalogues are values and can be extended by a shop.
//
// The package must not know parts, joints or documents.
//
// Glossary: a species is a wood of the catalogue; flat-sawn and quarter-sawn name
// the growth rings' lie in a board; movement is the seasonal change of a size; a
// season is the moisture now and at the dry and the wet end of the year.
package timber
