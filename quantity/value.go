package quantity

// Value is a quantity that carries what it measures along, for where quantities
// of all sorts stand side by side. It is in SI, not rounded.
type Value struct {
	SI float64 `json:"si"`
	Of string  `json:"of"` // "length", "area", ... "number"
}

// ValueOf makes a Value of a quantity.
func ValueOf[Q Quantity](v Q) Value {
	return Value{float64(v), v.dimension().kind()}
}
