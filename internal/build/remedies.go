package build

import (
	"scantling/internal/diag"
	"scantling/internal/edit"
	"scantling/internal/evaluate"
	"scantling/internal/plan"
)

// stamp makes the edits of remedies applicable: each gets the words that stand in
// its place and the hash of its document. Analyses know places only. A remedy
// whose place is in no document of the sources keeps its text and loses its
// edits.
func stamp(src evaluate.Sources, diags diag.List, findings []plan.Finding) {
	docs := map[string][]byte{src.Document.Name: src.Document.Text}
	if src.Shop.Name != "" {
		docs[src.Shop.Name] = src.Shop.Text
	}
	for _, r := range src.Recipes {
		docs[r.Name] = r.Text
	}
	for i := range diags {
		stampAll(docs, diags[i].Remedies)
	}
	for i := range findings {
		stampAll(docs, findings[i].Remedy)
	}
}

func stampAll(docs map[string][]byte, remedies []diag.Remedy) {
	for i := range remedies {
		remedies[i].Edits = stamped(docs, remedies[i].Edits)
	}
}

func stamped(docs map[string][]byte, edits []diag.Edit) []diag.Edit {
	var out []diag.Edit
	for _, e := range edits {
		doc, ok := docs[e.File]
		if !ok || e.Start < 0 || e.End < e.Start || e.End > len(doc) {
			return nil
		}
		e.Old = string(doc[e.Start:e.End])
		out = append(out, edit.Stamp(doc, []diag.Edit{e})...)
	}
	return out
}
