// Package build runs everything in order: documents to a piece, joints to cuts,
// analyses to findings, and lays the results together as a plan.
//
// In: sources (documents as bytes), options. Out: a plan, the solids behind it,
// the shop. It is a pure function: the same sources give the same plan on every
// platform and with any number of workers. Nothing is computed here that belongs
// to an analysis.
package build
