// Package stages splits the list: what may be cut now, and what only after
// something has been measured.
//
// In: the piece with its measures, the part rows. Out: the stages in order, the
// readings to take, and each row's stage. A part belongs to the stage of the
// latest measure that it waits for, in the order of the document; a stage
// without parts is left out. The package sizes nothing.
package stages
