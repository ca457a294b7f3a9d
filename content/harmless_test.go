package content

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"
)

// What the markdown of a note may turn into: nothing that runs or loads code.
var (
	harmlessElements = []string{"a", "blockquote", "br", "code", "del", "div", "em", "h1", "h2", "h3", "h4", "h5", "h6", "hr",
		"img", "input", "li", "ol", "p", "pre", "strong", "sup", "table", "tbody", "td", "th", "thead", "tr", "ul"}
	harmlessAttributes = []string{"align", "alt", "checked", "class", "disabled", "href", "id", "role", "src", "start", "title", "type"}
	harmfulSchemes     = []string{"javascript:", "vbscript:", "data:", "file:"}
)

// checkHarmless reports what of a piece of a page could run.
func checkHarmless(t *testing.T, page string) {
	t.Helper()
	for _, h := range harm(t, page) {
		t.Errorf("%s gets through", h)
	}
}

// harm reads a piece of a page as a browser does and lists what could run.
func harm(t *testing.T, page string) []string {
	t.Helper()
	around := &html.Node{Type: html.ElementNode, Data: "div", DataAtom: atom.Div}
	nodes, err := html.ParseFragment(strings.NewReader(page), around)
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range nodes {
		around.AppendChild(n)
	}
	var found []string
	for n := range around.Descendants() {
		found = append(found, harmOf(n)...)
	}
	return found
}

func harmOf(n *html.Node) (found []string) {
	if n.Type != html.ElementNode {
		return nil
	}
	if !slices.Contains(harmlessElements, n.Data) {
		found = append(found, "<"+n.Data+">")
	}
	for _, a := range n.Attr {
		known := slices.Contains(harmlessAttributes, a.Key)
		badLink := (a.Key == "href" || a.Key == "src") && harmfulLink(a.Val)
		if !known || badLink {
			found = append(found, fmt.Sprintf("%s=%q of <%s>", a.Key, a.Val, n.Data))
		}
	}
	return found
}

// harmfulLink takes out of a link what browsers take out before they look at
// its scheme. A picture other than SVG may stand in the link itself.
func harmfulLink(link string) bool {
	bare := strings.ToLower(strings.Map(func(r rune) rune {
		if r <= ' ' {
			return -1
		}
		return r
	}, link))
	if strings.HasPrefix(bare, "data:image/") && !strings.HasPrefix(bare, "data:image/svg") {
		return false
	}
	return slices.ContainsFunc(harmfulSchemes, func(scheme string) bool { return strings.HasPrefix(bare, scheme) })
}

// The checks above must themselves see the harm that they are there for.
func TestHarm(t *testing.T) {
	for _, page := range []string{
		"<script>x</script>", "<img src=x onerror=x>", "<iframe></iframe>", "<svg onload=x></svg>", "<p style='x:y'></p>",
		"<a href='java\nscript:x'>a</a>", "<a href=' JavaScript:x'>a</a>", "<a href='data:text/html,x'>a</a>", "<p><b><object></object></b></p>",
	} {
		if harm(t, page) == nil {
			t.Errorf("%s is thought harmless", page)
		}
	}
}

// hostile is HTML and links that must not run, whichever way they are put.
var hostile = []string{
	"<script>alert(1)</script>",
	"<SCRIPT SRC=//evil.example/x.js></SCRIPT>",
	"a <script>alert(1)</script> b",
	"<img src=x onerror=alert(1)>",
	"text <img src=x onerror=alert(1)> text",
	"<iframe src=\"https://evil.example\"></iframe>",
	"<svg onload=alert(1)></svg>",
	"<svg><script>alert(1)</script></svg>",
	"<object data=x></object><embed src=x><base href=//evil.example>",
	"<style>*{background:url(//evil.example)}</style>",
	"<meta http-equiv=refresh content='0;url=//evil.example'>",
	"<form action=//evil.example><input name=x></form>",
	"<a href=\"javascript:alert(1)\">x</a>",
	"<!-- --><script>alert(1)</script><!-- -->",
	"<![CDATA[<script>alert(1)</script>]]>",
	"<?php <script>alert(1)</script> ?>",
	"<!DOCTYPE html [<script>alert(1)</script>]>",
	"<div\nonmouseover=alert(1)>\nx\n</div>",
	"&lt;script&gt;alert(1)&lt;/script&gt;",
	"[x](javascript:alert(1))",
	"[x](JaVaScRiPt:alert(1))",
	"[x](<javascript:alert(1)>)",
	"[x](<java\tscript:alert(1)>)",
	"[x](java&#10;script:alert(1))",
	"[x](&#106;avascript:alert(1))",
	"[x](javascript&colon;alert(1))",
	"[x](\\javascript:alert(1))",
	"[x](vbscript:msgbox(1))",
	"[x](data:text/html;base64,PHNjcmlwdD5hbGVydCgxKTwvc2NyaXB0Pg==)",
	"[x](data:image/svg+xml,<svg onload=alert(1)>)",
	"[x](file:///etc/passwd)",
	"[x][r]\n\n[r]: javascript:alert(1)",
	"[x](https://a.example 'x\" onmouseover=\"alert(1)')",
	"![x](javascript:alert(1))",
	"![x\" onerror=\"alert(1)](x.png)",
	"![x](x.png 'x\" onerror=\"alert(1)')",
	"![x](data:image/svg+xml;base64,PHN2Zz4=)",
	"<javascript:alert(1)>",
	"<data:text/html,x>",
	"# <script>alert(1)</script>",
	"# x {onclick=alert(1)}",
	"# x\" onclick=\"alert(1)",
	"<script>alert(1)</script>\n====",
	"| a |\n|---|\n| <script>alert(1)</script> |",
	"| <img src=x onerror=alert(1)> |\n|---|\n| x |",
	"x[^1]\n\n[^1]: <script>alert(1)</script>",
	"x[^\"onclick=alert(1)]\n\n[^\"onclick=alert(1)]: y",
	"- [ ] <script>alert(1)</script>",
	"> **x\" onclick=\"alert(1)** y",
	"> **<script>alert(1)</script>** y",
	"```x\" onclick=\"alert(1)\n<script>alert(1)</script>\n```",
	"`<script>alert(1)</script>`",
	"    <script>alert(1)</script>",
}

func TestHostile(t *testing.T) {
	for _, source := range hostile {
		t.Run(source, func(t *testing.T) {
			b, err := render("step", []byte(source))
			if err != nil {
				t.Fatal(err)
			}
			checkHarmless(t, b.html)
		})
	}
}
