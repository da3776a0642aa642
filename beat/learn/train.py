"""Trains the ear: beat and count 1, frame by frame, from band levels.

    python3 train.py fit   SONGS.tsv DIR OUT.pt [--steps N | --minutes M] [--width W] [--dropout P] [--ones W] [--seed S] [--log FILE]
    python3 train.py export OUT.pt WEIGHTS.bin
    python3 train.py golden OUT.pt SOUND.wav TESTDATA-DIR

DIR holds what `make render` wrote: ID.f32 (frames x bands, float32) and ID.beats.
Needs PyTorch and numpy. README.md beside this file tells the rest; the code is in training/.
"""
import argparse

from training.export import export, golden
from training.fit import fit


def main():
    p = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    sub = p.add_subparsers(required=True)
    f = sub.add_parser("fit")
    f.add_argument("songs"), f.add_argument("folder"), f.add_argument("out")
    f.add_argument("--steps", type=int, default=20000)
    f.add_argument("--minutes", type=float, default=0, help="train for so long, whatever the number of steps")
    f.add_argument("--first", type=int, default=300, help="wait for so many tracks before beginning")
    f.add_argument("--ones", type=float, default=1, help="weight of count 1 in the loss, 0-2; beats have the rest")
    f.add_argument("--used", default="", help="write the IDs of the tracks trained on to this file")
    f.add_argument("--width", type=int, default=23)
    f.add_argument("--dropout", type=float, default=0.1)
    f.add_argument("--rate", type=float, default=3e-3, help="learning rate at its highest")
    f.add_argument("--start", default="", help="go on from this network")
    f.add_argument("--teacher", default="", help="a larger network whose answers are learnt as well")
    f.add_argument("--soft", type=float, default=0.5, help="share of the teacher's answer in the targets")
    f.add_argument("--batch", type=int, default=32)
    f.add_argument("--report", type=int, default=500)
    f.add_argument("--seed", type=int, default=1)
    f.add_argument("--log", default="")
    f.add_argument("--eager", action="store_true", help="do not compile")
    f.set_defaults(run=fit)
    e = sub.add_parser("export")
    e.add_argument("model"), e.add_argument("out")
    e.set_defaults(run=export)
    t = sub.add_parser("golden")
    t.add_argument("model"), t.add_argument("sound"), t.add_argument("folder")
    t.set_defaults(run=golden)
    a = p.parse_args()
    a.run(a)


if __name__ == "__main__":
    main()
