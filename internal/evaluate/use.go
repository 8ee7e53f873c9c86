package evaluate

import (
	"slices"

	"scantling/internal/document"
	"scantling/internal/message"
)

// usePlaces are the words of a "use" block that are not inputs of the recipe.
var usePlaces = []string{"as", "repeat", "left", "front", "bottom", "if", "label"}

// checkUse holds what a "use" block says against the recipe's inputs.
func (s *scope) checkUse(b *document.Block, recipe *document.File) {
	w, host := s.w, s.host
	var known []string
	var lacking []message.Arg
	for _, in := range recipe.Of("input") {
		known = append(known, in.Label())
		if slices.Contains(usePlaces, in.Label()) {
			w.fault(CodeInputName, in.Where, message.Text("name", in.Label()))
		}
		if needed(s, b, in) {
			lacking = append(lacking, message.Text("", in.Label()))
		}
	}
	if len(lacking) > 0 && !b.Broken {
		w.fault(CodeInputMissing, b.Where, message.Text("recipe", b.Label()), message.List("names", lacking...))
	}
	for _, a := range b.Attributes {
		if slices.Contains(known, a.Name) || slices.Contains(usePlaces, a.Name) {
			continue
		}
		args := []message.Arg{message.Text("name", a.Name), message.Text("recipe", b.Label()), message.Text("known", joinWords(known))}
		if near := document.Nearest(a.Name, append(slices.Clone(known), usePlaces...)); near != "" {
			w.faultWith(CodeNoInput, a.Where, remedies(host.file.Replace(a.Where, near)), args...)
			continue
		}
		w.fault(CodeNoInput, a.Where, args...)
	}
	if b.Attribute("as") == nil && s.decl.repeated() {
		w.fault(CodeUseName, b.Where, message.Text("recipe", b.Label()))
	}
}

// needed reports an input that must be given: a material, where the document
// that uses the recipe has none of the same role.
func needed(s *scope, use, in *document.Block) bool {
	given := in.Given()
	if given == nil || given.Name != "material" || use.Has(in.Label()) {
		return false
	}
	role := ""
	if t, ok := given.Value.(*document.Text); ok {
		role, _ = t.Plain()
	}
	return s.host.outermost().materials[role] == nil
}
