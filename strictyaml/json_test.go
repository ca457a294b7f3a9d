package strictyaml

import "testing"

// What is written as JSON is read again as it was.
func TestJSON(t *testing.T) {
	for _, c := range []struct{ name, doc, want string }{
		{"order", "b: 1\na: two\n", `{"b":1,"a":"two"}`},
		{"nested", "p:\n  - {n: x, c: [1, \"2\"]}\n  - n: y\n", `{"p":[{"n":"x","c":[1,"2"]},{"n":"y"}]}`},
		{"numbers as JSON has them", "a: 3\nb: 1.5\nc: -2\n", `{"a":3,"b":1.5,"c":-2}`},
		{"numbers that JSON has not", "a: 012\nb: 0x1F\nc: 1_000\nd: .inf\ne: .nan\n", `{"a":"012","b":"0x1F","c":"1_000","d":".inf","e":".nan"}`},
		{"truth", "a: true\nb: yes\nc: True\n", `{"a":true,"b":"yes","c":"True"}`},
		{"dates", "a: 2026-12-01T08:00\n", `{"a":"2026-12-01T08:00"}`},
		{"letters that do not print", `a: "x\x01\e\U000E0067"`, "{\"a\":\"x\\u0001\\u001b\U000E0067\"}"},
		{"block", "a: |\n  one\n  two\n", `{"a":"one\ntwo"}`},
		{"JSON", `{"a":"b\"c","d":[]}`, `{"a":"b\"c","d":[]}`},
	} {
		got, err := JSON([]byte(c.doc))
		if err != nil || string(got) != c.want {
			t.Errorf("%s: %s, %v, want %s", c.name, got, err, c.want)
		}
		if again, err := JSON(got); err != nil || string(again) != c.want {
			t.Errorf("%s: read again it is %s, %v", c.name, again, err)
		}
	}
	for _, odd := range []string{"", "a: &x b\n", "a: [", "a:\n"} {
		if got, err := JSON([]byte(odd)); err == nil {
			t.Errorf("%q comes out as %s", odd, got)
		}
	}
}
