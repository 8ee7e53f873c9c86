// Package world is the one way to what is outside: files and the date.
//
// Everything that reads a document, writes an output or asks for today's date
// does it through a [World], so that command line, server and WebAssembly differ
// in nothing else. The world of real files is made by the surfaces; [Memory]
// serves tests and the browser. Fonts are part of the program and need no world.
//
// Names are slash-separated paths below the world's own folder, as in [fs.FS]:
// no leading slash, no "." or ".." steps. Sizes are bounded by [MaxFile]. Errors
// say what was asked for and wrap [fs.ErrNotExist], [fs.ErrInvalid] or
// [ErrTooLarge]. The package knows nothing of what the files hold.
package world
