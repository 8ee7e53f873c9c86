// Package cup judges boards of which one face is machined away more than the other, by
// channels, grooves or housings along the grain: they cup across their width while they
// wait for the next step.
//
// The bigger surface dries, or takes up damp, sooner: hollow on the machined face if the
// core is wetter than the room, on the other face if it is drier (diffusion and beam
// theory, see mechanics; the upper limit, as nothing holds the board). A board that lies
// flat on the bench for two weeks and on its worst day stands off a straight edge by more
// than the limit is told, with when that is, and what standing on edge or on stickers,
// machining both faces and a weight leave of it. The limit is 1 mm, more than a clamp or
// a hand plane takes out without being noticed (common practice, no source; a house rule
// "cup while it waits" changes it), or the room that a fit leaves across the board, if it
// is the outside of what moves in it and that is less.
//
// It needs a reading of the wood's core: the moisture of the board in the rack, or the
// house rule "core moisture". Without one the answer is unknown where a core four points
// wetter or drier than the room, as boards are that came in from a shed (common practice,
// no source), would pass the limit, and good where it would not.
package cup
