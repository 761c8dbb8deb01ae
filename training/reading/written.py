"""The network as the program has it, back in the form that it is trained in."""
import base64
import json
import re

import numpy as np
import torch

from net import DILATIONS, Net


def read_written(path):
    """The folded layers of a file that export.py wrote, as (weights, bias), in order."""
    text = open(path).read()
    halves = np.frombuffer(base64.b64decode(re.search(r"numbers:\s*'([^']+)'", text).group(1)), "<f2").astype(np.float32)
    net, at = Net(), 0
    for module in modules(net):
        n, c, h, w = module.weight.shape
        k = torch.from_numpy(halves[at:at + n * c * h * w].copy()).view(h, w, c, n).permute(3, 2, 0, 1)
        at += n * c * h * w
        yield k, torch.from_numpy(halves[at:at + n].copy())
        at += n


def modules(net):
    yield net.s1
    yield net.s2
    for block in net.blocks:
        yield block.a
        yield block.b
    yield net.head


def norms(net):
    yield net.s1n
    yield net.s2n
    for block in net.blocks:
        yield block.an
        yield block.bn


@torch.no_grad()
def unfold(path, ink):
    """A network to go on training from. Its norms take their means and variances from `ink` (n, 1, H, W), so that it gives
    there what it gave."""
    net = Net()
    layers = list(read_written(path))
    for module, (k, _) in zip(modules(net), layers):
        module.weight.copy_(k)
    net.head.bias.copy_(layers[-1][1])

    def settle(bias):
        def hook(norm, inputs):
            x = inputs[0]
            mean, var = x.mean((0, 2, 3)), x.var((0, 2, 3), unbiased=False)
            norm.running_mean.copy_(mean)
            norm.running_var.copy_(var)
            norm.weight.copy_(torch.sqrt(var + 1e-5))
            norm.bias.copy_(bias + mean)
        return hook

    hooks = [norm.register_forward_pre_hook(settle(bias)) for norm, (_, bias) in zip(norms(net), layers)]
    net.eval()
    net(ink)
    for hook in hooks:
        hook.remove()
    net.train()
    return net
