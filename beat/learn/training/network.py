"""The network, as beat/ear/network.go runs it.

Ref: Davies & Böck 2019, "Temporal convolutional networks for musical audio beat
tracking"; Böck & Davies 2020, "Deconstruct, analyse, reconstruct" (parallel dilations).
"""
import math

import torch
import torch.nn as nn
import torch.nn.functional as F

BANDS = 54
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


def load(path, device="cpu"):
    """A network as `fit` saved it."""
    saved = torch.load(path, map_location=device)
    model = Ear(saved["width"], 0).to(device)
    model.load_state_dict(saved["model"])
    return model.eval()
