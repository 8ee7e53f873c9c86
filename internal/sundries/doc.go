// Package sundries knows what goes on and between the wood: how long and how hard
// glue is clamped, how far a finish goes and how thick it lies.
//
// In: temperatures in degrees Celsius, pressures in megapascals, sizes as
// unit.Length, coverages in square metres to the litre. Out: minutes, forces in
// newtons, thicknesses as unit.Length, rounded once. Exact: nothing; the glue's own
// label goes before every figure of this package.
//
// The package must not know parts or documents.
package sundries
