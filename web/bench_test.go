package web

import "testing"

func BenchmarkRenderPlan(b *testing.B) {
	page := samplePlanPage()
	for b.Loop() {
		if _, err := Render(page); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRenderForm(b *testing.B) {
	page := sampleForm()
	for b.Loop() {
		if _, err := Render(page); err != nil {
			b.Fatal(err)
		}
	}
}
