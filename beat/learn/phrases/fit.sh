#!/bin/sh
# Makes music whose phrases are known, trains the network of beat/phrase on one
# part of it, fits the trust to another, writes both into the source, and
# measures the whole analysis on a third. Music that is there is kept, and so is
# what was heard of it: remove *.heard when the analysis changes. Needs mma,
# fluidsynth and lame; from the root of the repository:
#
#   beat/learn/phrases/fit.sh DIR SOUNDFONTS [CHARTS]
#
# CHARTS is a set made by beat/learn/charts, with folders learn and choose of
# records whose singers take turns; without it nothing is learnt of records.
set -eu
dir=$1 fonts=$2 charts=${3:-}

# music FOLDER COMMAND...: once
music() {
	to=$dir/$1
	shift
	[ -e "$to.made" ] || { "$@" -o "$to" && touch "$to.made"; }
}
songs() { music "$1" go run ./beat/learn/phrases make -seed "$2" -n "$3"; }
grooves() { music "$1" go run ./beat/learn/make phrased -part "$2" -fonts "$fonts" -seed "$3" -n "$4"; }
plain() { music "$1" go run ./beat/learn/make plain -maker "$2" -seed "$3" -n "$4"; }

songs fit-songs 1 76
grooves fit-grooves fit 1 90
plain fit-synth synth 1 200
plain fit-band "$fonts/TimGM6mb.sf2" 5001 100
plain fit-bare bare 1 99

songs choose-songs-1 1001 36
songs choose-songs-2 2001 40
plain choose-bare bare 100 60
plain choose-band "$fonts/FluidR3_GM.sf2" 7001 60
plain choose-samples samples 1 60

songs report-songs 3001 36
grooves report-grooves report 1001 44

go run ./beat/learn/phrases fit "$dir"/fit-*/ ${charts:+"$charts/learn"}
go run ./beat/learn/phrases trust -write "$dir"/choose-*/ ${charts:+"$charts/choose"}
go run ./beat/learn/phrases trust -whole -write "$dir"/choose-*/ ${charts:+"$charts/choose"}
go run ./beat/learn/phrases report "$dir"/choose-*/ "$dir"/report-*/
