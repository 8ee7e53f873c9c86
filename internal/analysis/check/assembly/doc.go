// Package assembly judges whether the piece can be put together.
//
// In: how the piece comes apart (package apart: finished solids, straight slides
// along the axes, tilted parts' own axes and the diagonals of mitres, group by
// group). Out: a failure for every set of parts, or groups, that lock each other,
// made as small as it can be, with what blocks the first of them in each direction.
// Unknown where a part's shape is not known, or the work would be too much. A pass
// if everything comes apart.
//
// Nothing is worked out here; lengths do not enter. The check must not know how an
// order is found.
package assembly
