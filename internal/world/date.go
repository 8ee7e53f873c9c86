package world

import (
	"cmp"
	"fmt"
)

// Date is a day of the Gregorian calendar. The zero Date is none.
type Date struct {
	Year, Month, Day int
}

// IsZero reports whether there is no date.
func (d Date) IsZero() bool { return d == Date{} }

// String writes the date as in ISO 8601, 2026-03-01; no date is empty.
func (d Date) String() string {
	if d.IsZero() {
		return ""
	}
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Day)
}

// ParseDate reads a date as String writes it. The year is from 1 to 9999.
func ParseDate(s string) (Date, error) {
	var n [8]int
	digits := 0
	for i := range len(s) {
		switch c := s[i]; {
		case len(s) != len("2026-03-01"):
		case i == 4 || i == 7:
			if c != '-' {
				return Date{}, badDate(s)
			}
		case c >= '0' && c <= '9':
			n[digits] = int(c - '0')
			digits++
		}
	}
	d := Date{n[0]*1000 + n[1]*100 + n[2]*10 + n[3], n[4]*10 + n[5], n[6]*10 + n[7]}
	if digits != len(n) || d.Year < 1 || d.Month < 1 || d.Month > 12 || d.Day < 1 || d.Day > daysIn(d.Year, d.Month) {
		return Date{}, badDate(s)
	}
	return d, nil
}

func badDate(s string) error {
	return fmt.Errorf("%.32q is no date; write it as 2026-03-01", s)
}

func daysIn(year, month int) int {
	switch month {
	case 2:
		if year%4 == 0 && (year%100 != 0 || year%400 == 0) {
			return 29
		}
		return 28
	case 4, 6, 9, 11:
		return 30
	}
	return 31
}

// Compare orders dates.
func (d Date) Compare(e Date) int {
	return cmp.Or(cmp.Compare(d.Year, e.Year), cmp.Compare(d.Month, e.Month), cmp.Compare(d.Day, e.Day))
}

// MarshalText implements [encoding.TextMarshaler].
func (d Date) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText implements [encoding.TextUnmarshaler]; an empty text is no date.
func (d *Date) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*d = Date{}
		return nil
	}
	read, err := ParseDate(string(text))
	if err == nil {
		*d = read
	}
	return err
}
