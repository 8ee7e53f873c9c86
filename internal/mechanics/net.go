package mechanics

// Moisture is the state of a slab at a time.
type Moisture struct {
	After Hours
	net   *net
	at    []float64
}

// Mean returns the mean moisture content of the wood.
func (m Moisture) Mean() Points {
	sum, all := 0.0, 0.0
	for i, x := range m.at {
		sum += float64(x * m.net.holds[i])
		all += m.net.holds[i]
	}
	return Points(sum / all)
}

// At returns the moisture content in the middle of a land at a part of the thickness
// from the machined face, 0 to 1.
func (m Moisture) At(part Ratio) Points {
	depth := float64(part) * m.net.bounds[m.net.deep]
	for j := range m.net.deep {
		if depth <= m.net.bounds[j+1] {
			return Points(m.at[j])
		}
	}
	return Points(m.at[m.net.deep-1])
}

// net is the section of half a land and half a channel cut into cells, column by
// column from the middle of the land, each from the machined face on: what a cell
// holds, what passes to the next in its column and in its row, and to the air.
// Millimetres and seconds, for a millimetre of length. Cells in the air hold nothing.
type net struct {
	wide, deep        int
	widths, bounds    []float64 // of columns; of layers, from nought
	holds, down, side []float64
	airDown, airSide  []float64 // to the air, along a column and along a row
	at, below, right  []float64
	air               float64
}

// newNet lays the net over a slab that has been checked.
func newNet(s Slab) *net {
	n := &net{air: float64(s.Air), widths: []float64{1}}
	h := s.Thickness.Millimetres()
	near, far := 0.0, h
	if s.channelled() {
		near, far = s.Machined.Deep.Millimetres(), h-s.Back.Deep.Millimetres()
		land := s.Land.Millimetres() / 2
		channel := land * float64(s.Cut) / float64(1-s.Cut)
		n.widths = n.widths[:0]
		for i := range 2 * columns {
			n.widths = append(n.widths, [2]float64{land, channel}[i/columns]/columns)
		}
	}
	n.bounds = append(n.bounds, 0)
	for _, zone := range [][2]float64{{0, near}, {near, far}, {far, h}} {
		size := zone[1] - zone[0]
		if size <= 0 {
			continue
		}
		count := max(3, int(layers*size/h+0.5))
		for k := 1; k <= count; k++ {
			n.bounds = append(n.bounds, zone[0]+float64(size*float64(k))/float64(count))
		}
	}
	n.wide, n.deep = len(n.widths), len(n.bounds)-1
	n.fill(s, near, far)
	return n
}

// fill works out what the cells hold and pass.
func (n *net) fill(s Slab, near, far float64) {
	all := n.wide * n.deep
	for _, list := range []*[]float64{&n.holds, &n.down, &n.side, &n.airDown, &n.airSide, &n.at} {
		*list = make([]float64, all)
	}
	most := max(n.wide, n.deep)
	n.below, n.right = make([]float64, most), make([]float64, most)
	d := float64(s.Spreads) * 1e6 // mm2/s
	film := float64(s.Film) * 1000
	out := func(area, size float64) float64 { // from the middle of a cell to the air
		if film <= 0 {
			return float64(area*d) * 2 / size
		}
		return area / (1/film + size/(float64(d)*2))
	}
	for i, width := range n.widths {
		for j := range n.deep {
			k := i*n.deep + j
			if !n.wood(i, j, near, far) {
				continue
			}
			size := n.bounds[j+1] - n.bounds[j]
			n.holds[k], n.at[k] = width*size, s.start(float64((n.bounds[j]+n.bounds[j+1])/2))
			if j+1 < n.deep && n.wood(i, j+1, near, far) {
				n.down[k] = float64(width*d) * 2 / (size + n.bounds[j+2] - n.bounds[j+1])
			}
			if i+1 < n.wide && n.wood(i+1, j, near, far) {
				n.side[k] = float64(size*d) * 2 / (width + n.widths[i+1])
			}
			if s.Machined.Open && (j == 0 || !n.wood(i, j-1, near, far)) {
				n.airDown[k] += out(width, size)
			}
			if s.Back.Open && (j == n.deep-1 || !n.wood(i, j+1, near, far)) {
				n.airDown[k] += out(width, size)
			}
			open := s.Machined.Open && n.bounds[j] < near || s.Back.Open && n.bounds[j+1] > far
			if open && i+1 < n.wide && !n.wood(i+1, j, near, far) {
				n.airSide[k] += out(size, width)
			}
		}
	}
}

// wood reports whether a cell is wood: columns of the channel only between the
// channels' floors.
func (n *net) wood(i, j int, near, far float64) bool {
	middle := (n.bounds[j] + n.bounds[j+1]) / 2
	return n.wide == 1 || i < columns || middle > near && middle < far
}

// step goes on by so many seconds: down the columns, then along the rows, both
// backwards in time.
func (n *net) step(seconds float64) {
	for i := range n.wide {
		n.line(i*n.deep, 1, n.deep, n.down, n.airDown, seconds)
	}
	if n.wide == 1 {
		return
	}
	for j := range n.deep {
		n.line(j, n.deep, n.wide, n.side, n.airSide, seconds)
	}
}

// line solves one line of cells: from a first cell on, by a stride, so many.
func (n *net) line(first, stride, count int, passes, airs []float64, seconds float64) {
	for c := range count {
		k := first + c*stride
		if n.holds[k] == 0 {
			n.below[c], n.right[c] = 0, 0
			continue
		}
		rate, air := n.holds[k]/seconds, airs[k]
		diagonal, value := rate+air+passes[k], float64(rate*n.at[k])+float64(air*n.air)
		if c > 0 {
			before := passes[k-stride]
			diagonal += before - float64(before*n.below[c-1])
			value += float64(before * n.right[c-1])
		}
		n.below[c], n.right[c] = passes[k]/diagonal, value/diagonal
	}
	for c := count - 1; c >= 0; c-- {
		k := first + c*stride
		if n.holds[k] == 0 {
			continue
		}
		n.at[k] = n.right[c]
		if c+1 < count {
			n.at[k] += float64(n.below[c] * n.at[k+stride])
		}
	}
}

func (n *net) state(after Hours) Moisture {
	return Moisture{After: after, net: n, at: append([]float64(nil), n.at...)}
}
