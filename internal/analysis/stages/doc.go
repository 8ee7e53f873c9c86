// Package stages splits the list: what may be cut now, and what only after
// something has been measured.
//
// In: the piece with its measures, the part rows. Out: the stages in order, the
// readings to take, and each row's stage. A part belongs to the stage of the
// latest measure that it waits for; the stage names every measure that any of its
// parts waits for. Measures are taken in the order of the document, but none
// before what it reads (a part, what bounds a space) has been cut. A stage
// without parts is left out. A reading that the record holds stands beside the
// size that the plan rests on. The package sizes nothing.
package stages
