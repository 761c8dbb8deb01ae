"""A network without fully connected layers: from ink (n, 1, H, W), H and W multiples of 4, to what stands where.

Cells are 4 px high and 2 px wide. For each: whether a glyph has its centre there, which one, where in the cell, how large."""
import torch
import torch.nn as nn
from classes import CLASSES

TRUNK, STEM = 64, 32
# Of the two layers of each block: how far rows and columns of its window lie apart.
DILATIONS = [((1, 1), (1, 2)), ((1, 1), (1, 3)), ((1, 1), (1, 1)), ((2, 4), (1, 1)), ((1, 2), (1, 1))]
OUT = 1 + len(CLASSES) + 4


class Block(nn.Module):
    def __init__(self, dilations, trunk):
        super().__init__()
        d, e = dilations
        self.a = nn.Conv2d(trunk, trunk, 3, padding=d, dilation=d, bias=False)
        self.an = nn.BatchNorm2d(trunk)
        self.b = nn.Conv2d(trunk, trunk, 3, padding=e, dilation=e, bias=False)
        self.bn = nn.BatchNorm2d(trunk)

    def forward(self, x):
        y = torch.relu_(self.an(self.a(x)))
        return torch.relu_(x + self.bn(self.b(y)))


class Net(nn.Module):
    def __init__(self, stem=STEM, trunk=TRUNK, dilations=DILATIONS, out=OUT):
        super().__init__()
        self.out = out
        self.s1 = nn.Conv2d(4, stem, 3, padding=1, bias=False)
        self.s1n = nn.BatchNorm2d(stem)
        self.s2 = nn.Conv2d(stem, trunk, 3, stride=2, padding=1, bias=False)
        self.s2n = nn.BatchNorm2d(trunk)
        self.blocks = nn.Sequential(*[Block(d, trunk) for d in dilations])
        # Two cells side by side come from one place of the trunk.
        self.head = nn.Conv2d(trunk, 2 * out, 1)
        nn.init.constant_(self.head.bias[0], -4.0)
        nn.init.constant_(self.head.bias[out], -4.0)

    def forward(self, x):
        x = nn.functional.pixel_unshuffle(x, 2)
        x = torch.relu_(self.s1n(self.s1(x)))
        x = torch.relu_(self.s2n(self.s2(x)))
        y = self.head(self.blocks(x))
        n, _, h, w = y.shape
        return y.view(n, 2, self.out, h, w).permute(0, 2, 3, 4, 1).reshape(n, self.out, h, w * 2)
