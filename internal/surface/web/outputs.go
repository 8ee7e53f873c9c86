package web

import (
	"context"
	"sync"

	"scantling"
	"scantling/internal/page"
)

// outputs are what was made of one plan, once it was asked for.
type outputs struct {
	result  *scantling.Result
	mu      sync.Mutex
	scene   []byte
	booklet map[string][]byte
	files   []scantling.File
}

// papers are the sizes that the booklet comes in.
var papers = map[string]page.Paper{"a4": page.A4, "letter": page.Letter}

// outputs returns what is made of the present plan, and its lock held.
func (d *Desk) outputs(ctx context.Context) (*outputs, error) {
	now, err := d.present(ctx)
	if err != nil {
		return nil, err
	}
	now.made.mu.Lock()
	return now.made, nil
}

// Scene returns the piece as binary glTF.
func (d *Desk) Scene(ctx context.Context) ([]byte, error) {
	o, err := d.outputs(ctx)
	if err != nil {
		return nil, err
	}
	defer o.mu.Unlock()
	if o.scene == nil {
		o.scene, err = o.result.Scene()
	}
	return o.scene, err
}

// Booklet returns the booklet on that paper, or nil for a paper that is none.
func (d *Desk) Booklet(ctx context.Context, paper string) ([]byte, error) {
	size, ok := papers[paper]
	if !ok {
		return nil, nil
	}
	o, err := d.outputs(ctx)
	if err != nil {
		return nil, err
	}
	defer o.mu.Unlock()
	if o.booklet[paper] == nil {
		data, err := o.result.Booklet(size)
		if err != nil {
			return nil, err
		}
		if o.booklet == nil {
			o.booklet = map[string][]byte{}
		}
		o.booklet[paper] = data
	}
	return o.booklet[paper], nil
}

// Files returns everything that the plan is handed over as.
func (d *Desk) Files(ctx context.Context) ([]scantling.File, error) {
	o, err := d.outputs(ctx)
	if err != nil {
		return nil, err
	}
	defer o.mu.Unlock()
	if o.files == nil {
		o.files, err = o.result.Files()
	}
	return o.files, err
}

// Source returns the design document as it stands.
func (d *Desk) Source(ctx context.Context) ([]byte, error) {
	now, err := d.present(ctx)
	if err != nil {
		return nil, err
	}
	return now.sources.read[d.file], nil
}
