package quantity

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Converted by the factors of NIST SP 811, from memory, and rounded as written.
var texts = []struct{ metric, us string }{
	{"The air is 21.5 °C; it wants 15 to 32 °C.", "The air is 70.7 °F; it wants 59 to 89.6 °F."},

	// Figures.
	{"15 µm", "0.59 mil"},
	{"15.0 µm", "0.591 mil"},
	{"5 µm", "0.2 mil"},
	{"9 m²/L", "370 ft²/gal"},
	{"300 mL, then 320 mL", "10.1 fl oz, then 10.8 fl oz"},
	{"0.55 m²", "5.9 ft²"},
	{"0 µm", "0 mil"},
	{"25.4000000000 µm", "1 mil"},
	{"10.16000003 mm and 21.123456789 °C", "0.4 in and 70.022222 °F"},
	{"23 °C", "73.4 °F"},
	{"23.25 °C", "73.85 °F"},

	// Units are seen whole.
	{"12 min/m² at 150 mL/min", "1.1 min/ft² at 5.07 fl oz/min"},
	{"420 g/L, 1.20 kg/L, 10 m2/L, 0.5 m/s", "3.51 lb/gal, 10 lb/gal, 410 ft²/gal, 98 ft/min"},
	{"60 mm²/s and 38 mJ/m² and 50 kJ/mol", "60 mm²/s and 38 mJ/m² and 50 kJ/mol"},
	{"180 L/min of air, 3 /m2 of nibs", "6.36 ft³/min of air, 0.28/ft² of nibs"},
	{"70 μm", "2.8 mil"}, // a Greek mu
	{"300 g/m², 0.46 MPa, 5 kWh, 60°, 5 mm-wide, 2 N·m, 3 m's", "300 g/m², 0.46 MPa, 5 kWh, 60°, 5 mm-wide, 2 N·m, 3 m's"},

	// Gaps.
	{"15µm or 15\u00a0µm or 15\nµm", "0.59 mil or 0.59\u00a0mil or 0.59\nmil"},

	// Ranges, and numbers that share a unit.
	{"15–25 µm, 15-25 µm, 15..25 µm, 15 – 25 µm", "0.59–0.98 mil, 0.59-0.98 mil, 0.59..0.98 mil, 0.59 – 0.98 mil"},
	{"1 to 2 mm", "0.039 to 0.079 in"},
	{"50 or 60 °C", "122 or 140 °F"},
	{"between 68 and 100 °C", "between 154.4 and 212 °F"},
	{"at 23 ± 2 °C and 50 ± 5 µm", "at 73.4 ± 3.6 °F and 2 ± 0.2 mil"},
	{"-20–-10 °C, −20 to -10 °C", "-4–14 °F, -4 to 14 °F"},
	{"-30–-20 °C", "-22 to -4 °F"},
	{"15 °C to 32 °C", "59 °F to 89.6 °F"},
	{"600 mm × 400 mm", "23.6 in × 15.7 in"},

	// Differences.
	{"at least 3 K above the dew point", "at least 5.4 °F above the dew point"},
	{"The metal is 3 °C above the dew point", "The metal is 5.4 °F above the dew point"},
	{"The room is at 21.0 C, the part 9.8 C above the dew point.", "The room is at 69.8 °F, the part 18 °F above the dew point."},
	{"Keep the part 3 K above it.", "Keep the part 5.4 °F above it."},
	{"5 to 10 °C below it", "9 to 18 °F below it"},
	{"halves for about each 10 °C more, and doubles by 10 °C", "halves for about each 18 °F more, and doubles by 18 °F"},
	{"a rise of 15 °C, a 15 °C rise, ±2 °C", "a rise of 27 °F, a 27 °F rise, ±3.6 °F"},
	{"a dew point of 5 °C in a van at 5 °C", "a dew point of 41 °F in a van at 41 °F"},
	{"5 °C, 50 % humidity", "41 °F, 50 % humidity"},
	{"-5 °C", "23 °F"},
	{"off by up to 2 °C, up to 35 °C", "off by up to 3.6 °F, up to 95 °F"},
	{"Air: 8 °C. Rise: 15 °C. The air is 8 °C", "Air: 46.4 °F. Rise: 27 °F. The air is 46.4 °F"},
	{"It is kept at 60 °C over night", "It is kept at 140 °F over night"},

	// Units that could be words.
	{"1 m or 0.4 m or 2 L of 5 g", "3.3 ft or 16 in or 68 fl oz of 0.18 oz"},
	{"Set 23 C, no more; 3 K less.", "Set 73.4 °F, no more; 5.4 °F less."},

	// Both are there.
	{"27 °C (80 °F)", "27 °C (80 °F)"},
	{"3 K (about 5 °F)", "3 K (about 5 °F)"},
	{"25 µm (1 mil) and 25 µm (dry)", "25 µm (1 mil) and 0.98 mil (dry)"},
	{"80 °F (27 °C)", "80 °F (27 °C)"},
	{"25 µm (0.025 mm)", "0.98 mil (0.98 mil)"},

	// Labels before a quantity.
	{"Coat 2: 15 µm. Step 3. 20 mL", "Coat 2: 0.59 mil. Step 3. 0.68 fl oz"},
	{"Coats: 3\n- 15 µm dry", "Coats: 3\n- 0.59 mil dry"},
	{"DFT = 15 µm (starting value)", "DFT = 0.59 mil (starting value)"},
}

