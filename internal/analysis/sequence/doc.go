// Package sequence decides in which order one person builds the piece.
//
// In: the piece, the part rows with their stages, operations, set-up cards,
// cutting diagrams and measures. Out: numbered [plan.Step] values in a valid
// order, each a message with typed arguments, with the marks, cards, measures
// and operations that it covers, what must be done before, and how long the
// glue or the finish then wants. Times are whole minutes.
//
// Decided: what goes on while glue sets. Planing of the next group stands
// between a glue-up and the measure that waits for it. Time with hands on is an
// estimate by declared house rules ([Estimates]).
//
// The package must not know any particular piece, and sizes nothing.
//
// Glossary: a chapter is a heading of the booklet; an event is a turn in the
// building (package turns); hands is time at work, wait time that must pass.
package sequence
