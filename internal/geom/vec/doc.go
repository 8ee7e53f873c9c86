// Package vec holds points and directions in space: float64 millimetres.
//
// In and out: plain triples. Nothing is exact here; lengths become millimetres
// in one place ([Of]) and come back in one place ([V3.Lengths]). Products in
// sums are fenced so that results have the same bits on every platform.
// The package knows no wood.
package vec
