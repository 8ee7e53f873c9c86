// Package racking judges whether a drawer is long enough for its width to run
// without jamming.
//
// A drawer that is pulled at one corner twists until it bears on its sides, and the
// friction there holds it when too little of it is still in the opening: less than the
// friction times its width (statics, see mechanics). By the friction of dry wood that is
// a quarter to a half of its width, by waxed wood less. A drawer that stands out by two thirds
// has a third of its length left in, so that common practice, a length at least as
// great as the width, is what a friction of one third asks for. The rule of the house "drawer
// length to width" puts another ratio in its place.
//
// A drawer that sticks at a corner even when it is shut, by the least friction of dry
// wood, is an error; any other that is too short is a warning, and tells how far out it
// runs. It wants close guides, a centre guide, or bought runners: a drawer that has
// runners or guides among its hardware passes, and so does one that strips of wood guide
// closely at both sides, unless it sticks even when it is shut. A group that moves but has
// no parts is unknown.
package racking
