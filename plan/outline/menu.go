package outline

import "onphrase/plan"

// dish is something to do for a number of whole phrases.
type dish struct {
	phrases int
	yaml    string // the item without its dash; %s is where another start than usual goes
}

// menu is what a kind of part is filled with: what it begins and ends with,
// what comes in turn, and what fills a phrase that is left.
type menu struct {
	first, last []dish
	turn        []dish
	filler      dish
	remark      string
}

// menus are put together by us. Every set and interval fills whole phrases of
// 32 counts; every block ends on the other foot, so that its other side needs
// no words.
var menus = map[plan.PartKind]menu{
	plan.WarmUp: {
		first: []dish{
			{1, "{block: Easy start, moves: [{move: march, counts: 16}, {move: step touch, counts: 16}]%s}"},
		},
		turn: []dish{
			{2, "{block: A, sides: both, moves: [{move: repeater knee, counts: 8}, {move: step touch, counts: 8}, {move: grapevine, counts: 8}, {move: heel curl, counts: 8}]%s}"},
			{2, "{block: B, sides: both, moves: [{move: box step, counts: 8}, {move: double heel curl, counts: 8}, {move: v-step, counts: 8}, {move: march, counts: 4}, {move: chasse, counts: 4}]%s}"},
			{2, "{block: C, sides: both, moves: [{move: step-out squat, counts: 16}, {move: knee lift, counts: 8}, {move: repeater knee, counts: 8}]%s}"},
		},
		last: []dish{
			{1, "{set: squat, reps: 8 x 2-2, cue: chest up%s}"},
			{1, "{set: good-morning, reps: 4 x 4-4, cue: push the hips back%s}"},
			{1, "{set: reverse lunge, reps: 8 x 2-2, cue: right and left in turn%s}"},
		},
		filler: dish{1, "{block: March, moves: [{move: march, counts: 32}]%s}"},
		remark: "Small and low first; the patterns of the class come last, without weights. Put your own blocks here.",
	},
	plan.Strength: {
		first: []dish{{1, "{pause: pick up your weights, time: 4 eights}"}},
		turn: []dish{
			{1, "{set: squat, reps: 4 x 4-4, weight: 2 x 4 kg%s}"},
			{2, "{set: deadlift, reps: 8 x 4-4, weight: 2 x 4 kg, cue: weights close to the legs%s}"},
			{2, "{set: bent-over row, reps: 8 x 4-4, weight: 2 x 4 kg%s}"},
			{2, "{set: overhead press, reps: 8 x 4-4, weight: 2 x 4 kg, cue: ribs down%s}"},
			{1, "{set: reverse lunge, reps: 8 x 2-2, weight: 2 x 4 kg, cue: right and left in turn%s}"},
			{1, "{set: biceps curl, reps: 4 x 4-4, weight: 2 x 4 kg%s}"},
			{1, "{set: triceps extension, reps: 4 x 4-4, weight: 2 x 4 kg%s}"},
		},
		last:   []dish{{1, "{pause: weights down, time: 4 eights}"}},
		filler: dish{1, "{set: calf raise, reps: 8 x 2-2, weight: 2 x 4 kg%s}"},
		remark: "One pair of weights for everything. Change weight, moves and rhythm; keep what a set takes, or fill its phrase.",
	},
	plan.Cardio: {
		turn: []dish{
			{2, "{interval: jumping jack, time: 8 eights, easier: half jack%s}"},
			{1, "{interval: boxer bounce, time: 4 eights, easier: march%s}"},
			{2, "{interval: skater, time: 8 eights, easier: low skater%s}"},
			{1, "{interval: march, time: 4 eights, cue: shake it out%s}"},
			{2, "{interval: standing climber, time: 8 eights, harder: high knees%s}"},
			{1, "{interval: ski hop, time: 4 eights, easier: side tap%s}"},
		},
		last:   []dish{{2, "{pause: water, time: 8 eights}"}},
		filler: dish{1, "{interval: march, time: 4 eights%s}"},
		remark: "Work and easy minutes in turn, and water at the end.",
	},
	plan.Core: {
		first: []dish{{1, "{pause: mats out and down to the floor, for: floor, time: 4 eights}"}},
		turn: []dish{
			{1, "{set: crunch, reps: 8 x 2-2, cue: chin off the chest%s}"},
			{2, "{set: dead bug, reps: 8 x 4-4, cue: back stays on the mat%s}"},
			{1, "{set: reverse crunch, reps: 8 x 2-2%s}"},
			{1, "{set: bridge, reps: 8 x 2-2%s}"},
			{1, "{interval: plank, time: 4 eights, easier: knees down%s}"},
			{1, "{set: back extension, reps: 8 x 2-2, cue: look at the mat%s}"},
		},
		filler: dish{1, "{set: crunch, reps: 4 x 4-4%s}"},
		remark: "Lying down all the way, so nobody loses time getting up.",
	},
	plan.CoolDown: {
		first: []dish{{1, "{pause: up from the floor, for: floor, time: 4 eights}"},
			{1, "{interval: deep breath, time: 4 eights}"}},
		turn: []dish{
			{2, "{block: Back of the legs, sides: both, moves: [{move: hamstring stretch, counts: 32}], cue: hold it without bouncing%s}"},
			{2, "{block: Front of the legs, sides: both, moves: [{move: quad stretch, counts: 32}]%s}"},
			{1, "{interval: chest stretch, time: 4 eights%s}"},
			{1, "{interval: upper back stretch, time: 4 eights%s}"},
			{2, "{block: Shoulders, sides: both, moves: [{move: shoulder stretch, counts: 32}]%s}"},
			{2, "{block: Calves, sides: both, moves: [{move: calf stretch, counts: 32}]%s}"},
		},
		last:   []dish{{1, "{interval: deep breath, time: 4 eights, cue: thank them%s}"}},
		filler: dish{1, "{interval: deep breath, time: 4 eights%s}"},
		remark: "A stretch is held for 10 to 30 seconds (ACSM): one phrase of a slow song.",
	},
}
