"""Trains the ear: beat and count 1, frame by frame, from band levels.

    python3 train.py fit   SONGS.tsv DIR OUT.pt [--steps N | --minutes M] [--width W] [--dropout P] [--ones W] [--seed S] [--log FILE]
    python3 train.py export OUT.pt WEIGHTS.bin
    python3 train.py golden OUT.pt SOUND.wav TESTDATA-DIR

DIR holds what `make render` wrote: ID.f32 (frames x BANDS, float32) and ID.beats.
Needs PyTorch and numpy. README.md beside this file tells the rest.
Ref: Davies & Böck 2019, "Temporal convolutional networks for musical audio beat
tracking"; Böck & Davies 2020, "Deconstruct, analyse, reconstruct" (parallel dilations).
"""
import argparse, math, os, struct, threading, time, wave
import numpy as np
import torch
import torch.nn as nn
import torch.nn.functional as F

BANDS, FPS = 54, 50
WINDOW = 2050          # frames of a training excerpt, 41 s
FRONT = 28             # channels after the first layer
BLOCKS = 9             # dilations 1..256 and, in parallel, 2..512
TAPS = 5


class Conv(nn.Module):
    """A dilated convolution over time, as one matrix product; x is (batch, time, channels)."""

    def __init__(self, cin, cout, taps, dilation=1):
        super().__init__()
        self.taps, self.dilation = taps, dilation
        self.weight = nn.Parameter(torch.empty(taps * cin, cout).uniform_(-1, 1) * math.sqrt(3 / (taps * cin)))
        self.bias = nn.Parameter(torch.zeros(cout))

    def forward(self, x):
        if self.taps > 1:
            pad = self.dilation * (self.taps // 2)
            padded, n = F.pad(x, (0, 0, pad, pad)), x.shape[1]
            x = torch.cat([padded[:, i * self.dilation:i * self.dilation + n] for i in range(self.taps)], -1)
        return x @ self.weight + self.bias


class Ear(nn.Module):
    """Levels (batch, time, BANDS) to logits (batch, time, 2): beat, count 1."""

    def __init__(self, width=23, dropout=0.1):
        super().__init__()
        self.width = width
        self.register_buffer("mean", torch.zeros(BANDS))
        self.register_buffer("scale", torch.ones(BANDS))
        self.first, self.second = Conv(BANDS, FRONT, 3), Conv(FRONT, width, 3)
        self.near = nn.ModuleList(Conv(width, width, TAPS, 2 ** n) for n in range(BLOCKS))
        self.far = nn.ModuleList(Conv(width, width, TAPS, 2 ** (n + 1)) for n in range(BLOCKS))
        self.join = nn.ModuleList(Conv(2 * width, width, 1) for _ in range(BLOCKS))
        self.out = Conv(width, 2, 1)
        self.drop = nn.Dropout(dropout)
        with torch.no_grad():
            self.out.bias.fill_(-3.0)
            for j in self.join:
                j.weight.mul_(0.5)

    def forward(self, x):
        x = (x - self.mean) * self.scale
        x = F.elu(self.second(self.drop(F.elu(self.first(x)))))
        for near, far, join in zip(self.near, self.far, self.join):
            x = x + join(self.drop(F.elu(torch.cat([near(x), far(x)], -1))))
        return self.out(F.elu(x))

    def layers(self):
        """All matrices in the order of the weights file."""
        yield self.first
        yield self.second
        for n in range(BLOCKS):
            yield self.near[n]
            yield self.far[n]
            yield self.join[n]
        yield self.out


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
        self.ids.append(name)

    def keep_growing(self):
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


def fit(a):
    dev = torch.device("cuda" if torch.cuda.is_available() else "cpu")
    torch.manual_seed(a.seed)
    if dev.type == "cuda":
        torch.backends.cuda.matmul.allow_tf32 = True
    music, check = Music(a.songs, a.folder, "train", dev), Music(a.songs, a.folder, "check", dev)
    while len(music.ids) < a.first or len(check.ids) < min(96, a.first):
        check.grow()
        music.grow()
        time.sleep(1)
    model = Ear(a.width, a.dropout).to(dev)
    some = music.levels[torch.randint(0, music.frames, (200000,), device=dev)].float()
    model.mean.copy_(some.mean(0))
    model.scale.copy_(1 / some.std(0))
    if a.start:
        model.load_state_dict(torch.load(a.start, map_location=dev)["model"])
    average = Ear(a.width, 0).to(dev)
    average.load_state_dict(model.state_dict())
    average.eval()
    size = sum(p.numel() for p in model.parameters())
    say = lambda s: (print(s, flush=True), a.log and open(a.log, "a").write(s + "\n"))
    say(f"# {len(music.ids)} tracks at first, {len(check.ids)} to check, {size} parameters, width {a.width}, dropout {a.dropout}, weight of count 1 {a.ones}, rate {a.rate}, seed {a.seed}, from {a.start or 'nothing'}")
    threading.Thread(target=music.keep_growing, daemon=True).start()
    fused = {"fused": True} if dev.type == "cuda" else {}
    opt = torch.optim.AdamW(model.parameters(), lr=3e-3, weight_decay=0.01, **fused)
    weight = torch.tensor([2 - a.ones, a.ones], device=dev)

    def step_loss(x, y):
        return F.binary_cross_entropy_with_logits(model(x), y, weight)

    make = music.batch
    if dev.type == "cuda" and not a.eager:
        torch._dynamo.config.suppress_errors = True
        step_loss, make = torch.compile(step_loss), torch.compile(make)
    step, began, total = 0, time.time(), 0.0
    averaged, current = list(average.parameters()), list(model.parameters())
    done = 0.0     # share of the training
    while done < 1:
        rate = a.rate * min(1, (step + 1) / 300) * 0.5 * (1 + math.cos(math.pi * done))
        for group in opt.param_groups:
            group["lr"] = rate
        pick = torch.randint(0, len(music.ids), (a.batch,), device=dev)
        x, y = make(pick)
        loss = step_loss(x, y)
        opt.zero_grad(set_to_none=True)
        loss.backward()
        torch.nn.utils.clip_grad_norm_(current, 0.5)
        opt.step()
        with torch.no_grad():
            keep = min(0.999, (1 + step) / (10 + step))
            torch._foreach_mul_(averaged, keep)
            torch._foreach_add_(averaged, current, alpha=1 - keep)
        total = total + loss.detach()
        step += 1
        done = (time.time() - began) / (60 * a.minutes) if a.minutes else step / a.steps
        if step % a.report == 0 or done >= 1:
            with torch.no_grad(), torch.random.fork_rng():
                torch.manual_seed(1)
                x, y = check.batch(torch.arange(min(96, len(check.ids)), device=dev), False)
                held = float(F.binary_cross_entropy_with_logits(average(x), y))
            say(f"{step}\t{float(total) / a.report:.5f}\t{held:.5f}\t{time.time() - began:.0f} s\t{len(music.ids)} tracks, {music.hours():.1f} h")
            total = 0.0
            torch.save({"model": average.state_dict(), "width": a.width, "steps": step}, a.out + ".part")
            os.replace(a.out + ".part", a.out)
    if a.used:
        with open(a.used, "w") as f:
            f.write("\n".join(music.ids) + "\n")


def load(path):
    """The trained network, its weights rounded as in the weights file."""
    saved = torch.load(path, map_location="cpu")
    model = Ear(saved["width"], 0)
    model.load_state_dict(saved["model"])
    with torch.no_grad():
        for p in model.parameters():
            p.copy_(p.half().float())
        model.mean.copy_(model.mean.half().float())
        model.scale.copy_(model.scale.half().float())
    return model.eval()


def export(a):
    """Weights file: "EAR1", uint16 width, then half floats: mean, scale, and weight and bias of each layer."""
    model = load(a.model)
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
    model = load(a.model)
    with wave.open(a.sound) as w:
        sound = np.frombuffer(w.readframes(w.getnframes()), "<i2").astype(np.float64) / 32768
    levels(sound).astype("<f4").tofile(os.path.join(a.folder, "levels.f32"))
    with torch.no_grad():
        y = torch.sigmoid(model(torch.from_numpy(pseudo(3000))[None]))[0]
    y.numpy()[::7].astype("<f4").tofile(os.path.join(a.folder, "activations.f32"))


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
