package evaluate

import (
	"slices"
	"strings"

	"scantling/internal/document"
	"scantling/internal/message"
	"scantling/internal/piece"
)

// kindsOf lists the kinds of joint that a word says something of; words that are not
// here say something of all.
var kindsOf = map[string][]piece.JointKind{
	"finger": {piece.BoxJoint}, "fingers": {piece.BoxJoint}, "first": {piece.BoxJoint},
	"dowels": {piece.DowelJoint},
	"tongue": {piece.TongueJoint},
	"spline": {piece.MitreJoint}, "keys": {piece.MitreJoint},
	"tails": {piece.DovetailJoint}, "lap": {piece.DovetailJoint},
	"slide": {piece.SlidingJoint},
	"tenon": {piece.TenonJoint, piece.BridleJoint},
	"loose": {piece.LooseJoint},
}

// checkWords finds what a joint says that is nothing to its kind: it would be passed
// over without a word. At a corner parts go right through, so that a depth is one too.
func (f *family) checkWords() {
	b := f.d.block
	if text, ok := b.Attribute("kind").Value.(*document.Text); !ok || !plain(text) {
		return // the kind is chosen by a formula: the words are there for each
	}
	for _, a := range b.Attributes {
		kinds, own := kindsOf[a.Name]
		switch {
		case own && !slices.Contains(kinds, f.kind()):
			var names []string
			for _, k := range kinds {
				names = append(names, string(k))
			}
			f.w().fault(CodeJointWord, a.Where, message.Text("word", a.Name), message.Text("kind", string(f.kind())), message.Text("kinds", strings.Join(names, ", ")))
		case a.Name == "depth" && f.corner():
			f.w().fault(CodeCornerDepth, a.Where, message.Text("kind", string(f.kind())))
		}
	}
}

func plain(t *document.Text) bool {
	_, ok := t.Plain()
	return ok
}
