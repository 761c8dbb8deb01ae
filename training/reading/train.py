"""Trains the network on shards that draw.py draws, while they are drawn.

  train.py DATA_DIR HELD_DIR OUT.pt SECONDS [--from OLD.pt] [--rate R]"""
import glob
import random
import sys
import time

import numpy as np
import torch
import torch.nn.functional as F

from classes import CLASSES
from net import OUT, Net

torch.set_num_threads(2)
CELL_H, CELL_W = 4, 2
N = len(CLASSES)


def targets(glyphs, count, gh, gw):
    """heat (n, gh, gw): 1 at a centre, less beside it; -1 where nothing is asked. And the cells where a class is asked."""
    heat = np.zeros((count, gh, gw), np.float32)
    cells = []
    for row in glyphs:
        i, c, cx, cy, w, h, whole = row
        i, c = int(i), int(c)
        gx, gy = cx / CELL_W, cy / CELL_H
        ix, iy = int(gx), int(gy)
        if not (0 <= ix < gw and 0 <= iy < gh):
            continue
        if not whole:
            x0, x1 = max(0, int((cx - w / 2) / CELL_W)), min(gw, int((cx + w / 2) / CELL_W) + 1)
            y0, y1 = max(0, int((cy - h / 2) / CELL_H)), min(gh, int((cy + h / 2) / CELL_H) + 1)
            part = heat[i, y0:y1, x0:x1]
            part[part == 0] = -1
            continue
        sx, sy = max(.55, min(1.3, .12 * w / CELL_W)), .55
        for y in range(max(0, iy - 1), min(gh, iy + 2)):
            for x in range(max(0, ix - 2), min(gw, ix + 3)):
                v = np.exp(-.5 * (((x + .5 - gx) / sx) ** 2 + ((y + .5 - gy) / sy) ** 2))
                near = abs(x - ix) <= 1 and y == iy
                if (x, y) == (ix, iy):
                    v = 1
                    cells.append((i, y, x, c, gx - x, gy - y, w, h, 1.0))
                elif near and heat[i, y, x] < 1:
                    cells.append((i, y, x, c, gx - x, gy - y, w, h, .4))
                if v > heat[i, y, x]:
                    heat[i, y, x] = v
    return heat, np.array(cells, np.float32).reshape(-1, 9)


def loss_of(net, ink, heat, cells):
    out = net(ink)
    z = out[:, 0]
    p = torch.sigmoid(z)
    asked = (heat >= 0).float()
    hit = (heat == 1).float()
    # Focal at centres; less is asked of cells beside one (after the Gaussian).
    pos = hit * (1 - p) ** 2 * F.softplus(-z)
    neg = (1 - hit) * asked * (1 - heat.clamp(0, 1)) ** 4 * p ** 2 * F.softplus(z)
    count = hit.sum().clamp(min=1)
    l_heat = (pos.sum() + neg.sum()) / count
    i, y, x = (torch.from_numpy(cells[:, k]).long() for k in range(3))
    at = out[i, :, y, x]
    weight = torch.from_numpy(cells[:, 8])
    total = weight.sum().clamp(min=1)
    l_class = (F.cross_entropy(at[:, 1:1 + N], torch.from_numpy(cells[:, 3]).long(), reduction="none", label_smoothing=.01) * weight).sum() / total
    want = torch.from_numpy(np.stack([cells[:, 4] - .5, cells[:, 5] - .5, np.log(cells[:, 6] / 16), np.log(cells[:, 7] / 16)], 1).astype(np.float32))
    l_place = (F.smooth_l1_loss(at[:, 1 + N:], want, reduction="none", beta=.2).mean(1) * weight).sum() / total
    return l_heat + l_class + l_place, (l_heat.item(), l_class.item(), l_place.item())


def load(path):
    d = np.load(path)
    glyphs = d["glyphs"]
    order = glyphs[:, 0].astype(int)
    ink = d["ink"]
    return ink, [glyphs[order == i] for i in range(len(ink))]


