package strictyaml

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	q "coatwright/quantity"
)

// sheet is a made-up document with a value of every sort.
type sheet struct {
	Title  string
	Note   string
	State  string
	Facts  []string
	Checks []string
	Coats  int
	Factor float64
	Fresh  bool
	In     q.Time
	Air    q.Range[q.Temperature]
	Parts  []part
}

type part struct {
	Name string
	Area q.Area
}

func readSheet(m *Map) sheet {
	s := sheet{
		Title:  m.Need("title").Text(),
		Note:   m.Get("note").Text(),
		State:  m.Get("state").OneOf("a state", []string{"wet", "dry"}),
		Facts:  m.Get("facts").Words("a fact", []string{"keyed", "rinsed"}),
		Checks: m.Get("checks").Texts(),
		Coats:  m.Get("coats").Int(1, 12),
		Factor: m.Get("factor").Number(),
		Fresh:  m.Get("fresh").Bool(),
		In:     Quantity[q.Time](m.Get("in")),
		Air:    Range[q.Temperature](m.Get("air")),
	}
	for _, item := range m.Get("parts").List() {
		p := item.Map()
		s.Parts = append(s.Parts, part{p.Need("name").Text(), Quantity[q.Area](p.Need("area"))})
		p.Close()
	}
	m.Close()
	return s
}

func TestReadValues(t *testing.T) {
	for _, c := range []struct {
		name, doc string
		want      sheet
	}{
		{"plain", "title: Tack off\nstate: dry\nfacts: [keyed, rinsed]\ncoats: 2\nfactor: 1.5\nfresh: yes\nin: 20 min\n",
			sheet{Title: "Tack off", State: "dry", Facts: []string{"keyed", "rinsed"}, Coats: 2, Factor: 1.5, Fresh: true, In: 1200}},
		{"quoted", "title: 'it''s'\nnote: \"a: b\\tc\"\nstate: \"wet\"\ncoats: '3'\nfresh: \"no\"\n",
			sheet{Title: "it's", Note: "a: b\tc", State: "wet", Coats: 3}},
		{"numbers are text where text is asked for", "title: 5\nnote: 2026-12-01T08:00\n", sheet{Title: "5", Note: "2026-12-01T08:00"}},
		{"words of other YAML types", "title: true\nnote: .inf\n", sheet{Title: "true", Note: ".inf"}},
		{"literal block", "title: x\nnote: |\n  one\n  two\n", sheet{Title: "x", Note: "one\ntwo"}},
		{"folded block", "title: x\nnote: >\n  one\n  two\n", sheet{Title: "x", Note: "one two"}},
		{"continued line", "title: one\n  two\n", sheet{Title: "one two"}},
		{"comment", "# first\ntitle: x # last\n", sheet{Title: "x"}},
		{"document mark", "---\ntitle: x\n---\n", sheet{Title: "x"}},
		{"carriage returns", "title: x\r\ncoats: 2\r\n", sheet{Title: "x", Coats: 2}},
		{"lists with dashes", "title: x\nchecks:\n- one\n- \"two: 2\"\n", sheet{Title: "x", Checks: []string{"one", "two: 2"}}},
		{"list of mappings", "title: x\nparts:\n  - name: arm\n    area: 2 dm2\n  - {name: leg, area: 3 dm2}\n",
			sheet{Title: "x", Parts: []part{{"arm", 0.02}, {"leg", 0.03}}}},
		{"empty list", "title: x\nfacts: []\n", sheet{Title: "x"}},
	} {
		m, doc := Read("sheet.yaml", []byte(c.doc), 0)
		got := readSheet(m)
		if err := doc.Problems().Err(); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
	}
}

func TestReadRange(t *testing.T) {
	m, doc := Read("sheet.yaml", []byte("title: x\nair: 15..32 C\n"), 0)
	got := readSheet(m).Air
	if want := (q.Range[q.Temperature]{Low: q.Celsius(15), High: q.Celsius(32)}); got != want || doc.Problems() != nil {
		t.Errorf("got %v, %v, want %v", got, doc.Problems(), want)
	}
}

