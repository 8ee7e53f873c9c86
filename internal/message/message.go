package message

import (
	"scantling/internal/address"
	"scantling/internal/unit"
)

// Message is a key of the catalogue with the arguments that its text needs.
type Message struct {
	Key  string `json:"key"`
	Args []Arg  `json:"args,omitempty"`
}

// Kind says how an argument is to be shown.
type Kind string

// The kinds of argument.
const (
	KindLength  Kind = "length"  // Nm: shown in the reader's units
	KindCount   Kind = "count"   // N: a whole number, chooses the plural
	KindRatio   Kind = "ratio"   // X as a plain number
	KindPercent Kind = "percent" // X in percent
	KindText    Kind = "text"    // S: the author's own words, shown as they are
	KindWord    Kind = "word"    // S: a key of the catalogue, put into words
	KindAddress Kind = "address" // S: an address
	KindMoney   Kind = "money"   // N: hundredths of the shop's currency
	KindSpeed   Kind = "speed"   // N: revolutions per minute
	KindMinutes Kind = "minutes" // N: whole minutes
	KindList    Kind = "list"    // List: joined in the language's way
	KindRange   Kind = "range"   // List: a value, the least and the most that it may be
)

// Arg is one named argument.
type Arg struct {
	Name string      `json:"name"`
	Kind Kind        `json:"kind"`
	Nm   unit.Length `json:"nm,omitempty"`
	N    int64       `json:"n,omitempty"`
	X    float64     `json:"x,omitempty"`
	S    string      `json:"s,omitempty"`
	List []Arg       `json:"list,omitempty"`
	// Round says to which side a length is rounded for showing.
	Round unit.Rounding `json:"round,omitempty"`
}

// New returns a message.
func New(key string, args ...Arg) Message { return Message{key, args} }

// IsZero reports whether there is nothing to say.
func (m Message) IsZero() bool { return m.Key == "" }

// Arg returns the argument of that name.
func (m Message) Arg(name string) (Arg, bool) {
	for _, a := range m.Args {
		if a.Name == name {
			return a, true
		}
	}
	return Arg{}, false
}

// Length makes a length argument, shown rounded to the nearest step.
func Length(name string, l unit.Length) Arg { return Arg{Name: name, Kind: KindLength, Nm: l} }

// LengthRounded makes a length argument shown rounded to the given side.
func LengthRounded(name string, l unit.Length, r unit.Rounding) Arg {
	return Arg{Name: name, Kind: KindLength, Nm: l, Round: r}
}

// Count makes a count argument.
func Count(name string, n int) Arg { return Arg{Name: name, Kind: KindCount, N: int64(n)} }

// Ratio makes a plain number.
func Ratio(name string, x float64) Arg { return Arg{Name: name, Kind: KindRatio, X: x} }

// Percent makes a percentage; x is already in percent.
func Percent(name string, x float64) Arg { return Arg{Name: name, Kind: KindPercent, X: x} }

// Text makes an argument of the author's own words.
func Text(name, s string) Arg { return Arg{Name: name, Kind: KindText, S: s} }

// Word makes an argument that the catalogue puts into words.
func Word(name, key string) Arg { return Arg{Name: name, Kind: KindWord, S: key} }

// Address makes an address argument.
func Address(name string, a address.Address) Arg {
	return Arg{Name: name, Kind: KindAddress, S: string(a)}
}

// Money makes an amount in hundredths of the shop's currency.
func Money(name string, hundredths int64) Arg { return Arg{Name: name, Kind: KindMoney, N: hundredths} }

// Speed makes a spindle speed in revolutions per minute.
func Speed(name string, rpm int) Arg { return Arg{Name: name, Kind: KindSpeed, N: int64(rpm)} }

// Minutes makes a duration in whole minutes.
func Minutes(name string, n int) Arg { return Arg{Name: name, Kind: KindMinutes, N: int64(n)} }

// Range makes a value with the least and the most that it may be; ends that show alike
// are not shown.
func Range(name string, value, low, high Arg) Arg {
	return Arg{Name: name, Kind: KindRange, List: []Arg{value, low, high}}
}

// List makes a list that is joined in the language's way.
func List(name string, items ...Arg) Arg { return Arg{Name: name, Kind: KindList, List: items} }
