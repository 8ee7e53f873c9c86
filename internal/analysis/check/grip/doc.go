// Package grip judges whether a hand can open what slides: a drawer front with a
// finger scoop under which a finger fits, or with a knob.
//
// A scoop is wide and deep enough, leaves enough of the front below it, and has
// nothing behind it where the finger goes: neither a tray nor the heads of what
// lies in it may stand higher than the scoop's bottom within a finger's reach
// behind the front. A front without scoop, knob, pull or handle cannot be gripped.
//
// Limits, common practice without a source: 40 wide, 15 deep, 20 of front left
// below (rules of the house "scoop width", "scoop depth", "scoop below"), 20 free
// behind the front ("finger behind"). A drawer of which no part is said to show at
// the front is unknown.
package grip
