// Package mechanics holds the formulas by which wood bends, creeps, bows, dries,
// tips, racks, jams and holds a fastener: pure functions, with their sources.
//
// In: sizes as unit.Length, and quantities of this package, each in its own unit:
// forces in newtons, masses in kilograms, stresses and moduli in megapascals
// (N/mm2), moments in newton millimetres, strains as fractions, curvatures per
// millimetre. Out: the same. Lengths are rounded once, to the nearest nanometre.
//
// Exact: nothing about wood. Results are estimates of clear, straight-grained
// wood; what a table gives as a range is a [figure.Of] with both ends, and the
// caller carries both through the formula. Loads of fasteners and joints are
// ultimate test loads unless a name says "allowable". Every product in a sum is
// rounded by itself, and powers and exponentials are this package's own, so that
// all machines agree to the last bit.
//
// The package must not know parts, species or documents: moduli, densities and
// strains come from the caller.
//
// Glossary: bow is the bending of a strip whose sides want different lengths, cup
// the same across a board's width; creep is what is added to a sag with time; a
// safety factor divides an ultimate load.
package mechanics
