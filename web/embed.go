package web

import (
	"embed"
	"io/fs"
)

//go:embed all:dist
var dist embed.FS

// Built reports whether the pages have been built.
func Built() bool {
	_, err := fs.Stat(dist, "dist/app/index.html")
	return err == nil
}

// Pages returns the built pages; without them, the one page that says what to
// run.
func Pages() fs.FS {
	dir := "dist"
	if Built() {
		dir = "dist/app"
	}
	pages, err := fs.Sub(dist, dir)
	if err != nil {
		panic("web: " + err.Error()) // embedded
	}
	return pages
}
