// Package strength estimates what load does to the piece: how far shelves and bottoms
// sag, at once and after years; whether open cases rack; whether the piece tips, empty
// and loaded, with its drawers out one by one and together; what joints bear; how
// drawers run.
//
// In: parts, their finished solids (for masses), what the joints come to, contents
// with their masses, the shop's house rules. Out: [plan.Strength], every figure an
// estimate with its range and source; what cannot be told says what is missing.
//
// Forces are in newtons, moments in newton metres, lengths exact to the micrometre and
// no better than the formula. Bodies stand on the floor at their lowest; the front is
// where "back" is least. Loads of joints and fasteners are those of tests; allowed ones
// have a safety factor taken out. Solid wood spans by its own modulus, along or across
// its grain; sheet goods by the catalogue's. Shear is counted in solid wood. A part that is held at
// all four edges, as a bottom in grooves all round, bears both ways: two strips that cross
// in its middle sag alike, which makes more of the sag than a plate's own stiffness does.
//
// Limits of common practice without a source: an eye sees a sag of 1/32 in to the foot,
// design for 0.02 in to the foot; an open case is pushed by a fifth of what it carries
// and no less than 100 N; drawers stand out by two thirds. House rule: "shelf load", in
// kilopascals. The package judges nothing: checks do.
package strength