def batch_of(ink, glyphs, at):
    rows = [np.concatenate([np.full((len(glyphs[i]), 1), k, np.float32), glyphs[i][:, 1:]], 1) for k, i in enumerate(at)]
    heat, cells = targets(np.concatenate(rows), len(at), ink.shape[1] // CELL_H, ink.shape[2] // CELL_W)
    return torch.from_numpy(ink[at].astype(np.float32) / 255)[:, None], torch.from_numpy(heat), cells


@torch.no_grad()
def held(net, path, most=600):
    """Share of glyphs found at all, share named right, share of images where every glyph is right and none is invented."""
    net.eval()
    ink, glyphs = load(path)
    found = named = total = exact = images = extra = 0
    for k in range(0, most, 50):
        at = list(range(k, k + 50))
        out = net(torch.from_numpy(ink[at].astype(np.float32) / 255)[:, None])
        p = torch.sigmoid(out[:, :1])
        top = (p == F.max_pool2d(p, (3, 3), 1, 1)) & (p > .4)
        cls = out[:, 1:1 + N].argmax(1)
        for j, i in enumerate(at):
            ys, xs = np.nonzero(top[j, 0].numpy())
            peaks = [(x, y, int(cls[j, y, x])) for x, y in zip(xs, ys)]
            used, ok = set(), True
            part = [row for row in glyphs[i] if not row[6]]
            for row in glyphs[i]:
                if not row[6]:
                    continue
                total += 1
                near = [(abs(x + .5 - row[2] / CELL_W) + 2 * abs(y + .5 - row[3] / CELL_H), q) for q, (x, y, _) in enumerate(peaks) if q not in used]
                near = min(near, default=(99, 0))
                if near[0] < 3.5:
                    used.add(near[1])
                    found += 1
                    right = peaks[near[1]][2] == int(row[1])
                    named += right
                    ok = ok and right
                else:
                    ok = False
            lost = len(peaks) - len(used)
            extra += lost
            if not part:
                images += 1
                exact += ok and lost == 0
    net.train()
    return f"found {found / total:.4f} named {named / total:.4f} extra {extra / total:.4f} exact {exact / images:.4f}"


def main():
    data, held_dir, out, seconds = sys.argv[1], sys.argv[2], sys.argv[3], float(sys.argv[4])
    rate = float(sys.argv[sys.argv.index("--rate") + 1]) if "--rate" in sys.argv else 2e-3
    torch.manual_seed(7)
    net = Net()
    if "--from" in sys.argv:
        net.load_state_dict(torch.load(sys.argv[sys.argv.index("--from") + 1]))
    print("parameters", sum(p.numel() for p in net.parameters()), flush=True)
    best = torch.optim.AdamW(net.parameters(), lr=rate, weight_decay=1e-3)
    average = {k: v.clone() for k, v in net.state_dict().items()}
    start = time.time()
    r = random.Random(5)
    step, size, seen, used = 0, 32, 0, {}
    sums = np.zeros(3)
    said = start
    while time.time() - start < seconds:
        # The newest first, then those used least.
        shards = sorted(glob.glob(data + "/*.npz"))
        path = min(shards, key=lambda s: (used.get(s, 0), r.random()))
        used[path] = used.get(path, 0) + 1
        ink, glyphs = load(path)
        order = list(range(len(ink)))
        r.shuffle(order)
        for k in range(0, len(order) - size + 1, size):
            spent = (time.time() - start) / seconds
            if spent >= 1:
                break
            lr = rate * min(1, step / 200) * (0.5 * (1 + np.cos(np.pi * min(1, spent))) + .01)
            for group in best.param_groups:
                group["lr"] = lr
            loss, parts = loss_of(net, *batch_of(ink, glyphs, order[k:k + size]))
            best.zero_grad()
            loss.backward()
            torch.nn.utils.clip_grad_norm_(net.parameters(), 5)
            best.step()
            step += 1
            seen += size
            sums += parts
            decay = min(.998, step / (step + 200))
            for key, value in net.state_dict().items():
                if value.dtype.is_floating_point:
                    average[key].mul_(decay).add_(value, alpha=1 - decay)
            if step % 300 == 0:
                print(f"{time.time() - start:.0f} s step {step} seen {seen} shards {len(shards)} lr {lr:.5f} loss {sums / 300} {seen / (time.time() - start):.0f}/s", flush=True)
                sums[:] = 0
        if time.time() - said > 240:
            said = time.time()
            torch.save(average, out)
            judge = Net()
            judge.load_state_dict(average)
            print("held out:", held(judge, sorted(glob.glob(held_dir + "/*.npz"))[0]), flush=True)
    torch.save(average, out)
    judge = Net()
    judge.load_state_dict(average)
    for path in sorted(glob.glob(held_dir + "/*.npz"))[:2]:
        print("held out:", held(judge, path, 1450), flush=True)


if __name__ == "__main__":
    main()
