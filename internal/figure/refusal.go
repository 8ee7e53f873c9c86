package figure

import (
	"fmt"
	"strings"

	"scantling/internal/message"
	"scantling/internal/unit"
)

// Refusal is the error of a rule that cannot answer: a message key with the
// quantities that clash, for a stage to put into a diagnostic, and the keys of
// what would help.
type Refusal struct {
	Text message.Message
	// Help holds message keys of remedies, most useful first.
	Help []message.Message
}

// Refuse returns a refusal.
func Refuse(key string, args ...message.Arg) *Refusal {
	return &Refusal{Text: message.New(key, args...)}
}

// Or adds a remedy.
func (r *Refusal) Or(key string, args ...message.Arg) *Refusal {
	r.Help = append(r.Help, message.New(key, args...))
	return r
}

// Error returns key and arguments in plain form, for logs and tests; what a
// reader sees is rendered from Text.
func (r *Refusal) Error() string {
	var b strings.Builder
	b.WriteString(r.Text.Key)
	for i, a := range r.Text.Args {
		if i == 0 {
			b.WriteString(":")
		}
		fmt.Fprintf(&b, " %s=%s", a.Name, plain(a))
	}
	for _, h := range r.Help {
		b.WriteString("; " + h.Key)
	}
	return b.String()
}

func plain(a message.Arg) string {
	switch a.Kind {
	case message.KindLength:
		return fmt.Sprintf("%gmm", a.Nm.Millimetres())
	case message.KindCount, message.KindMoney, message.KindSpeed, message.KindMinutes:
		return fmt.Sprint(a.N)
	case message.KindRatio, message.KindPercent:
		return fmt.Sprintf("%g", a.X)
	case message.KindList, message.KindRange:
		items := make([]string, len(a.List))
		for i, item := range a.List {
			items[i] = plain(item)
		}
		return "[" + strings.Join(items, ", ") + "]"
	}
	return fmt.Sprintf("%q", a.S)
}

// LengthRange refuses a length outside what a rule covers. It returns nil when
// least <= got <= greatest; a greatest of zero or less is no upper limit.
//
// Key: "figure.length-range", with the rule's key, the name of the quantity, the
// length and both limits.
func LengthRange(rule, quantity string, got, least, greatest unit.Length) error {
	if got >= least && (greatest <= 0 || got <= greatest) {
		return nil
	}
	return Refuse("figure.length-range", message.Word("rule", rule), message.Word("quantity", quantity),
		message.Length("got", got), message.Length("least", least), message.Length("greatest", greatest))
}

// NumberRange refuses a number outside what a rule covers; NaN is outside.
//
// Key: "figure.number-range", as in [LengthRange].
func NumberRange[N ~float64](rule, quantity string, got, least, greatest N) error {
	if got >= least && got <= greatest {
		return nil
	}
	return Refuse("figure.number-range", message.Word("rule", rule), message.Word("quantity", quantity),
		message.Ratio("got", float64(got)), message.Ratio("least", float64(least)), message.Ratio("greatest", float64(greatest)))
}
