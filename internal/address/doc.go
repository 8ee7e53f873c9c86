// Package address names things: parts, spaces, joints, cuts, figures.
//
// An [Address] is a dotted path whose steps may carry an index that counts from
// 1 or a key: drawer[2].side.left, tray.channel["4.0 a"]. It prints as document
// syntax and parses back to itself; that is the law the tests hold. The package
// knows nothing of what an address points at.
package address
