package score

// Style is a family of music. A pattern has one character a step: X accent,
// x hit, o ghost, . rest; in pitched parts also u an octave up, f a fifth up,
// - held. A pattern repeats from the start of the song, so it may be shorter or
// longer than a bar.
type Style struct {
	Name   string
	Weight float64    // share of the training songs; what classes are taught to weighs most
	BPM    [2]float64 // range of tempi
	Meter  int        // counts in a bar
	Steps  int        // steps in a count: 4 sixteenths, 3 triplets
	Sound  Sound
	Swing  [2]float64 // range of the first share of a pair of steps, 0.5 straight
	Kick   []string
	Snare  []string
	Hat    []string
	Perc   []string
	Bass   []string
	Chord  []string
}

// Sound is the family of timbres that a style is played with.
type Sound int

// Families of timbres.
const (
	Electronic Sound = iota
	Acoustic
	Heavy // distorted guitars
	Chip  // square waves and noise
	Soft  // no drums
)

// Patterns shared by several styles.
var (
	four     = []string{"x..."}
	backbeat = []string{"....x...", "....X...", "....x......o.x..", "....x..o.o..x..o", "....x.......x.o."}
	offHat   = []string{"..x.", "..X.", "o.x.", "x.X.", "xoXo", "xxxx", "x.x.", "..xo"}
	eights   = []string{"x.x.", "X.x.", "X.o.", "x...", "xoxo", "X.x.X.x.X.x.X.xx"}
	houseBas = []string{"..x.", "..x-", "..x...x...x...xu", "x.xux.xu", "..xx", "x..x..x.x..x..x.", "x-......x-..x-..",
		"..u.", ".xxx", "x..x..x."}
	popBas = []string{"x.......x.......", "x-----x-x-----x-", "x.x.x.x.x.x.x.x.", "x..x..x.x..x..x.", "x---....x-..x-..",
		"x-..f-..x-..u-.."}
	stabs = []string{"x--------------", "x-..x-..x-..x-..", "..x...x...x...x.", "x..x..x...x..x..", "..x-..x-",
		"x-------x-------", "x--x--x-........", "....x-......x-.."}
	held  = []string{"x-------", "x---------------", "x-------x-------", "x-----x-x-------"}
	latin = []string{"x..x..x...x.x...", "..x.x...x..x..x.", "x.xxx.xx", "xoxxxoxx", "x..x.ox.x..x.ox."}
)

func swing(lo, hi float64) [2]float64 { return [2]float64{lo, hi} }

