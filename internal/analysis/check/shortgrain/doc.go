// Package shortgrain judges whether wood stands on too little of its own grain.
//
// Wood splits along its grain. What is left between a cut and an end holds by the
// fibres beside the cut alone: beyond a housing, groove or dovetailed socket across
// the grain a wall as high as the cut is deep, beyond a mortise or hole whatever is
// levered or driven in there. And where the wood runs farther across the grain than
// it is wide along it, as a foot, a hook or the neck of an outline, it snaps there.
// Sheet goods hold both ways and are not judged.
//
// Limits, common practice without a source: beyond a cut as much as it is deep,
// beyond a mortise or hole as much as it is wide, 3 mm at least; at a neck half of
// what hangs on it. The rules of the house "short grain" and "neck" go before them.
// Frames cut from one board are not judged at their sides, which hang on both ends;
// tails of dovetails are not judged.
package shortgrain
