package sheet

import (
	"bufio"
	"fmt"
	"io"

	"coatwright/planner/cost"
	"coatwright/planner/quote"
	q "coatwright/quantity"
)

// Quote writes a quote as plain text, its amounts of paint and time in some units.
func Quote(w io.Writer, heading string, quoted *quote.Quote, u *q.System) error {
	out := bufio.NewWriter(w)
	title(out, heading, "=")
	b := quoted.Likely
	for _, l := range b.Lines {
		fmt.Fprintf(out, "  %-40s %14s  x %-14s %14s\n", l.What, quantity(l, u), l.Price, l.Amount)
	}
	line := func(what, rate string, amount cost.Money) {
		fmt.Fprintf(out, "  %-40s %14s    %-14s %14s\n", what, rate, "", amount)
	}
	fmt.Fprintln(out)
	line("Cost", "", b.Cost)
	line("Overhead", b.Overhead.Rate.String(), b.Overhead.Amount)
	line("Mark-up", b.MarkUp.Rate.String(), b.MarkUp.Amount)
	line("Net", "", b.Net)
	line("Tax", b.Tax.Rate.String(), b.Tax.Amount)
	line("In all", "", b.Total)
	fmt.Fprintf(out, "\n  It may turn out %s to %s.\n", quoted.Low.Total, quoted.High.Total)
	for _, un := range quoted.Unpriced {
		fmt.Fprintf(out, "  ! No price for %s: it is not in the sum. %s\n", un.Title, un.Note)
	}
	return out.Flush()
}

// quantity is how much of a line there is.
func quantity(l cost.Line, u *q.System) string {
	if l.Piece != "" {
		return u.Show(l.Quantity) + " " + l.Piece
	}
	return u.Show(l.Quantity)
}
