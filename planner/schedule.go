package planner

import (
	"errors"
	"slices"
	"time"

	"coatwright/planner/calendar"
	dry "coatwright/planner/drying"
	"coatwright/planner/library"
	"coatwright/planner/route"
	q "coatwright/quantity"
)

// wait is a lag between two items, with the words for it.
type wait struct {
	after    int
	min, max q.Time              // max 0: no limit
	spread   q.Range[q.Fraction] // what min may turn out to be, in shares of it
	until    string
	by       string
	how      string
}

// likely, low and high are what a wait may turn out to be.
func (w wait) likely() q.Time { return w.min }

func (w wait) low() q.Time { return w.times(w.spread.Low) }

func (w wait) high() q.Time { return w.times(w.spread.High) }

func (w wait) times(share q.Fraction) q.Time {
	if share == 0 {
		return w.min
	}
	return w.min * q.Time(share)
}

// closes is the longest that w may take, in whole minutes: a plan runs by the
// clock on the wall, and a window is not stretched by half a minute.
func (w wait) closes() time.Duration {
	if w.max <= 0 {
		return 0
	}
	return max(w.max.Duration().Truncate(time.Minute), time.Minute)
}

// allWaits is, for each item, what it waits for.
func (b *builder) allWaits() [][]wait {
	waits := make([][]wait, len(b.items))
	add := func(to int, w wait) {
		if w.after == to {
			return
		}
		for i, old := range waits[to] {
			if old.after == w.after && old.until == w.until {
				if w.min > old.min {
					waits[to][i].min, waits[to][i].spread = w.min, w.spread
				}
				if old.max == 0 || w.max > 0 && w.max < old.max {
					waits[to][i].max = w.max
				}
				return
			}
		}
		waits[to] = append(waits[to], w)
	}
	b.partOrder(add)
	b.links(func(from, to int, l route.Link) { b.linkWait(from, to, l, add) })
	b.bench(add)
	return waits
}

// partOrder keeps the work on each part in the order of its route.
func (b *builder) partOrder(add func(int, wait)) {
	for g, gr := range b.groups {
		last := -1
		for a := range gr.route.Actions {
			i := b.at[g][a]
			if b.items[i].bench() {
				continue
			}
			if last >= 0 {
				w := wait{after: last}
				if s := b.items[last].step; s.Stands.In > 0 {
					w.min, w.until, w.by = b.d.Stands(s.Stands), standsUntil(s.Stands), s.Stands.By
					w.how = b.d.rates.How(s.Stands.In, dry.Pace(s.Stands.By), 1, 1)
					w.spread = b.lib.Words.StandingOf(b.lib.Words.StepTimes).Time
				}
				add(i, w)
			}
			last = i
		}
	}
}

// standsUntil is what a part is after it has stood: set when something in it
// hardens, dry when something leaves it.
func standsUntil(d library.Drying) string {
	if dry.Pace(d.By) == dry.Cure {
		return "set"
	}
	return "dry"
}

// linkWait turns a link into a lag: a dryness state to wait for, a gift that
// does not last, a mix that must stand and will not keep.
func (b *builder) linkWait(from, to int, l route.Link, add func(int, wait)) {
	giver := b.items[from]
	switch {
	case l.Lag:
		w := wait{after: from, min: l.Min, max: l.Max, until: l.Fact, by: l.By}
		if !giver.film.IsZero() {
			w.how = b.d.How(giver.film.Coating, l.Fact)
			w.spread = b.lib.Words.StandingOf(giver.film.Standing).Time
		}
		add(to, w)
	case giver.step.Mixes && giver.bench():
		w := wait{after: from, min: giver.lead.Stand, max: b.keeps(giver, b.items[to], l.Fact), until: "stood and strained", by: "standing"}
		if w.min == 0 {
			w.until, w.by = "mixed", "its pot life"
		}
		add(to, w)
	case giver.step.Lasts[l.Fact] > 0:
		add(to, wait{after: from, max: giver.step.Lasts[l.Fact], until: l.Fact, by: "it does not last"})
	case giver.step.TapeHolds(b.lib.Tools) > 0:
		add(to, wait{after: from, max: giver.step.TapeHolds(b.lib.Tools), until: l.Fact, by: "the tape's own limit"})
	default:
		add(to, wait{after: from})
	}
}

// keeps is how long after mixing the film may still be started: as long as the
// step says that a mix is left in its cup, and no longer than its pot life in
// this air less the spraying. A film that takes longer than a pot life is mixed
// in batches, and then only the first must be started in time.
func (b *builder) keeps(mix, film *item, fact string) q.Time {
	keeps := dry.PotLife(mix.lead.PotLife, b.job.Room.Temperature)
	if !film.film.IsZero() {
		hands, flash := b.hands(film)
		if left := keeps - hands - flash; left > mix.lead.Stand {
			keeps = left
		}
	}
	if left := mix.step.Lasts[fact]; left > 0 {
		keeps = min(keeps, left)
	}
	return keeps
}

