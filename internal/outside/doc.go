// Package outside tells tests where to find what is not part of the project:
// reference programs, a browser, PDF tools, folders of published data.
//
// A test asks with [Program], [Module] or [Folder]. Where the thing is absent
// the test is skipped with a message that says what was left out; under
// REQUIRE=all it fails instead. Every answer is written to the file named by
// OUTSIDE_LOG, if that is set, so that a run can end with a list of what was
// checked against the outside and what was not.
//
// The package is for tests only; the layer test sees to it that no other
// package imports it.
package outside
