package recipe

import (
	"bytes"
	"embed"
	"path"
	"strings"
)

//go:embed library/*.recipe.hcl
var library embed.FS

// Recipe is one built-in recipe.
type Recipe struct {
	// Name is what a "use" block calls it by.
	Name string
	// File names the document in diagnostics.
	File string
	Text []byte
	// About is its own sentence.
	About string
}

// All returns the built-in recipes, by name.
func All() []Recipe {
	entries, err := library.ReadDir("library")
	if err != nil {
		panic("recipe: " + err.Error()) // embedded
	}
	var out []Recipe
	for _, e := range entries {
		text, err := library.ReadFile(path.Join("library", e.Name()))
		if err != nil {
			panic("recipe: " + err.Error())
		}
		out = append(out, Recipe{
			Name: quotedAfter(text, "\nrecipe "), File: e.Name(), Text: text, About: quotedAfter(text, "about = "),
		})
	}
	return out
}

// Find returns the built-in recipe of that name.
func Find(name string) (Recipe, bool) {
	for _, r := range All() {
		if r.Name == name {
			return r, true
		}
	}
	return Recipe{}, false
}

// quotedAfter takes the quoted words behind a mark out of our own documents.
func quotedAfter(text []byte, mark string) string {
	_, rest, ok := bytes.Cut(text, []byte(mark))
	if !ok {
		return ""
	}
	_, rest, _ = bytes.Cut(rest, []byte(`"`))
	words, _, _ := bytes.Cut(rest, []byte(`"`))
	return strings.TrimSpace(string(words))
}
