package unit

import (
	"math/big"
	"strings"
)

// symbol is a unit as it is written.
type symbol struct {
	name string // one name per unit, for what may follow what
	dim  Dim
	// A number n of it is n*factor+offset in the unit of the dimension.
	factor, offset *big.Rat
}

// symbols are the units that we know, by every spelling in lower case. An inch
// is 25.4 mm, a pound 453.59237 g exactly (international yard and pound
// agreement of 1959; NIST SP 811, 2008 edition, appendix B.8). A board foot is
// 144 cubic inches (NHLA, Rules for the Measurement and Inspection of Hardwood).
var symbols = readSymbols(`
mm      length      1000000       mm millimetre millimetres millimeter millimeters
cm      length      10000000      cm centimetre centimetres centimeter centimeters
m       length      1000000000    m metre metres meter meters
um      length      1000          um µm μm
in      length      25400000      in inch inches in. "
ft      length      304800000     ft foot feet ft. '
deg     angle       1             deg ° º degree degrees
percent ratio       1/100         % percent
rh      humidity    1             %_rh %rh
mc      moisture    1             %_mc %mc
g       mass        1             g gram grams
kg      mass        1000          kg
lb      mass        45359237/100000 lb lbs pound pounds
oz      mass        45359237/1600000 oz ounce ounces
n       force       1             n newton newtons
kn      force       1000          kn
min     time        1             min minute minutes
h       time        60            h hour hours
d       time        1440          d day days
mm2     area        1000000000000 mm² sq_mm
cm2     area        100000000000000 cm² sq_cm
m2      area        1000000000000000000 m² sq_m
in2     area        645160000000000 in² sq_in
ft2     area        92903040000000000 ft² sq_ft
m3      volume      1000000000000000000000000000 m³ cu_m
bdft    volume      2359737216000000000000000 bd_ft board_foot board_feet
c       temperature 1             °c
`)

func readSymbols(table string) map[string]*symbol {
	known := map[string]*symbol{}
	for line := range strings.Lines(strings.TrimSpace(table)) {
		f := strings.Fields(line)
		factor, ok := new(big.Rat).SetString(f[2])
		if !ok {
			panic("unit: bad factor " + f[2])
		}
		s := &symbol{f[0], Dim(f[1]), factor, new(big.Rat)}
		for _, spelling := range f[3:] {
			known[strings.ReplaceAll(spelling, "_", " ")] = s
		}
	}
	// 5/9 of a degree Celsius for each, from 32: NIST SP 811, appendix B.8.
	known["°f"] = &symbol{"f", DimTemp, big.NewRat(5, 9), big.NewRat(-160, 9)}
	return known
}

// lesser tells which unit may follow which in one quantity: 1' 2", 1 h 30 min,
// 2 lb 3 oz.
var lesser = map[string]string{"ft": "in", "h": "min", "lb": "oz", "d": "h"}

// vulgar are the fractions that have a sign of their own.
var vulgar = map[rune][2]int64{
	'½': {1, 2}, '⅓': {1, 3}, '⅔': {2, 3}, '¼': {1, 4}, '¾': {3, 4},
	'⅕': {1, 5}, '⅖': {2, 5}, '⅗': {3, 5}, '⅘': {4, 5}, '⅙': {1, 6}, '⅚': {5, 6},
	'⅐': {1, 7}, '⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8}, '⅑': {1, 9}, '⅒': {1, 10},
}
