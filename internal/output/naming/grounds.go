package naming

import (
	"cmp"
	"strings"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Figures puts the quantities of a finding into one line: what is, its limit, what else
// is told, each with its range where its sources give one. It is empty where there is
// none.
func (n *Names) Figures(f plan.Finding) string {
	var items []string
	for _, q := range f.Figures {
		if value := n.Quantity(q.Estimate); value != "" {
			items = append(items, n.say("grounds."+q.Role, message.Text("value", value)))
		}
	}
	return n.capital(strings.Join(items, "; "))
}

// Quantity writes an estimate in its unit, with its range.
func (n *Names) Quantity(e plan.Estimate) string {
	value := n.amount(e.Value, e.Unit)
	if value == "" || e.Low.IsZero() || e.High.IsZero() || e.Low.Equal(e.High) {
		return value
	}
	low, high := n.amount(e.Low, e.Unit), n.amount(e.High, e.Unit)
	if low == high { // they differ by less than is shown
		return value
	}
	return n.say("grounds.range", message.Text("value", value), message.Text("low", low), message.Text("high", high))
}

// amount writes a quantity of any dimension in the reader's way.
func (n *Names) amount(v unit.Value, in string) string {
	x := v.Float()
	key := "amount." + string(v.Dim())
	switch v.Dim() {
	case unit.DimLength:
		l, _ := v.Length()
		return n.say("amount.length", message.Length("x", l))
	case unit.DimMass:
		x /= 1000 // grams are too small for what makers carry
	case unit.DimForce, unit.DimAngle, unit.DimTemp, unit.DimRatio, unit.DimCount:
	case unit.DimHumidity, unit.DimMoisture:
		return n.say("amount.percent", message.Percent("x", x))
	case unit.DimTime:
		return n.say("amount.time", message.Minutes("x", int(x)))
	case unit.DimUntyped:
		switch in {
		case "percent":
			return n.say("amount.percent", message.Percent("x", x))
		case "":
			key = "amount.ratio"
		default:
			return n.say("amount.in", message.Ratio("x", x), message.Text("unit", in))
		}
	default:
		return ""
	}
	return n.say(key, message.Ratio("x", x))
}

// Grounds says what a finding rests on, each work with how far it was checked, and
// which rule of the house changes its limit. It is empty where nothing is to be said.
func (n *Names) Grounds(f plan.Finding) string {
	var said []string
	add := func(s string) {
		for _, t := range said {
			if t == s {
				return
			}
		}
		said = append(said, s)
	}
	for _, s := range f.Sources {
		status := message.Word("status", "figure-status."+string(cmp.Or(s.Status, figure.Stated)))
		switch {
		case strings.HasPrefix(s.Key, "house."):
			add(n.say("grounds.house", message.Text("why", s.Title)))
		case s.Title != "" && s.Status == "":
			add(n.speech.Own(s.Title))
		case s.Title != "":
			add(n.say("grounds.work", message.Text("work", s.Title), status))
		case s.Status == figure.Practice:
			add(n.say("grounds.practice"))
		default:
			add(n.say("grounds.figure", status))
		}
	}
	if len(f.Sources) == 1 && f.Sources[0].Title == "" && cmp.Or(f.Sources[0].Status, figure.Stated) == figure.Stated && f.Rule == "" && len(f.Figures) == 0 {
		return "" // what the maker says needs no source
	}
	if f.Rule != "" {
		add(n.say("grounds.rule", message.Text("rule", f.Rule)))
	}
	return n.capital(strings.Join(said, "; "))
}
