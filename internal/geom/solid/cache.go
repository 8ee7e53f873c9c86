package solid

import (
	"encoding/binary"
	"math"
	"sync"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

// Job is one solid to build.
type Job struct {
	Bodies, Cutters []Primitive
	Options         Options
}

// Cache remembers solids by what they are made from, so that equal parts are
// solved once: the same primitives in the same order, number for number. Poses
// of placed solids do not enter. The zero value is ready; it may be used from
// several goroutines. What it returns is the same as Build returns.
type Cache struct {
	mu    sync.Mutex
	known map[string]*entry
}

type entry struct {
	once  sync.Once
	solid *Solid
}

// cacheLimit is the number of solids kept; beyond it the cache starts afresh.
const cacheLimit = 20_000

// Build returns the solid of the job, building it if it is new.
func (c *Cache) Build(j Job) *Solid {
	key := string(j.key())
	c.mu.Lock()
	if c.known == nil || len(c.known) >= cacheLimit {
		c.known = map[string]*entry{}
	}
	e, ok := c.known[key]
	if !ok {
		e = new(entry)
		c.known[key] = e
	}
	c.mu.Unlock()
	e.once.Do(func() { e.solid = Build(j.Bodies, j.Cutters, j.Options) })
	return e.solid
}

// BuildAll builds the jobs on a number of workers (at least one). The result
// does not depend on the number; equal jobs share one solid.
func (c *Cache) BuildAll(jobs []Job, workers int) []*Solid {
	out := make([]*Solid, len(jobs))
	var mu sync.Mutex
	next := 0
	var wg sync.WaitGroup
	for range max(1, min(workers, len(jobs))) {
		wg.Go(func() {
			for {
				mu.Lock()
				i := next
				next++
				mu.Unlock()
				if i >= len(jobs) {
					return
				}
				out[i] = c.Build(jobs[i])
			}
		})
	}
	wg.Wait()
	return out
}

func (j Job) key() []byte {
	key := binary.LittleEndian.AppendUint32(nil, uint32(j.Options.facets()))
	key = binary.LittleEndian.AppendUint32(key, uint32(len(j.Bodies)))
	for _, p := range j.Bodies {
		key = p.appendKey(key)
	}
	for _, p := range j.Cutters {
		key = p.appendKey(key)
	}
	return key
}

func appendFloats(key []byte, list ...float64) []byte {
	for _, f := range list {
		key = binary.LittleEndian.AppendUint64(key, math.Float64bits(f))
	}
	return key
}

func appendFrame(key []byte, f vec.Frame) []byte {
	for _, v := range [4]vec.V3{f.Origin, f.U, f.V, f.W} {
		key = appendFloats(key, v.X, v.Y, v.Z)
	}
	return key
}

func appendProfile(key []byte, p polygon.Profile, tags []Tag) []byte {
	for _, l := range p.Loops() {
		key = binary.LittleEndian.AppendUint32(key, uint32(len(l)))
		for _, v := range l {
			key = appendFloats(key, v.X, v.Y, v.Bulge)
		}
	}
	key = binary.LittleEndian.AppendUint32(key, math.MaxUint32)
	for i := range p.Segments() {
		key = binary.LittleEndian.AppendUint32(key, uint32(tagAt(tags, i)))
	}
	return key
}

func (p Prism) appendKey(key []byte) []byte {
	key = appendFloats(appendFrame(append(key, 'p'), p.Frame), p.From, p.To)
	key = binary.LittleEndian.AppendUint32(key, uint32(p.Caps[0]))
	key = binary.LittleEndian.AppendUint32(key, uint32(p.Caps[1]))
	return appendProfile(key, p.Profile, p.Sides)
}

func (t Turned) appendKey(key []byte) []byte {
	return appendProfile(appendFrame(append(key, 't'), t.Frame), t.Profile, t.Sides)
}
