"""Training music on the device: excerpts of rendered tracks, varied, with their targets."""
import math
import os
import time

import numpy as np
import torch

from .network import BANDS

FPS = 50
WINDOW = 2050          # frames of a training excerpt, 41 s


class Music:
    """The rendered tracks of one set on the device: levels end to end, beats padded.
    More are taken in as they are rendered."""

    MOST_FRAMES, MOST_BEATS = 4300, 480    # of one track

    def __init__(self, songs, folder, which, device):
        rows = [line.rstrip("\n").split("\t") for line in open(songs) if not line.startswith("#")]
        self.folder, self.awaited = folder, [r[0] for r in rows if r[1] == which]
        tracks, self.ids, self.frames = len(self.awaited), [], 0
        self.levels = torch.zeros(tracks * self.MOST_FRAMES, BANDS, dtype=torch.float16, device=device)
        self.length = torch.zeros(tracks, dtype=torch.int64, device=device)
        self.start = torch.zeros(tracks, dtype=torch.int64, device=device)
        self.beats = torch.full((tracks, self.MOST_BEATS, 2), -1e6, device=device)

    def grow(self):
        """Takes in what has been rendered since."""
        ready = {f[:-4] for f in os.listdir(self.folder) if f.endswith(".f32")}
        waiting = []
        for name in self.awaited:
            if name not in ready:
                waiting.append(name)
            else:
                self.take(name)
        self.awaited = waiting

    def take(self, name):
        path = os.path.join(self.folder, name)
        x = np.fromfile(path + ".f32", np.float32)
        x = x[:len(x) // BANDS * BANDS].reshape(-1, BANDS)[:self.MOST_FRAMES]
        if len(x) < 300 or not np.isfinite(x).all():
            return
        b = np.array([l.split() for l in open(path + ".beats")], np.float32).reshape(-1, 2)[:self.MOST_BEATS]
        i, n = len(self.ids), len(x)
        self.levels[self.frames:self.frames + n] = torch.from_numpy(x.astype(np.float16)).to(self.levels.device)
        self.beats[i, :len(b)] = torch.from_numpy(b).to(self.beats.device)
        self.length[i], self.start[i] = n, self.frames
        self.frames += n
        if self.levels.is_cuda:
            torch.cuda.current_stream().synchronize()     # once it is counted it may be drawn
        self.ids.append(name)

    def keep_growing(self):
        """Grows until all tracks are there; on a stream of its own, or each copy would wait for the steps in the queue."""
        with torch.cuda.stream(torch.cuda.Stream() if self.levels.is_cuda else None):
            while self.awaited:
                time.sleep(2)
                self.grow()

    def hours(self):
        return self.frames / FPS / 3600

    def batch(self, pick, vary=True):
        """Excerpts of the tracks `pick`: levels and targets; with vary, at another tempo and sound."""
        dev, n = pick.device, len(pick)
        rand = lambda *s: torch.rand(*s, device=dev)
        speed = torch.exp((rand(n, 1) * 2 - 1) * math.log(1.15)) if vary else torch.ones(n, 1, device=dev)
        length = self.length[pick].unsqueeze(1).float()
        room = length - WINDOW * speed
        begin = torch.where(room > 0, -75 + rand(n, 1) * (room + 150), -rand(n, 1) * 75)
        at = begin + torch.arange(WINDOW, device=dev) * speed
        low = at.floor()
        part = (at - low).unsqueeze(-1)
        inside = ((low >= 0) & (low + 1 < length)).unsqueeze(-1)
        i = self.start[pick].unsqueeze(1) + torch.minimum(low.clamp(min=0), length - 2).long()
        x = (self.levels[i].float() * (1 - part) + self.levels[i + 1].float() * part) * inside
        if vary:
            x = self.other_sound(x, rand)
        return x, self.targets(pick, begin, speed)

    def targets(self, pick, begin, speed):
        """1 on a beat, falling linearly to 0 two frames away."""
        time, kind = self.beats[pick, :, 0], self.beats[pick, :, 1]
        pos = (time * FPS - begin) / speed
        y = torch.zeros(len(pick), WINDOW + 8, 2, device=pick.device)
        base = pos.floor()
        for k in range(-1, 3):
            frame = base + k
            v = (1 - (frame - pos).abs() / 2).clamp(min=0)
            ok = (frame >= 0) & (frame < WINDOW)
            idx = torch.where(ok, frame, torch.full_like(frame, WINDOW + 4)).long()
            y[..., 0].scatter_reduce_(1, idx, v * ok, "amax")
            y[..., 1].scatter_reduce_(1, idx, v * (ok & (kind == 1)), "amax")
        return y[:, :WINDOW]

    @staticmethod
    def other_sound(x, rand):
        """Gain, equaliser, noise, another track far off, shifted and missing bands, gaps: on the linear magnitudes."""
        n = len(x)
        chance = lambda p: (rand(n, 1, 1) < p).float()
        band = torch.arange(BANDS, device=x.device).view(1, 1, -1)
        shift = ((rand(n, 1, 1) * 5 - 2.5).round() * chance(0.4)).long()
        x = torch.gather(x, 2, (band + shift).clamp(0, BANDS - 1).expand(n, x.shape[1], -1))
        db = (rand(n, 1, 1) * 2 - 1) * 14 * chance(0.6)
        for _ in range(3):
            centre, width = rand(n, 1, 1) * BANDS, 3 + rand(n, 1, 1) * 12
            db = db + chance(0.5) * (rand(n, 1, 1) * 2 - 1) * 12 * torch.exp(-((band - centre) / width) ** 2)
        m = torch.expm1(x) * torch.exp(db * (math.log(10) / 20))
        floor = chance(0.3) * torch.exp(rand(n, 1, 1) * 5 - 1) * torch.sqrt(-torch.log(rand(*x.shape).clamp(min=1e-6)))
        other = m.roll(1, 0) * chance(0.15) * torch.exp(-1.2 - rand(n, 1, 1) * 2.2)
        m = torch.sqrt(m * m + floor * floor + other * other)
        cut = chance(0.12) * (rand(n, 1, 1) * 16).round()
        top = BANDS - chance(0.2) * (rand(n, 1, 1) * 22).round()
        m = m * ((band >= cut) & (band < top))
        frame = torch.arange(x.shape[1], device=x.device).view(1, -1, 1)
        gap, size = rand(n, 1, 1) * x.shape[1], rand(n, 1, 1) * 120
        m = m * (1 - chance(0.15) * ((frame >= gap) & (frame < gap + size)))
        return torch.log1p(m)
