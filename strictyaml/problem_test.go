package strictyaml

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

const (
	yamlWanted = "keys and values, indented with spaces"
	keysWanted = "one of: title, note, state, facts, checks, coats, factor, fresh, in, air, parts"
)

var problemCases = []struct {
	name, doc string
	want      Problems
}{
	{"unknown key", "title: x\ncaots: 2\n", Problems{{"s.yaml", 2, 1, "", `the key "caots"`, keysWanted, "coats"}}},
	{"unknown key, none near", "title: x\nzzzzzz: 2\n", Problems{{"s.yaml", 2, 1, "", `the key "zzzzzz"`, keysWanted, ""}}},
	{"unknown key below", "title: x\nparts:\n  - name: a\n    area: 1 m2\n    aera: 1 m2\n",
		Problems{{"s.yaml", 5, 5, "parts[0]", `the key "aera"`, "one of: name, area", "area"}}},
	{"missing key", "coats: 2\n", Problems{{"s.yaml", 1, 1, "title", "nothing", `the key "title"`, ""}}},
	{"missing key in braces", "title: x\nparts: [{name: a}]\n", Problems{{"s.yaml", 2, 9, "parts[0].area", "nothing", `the key "area"`, ""}}},
	{"missing key in a list", "title: x\nparts:\n  - name: a\n", Problems{{"s.yaml", 3, 5, "parts[0].area", "nothing", `the key "area"`, ""}}},
	{"duplicate key", "title: x\ncoats: 2\ntitle: y\n", Problems{{"s.yaml", 3, 1, "", `a second "title"`, "each key once", ""}}},
	{"duplicate key, quoted", "title: x\n\"title\": y\n", Problems{{"s.yaml", 2, 1, "", `a second "title"`, "each key once", ""}}},
	{"empty text", "title: \"\"\n", Problems{{"s.yaml", 1, 8, "title", `""`, "text", ""}}},
	{"no value", "title:\n", Problems{{"s.yaml", 1, 8, "title", "nothing", "text", ""}}},
	{"null", "title: ~\n", Problems{{"s.yaml", 1, 8, "title", "nothing", "text", ""}}},
	{"list for text", "title: [a]\n", Problems{{"s.yaml", 1, 8, "title", "a list", "text", ""}}},
	{"mapping for text", "title: {a: b}\n", Problems{{"s.yaml", 1, 8, "title", "a mapping", "text", ""}}},
	{"text for a list", "title: x\nfacts: keyed\n", Problems{{"s.yaml", 2, 8, "facts", `"keyed"`, "a list, such as [one, two]", ""}}},
	{"text for a mapping", "title: x\nparts: [arm]\n", Problems{{"s.yaml", 2, 9, "parts[0]", `"arm"`, "a mapping of keys to values", ""}}},
	{"unlisted word", "title: x\nstate: dyr\n", Problems{{"s.yaml", 2, 8, "state", `"dyr"`, "a state: one of wet, dry", "dry"}}},
	{"empty word", "title: x\nstate: ''\n", Problems{{"s.yaml", 2, 8, "state", `""`, "a state: one of wet, dry", ""}}},
	{"unlisted word in a list", "title: x\nfacts: [keyed, rinced]\n", Problems{{"s.yaml", 2, 16, "facts[1]", `"rinced"`, "a fact: one of keyed, rinsed", "rinsed"}}},
	{"number too large", "title: x\ncoats: 13\n", Problems{{"s.yaml", 2, 8, "coats", `"13"`, "a whole number from 1 to 12", ""}}},
	{"broken number", "title: x\ncoats: 1.5\n", Problems{{"s.yaml", 2, 8, "coats", `"1.5"`, "a whole number from 1 to 12", ""}}},
	{"number of zero", "title: x\nfactor: 0\n", Problems{{"s.yaml", 2, 9, "factor", `"0"`, "a number above 0", ""}}},
	{"not a number", "title: x\nfactor: .nan\n", Problems{{"s.yaml", 2, 9, "factor", `".nan"`, "a number above 0", ""}}},
	{"neither yes nor no", "title: x\nfresh: perhaps\n", Problems{{"s.yaml", 2, 8, "fresh", `"perhaps"`, "yes or no", ""}}},
	{"bad unit", "title: x\nin: 20 mins\n", Problems{{"s.yaml", 2, 5, "in", `"20 mins"`, "a time in one of: s, min, h, d", "20 min"}}},
	{"no unit", "title: x\nin: 20\n", Problems{{"s.yaml", 2, 5, "in", `"20"`, "a time in one of: s, min, h, d", ""}}},
	{"quantity of nothing", "title: x\nin:\n", Problems{{"s.yaml", 2, 5, "in", "nothing", `a time such as "20 min"`, ""}}},
	{"range reversed", "title: x\nair: 32..15 C\n", Problems{{"s.yaml", 2, 6, "air", `"32..15 C"`, `a range with its low end first, such as "15..32 C"`, ""}}},
	{"letters before the value count once each", "title: x\nfacts: [grün, keyd]\n", Problems{
		{"s.yaml", 2, 9, "facts[0]", `"grün"`, "a fact: one of keyed, rinsed", ""},
		{"s.yaml", 2, 15, "facts[1]", `"keyd"`, "a fact: one of keyed, rinsed", "keyed"}}},
	{"tab", "title: x\nfacts:\n\t- keyed\n", Problems{{"s.yaml", 3, 1, "", "broken YAML (found character '\t' that cannot start any token)", yamlWanted, ""}}},
	{"open bracket", "title: x\nfacts: [keyed\n", Problems{{"s.yaml", 2, 8, "", "broken YAML (sequence end token ']' not found)", yamlWanted, ""}}},
	{"open quote", "title: 'x\n", Problems{{"s.yaml", 1, 8, "", "broken YAML (could not find end character of single-quoted text)", yamlWanted, ""}}},
	{"bare colon in a value", "title: a: b\n", Problems{{"s.yaml", 1, 8, "", "broken YAML (mapping value is not allowed in this context)", yamlWanted, ""}}},
	{"anchor", "title: &a x\n", Problems{{"s.yaml", 1, 8, "title", "a YAML anchor", "text", ""}}},
	{"alias", "title: &a x\nnote: *a\n", Problems{
		{"s.yaml", 1, 8, "title", "a YAML anchor", "text", ""}, {"s.yaml", 2, 7, "note", "a YAML alias", "text", ""}}},
	{"anchor on a list", "title: x\nfacts: &f [keyed]\n", Problems{{"s.yaml", 2, 8, "facts", "a YAML anchor", "a list, such as [one, two]", ""}}},
	{"anchor on a key", "title: x\n&a coats: 2\n", Problems{{"s.yaml", 2, 1, "", `"&"`, "a plain key", ""}}},
	{"tag", "title: !!str 5\n", Problems{{"s.yaml", 1, 8, "title", "a YAML tag", "text", ""}}},
	{"tag on a number", "title: x\ncoats: !!int 2\n", Problems{{"s.yaml", 2, 8, "coats", "a YAML tag", "a whole number from 1 to 12", ""}}},
	{"merge key", "title: x\n<<: {coats: 2}\n", Problems{{"s.yaml", 2, 1, "", `"<<"`, "a plain key", ""}}},
	{"question mark key", "title: x\n? coats\n: 2\n", Problems{{"s.yaml", 2, 1, "", `"?"`, "a plain key", ""}}},
	{"second document", "title: x\n---\ntitle: y\n", Problems{{"s.yaml", 3, 1, "", "a second document", "one document", ""}}},
	{"empty", "", Problems{{"s.yaml", 1, 1, "", "nothing", "a mapping of keys to values", ""}}},
	{"comment alone", "# nothing\n", Problems{{"s.yaml", 1, 1, "", "nothing", "a mapping of keys to values", ""}}},
	{"list on top", "- title\n- x\n", Problems{{"s.yaml", 1, 1, "", "a list", "a mapping of keys to values", ""}}},
	{"text on top", "title\n", Problems{{"s.yaml", 1, 1, "", `"title"`, "a mapping of keys to values", ""}}},
	{"several", "titel: x\ncoats: 99\nin: 5 minits\nstate: dri\n", Problems{
		{"s.yaml", 1, 1, "title", "nothing", `the key "title"`, ""},
		{"s.yaml", 1, 1, "", `the key "titel"`, keysWanted, "title"},
		{"s.yaml", 2, 8, "coats", `"99"`, "a whole number from 1 to 12", ""},
		{"s.yaml", 3, 5, "in", `"5 minits"`, "a time in one of: s, min, h, d", "5 min"},
		{"s.yaml", 4, 8, "state", `"dri"`, "a state: one of wet, dry", "dry"}}},
}

func TestProblems(t *testing.T) {
	for _, c := range problemCases {
		m, doc := Read("s.yaml", []byte(c.doc), 0)
		readSheet(m)
		if diff := cmp.Diff(error(c.want), doc.Problems().Err()); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
	}
}

// Front matter starts below a note's first line.
func TestProblemsBelow(t *testing.T) {
	m, doc := Read("note.md", []byte("coats: 99\ntitle: x\n"), 1)
	readSheet(m)
	want := Problems{{"note.md", 2, 8, "coats", `"99"`, "a whole number from 1 to 12", ""}}
	if diff := cmp.Diff(want, doc.Problems()); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}
