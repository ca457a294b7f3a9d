package strictyaml

import "testing"

// FuzzRead checks that any document is read or refused, and that a problem
// stands somewhere in the file. Input is bounded as a note's front matter is,
// generously.
func FuzzRead(f *testing.F) {
	for _, c := range problemCases {
		f.Add([]byte(c.doc))
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		if len(src) > 64<<10 {
			t.Skip()
		}
		m, doc := Read("f", src, 0)
		readSheet(m)
		for _, p := range doc.Problems() {
			if p.Line < 1 || p.Column < 1 || p.Found == "" || p.Expected == "" {
				t.Errorf("problem without a place or a reason: %#v", p)
			}
		}
		if m == nil && doc.Problems() == nil {
			t.Error("nothing is read and nothing is said")
		}
	})
}
