package grit

import q "coatwright/quantity"

// tables holds each system's grades, the coarsest first, with sizes in um.
//
// The published P sizes and the published CAMI sizes are those of
// sizes.com/tools/sandpaper.htm. The second-hand P sizes stand alike in a blog's
// table (stusshed.wordpress.com/2008/03/24) and in memory. The second-hand CAMI
// sizes are those of a table that agrees with the published ones
// (props.eric-hart.com/tag/sandpaper); the two finest are the blog's.
var tables = map[System][]Grade{
	P: table(P, []row{
		{12, 1815, Published}, {16, 1324, Published}, {20, 1000, Published}, {24, 764, Published},
		{30, 642, Published}, {36, 538, Published}, {40, 425, Published}, {50, 336, Published},
		{60, 269, Published}, {80, 201, Published}, {100, 162, Published}, {120, 125, Published},
		{150, 100, SecondHand}, {180, 82, SecondHand}, {220, 68, SecondHand},
		{240, 58.5, SecondHand}, {280, 52.2, SecondHand}, {320, 46.2, SecondHand}, {360, 40.5, SecondHand},
		{400, 35.0, SecondHand}, {500, 30.2, SecondHand}, {600, 25.8, SecondHand}, {800, 21.8, SecondHand},
		{1000, 18.3, SecondHand}, {1200, 15.3, SecondHand}, {1500, 12.6, SecondHand}, {2000, 10.3, SecondHand},
		{2500, 8.4, SecondHand},
		{3000, 6.5, Memory}, // remembered as 6 to 7; ISO 6344-3:2021 goes on to P5000
	}),
	CAMI: table(CAMI, []row{
		{16, 1320, Published}, {20, 905, Published}, {24, 715, Published}, {30, 638, Published},
		{36, 535, Published}, {40, 428, Published}, {50, 351, Published}, {60, 268, Published},
		{80, 192, Published}, {100, 141, Published},
		{120, 116, SecondHand}, {150, 93, SecondHand}, {180, 78, SecondHand}, {220, 66, SecondHand}, {240, 53.5, SecondHand},
		{280, 44, SecondHand}, {320, 36, SecondHand}, {360, 28.8, SecondHand}, {400, 23, SecondHand}, {500, 20, SecondHand},
		{600, 16, SecondHand}, {800, 12.6, SecondHand}, {1000, 10.3, SecondHand},
	}),
}

type row struct {
	number   q.Grit
	um       float64
	standing Standing
}

func table(s System, rows []row) []Grade {
	grades := make([]Grade, len(rows))
	for i, r := range rows {
		grades[i] = Grade{s, r.number, q.Length(r.um / 1e6), r.standing}
	}
	return grades
}
