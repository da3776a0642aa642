"""What Go needs of a trained network: its weights file, and test vectors."""
import math
import os
import struct
import wave

import numpy as np
import torch

from . import network
from .music import FPS
from .network import BANDS


def rounded(path):
    """The trained network, its weights rounded as in the weights file."""
    model = network.load(path)
    with torch.no_grad():
        for t in [model.mean, model.scale, *model.parameters()]:
            t.copy_(t.half().float())
    return model


def export(a):
    """Weights file: "EAR1", uint16 width, then half floats: mean, scale, and weight and bias of each layer."""
    model = rounded(a.model)
    with open(a.out, "wb") as f:
        f.write(b"EAR1" + struct.pack("<H", model.width))
        parts = [model.mean, model.scale] + [t for l in model.layers() for t in (l.weight, l.bias)]
        for t in parts:
            f.write(t.detach().numpy().astype("<f2").tobytes())
    print(a.out, os.path.getsize(a.out), "bytes")


def levels(sound):
    """The front-end once more, in numpy, to check the one in Go: 22.05 kHz mono to (frames, BANDS)."""
    rate, size = 22050, 1024
    edges = list(np.arange(0, 250, 21.5))
    while edges[-1] <= 9700:
        edges.append(250 * 2 ** ((len(edges) - 12) / 8))
    hz = np.arange(size // 2 + 1) * rate / size
    bank = np.stack([np.interp(hz, edges[i:i + 3], [0, 1, 0], 0, 0) for i in range(len(edges) - 2)])
    bank[:, 0] = 0
    window = 0.5 - 0.5 * np.cos(2 * np.pi * np.arange(size) / size)
    padded = np.concatenate([np.zeros(size // 2), sound, np.zeros(2 * size)])
    rows = []
    for i in range(len(sound) * 100 // rate // 2 + 1):
        at = int(math.floor(i * rate / FPS + 0.5))
        power = np.abs(np.fft.rfft(window * padded[at:at + size])) ** 2
        rows.append(np.sqrt(bank @ power * 16 / size ** 2))
    m = np.array(rows)
    power = (m ** 2).sum(1)
    return np.log1p(1000 * m / math.sqrt((power ** 2).sum() / power.sum())).astype(np.float32)


def pseudo(frames):
    """Levels that any language can make: a linear congruential generator (Knuth's MMIX constants)."""
    out, s = np.empty(frames * BANDS, np.float32), 1
    for i in range(len(out)):
        s = (s * 6364136223846793005 + 1442695040888963407) % 2 ** 64
        out[i] = (s >> 40) / 2 ** 24 * 6
    return out.reshape(frames, BANDS)


def golden(a):
    """Test vectors for Go: the levels of a sound, and the activations on made-up levels."""
    model = rounded(a.model)
    with wave.open(a.sound) as w:
        sound = np.frombuffer(w.readframes(w.getnframes()), "<i2").astype(np.float64) / 32768
    levels(sound).astype("<f4").tofile(os.path.join(a.folder, "levels.f32"))
    with torch.no_grad():
        y = torch.sigmoid(model(torch.from_numpy(pseudo(3000))[None]))[0]
    y.numpy()[::7].astype("<f4").tofile(os.path.join(a.folder, "activations.f32"))
