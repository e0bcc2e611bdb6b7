"""Solves problems.json with a general optimiser: scipy.optimize.differential_evolution, then Nelder and Mead's simplex from
its best and from the box's middle. The linkage is moved by its own few lines here, Newton's method on its two closures, so
that nothing of the engine is used. Writes optima.json."""

import json
import math
import os

import scipy
from scipy.optimize import differential_evolution, minimize

HERE = os.path.dirname(os.path.abspath(__file__))
CHASSIS = ["lowerArm.innerFront", "lowerArm.innerRear", "upperLink.inner"]
MOVED = {"chassis-pivots": CHASSIS}


def dot(a, b):
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def add(a, b, factor=1.0):
    return (a[0] + b[0] * factor, a[1] + b[1] * factor, a[2] + b[2] * factor)


def unit(v):
    size = math.sqrt(dot(v, v))
    return (v[0] / size, v[1] / size, v[2] / size)


def turn(k, angle, v):
    """Rodrigues' formula."""
    c, s = math.cos(angle), math.sin(angle)
    t = (1 - c) * dot(k, v)
    return (
        v[0] * c + (k[1] * v[2] - k[2] * v[1]) * s + k[0] * t,
        v[1] * c + (k[2] * v[0] - k[0] * v[2]) * s + k[1] * t,
        v[2] * c + (k[0] * v[1] - k[1] * v[0]) * s + k[2] * t,
    )


def motion(p, travels):
    """Spin axis and outer joint of the shaft at each travel; None where the linkage does not go together."""
    a0, b0 = p["lowerArm.innerFront"], p["lowerArm.outerFront"]
    inner = unit(add(p["lowerArm.innerRear"], a0, -1))
    outer = unit(add(p["lowerArm.outerRear"], b0, -1))
    arm = add(b0, a0, -1)
    link = add(p["upperLink.outer"], p["upperLink.inner"], -1)
    square = dot(link, link)

    def direct(theta, phi, v):
        # About the outer hinge first, in its design position, then both with the arm.
        return turn(inner, theta, turn(outer, phi, v))

    def place(theta, phi, v):
        return add(add(a0, turn(inner, theta, arm)), direct(theta, phi, add(v, b0, -1)))

    def residual(theta, phi, travel):
        now = add(place(theta, phi, p["upperLink.outer"]), p["upperLink.inner"], -1)
        return (dot(now, now) - square) / 2, place(theta, phi, p["wheelCentre"])[2] - p["wheelCentre"][2] - travel

    found = {}
    h = 1e-6
    for side in (sorted(t for t in travels if t >= 0), sorted((t for t in travels if t < 0), reverse=True)):
        theta = phi = 0.0
        for travel in side:
            for _ in range(60):
                r0, r1 = residual(theta, phi, travel)
                (p0, p1), (m0, m1) = residual(theta + h, phi, travel), residual(theta - h, phi, travel)
                (q0, q1), (n0, n1) = residual(theta, phi + h, travel), residual(theta, phi - h, travel)
                j00, j10, j01, j11 = (p0 - m0) / (2 * h), (p1 - m1) / (2 * h), (q0 - n0) / (2 * h), (q1 - n1) / (2 * h)
                determinant = j00 * j11 - j01 * j10
                if abs(determinant) < 1e-12:
                    return None
                d_theta, d_phi = (r0 * j11 - r1 * j01) / determinant, (r1 * j00 - r0 * j10) / determinant
                theta, phi = theta - d_theta, phi - d_phi
                if max(abs(d_theta), abs(d_phi)) < 1e-12:
                    break
            if max(map(abs, residual(theta, phi, travel))) > 1e-11 or max(abs(theta), abs(phi)) > 1.5:
                return None
            found[travel] = (direct(theta, phi, p["spinAxis"]), place(theta, phi, p["shaft-outer"]))
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
        values = [math.dist(q, points["shaft-inner"]) for _, q in moved]
    return max(values) - min(values)


def solve(problem):
    points = {name: (v["x"], v["y"], v["z"]) for name, v in problem["points"].items()}
    axes = list(problem["reach"])
    box = [(-problem["reach"][a], problem["reach"][a]) for a in axes]

    def f(x):
        there = dict(points)
        for name in MOVED.get(problem["point"], [problem["point"]]):
            offset = [0.0, 0.0, 0.0]
            for axis, value in zip(axes, x):
                offset["xyz".index(axis)] = float(value)
            there[name] = add(points[name], offset)
        return measure(problem, there, problem["question"])

    start = f([0.0] * len(axes))
    best = differential_evolution(f, box, seed=7, popsize=10, maxiter=20, tol=1e-9, polish=False)
    at, value = best.x, best.fun
    for x in (best.x, [0.0] * len(axes)):
        for _ in range(2):
            local = minimize(f, x, method="Nelder-Mead", bounds=box, options={"xatol": 1e-10, "fatol": 1e-13, "maxiter": 120})
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
