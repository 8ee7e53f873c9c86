// Package finishing judges where and when a finish goes on.
//
// Oil and what cures by oxidation, inside a closed drawer or case, smells for years
// (practitioners agree; no source): insides want shellac, lacquer, water-borne, or
// nothing. Glue does not hold on a finish: parts that are finished before they are
// glued must be masked at their joints, or finished after.
package finishing
