package quantity

import (
	"strings"
	"testing"
)

// note is 10 kB of a note as goldmark writes it, with twice the quantities that
// our notes have.
var note = strings.Repeat(`<p>It dried by taking up oxygen, from the top down. Strong thinner gets back into it and swells it; see
<a href="/note/background/what-lifts-old-paint">what lifts old paint</a>. The heat limit of 80 °C is a starting value. Heat softens old
layers, and some give off poison. Stir from the bottom before every cup, for the flatting agent settles.</p>
<p>Stand for 15 min and strain through 190 µm. Lay two coats of about 15 µm dry each, and let each one go evenly dull.</p>
<ul><li>At 23 °C and 50 % the next film goes on after 30 min; the part must be <strong>3 °C</strong> above the dew point.</li>
<li>Hold the gun square to the face, half over the last pass, and walk at your own speed. Have the next cup mixed before you begin.</li></ul>
<table><tr><td>15 °C</td><td>4.7 °C</td><td>P400 to P500</td><td>0.55 m²</td></tr></table>
`, 12)

var plainNote = tags.ReplaceAllString(note, " ")

func BenchmarkText(b *testing.B) {
	b.SetBytes(int64(len(plainNote)))
	for b.Loop() {
		US.Text(plainNote)
	}
}

func BenchmarkAnnotate(b *testing.B) {
	b.SetBytes(int64(len(plainNote)))
	for b.Loop() {
		US.Annotate(plainNote)
	}
}

func BenchmarkTextThatStays(b *testing.B) {
	b.SetBytes(int64(len(plainNote)))
	for b.Loop() {
		Metric.Text(plainNote)
	}
}

func BenchmarkHTML(b *testing.B) {
	b.SetBytes(int64(len(note)))
	for b.Loop() {
		HTML(note, US.Annotate)
	}
}

func BenchmarkShow(b *testing.B) {
	v := ValueOf(Length(15e-6))
	for b.Loop() {
		US.Show(v)
	}
}

func BenchmarkParse(b *testing.B) {
	for b.Loop() {
		if _, err := Parse[Length]("15 µm"); err != nil {
			b.Fatal(err)
		}
	}
}
