// Package scantling turns a design document into a plan that can be built from.
package scantling
