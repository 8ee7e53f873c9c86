// Package figure holds published figures: a value, the range that goes with it
// and where it was found; and reads tables of them.
//
// In: the CSV files that the catalogue packages embed. Out: [Of], a figure with
// its [Source]; [Refusal], an error that carries a message key with the numbers
// that clash; [Table], rows whose lengths are read exactly.
//
// Lengths are unit.Length and are read without rounding where the text is exact
// to a nanometre ("19.05" mm, "1-1/16" in); other numbers are float64 and get
// their unit from the type that the catalogue gives them.
//
// The package knows no wood, no machine and no language: titles of works are
// names, everything else that is said to a reader is a message key.
//
// Glossary: a figure is a value with its origin; a status says how far the
// origin was checked; a rule is a figure that follows from another by a formula.
package figure
