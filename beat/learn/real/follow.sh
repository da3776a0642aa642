#!/usr/bin/env bash
# Lets our analysis and three other programs count what collect.sh put into
# DIR/wav. Needs aubio-tools, node and npm. What is there already is kept: after a
# change of the analysis remove DIR/ours.
#
#   beat/learn/real/follow.sh DIR
set -euo pipefail
dir=$(realpath "${1:?usage: follow.sh DIR}")
here=$(cd "$(dirname "$0")" && pwd)
mkdir -p "$dir"/{ours,aubio,essentia,beatroot,npm}
(cd "$here/../../.." && go build -o "$dir/onphrase" ./cmd/onphrase)
[[ -d $dir/npm/node_modules ]] || npm install --silent --no-save --prefix "$dir/npm" essentia.js@0.1.3 music-tempo@1.0.3
cp "$here/others.cjs" "$dir/npm/"

for f in "$dir"/wav/*.wav; do
  id=$(basename "$f" .wav)
  # A track without a beat is a result, though the exit code then is 1.
  [[ -s $dir/ours/$id.json ]] || "$dir/onphrase" analyze --no-cache --json "$f" >"$dir/ours/$id.json" 2>/dev/null || true
  [[ -e $dir/aubio/$id.beats ]] || aubio beat "$f" >"$dir/aubio/$id.beats"
done
node "$dir/npm/others.cjs" "$dir"