// bench keeps the one gun's work in order: a film, its flush, the next film;
// and a mix is made after the film before it.
func (b *builder) bench(add func(int, wait)) {
	film := -1
	var flushes []int
	for i, it := range b.items {
		switch {
		case !it.film.IsZero():
			for _, f := range flushes {
				add(i, wait{after: f})
			}
			film, flushes = i, nil
		case it.step.Cleans && film >= 0:
			add(i, wait{after: film, max: it.step.Within, until: "flushed", by: "paint dries in the passages"})
			flushes = append(flushes, i)
		case it.bench() && film >= 0:
			add(i, wait{after: film})
			if !it.step.Mixes {
				for _, f := range flushes {
					add(i, wait{after: f})
				}
			}
		}
	}
}

// schedule places every item in working hours, with waits as long as takes says.
// Where a window breaks because other work was put into it, that work goes
// first, and all is placed again.
func (b *builder) schedule(takes func(wait) q.Time) ([]calendar.Slot, error) {
	list := make([]int, len(b.items))
	for i := range list {
		list[i] = i
	}
	tried := map[[2]int]bool{}
	for {
		slots, err := b.place(list, takes)
		var w *calendar.WindowError
		if !errors.As(err, &w) {
			return slots, err
		}
		window := [2]int{b.index(w.After), b.index(w.ID)}
		if tried[window] {
			return nil, err
		}
		tried[window] = true
		list = b.clear(list, window)
	}
}

// clear moves what stands in list between the two items of window, and does not
// wait for the first of them, before it.
func (b *builder) clear(list []int, window [2]int) []int {
	from, to := slices.Index(list, window[0]), slices.Index(list, window[1])
	waiting := map[int]bool{window[0]: true}
	var before, after []int
	for _, i := range list[from:to] {
		if slices.ContainsFunc(b.waits[i], func(w wait) bool { return waiting[w.after] }) {
			waiting[i] = true
		}
		if waiting[i] {
			after = append(after, i)
		} else {
			before = append(before, i)
		}
	}
	return slices.Concat(list[:from], before, after, list[to:])
}

// place gives the items to the calendar in the order of list.
func (b *builder) place(list []int, takes func(wait) q.Time) ([]calendar.Slot, error) {
	var acts []calendar.Activity
	first, last := make([]int, len(b.items)), make([]int, len(b.items))
	for _, i := range list {
		first[i] = len(acts)
		for n, work := range b.pieces(b.items[i]) {
			act := calendar.Activity{ID: b.ids[i], Work: work, Float: b.items[i].step.Mixes}
			if n > 0 {
				act.Lags = []calendar.Lag{{After: len(acts) - 1}}
			} else {
				for _, w := range b.waits[i] {
					act.Lags = append(act.Lags, calendar.Lag{After: last[w.after], Min: toMinutes(takes(w)), Max: w.closes()})
				}
			}
			acts = append(acts, act)
		}
		last[i] = len(acts) - 1
	}
	placed, err := calendar.Schedule(acts, b.job.Shop, b.job.Start)
	if err != nil {
		return nil, err
	}
	slots := make([]calendar.Slot, len(b.items))
	for i := range b.items {
		slots[i] = calendar.Slot{Start: placed[first[i]].Start, End: placed[last[i]].End}
	}
	return slots, nil
}

// maxSpans is how many working days one step may be broken over. What takes
// longer is refused: it is a slip of the pen, or another trade.
const maxSpans = 60

// pieces is an item's work, in spans that fit a working day.
func (b *builder) pieces(it *item) []time.Duration {
	hands, flash := b.hands(it)
	return Spans(toMinutes(hands+flash), b.job.Shop.Hours, !it.film.IsZero())
}

// Spans breaks work where the working hours do: rubbing down can stop at five
// o'clock and go on next morning, laying a film cannot.
func Spans(work time.Duration, hours calendar.Hours, film bool) []time.Duration {
	longest := hours.Longest()
	if film || longest <= 0 || work <= longest || work/longest > maxSpans {
		return []time.Duration{work}
	}
	var out []time.Duration
	for work > longest {
		out = append(out, longest)
		work -= longest
	}
	return append(out, work)
}

// order is the items by when they start; items that start together keep their
// order.
func order(slots []calendar.Slot) []int {
	out := make([]int, len(slots))
	for i := range out {
		out[i] = i
	}
	slices.SortStableFunc(out, func(a, b int) int { return slots[a].Start.Compare(slots[b].Start) })
	return out
}