// A nil Value and a nil Map stand for what is absent.
func TestAbsent(t *testing.T) {
	var m *Map
	if diff := cmp.Diff(sheet{}, readSheet(m)); diff != "" {
		t.Errorf("of nothing something is read:\n%s", diff)
	}
	if m.Keys() != nil {
		t.Errorf("nil Map has keys %q", m.Keys())
	}
	var v *Value
	if v.IsMap() || v.Map() != nil || v.List() != nil {
		t.Error("a nil Value holds something")
	}
}

func TestLine(t *testing.T) {
	m, _ := Read("note.md", []byte("title: x\nparts:\n  - name: arm\n"), 1)
	if got := m.Get("parts").List()[0].Line(); got != 4 {
		t.Errorf("the first part is said to stand on line %d, want 4", got)
	}
}

func TestIsMap(t *testing.T) {
	m, _ := Read("f", []byte("a: {b: 1}\nc:\n  d: 1\ne: [f]\ng: h\n"), 0)
	for key, want := range map[string]bool{"a": true, "c": true, "e": false, "g": false} {
		if got := m.Get(key).IsMap(); got != want {
			t.Errorf("%s: IsMap is %v", key, got)
		}
	}
}

func TestTooDeep(t *testing.T) {
	for _, c := range []struct {
		name, doc string
		line      int // 0 for deep enough to be read
	}{
		{"32 lists", "title: " + strings.Repeat("[", 32) + strings.Repeat("]", 32), 0},
		{"33 lists", "title:\n " + strings.Repeat("[\n", 33), 34},
		{"lists after closed ones", "title: " + strings.Repeat("]", 900) + "\nx:\n" + strings.Repeat("[\n", 40), 35},
		{"one long line", "title: " + strings.Repeat("{a: ", 5000), 1},
		{"dashes", strings.Repeat("- ", 5000) + "x", 1},
		{"indentation", "a:\n" + strings.Repeat(" ", 300) + "b: 1", 2},
	} {
		_, doc := Read("f", []byte(c.doc), 0)
		got := 0
		for _, p := range doc.Problems() {
			if p.Found == "brackets nested too deep" {
				got = p.Line
			}
		}
		if got != c.line {
			t.Errorf("%s: refused at line %d, want %d", c.name, got, c.line)
		}
	}
}

func TestTooLong(t *testing.T) {
	m, doc := Read("f", []byte("title: "+strings.Repeat("x", maxSize)), 0)
	want := Problems{{"f", 1, 1, "", "65543 bytes", "at most 65536 bytes", ""}}
	if diff := cmp.Diff(want, doc.Problems()); diff != "" || m != nil {
		t.Errorf("(-want +got):\n%s", diff)
	}
	m, doc = Read("f", []byte("title: "+strings.Repeat("x", maxSize-len("title: "))), 0)
	if readSheet(m).Title == "" {
		t.Errorf("the longest document is refused: %v", doc.Problems())
	}
}

func TestProblemText(t *testing.T) {
	p := &Problem{File: "step/x.md", Line: 3, Column: 7, Path: "work.fixed", Found: `"5 mins"`, Expected: "a time", Nearest: "5 min"}
	want := `step/x.md:3:7: work.fixed: found "5 mins", expected a time; did you mean "5 min"?`
	if got := p.Error(); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if got := (Problems{p, p}).Error(); got != want+"\n"+want {
		t.Errorf("two problems are not two lines: %s", got)
	}
	if err := (Problems(nil)).Err(); err != nil {
		t.Errorf("no problems are the error %v", err)
	}
	if err := (Problems{p}).Err(); fmt.Sprint(err) != want {
		t.Errorf("one problem is the error %v", err)
	}
}
