// Package pulls judges knobs and pulls by what is around them.
//
// A hand must get hold of it: it stands off far enough (15 mm), and on two opposite
// sides there is a finger's room (13 mm) to whatever stands out beside it: a part, or
// another pull. And it blocks nothing: no drawer, nor a pull on it, may pass through it
// on its way out, and it must itself be free to come out with its own drawer.
//
// Both limits are common practice without a source (rules of the house "pull stands
// off", "finger between"). A knob or pull of which nobody says where on a front it sits is
// unknown, where it has something beside it: give it a side. Whether a front has something
// to grip at all is for package grip.
package pulls
