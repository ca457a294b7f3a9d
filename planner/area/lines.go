package area

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"coatwright/nearest"
)

// Item is a tube, a shape in a list, or a group, as a job document has it: what
// was written of each measure under its key. That is a text, an Item of a group
// or of a kind of shape, or the []Item of a list.
type Item map[string]any

// Items reads the list m as people write it in a form, an item a line; what
// stands in the items is not read yet. In a line the measures that it needs come
// first, in their order, then how many there are of it, then by name what may
// be left out:
//
//	28.6 mm x 560 mm
//	31.8 to 28 mm x 600 mm x 2
//	plate 600 x 400 mm, both faces, thickness 3 mm
//	frame, tubes (28.6 mm x 560 mm; 20 mm x 400 mm x 2), joints 4
//
// A shape starts with its key, an area may go without. A number without a unit
// has that of the next. Lists within a line stand in parentheses, their items
// with semicolons between them. The error is an *Error whose key names the item:
// "tubes[1]".
func Items(m Measure, text string) ([]Item, error) {
	return itemsOf(m, strings.FieldsFunc(text, func(r rune) bool { return r == '\n' || r == '\r' }))
}

func itemsOf(m Measure, lines []string) ([]Item, error) {
	items := []Item{}
	for _, line := range lines {
		line = strings.TrimSpace(line)
		if line == "" {
			continue
		}
		item, err := itemOf(m, line)
		if err != nil {
			return nil, below(fmt.Sprintf("%s[%d]", m.Key, len(items)), err)
		}
		items = append(items, item)
	}
	return items, nil
}

// LineOf is the line of the text, counted from one, on which its i-th item
// stands, counted from nought.
func LineOf(text string, i int) int {
	for n, line := range strings.Split(text, "\n") {
		if strings.TrimSpace(line) == "" {
			continue
		}
		if i == 0 {
			return n + 1
		}
		i--
	}
	return 1
}

// LineHint says in a sentence or two how the list m is written.
func LineHint(m Measure) string {
	if m.Of() == "tubes" {
		return "One tube a line: 28.6 mm x 560 mm, or 31.8 to 28 mm x 600 mm x 2 for two that taper."
	}
	var names []string
	for _, key := range m.Shapes {
		if kind, _ := KindNamed(key); !kind.Bare() {
			names = append(names, kind.inLine())
		}
	}
	hint := "One shape a line: disc 40 mm x 4 for four discs, or 0.02 m2 for an area. Names and what they need: " + strings.Join(names, "; ") + "."
	if slices.Contains(m.Shapes, "frame") { // more than flat faces
		hint += " The rest follows after commas: plate 600 x 400 mm, both faces; helmet 200 mm, length 290 mm, width 230 mm."
	}
	return hint
}

// Example is what an item of m may look like: of tubes a tube, of shapes one of
// each kind.
func Example(m Measure) []string {
	if len(m.Shapes) == 0 {
		return []string{pattern(m.Parts)}
	}
	var out []string
	for _, key := range m.Shapes {
		kind, _ := KindNamed(key)
		out = append(out, kind.inLine())
	}
	return out
}

// inLine is how a shape of the kind stands in a line.
func (k Kind) inLine() string {
	if k.Bare() {
		return pattern(k.Measures)
	}
	return strings.Replace(k.Key+" "+pattern(k.Measures), " , ", ", ", 1)
}

// pattern is the measures that something needs, as they stand in a line.
func pattern(measures []Measure) string {
	var first, named []string
	for _, m := range measures {
		switch {
		case m.Optional:
		case m.stands():
			first = append(first, strings.ToLower(m.Title))
		default:
			named = append(named, fmt.Sprintf(", %s (%s)", m.Key, strings.Join(Example(m), " or ")))
		}
	}
	return strings.Join(first, " x ") + strings.Join(named, "")
}

// list reports a measure that is a list.
func (m Measure) list() bool { return m.Of() == "tubes" || m.Of() == "shapes" }

// stands reports a measure that comes without its name, at the head of a line.
func (m Measure) stands() bool { return !m.Optional && !m.list() && m.Into != nil }

var word = regexp.MustCompile(`^[a-zA-Z][a-zA-Z-]*`)

// itemOf reads one item of a list. The error is an *Error.
func itemOf(m Measure, text string) (Item, error) {
	if m.Of() == "tubes" {
		item, count, err := measured(m.Parts, text, text, "a tube such as \"28.6 mm x 560 mm\"")
		return counted(item, count), err
	}
	key := word.FindString(text)
	rest := strings.TrimPrefix(strings.TrimSpace(text[len(key):]), ":")
	key = strings.ToLower(key)
	if key == "" {
		key = "area"
	}
	if !slices.Contains(m.Shapes, key) {
		return nil, &Error{"", quote(text), "a shape: one of " + strings.Join(m.Shapes, ", ") + nearest.Hint(nearest.To(key, m.Shapes))}
	}
	kind, _ := KindNamed(key)
	item, count, err := measured(kind.Measures, rest, text, quote(kind.inLine()))
	if err != nil {
		return nil, err
	}
	if kind.Bare() {
		return counted(Item{key: item[key]}, count), nil
	}
	return counted(Item{key: item}, count), nil
}

func counted(item Item, count string) Item {
	if count != "" {
		item["count"] = count
	}
	return item
}

var (
	between = regexp.MustCompile(`\s*[xX×]\s*|\s+to\s+`)
	number  = regexp.MustCompile(`^[0-9.]+$`)
	whole   = regexp.MustCompile(`^[0-9]+$`)
)

