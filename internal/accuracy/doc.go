// Package accuracy adds up the errors of several sizes and knows the standard
// grades of tolerance.
//
// In: half widths of tolerances (plus or minus) as unit.Length. Out: the whole
// error at worst and by chance, rounded up to the nanometre. Exact: the worst case;
// the statistical one holds for independent errors that fill their tolerances alike.
//
// The package must not know parts, machines or documents.
package accuracy
