package web

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"slices"

	"scantling/internal/edit"
	"scantling/internal/world"
)

// noted is a world that notes what is read through it, with some files put in
// the place of what is there. It is used by one planning at a time.
type noted struct {
	world.World
	instead map[string][]byte
	// read holds what was read, nil for a file that was not there.
	read map[string][]byte
}

func note(w world.World, instead map[string][]byte) *noted {
	return &noted{World: w, instead: instead, read: map[string][]byte{}}
}

// Read implements world.World.
func (n *noted) Read(name string) ([]byte, error) {
	data, ok := n.instead[name]
	if ok {
		data = bytes.Clone(data)
	} else {
		var err error
		data, err = n.World.Read(name)
		if errors.Is(err, fs.ErrNotExist) {
			n.read[name] = nil
			return nil, err
		}
		if err != nil {
			return nil, err
		}
	}
	n.read[name] = bytes.Clone(data)
	if n.read[name] == nil {
		n.read[name] = []byte{}
	}
	return data, nil
}

// changed reports whether any file that was read is another now, or cannot be
// read.
func (n *noted) changed() bool {
	for name, was := range n.read {
		is, err := n.World.Read(name)
		if err != nil && !(errors.Is(err, fs.ErrNotExist) && was == nil) {
			return true
		}
		if err == nil && (was == nil || !bytes.Equal(is, was)) {
			return true
		}
	}
	return false
}

// revision names all that was read.
func (n *noted) revision() string {
	var all bytes.Buffer
	for _, name := range slices.Sorted(maps.Keys(n.read)) {
		fmt.Fprintf(&all, "%q %t %s\n", name, n.read[name] != nil, edit.Hash(n.read[name]))
	}
	return edit.Hash(all.Bytes())
}
