// Package racking judges whether a drawer is long enough for its width to run
// without jamming.
//
// A drawer that is wider than it is long twists in its opening when it is pulled
// at one side, and jams. It wants close guides, a centre guide, or bought runners.
// A drawer that has runners or guides among its hardware passes.
//
// Limit, common practice without a measured source: the length at least as great
// as the width. A group that moves but has no parts is unknown.
package racking
