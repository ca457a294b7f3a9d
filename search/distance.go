package search

// measure counts the slips between one word and many others.
type measure struct {
	word              []rune
	before, last, row []int
}

func newMeasure(word string) *measure {
	return &measure{word: []rune(word)}
}

// distances returns the slips between m's word and other, and the fewest
// between m's word and any beginning of other: letters left out, put in,
// replaced, or swapped with their neighbour. It stops counting beyond most and
// then returns most+1.
func (m *measure) distances(other string, most int) (full, start int) {
	n := len(m.word)
	if len(other) < n-most {
		return most + 1, most + 1
	}
	m.before, m.last, m.row = resize(m.before, n), resize(m.last, n), resize(m.row, n)
	for i := range m.last {
		m.last[i] = i
	}
	start = n
	previous, j := rune(0), 0
	for _, r := range other {
		j++
		lowest := m.step(r, previous, j)
		m.before, m.last, m.row = m.last, m.row, m.before
		start = min(start, m.last[n])
		if lowest > most {
			return most + 1, min(start, most+1)
		}
		previous = r
	}
	return min(m.last[n], most+1), min(start, most+1)
}

// step fills the row for the j-th letter, r, of the other word and returns the
// lowest number in it.
func (m *measure) step(r, previous rune, j int) int {
	m.row[0] = j
	lowest := j
	for i := 1; i <= len(m.word); i++ {
		change := 1
		if m.word[i-1] == r {
			change = 0
		}
		m.row[i] = min(m.last[i]+1, m.row[i-1]+1, m.last[i-1]+change)
		if i > 1 && j > 1 && m.word[i-1] == previous && m.word[i-2] == r {
			m.row[i] = min(m.row[i], m.before[i-2]+1)
		}
		lowest = min(lowest, m.row[i])
	}
	return lowest
}

func resize(row []int, n int) []int {
	if cap(row) < n+1 {
		return make([]int, n+1)
	}
	return row[:n+1]
}
