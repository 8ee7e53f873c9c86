package drawing

import "scantling/internal/page"

// obstacles are the texts and lines that stand on a drawing, for finding a free
// place on it.
type obstacles struct {
	seen  int // items taken over so far
	texts []page.Box
	lines []obstacleLine
}

type obstacleLine struct {
	box    page.Box
	points []page.Point
}

// take adds what has been drawn since the last time.
func (o *obstacles) take(items []page.Item) {
	for _, it := range items[o.seen:] {
		switch s := it.Shape.(type) {
		case page.Text:
			o.texts = append(o.texts, s.Bounds())
		case page.Stroke:
			for _, line := range s.Path.Flatten(0.2) {
				box := page.Box{Min: line[0], Max: line[0]}
				for _, p := range line[1:] {
					box.Min.X, box.Min.Y = min(box.Min.X, p.X), min(box.Min.Y, p.Y)
					box.Max.X, box.Max.Y = max(box.Max.X, p.X), max(box.Max.Y, p.Y)
				}
				o.lines = append(o.lines, obstacleLine{box, line})
			}
		}
	}
	o.seen = len(items)
}

// cost counts what lies in a box: a text counts far more than a line.
func (o *obstacles) cost(box page.Box) (cost float64) {
	for _, t := range o.texts {
		if overlaps(t, box) {
			cost += 100
		}
	}
	for _, l := range o.lines {
		if !overlaps(l.box.Grow(0.1), box) {
			continue
		}
		for i := range l.points[1:] {
			if enters(l.points[i], l.points[i+1], box) {
				cost++
				break
			}
		}
	}
	return cost
}

// textsOn says what the texts cost that a straight line would cross.
func (o *obstacles) textsOn(from, to page.Point) (cost float64) {
	for _, t := range o.texts {
		if from != to && enters(from, to, t.Grow(0.3)) {
			cost += 100
		}
	}
	return cost
}

// enters reports whether the stretch from a to b has a point in the box, by
// clipping it to the four sides.
func enters(a, b page.Point, box page.Box) bool {
	from, to := 0.0, 1.0
	clip := func(at, step, low, high float64) bool {
		if step == 0 {
			return at >= low && at <= high
		}
		t0, t1 := (low-at)/step, (high-at)/step
		from, to = max(from, min(t0, t1)), min(to, max(t0, t1))
		return from <= to
	}
	return clip(a.X, b.X-a.X, box.Min.X, box.Max.X) && clip(a.Y, b.Y-a.Y, box.Min.Y, box.Max.Y)
}
