package quantity

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestHTML(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{"text", "<p>Lay 15 µm.</p>", "<p>Lay 0.59 mil.</p>"},
		{"no tags", "15 µm", "0.59 mil"},
		{"attributes", `<p title="15 µm" data-x='>15 µm'>15 µm</p>`, `<p title="15 µm" data-x='>15 µm'>0.59 mil</p>`},
		{"left out", "<title>15 µm</title><code>15 µm</code><pre>15 µm</pre><script>15 µm</script><style>15 µm</style>15 µm",
			"<title>15 µm</title><code>15 µm</code><pre>15 µm</pre><script>15 µm</script><style>15 µm</style>0.59 mil"},
		{"code in pre", "<pre><code>15 µm</code> 15 µm</pre> 15 µm", "<pre><code>15 µm</code> 15 µm</pre> 0.59 mil"},
		{"a less-than in a script", "<script>a</b;15 µm</script >15 µm", "<script>a</b;15 µm</script >0.59 mil"},
		{"comment", "<!-- <p>15 µm -->15 µm", "<!-- <p>15 µm -->0.59 mil"},
		{"doctype", "<!DOCTYPE html>15 µm", "<!DOCTYPE html>0.59 mil"},
		{"capitals", "<CODE>15 µm</CODE><B>15 µm</B>", "<CODE>15 µm</CODE><B>0.59 mil</B>"},
		{"open tag", "15 µm <p title=15 µm", "0.59 mil <p title=15 µm"},
		{"open comment", "15 µm <!-- 15 µm", "0.59 mil <!-- 15 µm"},
		{"open code", "15 µm <code> 15 µm", "0.59 mil <code> 15 µm"},

		{"entities", "15&nbsp;µm &amp; 15 µm &lt; &#169; &#xA9; &copy; &quot;R&D&quot;", "0.59&nbsp;mil &amp; 0.59 mil &lt; &#169; &#169; &#169; &quot;R&amp;D&quot;"},
		{"entities of a text that stays", "&#169; &copy; &nbsp R&D > 1", "&#169; &copy; &nbsp R&D > 1"},
		{"entities that matter", "15&ndash;25&nbsp;&micro;m, &#49;5 &deg;C", "0.59&ndash;0.98&nbsp;mil, 59 &deg;F"},
		{"written as it was", "5 &lt; 15 µm", "5 &lt; 15 µm"},
		{"a less-than", "a < b, 15 µm", "a &lt; b, 0.59 mil"},

		// Words on both sides of a tag are seen together.
		{"difference", "stand 3 °C <a href=x>above</a> the dew point", "stand 5.4 °F <a href=x>above</a> the dew point"},
		{"emphasis", "by <em>10 °C</em>, <strong>15 µm</strong> dry", "by <em>18 °F</em>, <strong>0.59 mil</strong> dry"},
		{"a number on the other side", "<em>5</em> to 10 mm, <em>15</em> mm", "<em>5</em> to 10 mm, <em>15</em> mm"},
		{"raised", "5 m<sup>2</sup>", "5 m<sup>2</sup>"},
		{"footnote", `at 85 °C<sup id="fnref:1"><a href="#fn:1">1</a></sup> 15 µm`, `at 185 °F<sup id="fnref:1"><a href="#fn:1">1</a></sup> 0.59 mil`},

		// Words in another block are not.
		{"cells", "<tr><td>15 °C</td><td>4.7 °C</td><td>3</td><td>15 µm</td></tr>", "<tr><td>59 °F</td><td>40.5 °F</td><td>3</td><td>0.59 mil</td></tr>"},
		{"blocks", "<p>at</p><p>5 °C is</p>", "<p>at</p><p>5 °C is</p>"},
		{"items", "<li>step 2</li><li>5 L</li>", "<li>step 2</li><li>1.3 US gal</li>"},
		{"marks of our own", "15 µm" + inline, "15 µm" + inline},
		{"marks as entities", "15 µm&#xFDD1;", "15 µm&#xFDD1;"},
	} {
		if got := HTML(c.in, US.Text); got != c.want {
			t.Errorf("%s: HTML(%q)\n= %q, want\n  %q", c.name, c.in, got, c.want)
		}
	}
	if got, want := HTML("<p>15 µm</p>", US.Annotate), "<p>15 µm (0.59 mil)</p>"; got != want {
		t.Errorf("annotated %q, want %q", got, want)
	}
}

// A rewriting that loses or invents a mark must not move tags.
func TestHTMLKeepsThePageFromARewritingThatLosesMarks(t *testing.T) {
	const page = "<p>one <b>two</b></p>"
	for name, each := range map[string]func(string) string{
		"empty":  func(string) string { return "" },
		"cut":    func(s string) string { return s[:len(s)/2] },
		"twice":  func(s string) string { return s + s },
		"more":   func(s string) string { return s + inline },
		"turned": func(s string) string { return strings.ReplaceAll(s, inline, block) },
		"none":   func(s string) string { return s },
	} {
		if got := HTML(page, each); got != page {
			t.Errorf("%s: %q", name, got)
		}
	}
	if got, want := HTML(page, strings.ToUpper), "<p>ONE <b>TWO</b></p>"; got != want {
		t.Errorf("in capitals %q, want %q", got, want)
	}
	if got, want := HTML(page, func(s string) string { return strings.ReplaceAll(s, "two", "<&>") }), "<p>one <b>&lt;&amp;&gt;</b></p>"; got != want {
		t.Errorf("escaped %q, want %q", got, want)
	}
}

// tags is a second way to the tags of a page, for pages as goldmark writes them.
var tags = regexp.MustCompile(`<code>[^<]*</code>|</?[a-z][^<>]*>`)

func TestHTMLKeepsTags(t *testing.T) {
	parts := []string{"<p>", "</p>", "<em>", "</em>", `<a href="/note/15 µm">`, "</a>", "<code>15 µm</code>", "<br />", "15 µm", "3 °C", " above ",
		"&nbsp;", "&amp;", "&lt;p&gt;", " to ", "5", " mm", "\n"}
	rapid.Check(t, func(t *rapid.T) {
		page := strings.Join(rapid.SliceOf(rapid.SampledFrom(parts)).Draw(t, "parts"), "")
		for _, each := range []func(string) string{US.Text, US.Annotate, Metric.Text} {
			got := HTML(page, each)
			if !slices.Equal(tags.FindAllString(page, -1), tags.FindAllString(got, -1)) {
				t.Fatalf("HTML(%q) = %q has other tags", page, got)
			}
			if again := HTML(got, each); again != got {
				t.Fatalf("HTML(%q) = %q, and again %q", page, got, again)
			}
		}
		if got := HTML(page, Metric.Text); got != page {
			t.Fatalf("HTML(%q) in Metric is %q", page, got)
		}
	})
}
