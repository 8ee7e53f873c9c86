package unit

import (
	"encoding/json"
	"fmt"
	"math/big"
	"strconv"
	"strings"
)

// Limits on what UnmarshalJSON takes.
const (
	maxDepth  = 8   // lists in lists
	maxDigits = 320 // of a number: both halves of maxBits and the bar
)

// stored is the JSON form of a Value: {"dim":"length","n":"381400000"}. A
// number is a decimal whole number, or two of them with a bar between.
type stored struct {
	Dim  Dim      `json:"dim"`
	N    string   `json:"n,omitempty"`
	Text string   `json:"text,omitempty"`
	List []stored `json:"list,omitempty"`
}

// MarshalJSON writes a value so that it reads back exactly; no value is null.
func (v Value) MarshalJSON() ([]byte, error) {
	if v.IsZero() {
		return []byte("null"), nil
	}
	return v.appendJSON(make([]byte, 0, 48))
}

func (v Value) appendJSON(b []byte) ([]byte, error) {
	b = append(b, `{"dim":"`...)
	b = append(b, v.dim...)
	b = append(b, '"')
	if !v.num.none() {
		b = append(b, `,"n":"`...)
		b = v.num.append(b)
		b = append(b, '"')
	}
	if text := v.Text(); text != "" {
		quoted, err := json.Marshal(text)
		if err != nil {
			return nil, err
		}
		b = append(append(b, `,"text":`...), quoted...)
	}
	for i, item := range v.items() {
		sep := ","
		if i == 0 {
			sep = `,"list":[`
		}
		b = append(b, sep...)
		var err error
		if b, err = item.appendJSON(b); err != nil {
			return nil, err
		}
	}
	if v.Len() > 0 {
		b = append(b, ']')
	}
	return append(b, '}'), nil
}

// append writes 7 or 22/7.
func (x number) append(b []byte) []byte {
	if x.big != nil {
		return append(b, x.big.RatString()...)
	}
	b = strconv.AppendInt(b, x.n, 10)
	if x.d != 1 {
		b = strconv.AppendInt(append(b, '/'), x.d, 10)
	}
	return b
}

// UnmarshalJSON reads what MarshalJSON writes. Numbers of more than 512 bits
// and lists nested deeper than 8 are refused.
func (v *Value) UnmarshalJSON(data []byte) error {
	var s *stored
	if err := json.Unmarshal(data, &s); err != nil {
		return err
	}
	if s == nil {
		*v = Value{}
		return nil
	}
	read, err := s.value(0)
	if err == nil {
		*v = read
	}
	return err
}

func (s *stored) value(depth int) (Value, error) {
	switch s.Dim {
	case DimText:
		if s.N != "" || s.List != nil {
			return Value{}, fmt.Errorf("a text value has a text only")
		}
		return OfText(s.Text), nil
	case DimList:
		if depth >= maxDepth {
			return Value{}, fmt.Errorf("lists are nested deeper than %d", maxDepth)
		}
		if s.N != "" || s.Text != "" {
			return Value{}, fmt.Errorf("a list value has a list only")
		}
		items := make([]Value, len(s.List))
		for i := range s.List {
			var err error
			if items[i], err = s.List[i].value(depth + 1); err != nil {
				return Value{}, err
			}
		}
		return Value{dim: DimList, more: &more{list: items}}, nil
	case DimUntyped, DimLength, DimAngle, DimCount, DimRatio, DimArea, DimVolume, DimMass,
		DimForce, DimMoney, DimTime, DimHumidity, DimMoisture, DimTemp, DimTruth:
	default:
		return Value{}, fmt.Errorf("%.32q is no dimension", string(s.Dim))
	}
	if s.Text != "" || s.List != nil {
		return Value{}, fmt.Errorf("a value of dimension %s has a number only", s.Dim)
	}
	n, err := readNumber(s.N)
	return Value{dim: s.Dim, num: n}, err
}

func readNumber(text string) (number, error) {
	bad := fmt.Errorf("%.32q is no number", text)
	above, below, hasBar := strings.Cut(text, "/")
	digits := strings.TrimPrefix(above, "-")
	if len(text) > maxDigits || digits == "" || digitsLength(digits) != len(digits) {
		return number{}, bad
	}
	r := new(big.Rat)
	a, _ := new(big.Int).SetString(above, 10)
	r.SetInt(a)
	if hasBar {
		b, ok := new(big.Int).SetString(below, 10)
		if !ok || digitsLength(below) != len(below) || b.Sign() == 0 {
			return number{}, bad
		}
		r.SetFrac(a, b)
	}
	n := ofRat(r)
	if n.tooLarge() {
		return number{}, fmt.Errorf("%.32q… has more than %d bits", text, maxBits)
	}
	return n, nil
}

// String writes a value for logs and tests: "381.4 mm", "3 count", "1/8 ratio",
// a quoted text, a list in brackets, yes or no.
func (v Value) String() string {
	switch v.dim {
	case "":
		return "none"
	case DimText:
		return strconv.Quote(v.Text())
	case DimTruth:
		if v.Truth() {
			return "yes"
		}
		return "no"
	case DimList:
		items := make([]string, v.Len())
		for i, item := range v.items() {
			items[i] = item.String()
		}
		return "[" + strings.Join(items, ", ") + "]"
	case DimLength:
		if n, ok := v.num.int64(); ok {
			return exactMetric(Length(n)) + " mm"
		}
		return string(v.num.append(nil)) + " nm"
	}
	return string(v.num.append(nil)) + " " + string(v.dim)
}
