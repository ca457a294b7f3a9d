package search

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestUK(t *testing.T) {
	for _, test := range []struct{ us, want string }{
		{"color", "colour"}, {"colored", "coloured"}, {"discolored", "discoloured"}, {"colour", "colour"},
		{"aluminum", "aluminium"}, {"aluminium", "aluminium"},
		{"fiber", "fibre"}, {"fiberglass", "fibreglass"},
		{"gray", "grey"}, {"grayish", "greyish"}, {"grey", "grey"},
		{"mold", "mould"}, {"molded", "moulded"}, {"mould", "mould"},
		{"matte", "matt"}, {"matter", "matter"},
		{"vapor", "vapour"}, {"evaporate", "evaporate"},
		{"atomizing", "atomising"}, {"oxidized", "oxidised"}, {"atomise", "atomise"},
		{"size", "size"}, {"prize", "prize"},
		{"tack", "tack"}, {"", ""},
	} {
		if got := uk(test.us); got != test.want {
			t.Errorf("uk(%q) = %q, want %q", test.us, got, test.want)
		}
	}
}

func TestAnalysis(t *testing.T) {
	m, err := newMapping()
	if err != nil {
		t.Fatal(err)
	}
	for _, test := range []struct{ analyzer, text, want string }{
		{analyzerStem, "Tack off", "tack off"},
		{analyzerStem, "the drying of the coats", "dri coat"},
		{analyzerStem, "painter's colors", "painter colour"},
		{analyzerStem, "it won't stick, it wont stick", "stick stick"},
		{analyzerStem, "two-pack", "two pack"},
		{analyzerStem, "2K", "2k"},
		{analyzerStem, "P600", "p600 600"},
		{analyzerStem, "PVC", "pvc"},
		{analyzerWord, "over the Aluminum frames", "over the aluminium frames"},
		{analyzerStart, "Tack", "t ta tac tack"},
	} {
		var terms []string
		for _, token := range m.AnalyzerNamed(test.analyzer).Analyze([]byte(test.text)) {
			terms = append(terms, string(token.Term))
		}
		if diff := cmp.Diff(test.want, strings.Join(terms, " ")); diff != "" {
			t.Errorf("%s of %q (-want +got):\n%s", test.analyzer, test.text, diff)
		}
	}
}
