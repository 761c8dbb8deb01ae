"""What makes the network's probabilities right in the long run, found on letterings that it was not trained on.

  calibrate.py NET.pt HELD_DIR OUT.json"""
import glob
import json
import sys

import numpy as np
import torch
import torch.nn.functional as F

from classes import CLASSES
from net import Net
from train import CELL_H, CELL_W, load

N = len(CLASSES)


@torch.no_grad()
def peaks_of(net, ink):
    out = net(torch.from_numpy(ink.astype(np.float32) / 255)[:, None])
    z = out[:, :1]
    top = (z == F.max_pool2d(z, (3, 3), 1, 1)) & (z > -4)
    return out.numpy(), top[:, 0].numpy()


def main():
    net = Net()
    net.load_state_dict(torch.load(sys.argv[1]))
    net.eval()
    odds, there, logits, names = [], [], [], []
    for path in sorted(glob.glob(sys.argv[2] + "/*.npz")):
        ink, glyphs = load(path)
        for k in range(0, len(ink), 50):
            out, top = peaks_of(net, ink[k:k + 50])
            for j in range(len(top)):
                rows = glyphs[k + j]
                free = set(range(len(rows)))
                ys, xs = np.nonzero(top[j])
                for y, x in sorted(zip(ys, xs), key=lambda p: -out[j, 0, p[0], p[1]]):
                    near = [(abs(x + .5 - rows[q][2] / CELL_W) + 2 * abs(y + .5 - rows[q][3] / CELL_H), q) for q in free]
                    d, q = min(near, default=(99, -1))
                    hit = d < 3.5
                    if hit and not rows[q][6]:
                        free.discard(q)
                        continue
                    odds.append(out[j, 0, y, x])
                    there.append(hit)
                    if hit:
                        free.discard(q)
                        logits.append(out[j, 1:1 + N, y, x])
                        names.append(int(rows[q][1]))
    z, t = torch.tensor(np.array(odds)), torch.tensor(np.array(there, np.float32))
    line = torch.tensor([1.0, 0.0], requires_grad=True)
    heat = torch.zeros(1, requires_grad=True)
    l, n = torch.tensor(np.array(logits)), torch.tensor(names)
    steps = torch.optim.LBFGS([line, heat], max_iter=80)

    def closure():
        steps.zero_grad()
        loss = F.binary_cross_entropy_with_logits(line[0] * z + line[1], t) + F.cross_entropy(l / heat.exp(), n)
        loss.backward()
        return loss

    steps.step(closure)
    result = {"present": [round(v, 4) for v in line.tolist()], "temperature": round(heat.exp().item(), 4),
              "peaks": len(there), "named": round((l.argmax(1) == n).float().mean().item(), 4)}
    json.dump(result, open(sys.argv[3], "w"))
    print(result)


if __name__ == "__main__":
    main()
