package record

import (
	"encoding/json"
	"fmt"
	"strings"

	"scantling/internal/address"
	"scantling/internal/journal"
	"scantling/internal/unit"
	"scantling/internal/world"
)

// Kind is what an entry tells.
type Kind string

// The kinds.
const (
	Reading Kind = "reading" // Value was read
	Cut     Kind = "cut"     // the part was cut, and came out at Sizes
	Spoiled Kind = "spoiled" // the part was spoiled: it is to be made again
)

// Entry is one line of the record.
type Entry struct {
	Date world.Date
	// Humidity in the shop when it was taken, in percent; no value if unknown.
	Humidity unit.Value
	Address  address.Address
	Kind     Kind
	// What names the reading: "width front", "thickness"; empty for other kinds.
	What string
	// Fingerprint is of what was measured or cut, as it was planned then.
	Fingerprint string
	// Value is the reading: a length, an angle, a moisture, a mass.
	Value unit.Value
	// Sizes are the length, width and thickness as cut.
	Sizes [3]unit.Length
	// Note is the maker's own.
	Note string
}

// Limits on the texts of an entry, in bytes.
const (
	MaxWhat        = 64
	MaxFingerprint = 128
	MaxNote        = 2000
)

// Check returns what is wrong with an entry.
func (e Entry) Check() error {
	if err := e.checkNames(); err != nil {
		return err
	}
	switch e.Kind {
	case Reading:
		switch e.Value.Dim() {
		case unit.DimLength:
			if l, ok := e.Value.Length(); !ok || !e.Value.Equal(unit.OfLength(l)) || l.Abs() > unit.MaxLength {
				return fmt.Errorf("a reading of %v is no whole number of nanometres within %v", e.Value, unit.OfLength(unit.MaxLength))
			}
		case unit.DimAngle, unit.DimMoisture, unit.DimMass, unit.DimHumidity:
		default:
			return fmt.Errorf("a reading is a length, an angle, a moisture, a humidity or a mass, not a %s", e.Value.Dim())
		}
		if e.What == "" || e.Sizes != [3]unit.Length{} {
			return fmt.Errorf("a reading names what was read, and has no sizes")
		}
	case Cut:
		for _, s := range e.Sizes {
			if s <= 0 || s > unit.MaxLength {
				return fmt.Errorf("a part that is cut has three sizes above nought and within %v, not %v", unit.OfLength(unit.MaxLength), unit.OfLength(s))
			}
		}
		if e.What != "" || !e.Value.IsZero() {
			return fmt.Errorf("a part that is cut has sizes, no reading")
		}
	case Spoiled:
		if e.What != "" || !e.Value.IsZero() || e.Sizes != [3]unit.Length{} {
			return fmt.Errorf("a spoiled part has neither reading nor sizes")
		}
	default:
		return fmt.Errorf("%.32q is neither reading, cut nor spoiled", string(e.Kind))
	}
	return nil
}

func (e Entry) checkNames() error {
	if a, err := address.Parse(string(e.Address)); err != nil || a != e.Address || a == "" {
		return fmt.Errorf("%.64q is no address of a part or space", string(e.Address))
	}
	if d := e.Humidity; !d.IsZero() {
		low, high := unit.OfInt(unit.DimHumidity, 0), unit.OfInt(unit.DimHumidity, 100)
		below, err := d.Compare(low, 0)
		above, err2 := d.Compare(high, 0)
		if d.Dim() != unit.DimHumidity || err != nil || err2 != nil || below < 0 || above > 0 {
			return fmt.Errorf("a humidity of %v is not between 0 and 100 percent", d)
		}
	}
	for _, t := range []struct {
		text, name string
		most       int
	}{{e.What, "what was read", MaxWhat}, {e.Fingerprint, "a fingerprint", MaxFingerprint}, {e.Note, "a note", MaxNote}} {
		if len(t.text) > t.most || strings.ToValidUTF8(t.text, "") != t.text {
			return fmt.Errorf("%s takes at most %d bytes of text, not %d", t.name, t.most, len(t.text))
		}
	}
	if e.Fingerprint == "" && e.Kind != Spoiled {
		return fmt.Errorf("a fingerprint of what was measured is missing")
	}
	return nil
}

