// Package document reads the design language: text in, a tree of blocks and
// unevaluated formulas out, every piece of it with the bytes it stands at.
//
// In: a [Source], the bytes of one document. Out: a [File] (piece, recipe, shop
// or choices) and a diag.List with everything that is wrong with the writing:
// syntax, unknown words, things said twice, a missing version line. One broken
// block does not hide the rest: it is kept, marked Broken, and those who ask it
// for what it may have said stay silent. [File.SetInput] tells which bytes to
// replace to change an input, so that comments and layout survive.
//
// The grammar is HCL's native syntax, read with its syntax package only; no
// type of that package leaves this one. Numbers are kept as exact rationals of
// what is written. The package evaluates nothing, and knows neither wood nor
// lengths: that is package evaluate's.
//
// Documents come from strangers: [Limits] bound bytes, nesting, blocks,
// attributes and formulas, and [Work] counts what was done.
//
// Glossary: a block is a word with labels and a body; an attribute is a name and
// its formula; a formula (Expr) is a tree of literals, names, calls and signs.
package document
