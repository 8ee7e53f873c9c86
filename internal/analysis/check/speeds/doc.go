// Package speeds judges whether router cutters turn too fast for their size, and
// whether they take too much at once.
//
// A cutter must not turn faster than what is marked on it, nor than what makers of
// routers publish for its diameter; a machine whose least speed is above that cannot
// drive it. Where a machine's speeds are not stated it may turn at one speed alone,
// 22 000 and more: whether a cutter that bears less may go into it is unknown. A pass
// deeper than makers allow at most drives the work away or breaks the cutter.
//
// Sources: the bands of two router makers (tool.speed-greatest); the greatest pass,
// 6.35 mm, is what makers say at most (memory), and the rule of the house "greatest
// pass" goes before it. How deep a cutter reaches in all is the check "cutter".
package speeds
