package unit

import "strconv"

// System is what lengths are shown in.
type System string

// The systems.
const (
	Metric System = "mm"
	Inches System = "in"
	Both   System = "both" // the master, and the other in brackets behind it
)

// Unit returns the length that a bare number of a document in this system
// stands for: a millimetre, or an inch.
func (s System) Unit() Length {
	if s == Inches {
		return Inch
	}
	return Millimetre
}

// Style is how a fraction of an inch is written.
type Style int

// The styles. All are read back by [Parse].
const (
	Spaced Style = iota // 5 3/8
	Joined              // 5-3/8
	Signs               // 5⅜, 5¹³⁄₆₄: for print
)

// Show says how lengths are shown. The zero Show is metric, to 0.1 mm, nearest.
type Show struct {
	System System
	// Master is, for Both, the system that is worked to: Metric or Inches.
	Master System
	// Resolution is the step of metric figures; 0 counts as 0.1 mm.
	Resolution Length
	// Denominator is the finest fraction of an inch: 1, 2, 4 ... 64; anything else
	// counts as 16.
	Denominator int
	// Rounding is to which side figures go: what goes into something rounds down,
	// an opening rounds up.
	Rounding Rounding
	Style    Style
	// Comma writes a decimal comma.
	Comma bool
}

// Toward returns the same way of showing, rounding to the given side.
func (s Show) Toward(r Rounding) Show {
	s.Rounding = r
	return s
}

// In returns the same way of showing in one system only.
func (s Show) In(system System) Show {
	s.System = system
	return s
}

// Step returns the distance between neighbouring figures of the system that is
// worked to.
func (s Show) Step() Length {
	if s.Works() == Inches {
		return Inch / Length(s.denominator())
	}
	if s.Resolution <= 0 {
		return 100 * Micrometre
	}
	return s.Resolution
}

// Works returns the system that is worked to: Metric or Inches.
func (s Show) Works() System {
	if s.System == Inches || s.System == Both && s.Master == Inches {
		return Inches
	}
	return Metric
}

func (s Show) denominator() int {
	switch s.Denominator {
	case 1, 2, 4, 8, 16, 32, 64:
		return s.Denominator
	}
	return 16
}

// Round returns the length that the figure shown for l stands for exactly; with
// Both, the figure in the master.
func (s Show) Round(l Length) Length { return l.Round(s.Step(), s.Rounding) }

// Format returns the figure for l without a unit: "18", "136.5", "5 3/8"; with
// Both "136.5 (5 3/8)". Parse reads a figure of one system back to [Show.Round]
// of l.
func (s Show) Format(l Length) string {
	if s.System == Both {
		master, other := s.pair()
		return master.Format(l) + " (" + other.Format(l) + ")"
	}
	return s.figure(s.Round(l))
}

// FormatUnit returns the figure for l with its unit: "18 mm", "5 3/8 in", and
// with Both "136.5 mm (5 3/8 in)".
func (s Show) FormatUnit(l Length) string {
	if s.System == Both {
		master, other := s.pair()
		return master.FormatUnit(l) + " (" + other.FormatUnit(l) + ")"
	}
	return s.Format(l) + " " + string(s.Works())
}

func (s Show) pair() (master, other Show) {
	if s.Works() == Inches {
		return s.In(Inches), s.In(Metric)
	}
	return s.In(Metric), s.In(Inches)
}

// figure writes a length that is a multiple of the step.
func (s Show) figure(l Length) string {
	if s.Works() == Inches {
		return s.inches(l)
	}
	text := []byte(exactMetric(l))
	if s.Comma {
		for i, b := range text {
			if b == '.' {
				text[i] = ','
			}
		}
	}
	return string(text)
}

// exactMetric writes millimetres with as many decimals as it takes.
func exactMetric(l Length) string {
	b := make([]byte, 0, 16)
	if l < 0 {
		b = append(b, '-')
	}
	n := uint64(l)
	if l < 0 {
		n = -n
	}
	b = strconv.AppendUint(b, n/uint64(Millimetre), 10)
	rest := n % uint64(Millimetre)
	if rest == 0 {
		return string(b)
	}
	b = append(b, '.')
	for place := uint64(Millimetre) / 10; rest > 0; place /= 10 {
		b = append(b, byte('0'+rest/place))
		rest %= place
	}
	return string(b)
}

// inches writes a length that is a multiple of 1/64 in as a reduced fraction.
func (s Show) inches(l Length) string {
	b := make([]byte, 0, 16)
	if l < 0 {
		b = append(b, '-')
	}
	n := uint64(l)
	if l < 0 {
		n = -n
	}
	n /= uint64(SixtyFourth)
	above, below := n%64, uint64(64)
	for above > 0 && above%2 == 0 {
		above, below = above/2, below/2
	}
	if n >= 64 || above == 0 {
		b = strconv.AppendUint(b, n/64, 10)
	}
	if above == 0 {
		return string(b)
	}
	if n >= 64 && s.Style != Signs {
		b = append(b, " -"[s.Style&1])
	}
	return string(b) + s.fraction(above, below)
}

func (s Show) fraction(above, below uint64) string {
	a, b := strconv.FormatUint(above, 10), strconv.FormatUint(below, 10)
	if s.Style != Signs {
		return a + "/" + b
	}
	for r, f := range vulgar {
		if uint64(f[0]) == above && uint64(f[1]) == below {
			return string(r)
		}
	}
	return small(a, '⁰') + "⁄" + small(b, '₀')
}

// small writes digits raised or lowered; nought tells which.
func small(digits string, nought rune) string {
	out := make([]rune, 0, len(digits))
	for _, d := range digits {
		switch {
		case nought == '₀':
			out = append(out, nought+d-'0')
		default:
			out = append(out, []rune("⁰¹²³⁴⁵⁶⁷⁸⁹")[d-'0'])
		}
	}
	return string(out)
}
