#!/bin/sh
# Makes music whose phrases are known, fits the weights of beat/bar and
# beat/phrase to one part of it and their trust to another, writes both into the
# source, and measures the whole analysis on a third. Music that is there is
# kept. Needs mma, fluidsynth and lame; from the root of the repository:
#
#   beat/learn/phrases/fit.sh DIR SOUNDFONTS
set -eu
dir=$1 fonts=$2

# music PART KIND FIRST-SEED NUMBER
music() {
	to=$dir/$1
	[ -e "$to/$2-$3.made" ] && return
	case $2 in
	songs) go run ./beat/learn/phrases make -o "$to" -seed "$3" -n "$4" ;;
	grooves) go run ./beat/learn/make phrased -part "$1" -o "$to" -fonts "$fonts" -seed "$3" -n "$4" ;;
	esac
	touch "$to/$2-$3.made"
}

music fit songs 1 76
music fit grooves 1 90
music choose songs 1001 36
music choose songs 2001 40
music choose grooves 2001 56
music report songs 3001 36
music report grooves 1001 44

go run ./beat/learn/phrases fit -write "$dir/fit"
go run ./beat/learn/phrases trust -write "$dir/choose"
go run ./cmd/bench -audio "$dir/report"
