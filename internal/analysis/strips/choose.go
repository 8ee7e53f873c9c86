package strips

import (
	"cmp"
	"fmt"
	"slices"

	"scantling/internal/analysis/blanks"
	"scantling/internal/unit"
)

// Saw says what boards it takes when panels are shared out so, by mark; a mark that is
// not there has equal strips. It must be a pure function.
type Saw func(map[string]blanks.Layout) Boards

// Choice is what was chosen.
type Choice struct {
	// Layouts are by mark, of those panels that have no equal strips.
	Layouts map[string]blanks.Layout
	// Equal is what equal strips would take, Chosen what is taken.
	Equal, Chosen Score
	// Asked counts how often the saw was asked.
	Asked int
}

// Choose asks at most so many questions. enough reports whether a score cannot be
// better, as far as is known; nil is never.
func Choose(panels []blanks.Panels, saw Saw, most int, enough func(Boards) bool) Choice {
	s := search{panels: inOrder(panels), saw: saw, most: most, enough: enough, known: map[string]Score{}}
	if len(s.panels) == 0 || most < 2 {
		return Choice{Layouts: map[string]blanks.Layout{}}
	}
	s.at = make([]int, len(s.panels))
	equal, _ := s.score(s.at)
	s.best = equal
	if !s.done() {
		s.alike()
		s.inTurn()
	}
	out := Choice{Layouts: map[string]blanks.Layout{}, Equal: equal, Chosen: s.best, Asked: s.asked}
	if !s.best.saves(equal) {
		out.Chosen = equal
		return out
	}
	for i, p := range s.panels {
		if s.at[i] > 0 {
			out.Layouts[p.Mark] = p.Sharings[s.at[i]].Layout
		}
	}
	return out
}

// inOrder returns the panels that have a choice, those with the most wood first.
func inOrder(panels []blanks.Panels) []blanks.Panels {
	panels = slices.DeleteFunc(slices.Clone(panels), func(p blanks.Panels) bool { return len(p.Sharings) < 2 })
	wide := func(p blanks.Panels) unit.Length {
		sum := unit.Length(0)
		for _, w := range p.Sharings[0].Widths {
			sum += w
		}
		return sum * unit.Length(p.Count)
	}
	slices.SortStableFunc(panels, func(a, b blanks.Panels) int { return cmp.Compare(wide(b), wide(a)) })
	return panels
}

type search struct {
	panels      []blanks.Panels
	saw         Saw
	most, asked int
	enough      func(Boards) bool
	known       map[string]Score
	// at are the sharings of the best way so far, one for each panel.
	at   []int
	best Score
}

// score returns the score of a way, or false where no more may be asked.
func (s *search) score(at []int) (Score, bool) {
	key := fmt.Sprint(at)
	if known, ok := s.known[key]; ok {
		return known, true
	}
	if s.asked == s.most {
		return Score{}, false
	}
	s.asked++
	layouts := map[string]blanks.Layout{}
	var out Score
	for i, p := range s.panels {
		sharing := p.Sharings[at[i]]
		if at[i] > 0 {
			layouts[p.Mark] = sharing.Layout
		}
		out.Strips += p.Count * len(sharing.Widths)
		for _, w := range sharing.Widths {
			out.Uneven += int64(p.Count) * square(w)
		}
	}
	out.Boards = s.saw(layouts)
	s.known[key] = out
	return out, true
}

// try takes a way if it is better.
func (s *search) try(at []int) bool {
	score, ok := s.score(at)
	if !ok || !score.Better(s.best) {
		return false
	}
	s.at, s.best = at, score
	return true
}

func (s *search) done() bool {
	return s.asked == s.most || s.enough != nil && s.enough(s.best.Boards)
}

// alike tries all panels shared out in one manner: a panel that has not that manner
// stays as it is.
func (s *search) alike() {
	if len(s.panels) < 2 {
		return
	}
	full := func(l blanks.Layout) bool { return l.Way != blanks.Equal }
	within := func(l blanks.Layout) bool { return l.Room > 0 }
	for _, manner := range []struct {
		has  func(blanks.Layout) bool
		last bool
	}{{full, false}, {within, false}, {within, true}} {
		if s.done() {
			return
		}
		at := make([]int, len(s.panels))
		for i, p := range s.panels {
			for j, sharing := range p.Sharings {
				if manner.has(sharing.Layout) && (at[i] == 0 || manner.last) {
					at[i] = j
				}
			}
		}
		s.try(at)
	}
}

// inTurn tries each panel by itself until a round brings nothing. Where no fewer
// boards can be, panels still go back to equal strips if that costs nothing.
func (s *search) inTurn() {
	for better := true; better; {
		better = false
		for i, p := range s.panels {
			for j := range p.Sharings {
				if j == s.at[i] || j > 0 && s.done() {
					continue
				}
				at := slices.Clone(s.at)
				at[i] = j
				better = s.try(at) || better
			}
		}
	}
}

// Confirm asks once more for equal strips and for those chosen, of a saw that looks
// harder, and goes back to equal ones if nothing is saved then.
func (c Choice) Confirm(saw Saw) Choice {
	c.Equal.Boards, c.Chosen.Boards = saw(nil), saw(c.Layouts)
	c.Asked += 2
	if !c.Chosen.saves(c.Equal) {
		c.Layouts, c.Chosen = map[string]blanks.Layout{}, c.Equal
	}
	return c
}
