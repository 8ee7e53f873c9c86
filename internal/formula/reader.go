package formula

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/figure"
	"scantling/internal/message"
)

// Reader works out the attributes of one block where it stands, and reports what
// is missing or wrong in it.
type Reader struct {
	Maker *Maker
	Scope Scope
	File  *document.File
	Block *document.Block
}

// Has reports whether the block has an attribute.
func (r Reader) Has(attribute string) bool { return r.Block.Has(attribute) }

// Where is the place of an attribute's formula, or of the block's head.
func (r Reader) Where(attribute string) diag.Place {
	if a := r.Block.Attribute(attribute); a != nil {
		return a.Value.Place()
	}
	return r.Block.Where
}

// Value works an attribute out; nothing if the block does not have it.
func (r Reader) Value(attribute, name string) Value {
	a := r.Block.Attribute(attribute)
	if a == nil {
		return Value{}
	}
	if _, literal := a.Value.(*document.Number); literal {
		name = "" // it gets its name with its dimension
	}
	return r.Maker.Eval(a.Value, r.Scope, name)
}

// Words works out an attribute that holds words; empty if there is none.
func (r Reader) Words(attribute string) string {
	if !r.Has(attribute) {
		return ""
	}
	t, _ := r.Maker.Words(r.Value(attribute, ""))
	return t
}

// Choice works out an attribute that holds one of a few words; empty if there is
// none, and with a report of the words that are allowed if it is none of them.
func (r Reader) Choice(attribute string, known ...string) string {
	if !r.Has(attribute) {
		return ""
	}
	word, ok := r.Maker.Words(r.Value(attribute, ""))
	if ok && !slices.Contains(known, word) {
		r.BadWord(attribute, word, known)
		return ""
	}
	return word
}

// Length works out an attribute that holds a length; false if there is none or
// it is wrong.
func (r Reader) Length(attribute, name string) (Value, bool) {
	if !r.Has(attribute) {
		return Value{}, false
	}
	return r.Maker.Length(r.Value(attribute, name), name)
}

// Need works out a length that the block cannot do without.
func (r Reader) Need(attribute, name string) (Value, bool) {
	if !r.Has(attribute) {
		r.Missing(attribute)
		return Value{}, false
	}
	return r.Length(attribute, name)
}

// Above works out a length that the block cannot do without and that must be
// above nought.
func (r Reader) Above(attribute, name string) (Value, bool) {
	v, ok := r.Need(attribute, name)
	return v, ok && r.Positive(v, attribute, name)
}

// Positive reports a length that is not above nought.
func (r Reader) Positive(v Value, attribute, name string) bool {
	l, _ := v.Is.Length()
	if l > 0 {
		return true
	}
	r.Fault(CodeNotPositive, r.Where(attribute), message.Text("name", name), message.Length("got", l))
	return false
}

// Missing reports an attribute that the block cannot do without, unless the
// block was not understood as a whole: it may stand there.
func (r Reader) Missing(attribute string) {
	if !r.Block.Broken && !r.Block.Unsure {
		r.Fault(CodeMissing, r.Block.Where, message.Text("name", attribute), message.Text("block", r.Block.Type))
	}
}

// BadWord reports a word that is none of those that may stand in an attribute.
func (r Reader) BadWord(attribute, word string, known []string) {
	r.FaultWith(CodeUnknownWord, r.Where(attribute), r.nearest(attribute, word, known),
		message.Text("word", clip(word)), message.Text("name", attribute), message.Text("known", strings.Join(known, ", ")))
}

// nearest is the remedy that writes the known word that was probably meant; none
// where the attribute is a formula.
func (r Reader) nearest(attribute, word string, known []string) []diag.Remedy {
	a := r.Block.Attribute(attribute)
	near := document.Nearest(word, known)
	if a == nil || near == "" {
		return nil
	}
	t, ok := a.Value.(*document.Text)
	if !ok {
		return nil
	}
	if _, plain := t.Plain(); !plain {
		return nil
	}
	return []diag.Remedy{r.File.Replace(a.Value.Place(), strconv.Quote(near))}
}

// NotKnown reports a name that is none of those known, under a code of the
// caller's, with the nearest one as a remedy.
func (r Reader) NotKnown(code diag.Code, attribute, word string, known []string) {
	r.FaultWith(code, r.Where(attribute), r.nearest(attribute, word, known),
		message.Text("name", clip(word)), message.Text("known", strings.Join(known, ", ")))
}

// Fault reports an error.
func (r Reader) Fault(code diag.Code, where diag.Place, args ...message.Arg) {
	r.FaultWith(code, where, nil, args...)
}

// FaultWith reports an error with ways out.
func (r Reader) FaultWith(code diag.Code, where diag.Place, remedies []diag.Remedy, args ...message.Arg) {
	r.Maker.Report(diag.Diagnostic{Severity: diag.Error, Code: code, Where: where, Text: message.New("diagnostic."+string(code), args...), Remedies: remedies})
}

// Refused reports a refusal of a rule or a catalogue in its own words.
func (m *Maker) Refused(err error, where diag.Place) {
	d := diag.Diagnostic{Severity: diag.Error, Code: CodeRefused, Where: where, Text: message.New("diagnostic."+string(CodeRefused), message.Text("why", err.Error()))}
	var r *figure.Refusal
	if errors.As(err, &r) {
		d.Text = r.Text
		for _, h := range r.Help {
			d.Remedies = append(d.Remedies, diag.Remedy{Text: h})
		}
	}
	m.Report(d)
}
