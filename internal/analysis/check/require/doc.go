// Package require tells the designer's own rules that do not hold.
//
// A design document may say what must be true of it, in its own words; a rule that
// does not hold is an error, or a warning where the document says so. The rules
// have been judged with the figures in force, measured ones too.
package require
