// Package corner seeks fillings of a sheet that are worth more than a floor, with
// guillotine cuts in any number of stages and no more copies of a kind than are left.
//
// In: a [Question] in whole units, one kerf added to every piece and to the sheet; a
// meter. Out: fillings as parcels, the one worth most first. The package proves
// nothing. It knows no defects and no sequences.
//
// Every rectangle has a piece at its corner and is cut along a side of it. A table says
// what each rectangle could be worth with any number of copies. Copies beyond what is
// left have their price: values are lessened by it until the table's own filling keeps
// to the limits, nearly. With these values the table guides a beam.
package corner
