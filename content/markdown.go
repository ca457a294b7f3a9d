package content

import (
	"bytes"
	"path"
	"strings"
	"unicode/utf8"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
)

// markdown is CommonMark with tables, footnotes, task lists and definition-free
// plain text otherwise. Raw HTML stays off: goldmark leaves it out unless asked.
var markdown = goldmark.New(
	goldmark.WithExtensions(
		// Pages take no inline style, so a column is aligned by attribute.
		extension.NewTable(extension.WithTableCellAlignMethod(extension.TableCellAlignAttribute)),
		extension.Footnote, extension.TaskList),
	goldmark.WithParserOptions(parser.WithAutoHeadingID()),
)

// link is a link of a note's body to another note.
type link struct {
	to   string // path: "tool/tack-rag"
	as   string // as it is written
	line int    // in the body, from 1
	col  int
}

// body is a note's markdown, rendered.
type body struct {
	html    string
	text    string
	summary string
	heads   []Head
	links   []link
}

// render parses and renders the markdown of the note kind/slug. Relative links
// between notes become links to their pages.
func render(kind string, source []byte) (body, error) {
	doc := markdown.Parser().Parse(text.NewReader(source))
	b := body{text: plain(doc, source)}
	err := ast.Walk(doc, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if entering {
			b.visit(n, kind, source)
		}
		return ast.WalkContinue, nil
	})
	if err != nil {
		return body{}, err
	}
	if p := doc.FirstChild(); p != nil && p.Kind() == ast.KindParagraph {
		b.summary = plain(p, source)
	}
	var out bytes.Buffer
	if err := markdown.Renderer().Render(&out, source, doc); err != nil {
		return body{}, err
	}
	b.html = out.String()
	return b, nil
}

func (b *body) visit(n ast.Node, kind string, source []byte) {
	switch n := n.(type) {
	case *ast.Heading:
		id, _ := n.AttributeString("id")
		anchor, _ := id.([]byte)
		b.heads = append(b.heads, Head{n.Level, strings.TrimSuffix(plain(n, source), "."), string(anchor)})
	case *ast.Link:
		dest := string(n.Destination)
		if to, isNote := target(kind, dest); isNote {
			line, col := place(source, n.Pos())
			b.links = append(b.links, link{to: to, as: dest, line: line, col: col})
			n.Destination = []byte("/note/" + to + fragment(dest))
		}
	case *ast.Blockquote:
		if word := callout(n, source); word != "" {
			n.SetAttributeString("class", []byte("callout callout-"+word))
		}
	}
}

// callout returns the kind of a block quote that starts with a bold word:
// "> **Caution.** ..." is a "caution".
func callout(n *ast.Blockquote, source []byte) string {
	p := n.FirstChild()
	if p == nil || p.FirstChild() == nil {
		return ""
	}
	strong, ok := p.FirstChild().(*ast.Emphasis)
	if !ok || strong.Level != 2 {
		return ""
	}
	word := strings.ToLower(strings.Trim(plain(strong, source), " .:!"))
	return strings.ReplaceAll(word, " ", "-")
}

// target resolves a relative link from a note of the given kind to a note's
// path; isNote is false for links that leave the library or stay on the page.
func target(kind, dest string) (to string, isNote bool) {
	dest, _, _ = strings.Cut(dest, "#")
	if dest == "" || strings.Contains(dest, ":") || strings.HasPrefix(dest, "/") {
		return "", false
	}
	return strings.TrimSuffix(path.Join(kind, dest), ".md"), true
}

func fragment(dest string) string {
	if _, f, ok := strings.Cut(dest, "#"); ok {
		return "#" + f
	}
	return ""
}

// place is the line and column of source, from 1, of its byte i. A column is a
// letter, as an editor counts.
func place(source []byte, i int) (line, column int) {
	before := source[:i]
	start := bytes.LastIndexByte(before, '\n') + 1
	return 1 + bytes.Count(before, []byte("\n")), 1 + utf8.RuneCount(before[start:])
}

// plain is the text of n and what is below it, blocks apart by a space.
func plain(n ast.Node, source []byte) string {
	var out strings.Builder
	gather(n, source, &out)
	return strings.Join(strings.Fields(out.String()), " ")
}

func gather(n ast.Node, source []byte, out *strings.Builder) {
	switch n := n.(type) {
	case *ast.Text:
		out.Write(n.Value(source))
		if n.SoftLineBreak() || n.HardLineBreak() {
			out.WriteByte(' ')
		}
	case *ast.String:
		out.Write(n.Value)
	case *ast.AutoLink:
		out.Write(n.Label(source))
	case *ast.CodeBlock, *ast.FencedCodeBlock:
		out.Write(n.Lines().Value(source))
	}
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		gather(c, source, out)
	}
	// A heading ends like a sentence, or it would run into the next one.
	if n.Kind() == ast.KindHeading && !strings.HasSuffix(out.String(), "?") {
		out.WriteByte('.')
	}
	if n.Type() == ast.TypeBlock {
		out.WriteByte(' ')
	}
}
