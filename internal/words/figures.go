package words

import (
	"math"
	"strconv"
	"strings"

	"scantling/internal/message"
	"scantling/internal/unit"
)

// unitShow is how Missing shows lengths; any way would do.
var unitShow = unit.Show{System: unit.Metric}

// Length shows a length with its unit in the reader's system, rounded as the
// reader's [unit.Show] says.
func (w *Words) Length(l unit.Length) string { return w.Own(w.show.FormatUnit(l)) }

// Figure shows a length without its unit, for drawings and tables that name the
// unit once.
func (w *Words) Figure(l unit.Length) string { return w.Own(w.show.Format(l)) }

// LengthToward shows a length with its unit, rounded to the given side: what
// goes into something is rounded down, an opening up.
func (w *Words) LengthToward(l unit.Length, side unit.Rounding) string {
	return w.Own(w.show.Toward(side).FormatUnit(l))
}

// Money shows an amount in hundredths of the shop's currency.
func (w *Words) Money(hundredths int64) string {
	s := speaker{Words: w}
	return s.money(hundredths)
}

// Minutes shows a duration in whole minutes.
func (w *Words) Minutes(n int64) string {
	s := speaker{Words: w}
	return s.minutes(n)
}

// Number shows a plain number to at most the given decimals.
func (w *Words) Number(x float64, decimals int) string {
	s := speaker{Words: w}
	return s.Own(s.number(x, decimals))
}

// arg shows one argument as its kind asks. Texts nest no deeper than maxNest,
// lists too.
func (s *speaker) arg(a message.Arg, depth int) string {
	switch a.Kind {
	case message.KindLength:
		return s.LengthToward(a.Nm, a.Round)
	case message.KindCount:
		return s.Own(strconv.FormatInt(a.N, 10))
	case message.KindRatio:
		return s.Own(s.number(a.X, places(a.X)))
	case message.KindPercent:
		return s.say("format.percent", []message.Arg{message.Text("x", s.number(a.X, 1))}, depth+1)
	case message.KindWord:
		return s.say(a.S, nil, depth+1)
	case message.KindMoney:
		return s.money(a.N)
	case message.KindSpeed:
		return s.say("format.speed", []message.Arg{message.Text("n", s.grouped(strconv.FormatInt(a.N, 10)))}, depth+1)
	case message.KindMinutes:
		return s.minutes(a.N)
	case message.KindList:
		return s.list(a.List, depth+1)
	case message.KindRange:
		return s.span(a.List, depth+1)
	}
	return s.Own(a.S)
}

// span shows a value and, where they show apart, the least and the most that it may be.
func (s *speaker) span(of []message.Arg, depth int) string {
	if depth > maxNest || len(of) != 3 {
		return s.fault("format.range", "", TooDeep)
	}
	value, low, high := s.arg(of[0], depth), s.arg(of[1], depth), s.arg(of[2], depth)
	if low == high {
		return value
	}
	return s.say("format.range", []message.Arg{message.Text("value", value), message.Text("low", low), message.Text("high", high)}, depth)
}

// list joins items in the language's way: a; a and b; a, b and c.
func (s *speaker) list(items []message.Arg, depth int) string {
	if depth > maxNest {
		return s.fault("list.two", "", TooDeep)
	}
	if len(items) == 0 {
		return s.say("list.none", nil, depth)
	}
	text := s.arg(items[0], depth)
	for i, item := range items[1:] {
		join := "list.middle"
		if i == len(items)-2 {
			join = "list.last"
		}
		if len(items) == 2 {
			join = "list.two"
		}
		text += s.bare(join) + s.arg(item, depth)
	}
	return text
}

// bare returns a text without the brackets of the pseudo-language. Joins of
// lists are written in quotation marks, to keep their spaces.
func (s *speaker) bare(key string) string {
	t, ok := s.entries[key]
	if !ok {
		return s.fault(key, "", NoEntry)
	}
	return strings.Trim(s.fill(key, t, nil, 0), `"`)
}

// places is how many decimals a plain number is worth: about three figures.
func places(x float64) int {
	switch x = math.Abs(x); {
	case x >= 100:
		return 0
	case x >= 10:
		return 1
	case x >= 1:
		return 2
	}
	return 3
}

// number shows x to at most so many decimals, without trailing noughts.
func (s *speaker) number(x float64, decimals int) string {
	text := strconv.FormatFloat(x, 'f', min(max(decimals, 0), 9), 64)
	whole, rest, _ := strings.Cut(text, ".")
	if rest = strings.TrimRight(rest, "0"); rest != "" {
		return whole + s.bare("number.decimal") + rest
	}
	if whole == "-0" {
		return "0"
	}
	return whole
}

// grouped sets the language's sign between thousands, from five digits on.
func (s *speaker) grouped(digits string) string {
	if len(digits) < 5 {
		return digits
	}
	var b strings.Builder
	for i, d := range digits {
		if i > 0 && (len(digits)-i)%3 == 0 && digits[i-1] != '-' {
			b.WriteString(s.bare("number.group"))
		}
		b.WriteRune(d)
	}
	return b.String()
}

func (s *speaker) money(hundredths int64) string {
	sign, n := "", uint64(hundredths)
	if hundredths < 0 {
		sign, n = "-", -n
	}
	amount := sign + s.grouped(strconv.FormatUint(n/100, 10))
	if rest := n % 100; rest != 0 {
		amount += s.bare("number.decimal") + strconv.FormatUint(rest/10, 10) + strconv.FormatUint(rest%10, 10)
	} else {
		amount += s.bare("number.decimal") + "00"
	}
	if s.currency == "" {
		return s.Own(amount)
	}
	key := "currency." + string(s.currency)
	if !s.Has(key) {
		key = "currency.other"
	}
	return s.say(key, []message.Arg{message.Text("amount", amount), message.Text("code", string(s.currency))}, 1)
}

// minutes shows hours from one hour on and whole days from two days on.
func (s *speaker) minutes(n int64) string {
	const hour, day = 60, 24 * 60
	count := func(name string, n int64) message.Arg {
		return message.Arg{Name: name, Kind: message.KindCount, N: n}
	}
	switch {
	case n >= 2*day && n%day == 0:
		return s.say("format.days", []message.Arg{count("n", n/day)}, 1)
	case n >= hour && n%hour == 0:
		return s.say("format.hours", []message.Arg{count("n", n/hour)}, 1)
	case n >= hour:
		return s.say("format.hours-minutes", []message.Arg{count("h", n/hour), count("n", n%hour)}, 1)
	}
	return s.say("format.minutes", []message.Arg{count("n", n)}, 1)
}
