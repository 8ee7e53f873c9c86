package stock

import (
	"math/big"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Money is an amount in hundredths of the shop's currency.
type Money int64

// Per says what a price is for.
type Per string

// The merchants' units.
const (
	PerPiece       Per = "piece" // a board, a sheet
	PerBoardFoot   Per = "board foot"
	PerCubicMetre  Per = "cubic metre"
	PerCubicFoot   Per = "cubic foot"
	PerSquareMetre Per = "square metre"
	PerSquareFoot  Per = "square foot"
	PerMetre       Per = "metre"
	PerFoot        Per = "foot"
)

// Price is what a merchant asks. The zero Price is not known.
type Price struct {
	Amount Money
	Per    Per
}

// maxPrice bounds a price: ten million.
const maxPrice = 1_000_000_000

// Known reports whether there is a price.
func (p Price) Known() bool { return p.Per != "" }

// Check reports a price that cannot be. Keys: "stock.price-range",
// "stock.unknown-unit".
func (p Price) Check() error {
	if p.Amount < 0 || p.Amount > maxPrice {
		return figure.Refuse("stock.price-range", message.Money("got", int64(p.Amount)), message.Money("most", maxPrice))
	}
	switch p.Per {
	case "", PerPiece, PerBoardFoot, PerCubicMetre, PerCubicFoot, PerSquareMetre, PerSquareFoot, PerMetre, PerFoot:
		return nil
	}
	return figure.Refuse("stock.unknown-unit", message.Text("unit", string(p.Per)))
}

// Cost returns what one board costs, by the sizes it is sold as, to the
// nearest hundredth.
//
// Errors: "stock.no-price" without a price; those of [BoardFeetOf].
func (b Board) Cost() (Money, error) {
	length, width, thickness := b.SoldAs()
	if b.Price.Per == PerBoardFoot {
		feet, err := BoardFeetOf(width, length, thickness)
		if err != nil {
			return 0, err
		}
		return share(b.Price.Amount, ratio(int64(feet), int64(BoardFoot))), nil
	}
	return b.Price.of(length, width, thickness)
}

// Cost returns what one sheet costs, to the nearest hundredth: a sheet is
// bought whole.
//
// Errors: "stock.no-price" without a price, "stock.unit-does-not-fit" for a price
// per board foot.
func (s Sheet) Cost() (Money, error) {
	if s.Price.Per == PerBoardFoot {
		return 0, figure.Refuse("stock.unit-does-not-fit", message.Text("sheet", s.Name), message.Word("unit", string(s.Price.Per)))
	}
	return s.Price.of(s.Length, s.Width, s.Nominal)
}

func (p Price) of(length, width, thickness unit.Length) (Money, error) {
	over := func(per unit.Length, sizes ...unit.Length) *big.Rat {
		product := big.NewRat(1, 1)
		for _, s := range sizes {
			product.Mul(product, ratio(int64(s), int64(per)))
		}
		return product
	}
	switch p.Per {
	case PerPiece:
		return p.Amount, nil
	case PerCubicMetre:
		return share(p.Amount, over(unit.Metre, length, width, thickness)), nil
	case PerCubicFoot:
		return share(p.Amount, over(unit.Foot, length, width, thickness)), nil
	case PerSquareMetre:
		return share(p.Amount, over(unit.Metre, length, width)), nil
	case PerSquareFoot:
		return share(p.Amount, over(unit.Foot, length, width)), nil
	case PerMetre:
		return share(p.Amount, over(unit.Metre, length)), nil
	case PerFoot:
		return share(p.Amount, over(unit.Foot, length)), nil
	}
	return 0, figure.Refuse("stock.no-price").Or("stock.give-price")
}

func ratio(a, b int64) *big.Rat { return big.NewRat(a, b) }

// share returns a part of an amount to the nearest hundredth, halves up.
func share(amount Money, part *big.Rat) Money {
	x := new(big.Rat).Mul(part, big.NewRat(int64(amount), 1))
	x.Add(x, big.NewRat(1, 2))
	return Money(new(big.Int).Div(x.Num(), x.Denom()).Int64())
}
