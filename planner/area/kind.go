package area

// Kind is a sort of shape, for those who have yet to choose one.
type Kind struct {
	Key      string // in a job document: "cylinder"
	Title    string // "Tube or rod"
	Says     string // what it is good for, in one line
	Omits    string // what it leaves out or takes for granted; "" for an exact one
	Measures []Measure
	fresh    func() Shape
}

// New makes a shape of the kind of which nothing has been measured yet. One
// that may have openings comes as a *Cut.
func (k Kind) New() Shape { return k.fresh() }

// Bare reports whether a shape of the kind is written without the name of its
// only measure: {area: 0.5 m2}, not {area: {area: 0.5 m2}}.
func (k Kind) Bare() bool { return len(k.Measures) == 1 && k.Measures[0].Key == k.Key }

// makers make a shape of each kind, in the order in which they are offered.
func makers() []func() Shape {
	return []func() Shape{
		func() Shape { return new(Measured) },
		func() Shape { return &Cut{Of: new(Plate)} },
		func() Shape { return &Cut{Of: new(Disc)} },
		func() Shape { return &Cut{Of: new(Trapezium)} },
		func() Shape { return &Cut{Of: new(Cylinder)} },
		func() Shape { return &Cut{Of: new(Frustum)} },
		func() Shape { return &Cut{Of: new(Cone)} },
		func() Shape { return &Cut{Of: new(Ring)} },
		func() Shape { return &Cut{Of: new(Frame)} },
		func() Shape { return &Cut{Of: new(Box)} },
		func() Shape { return &Cut{Of: new(Prism)} },
		func() Shape { return &Cut{Of: new(Slab)} },
		func() Shape { return &Cut{Of: new(Body)} },
		func() Shape { return &Cut{Of: new(Sphere)} },
		func() Shape { return &Cut{Of: new(Dome)} },
		func() Shape { return &Cut{Of: new(Ellipsoid)} },
		func() Shape { return &Cut{Of: new(Helmet)} },
		func() Shape { return &Cut{Of: new(Paper)} },
		func() Shape { return &Cut{Of: new(Roll)} },
		func() Shape { return new(Sum) },
	}
}

// Kinds are all kinds of shape with their measures, in the order in which they
// are offered.
func Kinds() []Kind {
	var kinds []Kind
	for _, fresh := range makers() {
		kinds = append(kinds, kindOf(fresh))
	}
	return kinds
}

// KindNamed is the kind of that key, and whether there is one.
func KindNamed(key string) (Kind, bool) {
	for _, fresh := range makers() {
		if fresh().Kind().Key == key {
			return kindOf(fresh), true
		}
	}
	return Kind{}, false
}

func kindOf(fresh func() Shape) Kind {
	s := fresh()
	k := s.Kind()
	k.Measures, k.fresh = s.Measures(), fresh
	return k
}

// Keys are the keys of Kinds.
func Keys() []string {
	var keys []string
	for _, fresh := range makers() {
		keys = append(keys, fresh().Kind().Key)
	}
	return keys
}
