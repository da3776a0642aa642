#!/usr/bin/env bash
# Gathers the outside material for training into DIR: MIDI files of Debian
# packages (DIR/midi/PACKAGE/*.mid), arrangements made with mma (DIR/midi/mma/)
# and soundfonts (DIR/sf/; large ones packed). Needs Debian; no root unless mma
# or sf3convert is not installed.
#
#   beat/learn/collect.sh DIR
set -euo pipefail
dir=$(realpath -m "${1:?usage: collect.sh DIR}")
repo=$(cd "$(dirname "$0")/../.." && pwd)
mkdir -p "$dir"/{deb,x,midi,sf}

packages=(openttd-openmsx simutrans-data planetblupi-music-midi freedoom
  timgm6mb-soundfont fluidr3mono-gm-soundfont csound-soundfont musescore-general-soundfont-small
  opl3-soundfont avldrums.lv2-soundfont)
(cd "$dir/deb" && apt-get download -qq "${packages[@]}")
for p in "${packages[@]}"; do dpkg -x "$dir"/deb/"$p"_*.deb "$dir/x/$p"; done

for p in openttd-openmsx simutrans-data planetblupi-music-midi; do
  mkdir -p "$dir/midi/$p"
  find "$dir/x/$p" -iname '*.mid' -exec cp {} "$dir/midi/$p/" \;
done
for p in timgm6mb fluidr3mono-gm csound musescore-general; do
  find "$dir"/x/$p-soundfont* -iname '*.sf[23]' -type f -exec cp {} "$dir/sf/" \;
done
command -v sf3convert >/dev/null || apt-get install -y -qq --no-install-recommends sf3convert
large="$dir/x/opl3-soundfont/usr/share/sounds/sf2 $dir/x/avldrums.lv2-soundfont/usr/share/sounds/sf2"
for f in $(find $large -name '*.sf2' -type f); do
  name=$(basename "$f" .sf2) quality=0.2
  if [[ $name == OPL* ]]; then quality=0.1; fi
  sf3convert -z -q $quality "$f" "$dir/sf/${name%_4_LV2}.sf3"
done

cd "$repo"
go run ./beat/learn/make wad -o "$dir/midi/freedoom" "$dir"/x/freedoom/usr/share/games/doom/*.wad
dpkg -s mma >/dev/null 2>&1 || apt-get install -y -qq --no-install-recommends mma
go run ./beat/learn/make arrange -library /usr/share/mma/lib -o "$dir/midi/mma"
