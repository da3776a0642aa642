// Counts by two programs that npm offers: DIR/essentia and DIR/beatroot.
//
//   node others.cjs DIR
const fs = require('fs')
const path = require('path')
const { Essentia, EssentiaWASM } = require('essentia.js')
const MusicTempo = require('music-tempo')

const dir = process.argv[2]
const essentia = new Essentia(EssentiaWASM)

// The tempi [1/min] that a follower may choose among, Essentia's own defaults.
const slowest = 40
const fastest = 208

// mono are the samples of a 16-bit stereo WAV, -1 to 1.
function mono(file) {
  const b = fs.readFileSync(file)
  let at = 12
  while (b.toString('latin1', at, at + 4) !== 'data') at += 8 + b.readUInt32LE(at + 4)
  const x = new Float32Array((b.length - at - 8) >> 2)
  for (let i = 0; i < x.length; i++) x[i] = (b.readInt16LE(at + 8 + 4 * i) + b.readInt16LE(at + 10 + 4 * i)) / 65536
  return x
}

const followers = {
  essentia(x) {
    const v = essentia.arrayToVector(x)
    const r = essentia.RhythmExtractor2013(v, fastest, 'degara', slowest)
    v.delete()
    return Array.from(essentia.vectorToArray(r.ticks))
  },
  beatroot: (x) => new MusicTempo(x).beats,
}

for (const name of fs.readdirSync(path.join(dir, 'wav'))) {
  for (const [who, count] of Object.entries(followers)) {
    const out = path.join(dir, who, name.replace(/wav$/, 'beats'))
    if (fs.existsSync(out)) continue
    let beats = []
    try {
      beats = count(mono(path.join(dir, 'wav', name)))
    } catch (e) {
      console.error(`${who}: ${name}: ${e.message || e}`) // it gives up on sounds without a beat
    }
    fs.writeFileSync(out, beats.map((t) => t.toFixed(4) + '\n').join(''))
  }
}
