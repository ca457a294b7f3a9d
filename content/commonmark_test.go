package content

import (
	"bytes"
	"encoding/json"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// Examples of CommonMark 0.31.2 (see testdata/commonmark/README.md) that are
// about raw HTML, which notes do not have: whole sections, and examples of
// other sections by number. They are checked to come out harmless instead.
var (
	rawSections = []string{"HTML blocks", "Raw HTML"}
	rawExamples = []int{
		21, 31, // a backslash, an entity in a tag
		201,      // an angle bracket after a link definition
		308, 309, // a comment between lists
		344,           // a tag that starts before a code span
		475, 476, 477, // a tag that starts before emphasis ends
		491, 494, 524, 536, // a tag in a link
		642, 643, // a line break in a tag
	}
)

// headingID is what the notes' headings have and CommonMark's have not: an
// anchor to link to.
var headingID = regexp.MustCompile(`(<h[1-6]) id="[^"]*">`)

// TestCommonMark runs the published examples through the notes' markdown. Two
// differences of form are taken out: anchors of headings, and `<br>` for `<br />`.
func TestCommonMark(t *testing.T) {
	src, err := os.ReadFile("../testdata/commonmark/spec-0.31.2.json")
	if err != nil {
		t.Fatal(err)
	}
	var examples []struct {
		Example                 int
		Section, Markdown, HTML string
	}
	if err := json.Unmarshal(src, &examples); err != nil {
		t.Fatal(err)
	}
	same := 0
	for _, e := range examples {
		var out bytes.Buffer
		if err := markdown.Convert([]byte(e.Markdown), &out); err != nil {
			t.Fatal(err)
		}
		if slices.Contains(rawSections, e.Section) || slices.Contains(rawExamples, e.Example) {
			checkHarmless(t, out.String())
			continue
		}
		got := headingID.ReplaceAllString(out.String(), "$1>")
		if want := strings.ReplaceAll(e.HTML, " />", ">"); got != want {
			t.Errorf("example %d (%s): %q\ngot  %q\nwant %q", e.Example, e.Section, e.Markdown, got, want)
		}
		same++
	}
	if same != 573 {
		t.Errorf("%d examples are the same as published, want 573 of 652", same)
	}
}
