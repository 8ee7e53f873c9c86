package cost

import (
	"maps"
	"slices"
	"strconv"

	"scantling/internal/analysis/cutting"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/stock"
	"scantling/internal/unit"
)

// Fitting is what the shop says of a kind of fitting or fastener.
type Fitting struct {
	Price int64 // hundredths each; 0 is unknown
	Have  int
}

// Derive returns the buying list and its sum.
func Derive(used []cutting.Used, p *piece.Piece, fittings map[string]Fitting) ([]plan.Buy, plan.Cost) {
	var out []plan.Buy
	var cost plan.Cost
	for _, u := range used {
		line := timber(u)
		if line.Get > 0 && line.Price == 0 {
			cost.Unpriced = append(cost.Unpriced, line.Label)
		}
		if u.Stock.Sheet {
			cost.Sheet += line.Sum
		} else {
			cost.Timber += line.Sum
		}
		cost.FromRack += int64(u.Rack) * u.Stock.Price
		out = append(out, line)
	}
	needs := hardware(p)
	for _, kind := range slices.Sorted(maps.Keys(needs)) {
		f := fittings[kind]
		get := max(0, needs[kind]-f.Have)
		line := plan.Buy{
			Stock: kind, Label: kind, Have: f.Have, Need: needs[kind], Get: get, Price: f.Price, Sum: int64(get) * f.Price, Kind: "hardware",
			Measure: message.New("buying.pieces", message.Count("n", get)),
		}
		if get > 0 && f.Price == 0 {
			cost.Unpriced = append(cost.Unpriced, kind)
		}
		cost.Hardware += line.Sum
		out = append(out, line)
	}
	cost.Total = cost.Timber + cost.Sheet + cost.Hardware
	return out, cost
}

// timber is the line of one stock of boards or sheets.
func timber(u cutting.Used) plan.Buy {
	s := u.Stock
	line := plan.Buy{
		Stock: s.ID, Label: s.Label, Have: s.Have, Need: u.Rack + u.Buy, Get: u.Buy,
		Price: s.Price, Sum: int64(u.Buy) * s.Price, Kind: "board", For: u.Marks,
	}
	length, width, thickness := soldAs(s)
	size := []message.Arg{
		message.Count("n", u.Rack+u.Buy), message.Length("length", length),
		message.Length("width", width), message.Length("thickness", thickness),
	}
	if s.Sheet {
		line.Kind = "sheet"
		line.Measure = message.New("buying.sheets", size...)
		return line
	}
	line.Measure = message.New("buying.boards", append(size, volume(s, u.Rack+u.Buy)...)...)
	return line
}

// soldAs is the size that the merchant reckons with; as measured where nothing
// else is said.
func soldAs(s cutting.Stock) (length, width, thickness unit.Length) {
	size := s.Sold
	for i, measured := range []unit.Length{s.Length.Nm, s.Width.Nm, s.Thickness.Nm} {
		if size[i] <= 0 {
			size[i] = measured
		}
	}
	return size[0], size[1], size[2]
}

// volume gives the quantity of n boards as merchants count it: cubic metres, and
// board feet by the NHLA rules (package stock). A thickness that is no quarter of
// an inch counts as the nearest: 27 mm is sold where 4/4 is (common practice, no
// source).
func volume(s cutting.Stock, n int) []message.Arg {
	length, width, thickness := soldAs(s)
	one := float64(length.Millimetres()*width.Millimetres()) * thickness.Millimetres() / 1e9
	args := []message.Arg{message.Ratio("cubic", float64(one*float64(n)))}
	feet, err := stock.BoardFeetOf(width, length, thickness)
	if err != nil {
		feet, err = stock.BoardFeetOf(width, length, max(unit.Inch, thickness.Round(unit.Inch/4, unit.Nearest)))
	}
	if err == nil {
		args = append(args, message.Ratio("boardfeet", float64(feet)*float64(n)/float64(stock.BoardFoot)))
	}
	return args
}

// hardware counts fittings and fasteners by kind; dowels by their diameter, as
// "dowel 8".
func hardware(p *piece.Piece) map[string]int {
	needs := map[string]int{}
	for _, h := range p.Hardware {
		needs[h.Kind] += h.Count
	}
	for _, j := range p.Joints {
		if j.Fasteners != nil {
			needs[j.Fasteners.Kind] += j.Fasteners.Count
		}
		if j.Dowels != nil {
			needs["dowel "+strconv.FormatFloat(j.Dowels.Diameter.Nm.Millimetres(), 'f', -1, 64)] += j.Dowels.Count
		}
	}
	return needs
}
