package entry

// PriceDecimals are the digits after the point of a price at most: one sheet often costs
// less than a hundredth can tell apart.
const PriceDecimals = 6
