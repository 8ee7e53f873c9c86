// Package table turns a plan into tables: parts, buying list, cuts of a part,
// readings to take, how things are held.
//
// In: a plan and words. Out: a [Table], rows of text with a title and headings;
// a writer or the booklet takes it from there. Lengths are in the reader's units
// and rounded only for showing; the package computes no figure of its own.
package table
