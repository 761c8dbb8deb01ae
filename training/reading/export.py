"""Writes the network down for the program: batch norms folded into the layers before them, numbers of 16 bits.

  export.py NET.pt CALIBRATION.json OUT.ts"""
import base64
import json
import sys

import numpy as np
import torch

from classes import CLASSES
from net import DILATIONS, STEM, TRUNK


def folded(state, conv, norm):
    w = state[conv + ".weight"]
    k = state[norm + ".weight"] / torch.sqrt(state[norm + ".running_var"] + 1e-5)
    return w * k[:, None, None, None], state[norm + ".bias"] - state[norm + ".running_mean"] * k


def layers(state, blocks=len(DILATIONS)):
    yield folded(state, "s1", "s1n")
    yield folded(state, "s2", "s2n")
    for i in range(blocks):
        yield folded(state, f"blocks.{i}.a", f"blocks.{i}.an")
        yield folded(state, f"blocks.{i}.b", f"blocks.{i}.bn")
    yield state["head.weight"], state["head.bias"]


def main():
    state = torch.load(sys.argv[1])
    calibration = json.load(open(sys.argv[2]))
    numbers = []
    for w, b in layers(state):
        numbers += [w.permute(2, 3, 1, 0).reshape(-1).numpy(), b.numpy()]
    halves = np.concatenate(numbers).astype("<f2")
    text = base64.b64encode(halves.tobytes()).decode()
    js = lambda v: json.dumps(v, ensure_ascii=False)
    with open(sys.argv[3], "w") as out:
        out.write("// Written by training/reading/export.py: see training/reading/README.md.\n")
        out.write("import type { NetworkWeights } from './weights-form.ts'\n\n")
        out.write("/** The network that sees glyphs, as it was trained. */\n")
        out.write("export const WEIGHTS: NetworkWeights = {\n")
        out.write(f"  glyphs: {js(CLASSES)},\n  stem: {STEM},\n  trunk: {TRUNK},\n  dilations: {js(DILATIONS)},\n")
        out.write(f"  present: {js(calibration['present'])},\n  temperature: {calibration['temperature']},\n  numbers:\n    '{text}',\n}}\n")
    print(len(halves), "numbers,", len(text), "characters")


if __name__ == "__main__":
    main()
