package web

import "scantling/internal/document"

// readBack reads the plain text of the input x of a document's body.
func readBack(body string) (string, bool) {
	file, _ := document.Read(document.Source{Name: "x", Text: []byte("scantling = 1\npiece \"p\" {}\n" + body)}, document.DefaultLimits)
	b := file.Input("x")
	if b == nil || b.Given() == nil {
		return "", false
	}
	text, ok := b.Given().Value.(*document.Text)
	if !ok {
		return "", false
	}
	return text.Plain()
}
