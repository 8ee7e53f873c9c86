package problem

import (
	"fmt"
	"strconv"
	"strings"

	"scantling/internal/unit"
)

// Reason classifies a [Fault].
type Reason string

// Why a problem is refused.
const (
	Empty     Reason = "empty"     // no parts or no stock
	BadSize   Reason = "size"      // a length is zero, negative or beyond unit.MaxLength
	Count     Reason = "count"     // a quantity is negative, or counts are beyond the limits
	TooLong   Reason = "too-long"  // a part fits on no stock
	Shortage  Reason = "shortage"  // the limited stock does not yield all parts
	Range     Reason = "range"     // a cost or value is negative or too large
	Malformed Reason = "malformed" // fields that contradict each other
)

// Fault says why a problem is refused: which part or stock, the two figures
// that clash, and what would do.
type Fault struct {
	Reason Reason
	Part   int // index, or -1
	Stock  int // index, or -1
	// Have and Limit are the lengths that clash, where lengths do.
	Have, Limit unit.Length
	// Text is the whole message in plain English.
	Text string
}

// Error returns the message.
func (f *Fault) Error() string { return f.Text }

// Limits on what the engine accepts.
const (
	MaxKinds   = 5_000             // kinds of parts
	MaxStock   = 500               // kinds of stock
	MaxPieces  = 200_000           // pieces wanted in all
	MaxDefects = 200               // defects in one kind of stock
	MaxCost    = 1_000_000_000_000 // cost of one piece of stock, value of one part
)

func mm(l unit.Length) string {
	s := strconv.FormatInt(int64(l.Abs()/unit.Millimetre), 10)
	if rest := int64(l.Abs() % unit.Millimetre); rest != 0 {
		s += "." + strings.TrimRight(fmt.Sprintf("%06d", rest), "0")
	}
	if l < 0 {
		s = "-" + s
	}
	return s
}

func name(what, id string, i int) string {
	if id == "" {
		return what + " " + strconv.Itoa(i+1)
	}
	return what + " " + strconv.Itoa(i+1) + " (" + id + ")"
}
