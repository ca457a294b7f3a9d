package quantity

import (
	"html"
	"regexp"
	"strings"
)

// While a rewriting sees the text of a page, each tag is one of these. Unicode
// keeps both for use inside programs.
const (
	inline = "\uFDD0" // within a sentence: <em>, </a>
	block  = "\uFDD1" // ends one: <p>, <td>, and what is left out, such as <code>
)

// piece is a text of a page and the tag behind it, as they are written.
type piece struct {
	text string
	tag  string // empty at the end of the page
	mark string // stands for the tag
}

// HTML applies each to the text of a page, not to its tags and comments, nor to
// what code, pre, script, style and title hold. So that words on both sides of
// a tag are seen together, each gets all text at once, without entities and
// with a mark for every tag, which it must keep; where it does not, the page
// stays as it is.
func HTML(page string, each func(string) string) string {
	pieces := pieces(page)
	texts := make([]string, len(pieces))
	var all strings.Builder
	for i, p := range pieces {
		texts[i] = html.UnescapeString(p.text)
		if marked(texts[i]) {
			return page
		}
		all.WriteString(texts[i])
		all.WriteString(p.mark)
	}
	var out strings.Builder
	rest := each(all.String())
	for i, p := range pieces {
		text, behind, kept := strings.Cut(rest, p.mark)
		switch {
		case !kept || marked(text):
			return page
		case text == texts[i]:
			out.WriteString(p.text)
		default:
			out.WriteString(escape(text, p.text))
		}
		out.WriteString(p.tag)
		rest = behind
	}
	if rest != "" {
		return page
	}
	return out.String()
}

// marked reports whether a text has a mark in it.
func marked(text string) bool { return strings.Contains(text, inline) || strings.Contains(text, block) }

// pieces parts a page at its tags.
func pieces(page string) []piece {
	var out []piece
	from := 0
	for i := 0; i < len(page); {
		length, mark := 0, ""
		if page[i] == '<' {
			length, mark = tag(page[i:])
		}
		if length == 0 { // also a "<" that opens nothing
			i++
			continue
		}
		out = append(out, piece{page[from:i], page[i : i+length], mark})
		i += length
		from = i
	}
	return append(out, piece{page[from:], "", block})
}

// tag is the length of the tag that opens s, with all it holds where that is
// left out, and the mark that stands for it. It is 0 where s opens with none.
func tag(s string) (length int, mark string) {
	switch {
	case strings.HasPrefix(s, "<!--"):
		return through(s, "-->"), inline
	case strings.HasPrefix(s, "<!"), strings.HasPrefix(s, "<?"):
		return through(s, ">"), block
	}
	name, closes := strings.CutPrefix(s[1:], "/")
	name = strings.ToLower(name[:wordLength(name)])
	if name == "" {
		return 0, ""
	}
	length = tagEnd(s)
	if !closes && (leftOut[name] || strings.HasPrefix(s, footnote)) {
		return length + element(s[length:], name), block
	}
	if within[name] {
		return length, inline
	}
	return length, block
}

// wordLength is the length of the letters and digits that open s, a letter first.
func wordLength(s string) int {
	n := 0
	for n < len(s) && (letter(s[n]) || n > 0 && digit(s[n])) {
		n++
	}
	return n
}

func letter(b byte) bool { return 'a' <= b|0x20 && b|0x20 <= 'z' }

// footnote opens the number that points to a footnote: it ends no unit.
const footnote = `<sup id="fnref`

var (
	leftOut = set("code pre script style title textarea kbd samp svg")
	within  = set("a abbr b cite del dfn em i ins label mark q s small span strong sub sup time u var")
)

// through is the length of s to the end of the first stop, all of it where there is none.
func through(s, stop string) int {
	if i := strings.Index(s, stop); i >= 0 {
		return i + len(stop)
	}
	return len(s)
}

// tagEnd is the length of the tag that opens s; a ">" in quotes does not end it.
func tagEnd(s string) int {
	var quote byte
	for i := range len(s) {
		switch c := s[i]; {
		case quote != 0 && c == quote:
			quote = 0
		case quote == 0 && (c == '"' || c == '\''):
			quote = c
		case quote == 0 && c == '>':
			return i + 1
		}
	}
	return len(s)
}

// element is the length of what an element holds and of the tag that closes it.
func element(s, name string) int {
	for i := 0; ; i += 2 {
		next := strings.Index(s[i:], "</")
		if next < 0 {
			return len(s)
		}
		i += next
		if rest := s[i+2:]; len(rest) >= len(name) && strings.EqualFold(rest[:len(name)], name) {
			return i + tagEnd(s[i:])
		}
	}
}

// entity is a character that HTML writes by its name or number.
var entity = regexp.MustCompile(`&(?:#\d+|#[xX][0-9a-fA-F]+|[a-zA-Z][a-zA-Z0-9]*);`)

// escape writes text for a page, each character the way that raw, the text
// which it replaces, wrote it.
func escape(text, raw string) string {
	if !strings.Contains(raw, "&") && !strings.ContainsAny(text, "&<>") {
		return text
	}
	var pairs []string
	for _, written := range entity.FindAllString(raw, -1) {
		if c := html.UnescapeString(written); c != written {
			pairs = append(pairs, c, written)
		}
	}
	pairs = append(pairs, "&", "&amp;", "<", "&lt;", ">", "&gt;")
	return strings.NewReplacer(pairs...).Replace(text)
}