func TestTextInUS(t *testing.T) {
	for _, c := range texts {
		if got := US.Text(c.metric); got != c.us {
			t.Errorf("US.Text(%q)\n= %q, want\n  %q", c.metric, got, c.us)
		}
	}
}

// Wrong rewriting is worse than none: none of this is plainly a quantity, or
// plainly of what.
func TestTextLeavesAlone(t *testing.T) {
	for _, text := range []string{
		"", "µm", "12", "20 min, 3 h, 2 d, 90 s", "35 %", "85 GU", "P400 to P500", "#400", "5 to 10 %", "1 : 2", "1:2 L",
		"ISO 8502-4", "ISO 4618 m", "in 2019", "5 gallons", "5 Mm", "5 MM", "5 mL per coat", "10 °C per hour", "10 °C/min",
		"1,500 mL", "1.2.3 mm", "1e3 m", "1/2 L", "3 1/2 L", "10 000 m²", ".5 mm", "2 × 25 µm", "600 × 400 mm", "2 x 3 m",
		"10, 20 and 30 mm", "at 15 and 23 °C", "5, 6 or 7 mm", "5–10–15 mm", "5 to 10 to 15 mm", "10 to 5 mm", "8 × 0.35 / 1.10, or 25 µm",
		"15 °C to 20.", "15 mm × 20", "or 15 µm", "V2.5 mm", "A4 5", "€5 m", "5m", "5 m²m", "5 m_2", "5 m^2", "5 m·s",
		// Words and labels.
		"step 3 in the list", "2 in 3", "coat 3 L", "table 2 C", "2K clear", "2 K clear", "23C", "the 3 C cells", "size 4 L",
		// Temperature or difference?
		"the 3 °C also by a manual", "accurate to 1 °C", "no more than 3 °C", "15 °C of margin", "dried by 60 °C air", "±2 to 3 °C",
		`the 2 in "strict" mode`, "at 23 °C more water leaves", "At 23 °C change the filter", "at 23 °C warmer air", "5 °C", "minus 15 °C", "15 °C over the air", "300 K", "within 2 to 3 °C",
		"-300 °C", "-5 mm", "10000000000000000000 mm", "±2 to 3 mm",
		"4 oz of base",
	} {
		if text == "5 °C" {
			text = "about 5 °C here"
		}
		for _, s := range Systems() {
			if got := s.Text(text); got != text {
				t.Errorf("%s.Text(%q) = %q", s.Name, text, got)
			}
			if got := s.Annotate(text); got != text {
				t.Errorf("%s.Annotate(%q) = %q", s.Name, text, got)
			}
		}
	}
}

func TestTextInMetric(t *testing.T) {
	for _, c := range []struct{ in, metric, bar string }{
		{"2.0 mil of film", "51 µm of film", "51 µm of film"},
		{"2 in wide, 3 in deep; 5 in.", "51 mm wide, 76 mm deep; 130 mm.", "51 mm wide, 76 mm deep; 130 mm."},
		{"30 psi at the gun", "210 kPa at the gun", "2.1 bar at the gun"},
		{"2 bar at the gun", "200 kPa at the gun", "2 bar at the gun"},
		{"200 kPa at the gun", "200 kPa at the gun", "2 bar at the gun"},
		{"Use 2 bar clamps", "Use 2 bar clamps", "Use 2 bar clamps"},
		{"1013 hPa", "1013 hPa", "1013 hPa"},
		{"70 F and 59 to 90 °F", "21.1 °C and 15 to 32.2 °C", "21.1 °C and 15 to 32.2 °C"},
		{"0 to 20 °F", "-17.8 to -6.7 °C", "-17.8 to -6.7 °C"},
		{"5 °F above, 18 °F below", "2.8 °C above, 10 °C below", "2.8 °C above, 10 °C below"},
		{"3.0 fl oz and 1 US gal and 100 cfm", "89 mL and 3800 mL and 170 m³/h", "89 mL and 3800 mL and 170 m³/h"},
		{"400 ft²/gal at 1 mil", "9.82 m²/L at 25 µm", "9.82 m²/L at 25 µm"},
		{"5 lb, 5 oz", "2300 g, 5 oz", "2300 g, 5 oz"},
	} {
		if got := Metric.Text(c.in); got != c.metric {
			t.Errorf("Metric.Text(%q) = %q, want %q", c.in, got, c.metric)
		}
		if got := Bar.Text(c.in); got != c.bar {
			t.Errorf("Bar.Text(%q) = %q, want %q", c.in, got, c.bar)
		}
	}
}

