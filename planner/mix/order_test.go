package mix

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// names are those of parts, in their order.
func names(parts []Part) []string {
	out := make([]string, len(parts))
	for i, p := range parts {
		out[i] = p.Name
	}
	return out
}

// candy is a mix by the trade's rule that a concentrate goes into its binder
// before any thinner: common practice, no published source.
func candy(order ...string) []Part {
	of := map[string]Part{
		"binder":      {Name: "binder", Parts: 100},
		"concentrate": {Name: "concentrate", Of: "binder", Share: 0.30, Into: []string{"binder"}},
		"thinner":     {Name: "thinner", Of: "binder", Share: 0.10, Thins: true},
	}
	parts := make([]Part, len(order))
	for i, name := range order {
		parts[i] = of[name]
	}
	return parts
}

func TestOrder(t *testing.T) {
	part := func(name string, into ...string) Part { return Part{Name: name, Parts: 1, Into: into} }
	thins := func(p Part) Part { p.Thins = true; return p }
	for _, c := range []struct {
		name  string
		parts []Part
		want  []string
	}{
		{"as it is", candy("binder", "concentrate", "thinner"), []string{"binder", "concentrate", "thinner"}},
		{"thinner first", candy("thinner", "binder", "concentrate"), []string{"binder", "concentrate", "thinner"}},
		{"concentrate first", candy("concentrate", "binder", "thinner"), []string{"binder", "concentrate", "thinner"}},
		{"concentrate into thinner", candy("binder", "thinner", "concentrate"), []string{"binder", "concentrate", "thinner"}},
		{"no rule", []Part{part("b"), part("a"), part("c")}, []string{"b", "a", "c"}},
		{"two thinners keep their order", []Part{thins(part("slow")), thins(part("fast")), part("base")}, []string{"base", "slow", "fast"}},
		{"a paste that is wetted with thinner", []Part{part("base"), part("paste", "thinner"), part("tint", "paste"), thins(part("thinner"))}, []string{"base", "thinner", "paste", "tint"}},
		{"none", nil, []string{}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := Order(c.parts)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(c.want, names(got)); diff != "" {
				t.Errorf("Order (-want +got):\n%s", diff)
			}
		})
	}
}

func TestOrderRefuses(t *testing.T) {
	part := func(name string, into ...string) Part { return Part{Name: name, Parts: 1, Into: into} }
	for _, c := range []struct {
		name  string
		parts []Part
		want  string
	}{
		{"a circle", []Part{part("base"), part("a", "c"), part("b", "a"), part("c", "base", "b")},
			"no pouring order keeps the rules: a after c after b after a; expected one of them to go in first"},
		{"into itself", []Part{part("a", "a")},
			"no pouring order keeps the rules: a after a; expected one of them to go in first"},
		{"into what is not there", []Part{part("concentrate", "bnider"), part("binder")},
			`part 1 of the mix: concentrate goes into bnider, which is not in this mix; expected one of: binder; did you mean "binder"?`},
		{"twice", []Part{part("a"), part("a")},
			`part 2 of the mix, "a": poured twice; expected each part once`},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Order(c.parts)
			if err == nil || err.Error() != c.want {
				t.Errorf("Order refuses with\n\t%v\nwant\n\t%s", err, c.want)
			}
		})
	}
}

func TestCheckOrder(t *testing.T) {
	for _, c := range []struct {
		name  string
		parts []Part
		want  []Breach
	}{
		{"as it should be", candy("binder", "concentrate", "thinner"), nil},
		{"raw thinner", candy("thinner", "concentrate", "binder"), []Breach{
			{0, "thinner", "concentrate", "pour 1: thinner only thins, and concentrate is not in the cup yet; pour concentrate first"},
			{0, "thinner", "binder", "pour 1: thinner only thins, and binder is not in the cup yet; pour binder first"},
			{1, "concentrate", "binder", "pour 2: concentrate goes into binder, and none is in the cup yet; pour binder first"},
		}},
		{"no binder at all", []Part{candy("concentrate")[0], {Name: "metallic", Parts: 1}}, []Breach{
			{0, "concentrate", "binder", "pour 1: concentrate goes into binder, which is not in this mix; expected one of: metallic"},
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if diff := cmp.Diff(c.want, CheckOrder(c.parts)); diff != "" {
				t.Errorf("CheckOrder (-want +got):\n%s", diff)
			}
		})
	}
}

// permutations are all orders of 0 to n - 1, the first in dictionary order first.
func permutations(n int) [][]int {
	if n == 0 {
		return [][]int{{}}
	}
	var out [][]int
	for first := range n {
		for _, rest := range permutations(n - 1) {
			p := []int{first}
			for _, r := range rest {
				if r >= first {
					r++
				}
				p = append(p, r)
			}
			out = append(out, p)
		}
	}
	return out
}

// Order against every order there is: it finds one exactly where there is one,
// and of those the first in the dictionary of the given order.
func TestOrderAgainstAllOrders(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := make([]Part, rapid.IntRange(1, 5).Draw(t, "count"))
		letters := []string{"a", "b", "c", "d", "e"}[:len(parts)]
		for i := range parts {
			parts[i] = Part{Name: letters[i], Parts: 1, Thins: rapid.IntRange(0, 3).Draw(t, "thins") == 0,
				Into: rapid.SliceOfNDistinct(rapid.SampledFrom(letters), 0, min(2, len(parts)), rapid.ID[string]).Draw(t, "into")}
		}
		var want []string
		for _, order := range permutations(len(parts)) {
			tried := make([]Part, len(parts))
			for i, at := range order {
				tried[i] = parts[at]
			}
			if len(CheckOrder(tried)) == 0 {
				want = names(tried)
				break
			}
		}
		got, err := Order(parts)
		if (err == nil) != (want != nil) {
			t.Fatalf("Order says %v, and all orders say %v", err, want)
		}
		if err == nil && !slices.Equal(names(got), want) {
			t.Errorf("Order = %v, want %v", names(got), want)
		}
	})
}
