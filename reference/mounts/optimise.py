"""An ordinary global optimiser on the finder's small problems: scipy's differential evolution, with a judge of its own.

Distances are found by halving along the shock's middle line (each is convex there), lengths at every station, nothing in
closed form. Writes optima.json: the least demerit found for each problem, and where.
"""
import json
import pathlib

import numpy as np
from scipy.optimize import differential_evolution

HERE = pathlib.Path(__file__).parent
SEEDS = (1,)
GOLDEN = (5 ** 0.5 - 1) / 2


def least_along(distance, starts, ends):
    """Least of a convex distance along segments, golden section; starts, ends: (n, 3)."""
    a, b = np.zeros(len(starts)), np.ones(len(starts))
    at = lambda t: distance(starts + t[:, None] * (ends - starts))
    c, d = b - GOLDEN * (b - a), a + GOLDEN * (b - a)
    fc, fd = at(c), at(d)
    for _ in range(26):
        left = fc < fd
        b = np.where(left, d, b)
        a = np.where(left, a, c)
        c, d = b - GOLDEN * (b - a), a + GOLDEN * (b - a)
        fc, fd = at(c), at(d)
    return np.minimum(fc, fd)


def to_core(obstacle, n):
    data = np.array(obstacle["data"])
    rows = data.reshape(n, -1) if obstacle["stride"] else np.tile(data, (n, 1))
    kind = obstacle["core"]
    if kind == "segment":
        p, q = rows[:, :3], rows[:, 3:6]
        way = q - p
        size = np.einsum("ij,ij->i", way, way)

        def distance(x):
            t = np.clip(np.einsum("ij,ij->i", x - p, way) / size, 0, 1)
            return np.linalg.norm(x - p - t[:, None] * way, axis=1)

        return distance
    if kind == "box":
        centre, axes, half = rows[:, :3], rows[:, 3:12].reshape(n, 3, 3), rows[:, 12:15]
        return lambda x: np.linalg.norm(
            np.maximum(np.abs(np.einsum("nij,nj->ni", axes, x - centre)) - half, 0), axis=1
        )
    if kind == "disc":
        centre, axis = rows[:, :3], rows[:, 3:6]

        def distance(x):
            f = x - centre
            along = np.einsum("ij,ij->i", f, axis)
            across = np.linalg.norm(f - along[:, None] * axis, axis=1)
            return np.hypot(
                np.maximum(np.abs(along) - obstacle["discHalfWidth"], 0),
                np.maximum(across - obstacle["discRadius"], 0),
            )

        return distance
    raise ValueError(kind)


def judge(problem, line, cores):
    request, n, ride = problem["request"], problem["stations"], problem["ride"]
    shock, wanted, reserve = request["shocks"][0], request["requirements"], request["reserve"]
    path = [np.array(each).reshape(n, 3) for each in line["at"]]
    speed = [np.array(each).reshape(3, 3) for each in line["velocity"]]
    bolt, hinge = np.array(line["bolt"]), np.array(line["hinge"])
    stroke = shock["longest"] - shock["shortest"]
    radius = max(shock["bodyDiameter"], shock["springDiameter"]) / 2

    def cost(v):
        """Demerit where all holds; else 100 and what is missing, so that the search finds its way in."""
        upper, s = v[:3], v[3]
        foot = path[0] + s * (path[1] - path[0])
        velocity = speed[0] + s * (speed[1] - speed[0])
        to = upper - foot
        length = np.linalg.norm(to, axis=1)
        ends = to[[0, ride, n - 1]]
        le = length[[0, ride, n - 1]]
        ratio = np.einsum("ij,ij->i", ends, velocity) / le
        used = (length.max() - length.min()) / stroke
        lean = np.arccos(np.clip(ends[:, 2] / le, -1, 1)).max()
        tilt = np.abs(to @ bolt / length).max()
        out = foot[-1] - hinge
        out = out - (out @ bolt) * bolt
        off = np.arcsin(np.clip(abs(ends[2] @ out) / le[2] / np.linalg.norm(out), 0, 1))
        missing = [
            length.max() - shock["longest"] + reserve["droop"],
            shock["shortest"] + reserve["bump"] - length.min(),
            wanted["strokeUsed"]["least"] - used,
            used - wanted["strokeUsed"]["most"],
            np.diff(length).max(),
            -ratio.min(),
            wanted["motionRatio"]["least"] - ratio[1],
            ratio[1] - wanted["motionRatio"]["most"],
            ratio[1] - wanted["mayFall"] - ratio[2],
            lean - wanted["lean"],
            tilt - np.sin(shock["misalignmentLimit"]),
        ]
        missing = sum(max(0, each) for each in missing)
        if missing > 0:
            return 1000 + 100 * missing
        tops = np.tile(upper, (n, 1))
        for obstacle, distance in cores:
            if obstacle["body"] == line["body"]:
                continue
            gap = least_along(distance, tops, foot).min() - radius - obstacle["radius"] - obstacle["wanted"]
            missing += max(0, -gap)
        if missing > 0:
            return 100 + 100 * missing
        window = 0.5 * (wanted["strokeUsed"]["most"] - wanted["strokeUsed"]["least"])
        a = (used - wanted["strokeUsed"]["least"] - window) / window
        b = (wanted["motionRatio"]["most"] - ratio[1]) / (wanted["motionRatio"]["most"] - wanted["motionRatio"]["least"])
        c = max(0, ratio[1] - ratio[2]) / 0.05
        return a * a + (off / (np.pi / 6)) ** 2 + 0.5 * (b * b + lean * lean + c * c)

    return cost


def main():
    optima = []
    for problem in json.loads((HERE / "problems.json").read_text()):
        cores = [(each, to_core(each, problem["stations"])) for each in problem["obstacles"]]
        box = problem["request"]["upper"]
        bounds = [tuple(sorted((box["from"][k], box["to"][k]))) for k in "xyz"] + [(0, 1)]
        best = None
        for index, line in enumerate(problem["lines"]):
            cost = judge(problem, line, cores)
            for seed in SEEDS:
                found = differential_evolution(cost, bounds, seed=seed, popsize=10, maxiter=60, tol=1e-9, polish=False)
                if best is None or found.fun < best["demerit"]:
                    best = {"name": problem["name"], "demerit": found.fun, "zone": index, "at": list(found.x), "seed": seed}
        print(best)
        optima.append(best)
    (HERE / "optima.json").write_text(json.dumps(optima, indent=1) + "\n")


main()
