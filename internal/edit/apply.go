package edit

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"
	"unicode/utf8"

	"scantling/internal/diag"
)

// Limits on what Apply takes and makes.
const (
	MaxDocument = 8 << 20 // bytes
	MaxEdits    = 10_000
)

// Why says in one word why an edit was refused.
type Why string

// Why an edit is refused.
const (
	Changed   Why = "changed"     // the document is not the one that the edit was made for
	Unstamped Why = "unstamped"   // the edit does not say which document it was made for
	Outside   Why = "outside"     // the stretch does not lie in the document
	NotThere  Why = "not there"   // the old text does not stand there
	Overlap   Why = "overlap"     // it overlaps the edit before it
	NotText   Why = "not text"    // what comes out is not valid UTF-8
	TooLarge  Why = "too large"   // beyond MaxDocument or MaxEdits
	TwoFiles  Why = "two files"   // Apply works on one document
	NoFile    Why = "no file"     // the document is not at hand
	NoChange  Why = "no change"   // there is nothing to do, to undo or to redo
	OutOfStep Why = "out of step" // a line of the history does not fit those before it
)

// Refusal tells why nothing was changed.
type Refusal struct {
	Why  Why
	Edit diag.Edit // the edit that is at fault, if it is about one
	Is   string    // what was found: the hash, the text that stands there
}

// Error describes the refusal for logs and tests.
func (r *Refusal) Error() string {
	return fmt.Sprintf("edit of %s at byte %d refused: %s; found %.60q", r.Edit.File, r.Edit.Start, r.Why, r.Is)
}

// Hash returns the hash by which edits name a document: SHA-256, in hexadecimal.
func Hash(doc []byte) string {
	sum := sha256.Sum256(doc)
	return hex.EncodeToString(sum[:])
}

// Stamp returns edits made for doc: with its hash.
func Stamp(doc []byte, edits []diag.Edit) []diag.Edit {
	out := slices.Clone(edits)
	hash := Hash(doc)
	for i := range out {
		out[i].Before = hash
	}
	return out
}

// Apply returns doc with all edits made, or a [*Refusal] and no change. All are
// edits of this document as it is; they may stand in any order and must not
// overlap. Of several insertions at one place the first of the list comes first.
func Apply(doc []byte, edits ...diag.Edit) ([]byte, error) {
	if len(edits) > MaxEdits {
		return nil, &Refusal{Why: TooLarge, Edit: edits[0]}
	}
	sorted, size := inOrder(edits), len(doc)
	hash := Hash(doc)
	for i, e := range sorted {
		refuse := func(why Why, is string) ([]byte, error) { return nil, &Refusal{why, e, is} }
		switch {
		case e.File != edits[0].File:
			return refuse(TwoFiles, edits[0].File)
		case e.Before == "":
			return refuse(Unstamped, hash)
		case e.Before != hash:
			return refuse(Changed, hash)
		case e.Start < 0 || e.End < e.Start || e.End > len(doc):
			return refuse(Outside, fmt.Sprint(len(doc), " bytes"))
		case string(doc[e.Start:e.End]) != e.Old:
			return refuse(NotThere, string(doc[e.Start:min(e.End, e.Start+200)]))
		case i > 0 && e.Start < sorted[i-1].End:
			return refuse(Overlap, sorted[i-1].Old)
		case !utf8.ValidString(e.Old) || !utf8.ValidString(e.New):
			return refuse(NotText, e.New)
		}
		if size += len(e.New) - len(e.Old); size > MaxDocument {
			return refuse(TooLarge, fmt.Sprint(size, " bytes"))
		}
	}
	out := slices.Clone(doc)
	for i := len(sorted) - 1; i >= 0; i-- {
		e := sorted[i]
		out = slices.Replace(out, e.Start, e.End, []byte(e.New)...)
	}
	if len(edits) > 0 && utf8.Valid(doc) && !utf8.Valid(out) {
		return nil, &Refusal{Why: NotText, Edit: edits[0]}
	}
	return out, nil
}

// inOrder returns edits as they stand in the document, insertions before what
// is replaced at the same place.
func inOrder(edits []diag.Edit) []diag.Edit {
	sorted := slices.Clone(edits)
	slices.SortStableFunc(sorted, func(a, b diag.Edit) int {
		return cmp.Or(cmp.Compare(a.Start, b.Start), cmp.Compare(a.End, b.End))
	})
	return sorted
}

// Inverse returns the edits that undo edits of one document; after is the hash
// of the document with them made.
func Inverse(edits []diag.Edit, after string) []diag.Edit {
	back := inOrder(edits)
	moved := 0
	for i, e := range back {
		start := e.Start + moved
		back[i] = diag.Edit{File: e.File, Before: after, Start: start, End: start + len(e.New), Old: e.New, New: e.Old}
		moved += len(e.New) - len(e.Old)
	}
	return back
}
