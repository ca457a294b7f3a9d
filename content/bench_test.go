package content

import (
	"io/fs"
	"testing"
)

// BenchmarkLoad is most of the time that the command takes to start.
func BenchmarkLoad(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		load(b, BuiltIn(), nil)
	}
}

func BenchmarkRender(b *testing.B) {
	src, err := fs.ReadFile(BuiltIn(), "material/waterborne-ground.md")
	if err != nil {
		b.Fatal(err)
	}
	_, body, _, _ := splitFront(src)
	b.SetBytes(int64(len(body)))
	for b.Loop() {
		if _, err := render("material", body); err != nil {
			b.Fatal(err)
		}
	}
}
