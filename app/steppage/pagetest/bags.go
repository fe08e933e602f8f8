package pagetest

import "gussetwright/geometry/bag"

// PricedBag returns the default bag with invented prices and three further quantities.
func PricedBag() bag.Spec {
	spec := bag.Default()
	spec.Currency, spec.Breaks, spec.Product.Weight = "EUR", []float64{500, 2000, 5000}, 1200
	spec.Prices = bag.Prices{Paper: 1.6, MakeReady: 180, Printing: 32.5, Die: 140, Cutting: 25, Folding: 210, Rope: 0.045, Carton: 1.9, Markup: 20}
	return spec
}

// FamilyBag returns a bag with two further sizes.
func FamilyBag() bag.Spec {
	spec := bag.Default()
	spec.Body.Width, spec.Body.Gusset, spec.Body.Height, spec.Run.Quantity = 160, 70, 220, 1000
	spec.Handle.Spacing, spec.Name, spec.Run.MakeReady = 80, "Tea house", 50
	spec.Family = []bag.Size{
		{Name: "Small", Width: 110, Gusset: 50, Height: 150, Quantity: 2500},
		{Name: "Large", Width: 240, Gusset: 100, Height: 300, Quantity: 400},
	}
	return spec
}
