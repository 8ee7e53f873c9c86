// Package beam cuts all pieces from as few equal sheets as it can, or those worth
// most from one sheet, in strips, by a beam search.
//
// In: a [Question] in whole units, one kerf added to every piece and to the
// sheet; a width; a guide; a meter. Out: strips, sheet by sheet. The package
// proves nothing. It knows no defects and no sequences.
package beam
