#!/usr/bin/env bash
# Gathers the outside material for training into DIR: MIDI files of Debian
# packages (DIR/midi/PACKAGE/*.mid), arrangements made with mma (DIR/midi/mma/)
# and soundfonts (DIR/sf/). Needs Debian; no root unless mma is not installed.
#
#   beat/learn/collect.sh DIR
set -euo pipefail
dir=$(realpath -m "${1:?usage: collect.sh DIR}")
repo=$(cd "$(dirname "$0")/../.." && pwd)
mkdir -p "$dir"/{deb,x,midi,sf}

packages=(openttd-openmsx simutrans-data planetblupi-music-midi freedoom
  timgm6mb-soundfont fluidr3mono-gm-soundfont csound-soundfont)
(cd "$dir/deb" && apt-get download -qq "${packages[@]}")
for p in "${packages[@]}"; do dpkg -x "$dir"/deb/"$p"_*.deb "$dir/x/$p"; done

for p in openttd-openmsx simutrans-data planetblupi-music-midi; do
  mkdir -p "$dir/midi/$p"
  find "$dir/x/$p" -iname '*.mid' -exec cp {} "$dir/midi/$p/" \;
done
find "$dir/x" -iname '*.sf[23]' -type f -exec cp {} "$dir/sf/" \;

cd "$repo"
go run ./beat/learn/make wad -o "$dir/midi/freedoom" "$dir"/x/freedoom/usr/share/games/doom/*.wad
dpkg -s mma >/dev/null 2>&1 || apt-get install -y -qq --no-install-recommends mma
go run ./beat/learn/make arrange -library /usr/share/mma/lib -o "$dir/midi/mma"
