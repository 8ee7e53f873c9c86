// Package web serves the app on the loopback address: the pages, the state that
// they show, and the changes that they make to the maker's own documents.
//
// In: a world with a design document, and the built pages. Out: an
// [http.Handler]. A [Desk] holds one piece: the documents as they stand, the last
// good plan of them, and the history of changes. A change is an edit of the one
// value, planned before it is written; a document that could not be planned is
// never written by the app. What others do to the files is noticed, by looking at
// what the plan was read from.
//
// It answers only where the Host names this machine and, for what changes
// something, only its own pages. It binds no other address than 127.0.0.1.
//
// The package makes no plan of its own and no words: see the front door and
// package screen.
package web
