"""What makes the reader's probabilities right in the long run: found on figures in letterings that the network was not
trained on, as judge-figures.ts or judge-boxes.ts judged them. Prints the numbers of src/core/reading/box/in-the-long-run.ts.

  weigh.py JUDGED.json..."""
import json
import sys

import numpy as np

BEND = 0.75  # of log-odds: of bends a quarter apart that which these figures are likeliest with


def main():
    judged = [one for path in sys.argv[1:] for one in json.load(open(path))]
    best = [one["figures"][0] if one["figures"] else ("", 0) for one in judged]
    right = np.array([b[0] == one["truth"] for b, one in zip(best, judged)], float)
    p = np.clip(np.array([b[1] for b in best], float), 1e-6, 1 - 1e-9)
    seen = np.array([bool(one["figures"]) for one in judged])
    print(f"{len(judged)} figures, {right.mean():.4f} right, nothing read in {1 - seen.mean():.4f}")
    z, t = np.log(p / (1 - p))[seen], right[seen]
    # A line with a bend.
    x = np.stack([np.ones_like(z), np.minimum(z - BEND, 0), np.maximum(z - BEND, 0)], 1)
    w = np.zeros(3)
    for _ in range(100):  # Newton's method for a logistic regression
        q = 1 / (1 + np.exp(-(x @ w)))
        h = x.T @ (x * (q * (1 - q))[:, None]) + 1e-2 * np.eye(3)
        w = w + np.linalg.solve(h, x.T @ (t - q) - 1e-2 * w * [0, 1, 1])
    q = 1 / (1 + np.exp(-(x @ w)))
    print(f"at the bend {w[0]:.4f}, below {w[1]:.4f}, above {w[2]:.4f}")
    for lo, hi in [(0, .1), (.1, .2), (.2, .3), (.3, .4), (.4, .5), (.5, .6), (.6, .7), (.7, .8), (.8, .9), (.9, .95), (.95, .98), (.98, .99), (.99, 1.01)]:
        m = (q >= lo) & (q < hi)
        if m.any():
            print(f"{lo:.2f} {m.sum():5d} stated {q[m].mean():.4f} right {t[m].mean():.4f}")
    for one in [o for o, r in zip(judged, right) if not r][:60]:
        b = one["figures"][0] if one["figures"] else ("-", 0)
        among = next((i + 1 for i, f in enumerate(one["figures"]) if f[0] == one["truth"]), None)
        print(repr(one["truth"]), "->", b[0], f"{b[1]:.2f}", "read", repr(one["asRead"]), f"cap {one['cap']} turned {one['angle']} {one['turned']}, truth is number {among}")


if __name__ == "__main__":
    main()
