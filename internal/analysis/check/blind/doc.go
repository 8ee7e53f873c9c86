// Package blind judges whether a cut that begins inside the work has a safe way in
// this shop.
//
// Work that is lowered on to a turning cutter, or that a cutter is raised into while
// nothing holds it, is thrown. Safe is a plunge router on clamped work, with its guide
// and two stops. A router table is as safe only where a rule of the house allows it,
// and the work is long enough to be held against the fence with its trailing end on a
// fixed stop and the hands at least 100 mm away: work of 305 mm leaves that on one
// side of the cutter wherever it is. Each pass then takes 3 mm at most.
//
// The length is the table's least for hand-fed work (a shop magazine, read); passes
// and hands are common practice without a source. Rules of the house: "raise into
// held work" allows it, "least blind work" and "blind pass" change the limits. A
// router of which nobody said whether it plunges is unknown. Mortises and recesses
// are chopped by hand as a matter of course and are judged only where the plan routs
// them.
package blind
