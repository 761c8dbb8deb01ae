"""A small network with numbers at random, and what PyTorch makes of a field: for the tests of the program's own layers.

  fixture.py OUT.json"""
import base64
import json
import sys

import numpy as np
import torch

from export import layers
from net import Net

DILATIONS = [((1, 1), (1, 2)), ((2, 3), (1, 1))]
GLYPHS = ["1", "2", "/"]


def main():
    torch.manual_seed(11)
    net = Net(stem=8, trunk=16, dilations=DILATIONS, out=len(GLYPHS) + 5)
    for module in net.modules():
        if isinstance(module, torch.nn.BatchNorm2d):
            torch.nn.init.uniform_(module.weight, .5, 1.5)
            torch.nn.init.normal_(module.bias, 0, .3)
            module.running_mean.normal_(0, .3)
            module.running_var.uniform_(.5, 2)
    net.eval()
    numbers = []
    for w, b in layers(net.state_dict(), len(DILATIONS)):
        numbers += [w.permute(2, 3, 1, 0).reshape(-1).numpy(), b.numpy()]
    ink = np.round(np.random.default_rng(3).uniform(0, 255, (24, 36)))
    with torch.no_grad():
        out = net(torch.from_numpy((ink / 255).astype(np.float32))[None, None])[0].permute(1, 2, 0)
    json.dump({
        "weights": {"glyphs": GLYPHS, "stem": 8, "trunk": 16, "dilations": DILATIONS, "present": [1, 0], "temperature": 1,
                    "numbers": base64.b64encode(np.concatenate(numbers).astype("<f2").tobytes()).decode()},
        "width": 36, "height": 24, "ink": ink.astype(int).reshape(-1).tolist(),
        "out": [round(v, 4) for v in out.reshape(-1).tolist()]}, open(sys.argv[1], "w"))


if __name__ == "__main__":
    main()
