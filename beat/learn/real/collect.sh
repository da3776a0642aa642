#!/usr/bin/env bash
# Fetches the Debian packages of tracks.tsv into DIR and cuts their recordings to
# DIR/wav/ID.wav; DIR/truth/ID.beats for those whose tempo is known. Needs
# Debian, ffmpeg, unzip and 1.6 GB. Nothing is installed.
#
#   beat/learn/real/collect.sh DIR
set -euo pipefail
dir=$(realpath -m "${1:?usage: collect.sh DIR}")
here=$(cd "$(dirname "$0")" && pwd)
mkdir -p "$dir"/{deb,x,wav,truth}
longest=60 # files that make one recording, where a row names many

for p in $(tail -n +2 "$here/tracks.tsv" | cut -f3 | sort -u); do
  [[ -d $dir/x/$p ]] && continue
  (cd "$dir/deb" && apt-get download -qq "$p")
  dpkg -x "$dir"/deb/"$p"_*.deb "$dir/x/$p"
  find "$dir/x/$p" -name '*.pk3' -o -name '*.love' -o -name '*.zip' | while read -r z; do
    unzip -qo "$z" '*.ogg' '*.wav' -d "$z.files" || true # an archive may have no sound
  done
done

tail -n +2 "$here/tracks.tsv" | while IFS=$'\t' read -r id kind pkg _ file from length bpm tick0; do
  out=$dir/wav/$id.wav
  if [[ ! -s $out ]]; then
    if [[ $file == *'*' ]]; then # short files of speech, one after the other
      find "$dir/x/$pkg" -type f -path "*/$file" -name '*.ogg' | sort | head -n "$longest" | sed "s/.*/file '&'/" >"$dir/list"
      in=(-f concat -safe 0 -i "$dir/list")
    else
      f=$(find "$dir/x/$pkg" -type f -path "*/$file" | sort | head -n 1)
      in=(-ss "$from" -i "${f:?$id: no $file in $pkg}")
      case $kind in
        none) in=(-stream_loop 20 "${in[@]}") ;; # short loops, as a game plays them
        mapped) in+=(-i "$(dirname "$f")/guitar.ogg" -filter_complex amix=inputs=2) ;;
      esac
    fi
    ffmpeg -nostdin -v fatal -y "${in[@]}" -t "$length" -ar 44100 -ac 2 -c:a pcm_s16le "$out"
  fi
  [[ -z $bpm ]] || awk -v bpm="$bpm" -v t0="$tick0" -v end="$length" \
    'BEGIN { for (n = 0; (t = t0 + n * 60 / bpm) < end; n++) printf "%.4f\t%d\n", t, n % 4 + 1 }' >"$dir/truth/$id.beats"
done