func TestAnnotate(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"Lay 15 µm dry.", "Lay 15 µm (0.59 mil) dry."},
		{"It wants 15 to 32 °C.", "It wants 15 to 32 °C (59 to 89.6 °F)."},
		{"3 °C above the dew point", "3 °C (5.4 °F) above the dew point"},
		{"27 °C (80 °F) in still air", "27 °C (80 °F) in still air"},
		{"27 °C\u00a0(about 80 °F)", "27 °C\u00a0(about 80 °F)"},
		{"40 g (1.4 oz), 40 g", "40 g (1.4 oz), 40 g (1.4 oz)"},
		{"15 µm (starting value)", "15 µm (0.59 mil) (starting value)"},
		{"15 µm (15 min apart) or (3 mil)", "15 µm (0.59 mil) (15 min apart) or (3 mil)"},
		{"2 mil, 20 min, 35 %", "2 mil, 20 min, 35 %"},
	} {
		if got := US.Annotate(c.in); got != c.want {
			t.Errorf("US.Annotate(%q)\n= %q, want\n  %q", c.in, got, c.want)
		}
	}
}

// What is rewritten needs no rewriting, and what is metric is left byte for byte.
func TestTextIsSettled(t *testing.T) {
	for _, c := range texts {
		settled(t, c.metric)
		settled(t, c.us)
		if got := Metric.Text(c.metric); got != c.metric && !strings.Contains(c.metric, "°F") {
			t.Errorf("Metric.Text(%q) = %q", c.metric, got)
		}
	}
}

func settled(t interface{ Errorf(string, ...any) }, text string) {
	for _, s := range Systems() {
		for name, rewrite := range map[string]func(string) string{"Text": s.Text, "Annotate": s.Annotate} {
			once := rewrite(text)
			if twice := rewrite(once); twice != once {
				t.Errorf("%s.%s(%q)\n= %q, and again\n  %q", s.Name, name, text, once, twice)
			}
		}
	}
}

// Sentences of what makes quantities and what does not, in any order.
func TestTextOfAnySentenceIsSettled(t *testing.T) {
	parts := []string{"3", "15", "0.5", "-20", "2.50", " to ", "–", "..", "-", " or ", " and ", "between ", " × ", ", ", ". ", " (", ")", "/",
		" °C", "°F", " µm", " mil", " in", " mm", " m", " K", " F", " bar", " kPa", " psi", " g", " oz", " fl oz", " /m²", " L/min", " m²/L",
		" above", " each ", "at ", " ± ", "±", "\u00a0", " wide", "P", inline, block}
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(parts), 1, 14).Draw(t, "parts"), "")
		settled(t, text)
		foreign(t, text)
	})
}

// foreign fails where Metric rewrites a text without a unit that is foreign to it.
func foreign(t interface{ Errorf(string, ...any) }, text string) {
	got := Metric.Text(text)
	if got == text {
		return
	}
	for name, m := range meanings {
		if !Metric.owns(m.unit) && strings.Contains(strings.ReplaceAll(text, "\u00a0", " "), strings.Fields(name)[0]) {
			return
		}
	}
	t.Errorf("Metric.Text(%q) = %q, with nothing foreign in it", text, got)
}

// A number written in a unit of one system comes out as Parse would have it.
func TestTextConvertsAsParse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(Systems()).Draw(t, "system")
		v := Length(rapid.Float64Range(1e-6, 50).Draw(t, "m"))
		text := s.Text("It is " + Show(US, v) + ".")
		got, err := Parse[Length](strings.TrimSuffix(strings.TrimPrefix(text, "It is "), "."))
		if err != nil || got < v*0.94 || got > v*1.06 { // two figures, of three that were shown
			t.Errorf("%v m in US and then in %s is %q: %v, %v", v, s.Name, text, got, err)
		}
	})
}
