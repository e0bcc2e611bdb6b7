"""Solves problems.json with a general optimiser: scipy.optimize.differential_evolution, then Nelder and Mead's simplex from
its best and from the box's middle. The linkage is moved by its own few lines here, Newton's method on its two closures, so
that nothing of the engine is used. Writes optima.json."""

import json
import math
import os

import numpy as np
import scipy
from scipy.optimize import differential_evolution, minimize

HERE = os.path.dirname(os.path.abspath(__file__))
CHASSIS = ["lowerArm.innerFront", "lowerArm.innerRear", "upperLink.inner"]
MOVED = {"chassis-pivots": CHASSIS}


def turn(axis, angle, v):
    """Rodrigues' formula."""
    return v * math.cos(angle) + np.cross(axis, v) * math.sin(angle) + axis * axis.dot(v) * (1 - math.cos(angle))


def unit(v):
    return v / math.sqrt(v.dot(v))


def motion(p, travels):
    """Spin axis and outer joint of the shaft at each travel; None where the linkage does not go together."""
    a0, b0 = p["lowerArm.innerFront"], p["lowerArm.outerFront"]
    inner = unit(p["lowerArm.innerRear"] - a0)
    outer = unit(p["lowerArm.outerRear"] - b0)
    link = p["upperLink.outer"] - p["upperLink.inner"]
    square = link.dot(link)

    def spindle(theta, phi):
        axis = turn(inner, theta, outer)
        base = a0 + turn(inner, theta, b0 - a0)
        return lambda v: base + turn(axis, phi, turn(inner, theta, v - b0)), lambda d: turn(axis, phi, turn(inner, theta, d))

    def residual(x, travel):
        place, _ = spindle(*x)
        now = place(p["upperLink.outer"]) - p["upperLink.inner"]
        return np.array([(now.dot(now) - square) / 2, place(p["wheelCentre"])[2] - p["wheelCentre"][2] - travel])

    found = {}
    for side in (sorted(t for t in travels if t >= 0), sorted((t for t in travels if t < 0), reverse=True)):
        x = np.zeros(2)
        for travel in side:
            for _ in range(60):
                r = residual(x, travel)
                h = 1e-6
                jacobian = np.column_stack(
                    [(residual(x + h * e, travel) - residual(x - h * e, travel)) / (2 * h) for e in np.eye(2)]
                )
                determinant = np.linalg.det(jacobian)
                if abs(determinant) < 1e-12:
                    return None
                step = np.linalg.solve(jacobian, r)
                x = x - step
                if np.max(np.abs(step)) < 1e-13:
                    break
            if np.max(np.abs(residual(x, travel))) > 1e-11 or np.max(np.abs(x)) > 1.5:
                return None
            place, direct = spindle(*x)
            found[travel] = (direct(p["spinAxis"]), place(p["shaft-outer"]))
    return [found[t] for t in travels]


def measure(problem, points, question):
    moved = motion(points, problem["travels"])
    if moved is None:
        return 1e3
    if question == "constant-camber":
        values = [-math.asin(s[2]) for s, _ in moved]
    elif question == "least-toe":
        values = [math.atan2(s[0], s[1]) for s, _ in moved]
    else:
        values = [math.sqrt((q - points["shaft-inner"]).dot(q - points["shaft-inner"])) for _, q in moved]
    return max(values) - min(values)


def solve(problem):
    points = {name: np.array([v["x"], v["y"], v["z"]]) for name, v in problem["points"].items()}
    axes = list(problem["reach"])
    box = [(-problem["reach"][a], problem["reach"][a]) for a in axes]

    def f(x):
        there = dict(points)
        for name in MOVED.get(problem["point"], [problem["point"]]):
            offset = np.zeros(3)
            for axis, value in zip(axes, x):
                offset["xyz".index(axis)] = value
            there[name] = points[name] + offset
        return measure(problem, there, problem["question"])

    start = f(np.zeros(len(axes)))
    best = differential_evolution(f, box, seed=7, popsize=20, maxiter=80, tol=1e-12, polish=False)
    at, value = best.x, best.fun
    for x in (best.x, np.zeros(len(axes))):
        for _ in range(3):
            local = minimize(f, x, method="Nelder-Mead", bounds=box, options={"xatol": 1e-12, "fatol": 1e-15, "maxiter": 600})
            x = local.x
            if local.fun < value:
                at, value = local.x, local.fun
    print(problem["name"], start, value, flush=True)
    return {"name": problem["name"], "start": start, "best": value, "offset": dict(zip(axes, map(float, at)))}


with open(os.path.join(HERE, "problems.json"), encoding="utf-8") as file:
    PROBLEMS = json.load(file)
RESULT = {"with": f"scipy {scipy.__version__}", "optima": [solve(p) for p in PROBLEMS]}
with open(os.path.join(HERE, "optima.json"), "w", encoding="utf-8") as file:
    json.dump(RESULT, file, indent=1)
    file.write("\n")
