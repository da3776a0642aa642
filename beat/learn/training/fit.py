"""Training itself: AdamW on excerpts drawn at random, the weights averaged."""
import math
import os
import threading
import time

import torch
import torch.nn.functional as F
from torch.nn.utils import clip_grad_norm_, parameters_to_vector, vector_to_parameters

from . import network
from .music import Music

CHECKED = 96           # tracks of the set `check` that the log's second loss is measured on


def fit(a):
    device = torch.device("cuda" if torch.cuda.is_available() else "cpu")
    torch.manual_seed(a.seed)
    if device.type == "cuda":
        torch.backends.cuda.matmul.allow_tf32 = True
    music, check = Music(a.songs, a.folder, "train", device), Music(a.songs, a.folder, "check", device)
    while len(music.ids) < a.first or len(check.ids) < min(CHECKED, a.first):
        check.grow()
        music.grow()
        time.sleep(1)
    run = Training(a, music, device)
    log(a, f"# {len(music.ids)} tracks at first, {len(check.ids)} to check, {len(run.average)} parameters, width {a.width}, dropout {a.dropout}, "
        f"weight of count 1 {a.ones}, rate {a.rate}, seed {a.seed}, from {a.start or 'nothing'}, teacher {a.teacher or 'none'}")
    step = run.step if a.eager or device.type != "cuda" else graph(run.step)
    run.total.zero_()
    threading.Thread(target=music.keep_growing, daemon=True).start()
    n, done, began = 0, 0.0, time.time()     # steps; share of the training
    while done < 1:
        run.plan(n, done)
        step()
        n += 1
        done = (time.time() - began) / (60 * a.minutes) if a.minutes else n / a.steps
        if n % a.report == 0 or done >= 1:
            loss = float(run.total) / ((n - 1) % a.report + 1)
            run.total.zero_()
            model = run.averaged()
            log(a, f"{n}\t{loss:.5f}\t{checked(model, check):.5f}\t{time.time() - began:.0f} s\t{len(music.ids)} tracks, {music.hours():.1f} h")
            torch.save({"model": model.state_dict(), "width": a.width, "steps": n}, a.out + ".part")
            os.replace(a.out + ".part", a.out)
    if a.used:
        with open(a.used, "w") as f:
            f.write("\n".join(music.ids) + "\n")


class Training:
    """The network in training. What changes from step to step is kept in tensors, so that a step can be recorded."""

    def __init__(self, a, music, device):
        self.a, self.music = a, music
        self.model = network.Ear(a.width, a.dropout).to(device)
        some = music.levels[torch.randint(0, music.frames, (200000,), device=device)].float()
        self.model.mean.copy_(some.mean(0))
        self.model.scale.copy_(1 / some.std(0))
        if a.start:
            self.model.load_state_dict(network.load(a.start, device).state_dict())
        self.teacher = network.load(a.teacher, device) if a.teacher else None
        self.weights = list(self.model.parameters())
        self.average = parameters_to_vector(self.weights).detach().clone()
        self.count = torch.tensor(float(len(music.ids)), device=device)    # of tracks to draw from
        self.rest = torch.tensor(1.0, device=device)                       # what the average takes of the weights
        self.total = torch.tensor(0.0, device=device)                      # sum of the losses since the last report
        self.balance = torch.tensor([2 - a.ones, a.ones], device=device)
        gpu = device.type == "cuda"
        self.rate = torch.tensor(1e-6, device=device) if gpu else 1e-6
        self.optimizer = torch.optim.AdamW(self.weights, lr=self.rate, weight_decay=0.01, **({"fused": True, "capturable": True} if gpu else {}))
        self.half = torch.autocast(device.type, torch.bfloat16, enabled=gpu)
        self.draw, self.loss = self.music.batch, self.loss_of
        if gpu and not a.eager:
            self.draw, self.loss = torch.compile(self.draw), torch.compile(self.loss)

    def loss_of(self, x, y):
        with self.half:
            if self.teacher:
                with torch.no_grad():
                    y = torch.lerp(y, torch.sigmoid(self.teacher(x).float()), self.a.soft)
            z = self.model(x)
        return F.binary_cross_entropy_with_logits(z.float(), y, self.balance)

    def plan(self, n, done):
        """Sets the rates of step n, when so large a share of the training is done."""
        rate = self.a.rate * min(1, (n + 1) / 300) * 0.5 * (1 + math.cos(math.pi * done))
        for group in self.optimizer.param_groups:
            if torch.is_tensor(group["lr"]):
                group["lr"].fill_(rate)
            else:
                group["lr"] = rate
        self.rest.fill_(1 - min(0.999, (1 + n) / (10 + n)))
        self.count.fill_(len(self.music.ids))

    def step(self):
        pick = (torch.rand(self.a.batch, device=self.count.device) * self.count).long()
        loss = self.loss(*self.draw(pick))
        self.optimizer.zero_grad(set_to_none=True)
        loss.backward()
        clip_grad_norm_(self.weights, 0.5)
        self.optimizer.step()
        with torch.no_grad():
            self.average.lerp_(parameters_to_vector(self.weights), self.rest)
            self.total += loss.detach()

    def averaged(self):
        """The network with averaged weights."""
        model = network.Ear(self.a.width, 0).to(self.average.device)
        model.load_state_dict(self.model.state_dict())
        vector_to_parameters(self.average.clone(), model.parameters())
        return model.eval()


def graph(step):
    """The step recorded on the GPU and played back: its hundreds of small kernels then wait for no Python."""
    side = torch.cuda.Stream()
    side.wait_stream(torch.cuda.current_stream())
    with torch.cuda.stream(side):
        for _ in range(5):     # compiles, and makes the optimiser's state
            step()
    torch.cuda.current_stream().wait_stream(side)
    recorded = torch.cuda.CUDAGraph()
    with torch.cuda.graph(recorded):
        step()
    return recorded.replay


def checked(model, check):
    """Mean loss on the first tracks to check, as they are."""
    device = check.levels.device
    with torch.no_grad(), torch.random.fork_rng():
        torch.manual_seed(1)
        x, y = check.batch(torch.arange(min(CHECKED, len(check.ids)), device=device), False)
        return float(F.binary_cross_entropy_with_logits(model(x), y))


def log(a, line):
    print(line, flush=True)
    if a.log:
        with open(a.log, "a") as f:
            f.write(line + "\n")
