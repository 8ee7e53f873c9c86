// Package panelroom judges whether solid bottoms and panels that lie in grooves have room
// to grow, and stay in when they shrink.
//
// One that has no room at the damp end of the year pushes its frame apart; one whose edge
// comes out of its groove at the dry end falls. The figures are those of the seasons,
// with the range that the wood has.
package panelroom