// Record is the entries in the order in which they were made.
type Record []Entry

// Read reads a record and returns how many of its bytes are good (see
// [journal.Read]). A line that is no entry is an error that names it.
func Read(data []byte) (Record, int, error) {
	var r Record
	good, err := journal.Read(data, func(_ int, e Entry) error {
		r = append(r, e)
		return nil
	})
	return r, good, err
}

// Line writes an entry as a line to be added to the record's journal (see
// [journal.Appended]).
func (e Entry) Line() ([]byte, error) {
	if err := e.Check(); err != nil {
		return nil, err
	}
	return journal.Line(e)
}

// line is the written form of an entry: quantities as text with their units, so
// that a maker can read and write it.
type line struct {
	Date     world.Date      `json:"date,omitzero"`
	Humidity string          `json:"humidity,omitempty"`
	Address  address.Address `json:"address"`
	Reading  string          `json:"reading,omitempty"`
	Value    string          `json:"value,omitempty"`
	Cut      []string        `json:"cut,omitempty"`
	Spoiled  bool            `json:"spoiled,omitempty"`
	Of       string          `json:"of,omitempty"`
	Note     string          `json:"note,omitempty"`
}

// MarshalJSON writes an entry with its quantities as text: {"address":
// "space[2]","reading":"width front","value":"381.4 mm","of":"5f2c"}.
func (e Entry) MarshalJSON() ([]byte, error) {
	l := line{Date: e.Date, Address: e.Address, Of: e.Fingerprint, Note: e.Note}
	var err error
	if l.Humidity, err = written(e.Humidity); err != nil {
		return nil, err
	}
	switch e.Kind {
	case Reading:
		l.Reading = e.What
		l.Value, err = written(e.Value)
	case Cut:
		for _, s := range e.Sizes {
			l.Cut = append(l.Cut, unit.OfLength(s).String())
		}
	case Spoiled:
		l.Spoiled = true
	}
	if err != nil {
		return nil, err
	}
	return json.Marshal(l)
}

// UnmarshalJSON reads what MarshalJSON writes, and lengths as a maker writes
// them; a bare number counts in millimetres.
func (e *Entry) UnmarshalJSON(data []byte) error {
	var l line
	if err := unmarshalStrict(data, &l); err != nil {
		return err
	}
	read := Entry{Date: l.Date, Address: l.Address, Fingerprint: l.Of, Note: l.Note}
	var err error
	if l.Humidity != "" {
		if read.Humidity, err = unit.OfText(l.Humidity).As(unit.DimHumidity, 0); err != nil {
			return err
		}
	}
	kinds := 0
	if l.Reading != "" || l.Value != "" {
		read.Kind, read.What = Reading, l.Reading
		kinds++
		if read.Value, err = unit.ParseValue(l.Value, unit.Millimetre); err != nil {
			return err
		}
	}
	if l.Cut != nil {
		read.Kind = Cut
		kinds++
		if len(l.Cut) != len(read.Sizes) {
			return fmt.Errorf("a cut part has its length, width and thickness, not %d sizes", len(l.Cut))
		}
		for i, text := range l.Cut {
			if read.Sizes[i], err = unit.Parse(text, unit.Millimetre); err != nil {
				return err
			}
		}
	}
	if l.Spoiled {
		read.Kind = Spoiled
		kinds++
	}
	if kinds != 1 {
		return fmt.Errorf("an entry is one of reading with value, cut, spoiled; here are %d", kinds)
	}
	if err := read.Check(); err != nil {
		return err
	}
	*e = read
	return nil
}
