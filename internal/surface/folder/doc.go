// Package folder is the world of real files: a folder of the maker's disk.
//
// In: a folder. Out: a world.World whose names are paths below it; nothing
// outside the folder can be named, links out of it are refused by the operating
// system's own confinement (os.Root). Writing replaces a file whole or not at
// all: a temporary file beside it is written, synced and renamed.
package folder