// Styles is the table of all of them. It is long because it is the data.
var Styles = []Style{
	{"house", 3, swing(118, 130), 4, 4, Electronic, swing(0.5, 0.58), four,
		[]string{"....x...", "....X...", "................", "....x......o.x.."}, offHat, latin, houseBas, stabs},
	{"techno", 2, swing(124, 145), 4, 4, Electronic, swing(0.5, 0.52), four,
		[]string{"....x...", "................", "....x......x....", "..........x....."}, offHat, latin, houseBas, stabs},
	{"trance", 2, swing(128, 145), 4, 4, Electronic, swing(0.5, 0.5), four, []string{"....x...", "................"},
		offHat, nil, []string{"..xx", ".xxx", "..x.", "..u."}, held},
	{"edm", 3, swing(122, 134), 4, 4, Electronic, swing(0.5, 0.53), four, backbeat, offHat, nil, houseBas, stabs},
	{"euro", 3, swing(132, 154), 4, 4, Electronic, swing(0.5, 0.5), four, []string{"....x..."}, offHat, nil,
		[]string{"..x.", "..u.", "x.u.", ".xxu", "x.u.x.u.x.u.x.uu"}, stabs},
	{"hard", 1.2, swing(145, 175), 4, 4, Electronic, swing(0.5, 0.5), four, []string{"................", "....x..."},
		offHat, nil, []string{"..x.", "..x-", ".xxx"}, held},
	{"disco", 2, swing(104, 128), 4, 4, Acoustic, swing(0.5, 0.54), four, []string{"....x...", "....x..o"},
		[]string{"x.X.", "..X.", "xoXo", "xxXx"}, latin, []string{"x.u.", "x.ux", "x..xu.x.", "x.xux.fu"},
		[]string{"..x.", "x..x..x...x..x..", "..xx..x."}},
	{"dance-pop", 3, swing(96, 130), 4, 4, Electronic, swing(0.5, 0.55),
		[]string{"x...", "x.......x.......", "x.....x.x.......", "x..x....x..x....", "x.......x.x....."}, backbeat, offHat,
		latin, popBas, stabs},
	{"slow-strength", 3, swing(82, 114), 4, 4, Electronic, swing(0.5, 0.57),
		[]string{"x...", "x.......x.......", "x......xx.x.....", "x..x....x......."}, backbeat, eights, nil, popBas, stabs},
	{"pop-rock", 2.5, swing(84, 144), 4, 4, Acoustic, swing(0.5, 0.52),
		[]string{"x.......x.......", "x.......x.x.....", "x.....x.x.......", "x..x....x.x.....", "x.....x...x....."},
		backbeat, eights, nil, popBas, held},
	{"rock", 2, swing(108, 168), 4, 4, Heavy, swing(0.5, 0.5), []string{"x.......x.......", "x.......x.x.....",
		"x.x.....x.......", "x.....x.x.....x."}, backbeat, eights, nil, []string{"x.x.", "x.x.x.x.x.x.f.u.", "x-------"},
		[]string{"x---", "x.x.x.x.", "x-----x-x-----x-"}},
	{"hip-hop", 2, swing(76, 106), 4, 4, Electronic, swing(0.5, 0.64),
		[]string{"x.....x...x.....", "x..x......x.....", "x.......x.x.....", "x..x..x...x..x..", "x.x....x..x....."},
		backbeat, []string{"x.x.", "xxxx", "x.xx", "x.xxx.x.", "xoxo"}, nil, popBas, stabs},
	{"half-time", 1.7, swing(112, 152), 4, 4, Electronic, swing(0.5, 0.53),
		[]string{"x...............", "x.....x.........", "x..........x....", "x.........x...x.", "x..x............"},
		[]string{"........x.......", "........X.....o."}, []string{"x.x.", "x.x.x.xx", "xxxx", "x.x.x.x.x.xxx.x."}, nil,
		[]string{"x-------........", "x-----x-----....", "x---------x-----"}, held},
	{"dembow", 2.6, swing(82, 108), 4, 4, Electronic, swing(0.5, 0.52), []string{"x...", "x...x...x...x.x."},
		[]string{"...x..x.", "...x..x....x..x.", "...x..x....x.oxo"},
		[]string{"x.x.", "..x.", "xxxx", "x...", "................"}, latin,
		[]string{"x..x..x.", "x-..x-..", "x..x..u.", "x-----x-"}, []string{"..x.", "x..x..x.", "..x...x.", "x-------"}},
	{"latin", 1.2, swing(92, 132), 4, 4, Acoustic, swing(0.5, 0.53),
		[]string{"x..xx..x", "x...", "x..x....x..x....", "x.....x.x.....x."},
		[]string{"x..x..x...x.x...", "..x.x...x..x..x.", "....x...", "...x..x...x..x.."}, offHat, latin,
		[]string{"x..x..x.", "...x..x....x..x.", "x.....x.x..x..x."},
		[]string{"x.xx.xx.x.xx.xx.", "x..x..x...x.x...", "..x."}},
	{"salsa", 0.8, swing(150, 200), 4, 4, Acoustic, swing(0.5, 0.5),
		[]string{"................", "......x.......x.", "x..............."},
		[]string{"x.....x.....x.......x...x.......", "....x...x.......x.....x.....x..."},
		[]string{"x.x.", "x.xxx.x.", "x..."}, []string{"x.x.x.xx", "....x.x.", "x...x.x."},
		[]string{"......x.....x...", "x.....x.....x..."}, []string{"x.x.x..xx.x..xx.", "..x...x."}},
	{"samba", 0.7, swing(96, 134), 4, 4, Acoustic, swing(0.5, 0.56), []string{"x..xx..x", "..x-"},
		[]string{"x.x.xx.x.x.xx.x.", "xoxxoxxo"}, []string{"xxxx", "xoxo"}, latin, []string{"x..x"},
		[]string{"x.x..x.xx.x..x.x"}},
	{"soca", 0.9, swing(112, 162), 4, 4, Electronic, swing(0.5, 0.5), four, []string{"...x..x.", "...x..x...xx..x."},
		offHat, latin, []string{"x..x..x.", "x.x."}, []string{"..x.", "x..x..x."}},
	{"afro", 1, swing(98, 124), 4, 4, Electronic, swing(0.5, 0.57), []string{"x...", "x..x..x.", "x.....x.x.x....."},
		[]string{"...x..x...x..x..", "......x.......x.", "....x..x..x....."}, []string{"..x.", "xoxo", "x.xx"}, latin,
		[]string{"x..x..x...x.....", "x.....x.x-......"}, stabs},
	{"funk", 1.8, swing(92, 122), 4, 4, Acoustic, swing(0.5, 0.6),
		[]string{"x.x.......x..x..", "x..x..x...x.....", "x.......x.x..x..", "x..x.x....x..x.."},
		[]string{"....X..o.o..X..o", "....x..o.o.oX...", "....x.o....ox..o"}, []string{"xxxx", "xoxo", "x.x.", "X.oo"}, nil,
		[]string{"x..x..u.x.x..xu.", "x.ox...xx..x.u..", "xx..x.x...x.u.f."},
		[]string{"..x...x.x..x..x.", "...x..x...xx....", "xoxxoxxo"}},
	{"break", 1.2, swing(118, 145), 4, 4, Electronic, swing(0.5, 0.57),
		[]string{"x.x.......xx....", "x.....x...x.....", "x..x......x.....", "x.x...x...x..x.."},
		[]string{"....x..o.o..x...", "....x..o.o..x..o", "....x.......x..x"}, []string{"x.x.", "xxxx", "xoxo"}, nil, popBas,
		stabs},
	{"drum&bass", 2.6, swing(158, 182), 4, 4, Electronic, swing(0.5, 0.55),
		[]string{"x.........x.....", "x.x.......x.....", "x.........xx....", "x..x......x.....", "x.......x......."},
		[]string{"....x.......x...", "....x..o.o..x...", "....X..o....X..o"},
		[]string{"x.x.", "xxxx", "x.xx", "xoxo", "..x."}, nil,
		[]string{"x-------........", "x-----x-..x-....", "x.......x-----..", "x-..........x-.."}, held},
	{"punk", 1, swing(155, 208), 4, 4, Heavy, swing(0.5, 0.5), []string{"x...x...", "x.......x.x.....", "x..xx..x"},
		[]string{"....x..."}, []string{"x.x.", "x..."}, nil, []string{"x.x."}, []string{"x.x.", "x-------"}},
	{"metal", 2.6, swing(140, 202), 4, 4, Heavy, swing(0.5, 0.5),
		[]string{"xxxx", "x.x.", "x.xxx.xx", "x..xx..x", "x.......x.......", "xxx.xxx.", "x.x.x.xxx.x.xxxx",
			"x..x..x..x..x.x."}, []string{"....X...", "....x...", "........x.......", "..x.", "....X.......X.x."},
		[]string{"x...", "x.x.", "X..."}, nil, []string{"xxxx", "x.xxx.xx", "x.x.", "x..xx..x"},
		[]string{"xxxx", "x.xxx.xx", "x.x.", "x..xx..x", "x---------------", "x..x..x..x..x-x-"}},
	{"reggae", 1, swing(68, 98), 4, 4, Acoustic, swing(0.5, 0.6),
		[]string{"........x.......", "x.......x.......", "x...", "....x..."}, []string{"........x.......", "....x..."},
		[]string{"x.x.", "xoxo", "..x."}, nil, []string{"x-..x.x.........", "..x.x-..x-..u-..", "x...x.u...x....."},
		[]string{"..x.", "....x...", "..xx"}},
	{"ska", 0.7, swing(124, 172), 4, 4, Acoustic, swing(0.5, 0.56), []string{"x...", "x.......x......."},
		[]string{"....x..."}, []string{"x.x.", "..x."}, nil, []string{"x...f...", "x.f.u.f."}, []string{"..x."}},
	{"train", 0.8, swing(84, 130), 4, 4, Acoustic, swing(0.5, 0.6), []string{"x.......", "x...x..."},
		[]string{"oxXx", "ooXo", "..x."}, []string{"................", "..x."}, nil, []string{"x.......f.......", "x...f..."},
		[]string{"..x.", "..xx"}},
	{"march", 0.7, swing(96, 138), 2, 4, Acoustic, swing(0.5, 0.5), []string{"x...", "x......."},
		[]string{"..x.", "....x...", "x.xxx.x."}, []string{"................", "..x."}, nil, []string{"x...f...", "x......."},
		[]string{"..x.", "....x..."}},
	{"chip", 2.4, swing(104, 182), 4, 4, Chip, swing(0.5, 0.52),
		[]string{"x...", "x.......x.......", "x.....x.x.......", "x..x..x."}, backbeat,
		[]string{"x.x.", "..x.", "xxxx", "x..."}, nil, []string{"x.u.", "x.x.", "xxxx", "x.ux.u.x", "x.......f......."},
		[]string{"xxxx", "x.x.", "x..x..x.", "x---"}},
	{"ballad", 1.3, swing(56, 92), 4, 4, Acoustic, swing(0.5, 0.55),
		[]string{"x.......x.......", "x......xx.......", "x.......x.x....."},
		[]string{"....x...", "........................"}, eights, nil, []string{"x-------x-------", "x------fx-------"},
		[]string{"x---x---x---x---", "x.x.x.x.", "x---------------"}},
	{"shuffle", 2, swing(76, 172), 4, 3, Acoustic, swing(0.5, 0.5),
		[]string{"x.....x.....", "x..", "x....xx.....", "x.....x..x.."}, []string{"...x..", "...x....oo.x", "...X.o"},
		[]string{"x.x", "xxx", "x..", "X.x"}, nil, []string{"x..", "x.x", "x..f..u..f..", "x.xf.f"},
		[]string{"..x", "x.x", "x-----------", "...x..", "..xx.."}},
	{"swing", 1.1, swing(104, 216), 4, 3, Acoustic, swing(0.5, 0.5),
		[]string{"............", "o..", "x...........", "........o..."},
		[]string{"............", "...o..", "..o.....o...", "...x.."}, []string{"x..x.xx..x.x", "...x..", "x.."}, nil,
		[]string{"x..", "x..f..", "x..f..u..f.."}, []string{"..x......x..", "x...........", ".....x......", "x..x..x..x.."}},
	{"12/8", 1.8, swing(50, 96), 4, 3, Acoustic, swing(0.5, 0.5),
		[]string{"x.....x.....", "x....xx.....", "x.....x..x..", "x.....x...x."},
		[]string{"...x..", "...x.....x.o", "......x....."}, []string{"xxx", "X.x", "x.."}, nil,
		[]string{"x-----------", "x-----x--f--", "x.xx.x", "x-----x-----"},
		[]string{"xxx", "x--x--x--x--", "x-----------", "x-----"}},
	{"12/8-dance", 1.2, swing(84, 140), 4, 3, Electronic, swing(0.5, 0.5), []string{"x..", "x.....x.....", "x....xx....."},
		[]string{"...x..", "...X..", "...x....oo.x"}, []string{"x.x", "xxx", "..x", ".xx"}, nil,
		[]string{"x.x", "..x", ".xx", "x--"}, []string{"x.x", "..x", "x-----------"}},
	{"6/8", 1.5, swing(46, 112), 2, 3, Acoustic, swing(0.5, 0.5), []string{"x.....", "x....x", "x..o.."},
		[]string{"...x..", "...x.o", "......"}, []string{"xxx", "x.x", "x.."}, nil, []string{"x--...", "x-----", "x..f.."},
		[]string{"xxx", "x-----", "x..x..", ".xx.xx"}},
	{"waltz", 1.8, swing(84, 192), 3, 4, Acoustic, swing(0.5, 0.5),
		[]string{"x...........", "x.........x.", "x.......x..."}, []string{"....x...x...", "............", "........x..."},
		[]string{"x...", "x.x.", "....x...x...", "............"}, nil,
		[]string{"x...........", "x-----------", "x.......f...", "x...f...u..."},
		[]string{"....x...x...", "x...........", "x...x...x..."}},
	{"waltz-rock", 1.3, swing(78, 140), 3, 4, Acoustic, swing(0.5, 0.6),
		[]string{"x...........", "x.....x.....", "x.......x...", "x.x........."},
		[]string{"........x...", "....x...x...", "....x......."}, eights, nil,
		[]string{"x-----------", "x.x.x.x.x.x.", "x-..x-..f-.."}, []string{"x-----------", "x.x.x.x.x.x.", "....x...x..."}},
	{"waltz-swing", 0.7, swing(84, 176), 3, 3, Acoustic, swing(0.5, 0.5), []string{"x........", "........."},
		[]string{"........o", "...o..x..", "........."}, []string{"x..x.xx..", "x..", "...x..x.."}, nil,
		[]string{"x........", "x..f..u.."}, []string{"..x.....x", "x........", "...x..x.."}},
	{"arps", 1.2, swing(70, 150), 4, 4, Soft, swing(0.5, 0.54), nil, nil, nil, nil,
		[]string{"x---------------", "x-------x-------", "................"}, []string{"x-------", "x---------------"}},
	{"piano", 1.2, swing(56, 140), 4, 4, Soft, swing(0.5, 0.58), nil, nil, nil, nil,
		[]string{"x...", "x.......x.......", "x.......f......."},
		[]string{"....x...", "x.x.", "..x.", "x...x...", "x..x..x."}},
	{"piano-waltz", 0.6, swing(70, 180), 3, 4, Soft, swing(0.5, 0.5), nil, nil, nil, nil, []string{"x..........."},
		[]string{"....x...x...", "x...........", "x.x.x.x.x.x."}},
	{"strings", 0.6, swing(60, 140), 4, 4, Soft, swing(0.5, 0.5), nil, nil, nil, nil, []string{"x...", "x.x.", "x-------"},
		[]string{"x...", "x.x.", "x-------", "x-----x-x-------"}},
}