// measured reads measures as they stand in a line, and how many there are of
// what they measure, "" where that is not said. Found is the whole line, expected
// what it should look like.
func measured(measures []Measure, text, found, expected string) (item Item, count string, err error) {
	clauses, ok := split(text, ',')
	if !ok {
		return nil, "", &Error{"", quote(found), "as many parentheses closed as opened"}
	}
	item = Item{}
	first := heads(measures, clauses[0])
	written := between.Split(clauses[0], -1)
	if clauses[0] == "" || len(first) == 0 && written[0] == "" {
		written = written[1:]
	}
	if len(written) == len(first)+1 && whole.MatchString(written[len(first)]) {
		written, count = written[:len(first)], written[len(first)]
	}
	if len(written) != len(first) || slices.Contains(written, "") {
		return nil, "", &Error{"", quote(found), expected}
	}
	for i, value := range united(first, written) {
		item[first[i].Key] = value
	}
	for _, clause := range clauses[1:] {
		if err := item.add(measures, clause); err != nil {
			return nil, "", err
		}
	}
	return item, count, nil
}

// heads are the measures that stand at the head of a line: those that are
// needed, and to what a tube tapers where the head says so.
func heads(measures []Measure, head string) []Measure {
	var out []Measure
	for _, m := range measures {
		if m.stands() || m.Key == "to" && strings.Contains(head, " to ") {
			out = append(out, m)
		}
	}
	return out
}

// united gives a number that has no unit that of the next.
func united(measures []Measure, written []string) []string {
	out := slices.Clone(written)
	unit := ""
	for i, value := range slices.Backward(written) {
		switch {
		case measures[i].Of() == "count":
		case number.MatchString(value):
			out[i] = strings.TrimSpace(value + " " + unit)
		default:
			unit = unitOf(value)
		}
	}
	return out
}

// unitOf is what stands behind the number of a quantity.
func unitOf(value string) string {
	return strings.TrimSpace(strings.TrimLeft(value, "0123456789.,"))
}

// add reads a measure that stands by its name: "thickness 3 mm", "both faces",
// "openings (disc 20 mm x 4; 0.01 m2)". The error is an *Error.
func (item Item) add(measures []Measure, clause string) error {
	m, value, ok := namedIn(measures, clause)
	if !ok {
		var keys []string
		for _, m := range byName(measures) {
			keys = append(keys, m.Key)
		}
		return &Error{"", quote(clause), "one of: " + strings.Join(keys, ", ") + nearest.Hint(nearest.To(word.FindString(clause), keys))}
	}
	if _, twice := item[m.Key]; twice {
		return &Error{"", quote(clause), m.Key + " once"}
	}
	if value == "" && m.Of() == "yes or no" {
		value = "yes"
	}
	item[m.Key] = value
	if !m.list() && m.Into != nil {
		return nil
	}
	inner, open := strings.CutPrefix(value, "(")
	inner, closed := strings.CutSuffix(inner, ")")
	if !open || !closed {
		return &Error{"", quote(clause), m.Key + " (" + strings.Join(Example(m), " or ") + ")"}
	}
	var err error
	item[m.Key], err = m.inside(inner)
	return err
}

// inside reads what stands in the parentheses of a list or a group.
func (m Measure) inside(text string) (any, error) {
	if m.list() {
		items, _ := split(text, ';')
		return itemsOf(m, items)
	}
	item, _, err := measured(m.Parts, text, text, m.Key+" ("+pattern(m.Parts)+")")
	return item, err
}

// byName are the measures that stand in a line by their names.
func byName(measures []Measure) []Measure {
	return slices.DeleteFunc(slices.Clone(measures), func(m Measure) bool { return m.stands() || m.Key == "count" })
}

// namedIn is the measure that a clause starts with the name of, and the rest of
// the clause.
func namedIn(measures []Measure, clause string) (named Measure, value string, ok bool) {
	for _, m := range byName(measures) {
		rest, is := cutName(clause, m.Key)
		if is && len(m.Key) > len(named.Key) {
			named, value, ok = m, rest, true
		}
	}
	return named, value, ok
}

// cutName takes the name of a measure off a clause; its hyphens may be spaces.
func cutName(clause, key string) (rest string, ok bool) {
	if len(clause) < len(key) || !strings.EqualFold(strings.ReplaceAll(clause[:len(key)], " ", "-"), key) {
		return "", false
	}
	rest = clause[len(key):]
	if word.MatchString(rest) || strings.HasPrefix(rest, "-") {
		return "", false
	}
	return strings.TrimSpace(strings.TrimLeft(rest, " :=")), true
}

// split parts a text at sep where that stands in no parentheses. A comma between
// digits parts nothing. Not ok where parentheses are not closed as opened.
func split(text string, sep byte) (parts []string, ok bool) {
	depth, from := 0, 0
	for i := range len(text) {
		switch c := text[i]; {
		case c == '(':
			depth++
		case c == ')':
			if depth--; depth < 0 {
				return nil, false
			}
		case c == sep && depth == 0 && !(c == ',' && digitAt(text, i-1) && digitAt(text, i+1)):
			parts = append(parts, strings.TrimSpace(text[from:i]))
			from = i + 1
		}
	}
	return append(parts, strings.TrimSpace(text[from:])), depth == 0
}

func digitAt(text string, i int) bool {
	return i >= 0 && i < len(text) && text[i] >= '0' && text[i] <= '9'
}

func quote(text string) string { return strconv.Quote(strings.TrimSpace(text)) }
