package route

import mathbits "math/bits"

// bits is a set of facts.
type bits [4]uint64

const maxFacts = 256

func (b *bits) set(i int)      { b[i/64] |= 1 << (i % 64) }
func (b bits) has(i int) bool  { return b[i/64]&(1<<(i%64)) != 0 }
func (b bits) and(c bits) bits { return bits{b[0] & c[0], b[1] & c[1], b[2] & c[2], b[3] & c[3]} }
func (b bits) or(c bits) bits  { return bits{b[0] | c[0], b[1] | c[1], b[2] | c[2], b[3] | c[3]} }
func (b bits) without(c bits) bits {
	return bits{b[0] &^ c[0], b[1] &^ c[1], b[2] &^ c[2], b[3] &^ c[3]}
}
func (b bits) contains(c bits) bool { return c.without(b) == bits{} }
func (b bits) meets(c bits) bool    { return b.and(c) != bits{} }

// count is how many facts b has.
func (b bits) count() int {
	n := 0
	for _, word := range b {
		n += mathbits.OnesCount64(word)
	}
	return n
}

// bit is the set of one fact.
func bit(i int) bits {
	var b bits
	b.set(i)
	return b
}

// traits is a set of traits, by their place in the vocabulary.
type traits uint64
