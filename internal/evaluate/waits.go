package evaluate

import "slices"

// waits adds to every part the measures that name it, or what it lies in, in
// their "before": it is not cut to size until they are taken.
func (w *world) waits() {
	for i := range w.out.Parts {
		p := &w.out.Parts[i]
		for _, m := range w.out.Measures {
			for _, b := range m.Before {
				if b.Has(p.Address) && !slices.Contains(p.CutAfter, m.Address) {
					p.CutAfter = append(p.CutAfter, m.Address)
				}
			}
		}
	}
}
