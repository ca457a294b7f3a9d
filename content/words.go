package content

import (
	"coatwright/planner/library"
	"coatwright/strictyaml"
)

// wordsFile is where the listed words stand, beside the kinds' folders.
const wordsFile = "words.yaml"

var scopes = []string{string(library.Part), string(library.Surface), string(library.Bench)}

// readWords reads the vocabulary file.
func readWords(file string, src []byte) (*library.Vocabulary, strictyaml.Problems) {
	m, doc := strictyaml.Read(file, src, 0)
	w := &library.Vocabulary{
		Facts:   readFacts(m.Need("facts").Map()),
		Dryness: readWordList(m.Need("dryness").Map()),
		Traits:  readWordList(m.Need("traits").Map()),
		Roles:   readRoles(m.Need("roles").Map()),
		Phases:  readWordList(m.Need("phases").Map()),
		Systems: readWordList(m.Need("systems").Map()),
		Forms:   readWordList(m.Need("forms").Map()),
		Pacing:  readWordList(m.Need("pacing").Map()),
		Care:    readCare(m.Need("care").Map()),
	}
	m.Close()
	return w, doc.Problems()
}

func readFacts(m *strictyaml.Map) map[string]*library.Fact {
	facts, numbered := map[string]*library.Fact{}, ""
	for _, name := range m.Keys() {
		f := m.Get(name).Map()
		facts[name] = &library.Fact{
			Name:   name,
			Of:     library.Scope(f.Need("of").OneOf("what the fact is about", scopes)),
			Fresh:  f.Get("fresh").Bool(),
			Number: f.Get("number").OneOf("what the number counts", []string{"P-grit"}) != "",
			Is:     f.Need("is").Text(),
			Else:   f.Need("else").Text(),
		}
		f.Close()
		if facts[name].Number && numbered != "" {
			m.Fail(name, "only one fact with a number; "+numbered+" has it", "")
		}
		if facts[name].Number {
			numbered = name
		}
	}
	return facts
}

func readWordList(m *strictyaml.Map) []library.Word {
	var words []library.Word
	for _, name := range m.Keys() {
		words = append(words, library.Word{Name: name, Is: m.Get(name).Text()})
	}
	return words
}

func readRoles(m *strictyaml.Map) []library.Role {
	var roles []library.Role
	for _, name := range m.Keys() {
		r := m.Get(name).Map()
		roles = append(roles, library.Role{Name: name, Prep: r.Get("prep").Bool(), Is: r.Need("is").Text()})
		r.Close()
	}
	return roles
}

func readCare(m *strictyaml.Map) []library.Care {
	var care []library.Care
	for _, name := range m.Keys() {
		c := m.Get(name).Map()
		care = append(care, library.Care{Name: name, Factor: c.Need("factor").Number(), Is: c.Need("is").Text()})
		c.Close()
	}
	return care
}
