package workout

import "slices"

// sheets are all that can be worked out, in the order in which they are offered.
var sheets = []*Sheet{
	areaSheet,
	filmSheet,
	coatsSheet,
	gunSheet,
	mixSheet,
	overpourSheet,
	thinningSheet,
	viscositySheet,
	gritSheet,
	airSheet,
	psychrometerSheet,
	dryingSheet,
	bakeSheet,
	roomSheet,
	weatherSheet,
	candySheet,
	vocSheet,
	boothSheet,
	vapourSheet,
	compressorSheet,
}

// Sheets are all that can be worked out, in the order in which they are offered.
func Sheets() []*Sheet { return slices.Clone(sheets) }

// Find is the sheet of that slug, nil for none.
func Find(slug string) *Sheet {
	i := slices.IndexFunc(sheets, func(s *Sheet) bool { return s.Slug == slug })
	if i < 0 {
		return nil
	}
	return sheets[i]
}
