package web

import (
	"context"

	"scantling"
	"scantling/internal/page"
)

// outputs are what was made of the present plan, once it was asked for.
type outputs struct {
	scene   []byte
	booklet map[string][]byte
	files   []scantling.File
}

// papers are the sizes that the booklet comes in.
var papers = map[string]page.Paper{"a4": page.A4, "letter": page.Letter}

// Scene returns the piece as binary glTF.
func (d *Desk) Scene(ctx context.Context) ([]byte, error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if err := d.look(ctx); err != nil {
		return nil, err
	}
	if d.made.scene == nil {
		data, err := d.good.Scene()
		if err != nil {
			return nil, err
		}
		d.made.scene = data
	}
	return d.made.scene, nil
}

// Booklet returns the booklet on that paper, or nil for a paper that is none.
func (d *Desk) Booklet(ctx context.Context, paper string) ([]byte, error) {
	size, ok := papers[paper]
	if !ok {
		return nil, nil
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	if err := d.look(ctx); err != nil {
		return nil, err
	}
	if d.made.booklet[paper] == nil {
		data, err := d.good.Booklet(size)
		if err != nil {
			return nil, err
		}
		if d.made.booklet == nil {
			d.made.booklet = map[string][]byte{}
		}
		d.made.booklet[paper] = data
	}
	return d.made.booklet[paper], nil
}

// Files returns everything that the plan is handed over as.
func (d *Desk) Files(ctx context.Context) ([]scantling.File, error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if err := d.look(ctx); err != nil {
		return nil, err
	}
	if d.made.files == nil {
		files, err := d.good.Files()
		if err != nil {
			return nil, err
		}
		d.made.files = files
	}
	return d.made.files, nil
}

// Source returns the design document as it stands.
func (d *Desk) Source(ctx context.Context) ([]byte, error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if err := d.look(ctx); err != nil {
		return nil, err
	}
	return d.sources.read[d.file], nil
}
