"""Landings of one corner by SciPy's integrators, to hold against the engine.

    python3 landing.py car.json landing.json

The car of car.json (an H-arm with two springs, gas, a damper curve, a gas bump stop, a strap and a tyre that can leave the
ground) falls and drives over a bump. Everything is written from the equations alone: the linkage's closure, springs in
series, p V^n, straight lines through measured points, two masses under virtual work. No table stands for the geometry but a
spline through 8001 exact positions.
"""
import json
import sys
import numpy as np
from scipy.integrate import solve_ivp
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq

G = 9.80665
ATMOSPHERE = 101325.0
SOLID = 5e6  # N/m: steel and brackets
MM = 1e-3

car = json.load(open(sys.argv[1]))


def point(p):
    return np.array([p["x"], p["y"], p["z"]]) * MM


def about(origin, axis, angle):
    """Rodrigues: turns points about a line."""
    k = axis / np.linalg.norm(axis)
    K = np.array([[0, -k[2], k[1]], [k[2], 0, -k[0]], [-k[1], k[0], 0]])
    R = np.eye(3) + np.sin(angle) * K + (1 - np.cos(angle)) * K @ K
    return lambda p: origin + R @ (p - origin)


# ---- geometry: arm by alpha about its inner line, spindle by beta about the arm's outer line
arm = {name: point(car["linkage"]["lowerArm"][name]) for name in ("innerFront", "innerRear", "outerFront", "outerRear")}
link = {name: point(car["linkage"]["upperLink"][name]) for name in ("inner", "outer")}
camber, toe = np.radians(car["wheel"]["camber"]), np.radians(car["wheel"]["toe"])
spin = np.array([np.cos(camber) * np.sin(toe), np.cos(camber) * np.cos(toe), -np.sin(camber)])
centre = point(car["wheel"]["hubFace"]) - spin * car["wheel"]["offset"] * MM
link_length = np.linalg.norm(link["outer"] - link["inner"])


def poses(alpha, beta):
    on_arm = about(arm["innerFront"], arm["innerRear"] - arm["innerFront"], alpha)
    on_spindle = about(arm["outerFront"], arm["outerRear"] - arm["outerFront"], beta)
    return on_arm, lambda p: on_arm(on_spindle(p))


def closed(alpha, guess):
    def miss(beta):
        _, spindle = poses(alpha, beta)
        return np.linalg.norm(spindle(link["outer"]) - link["inner"]) - link_length

    return brentq(miss, guess - 0.02, guess + 0.02, xtol=1e-15)


mounts = {"shock": (car["shock"]["upper"], car["shock"]["lower"]), "strap": (car["strap"]["upper"], car["strap"]["lower"]),
          "stop": (car["bumpStop"]["base"], car["bumpStop"]["strikes"])}
alphas = np.linspace(-0.55, 0.55, 8001)
middle = len(alphas) // 2
betas = np.zeros_like(alphas)
for way in (1, -1):
    for i in range(middle + way, len(alphas) if way > 0 else -1, way):
        ahead = 2 * betas[i - way] - betas[i - 2 * way] if abs(i - middle) > 1 else betas[i - way]
        betas[i] = closed(alphas[i], ahead)
travels, lengths = np.zeros_like(alphas), {name: np.zeros_like(alphas) for name in mounts}
for i, (alpha, beta) in enumerate(zip(alphas, betas)):
    on_arm, on_spindle = poses(alpha, beta)
    travels[i] = on_spindle(centre)[2] - centre[2]
    for name, (upper, lower) in mounts.items():
        lengths[name][i] = np.linalg.norm(on_arm(point(lower)) - point(upper))
if travels[0] > travels[-1]:
    travels, lengths = travels[::-1], {name: each[::-1] for name, each in lengths.items()}
assert np.all(np.diff(travels) > 0)
curve = {name: CubicSpline(travels, each) for name, each in lengths.items()}
slope = {name: each.derivative() for name, each in curve.items()}

# ---- parts
shock = car["shock"]
longest, shortest = shock["longest"] * MM, shock["shortest"] * MM
main, tender = shock["springs"]["main"], shock["springs"]["tender"]
k_main, k_tender = main["rate"] * 1000, tender["rate"] * 1000
preload = shock["springs"]["preload"] * MM
series = k_main * k_tender / (k_main + k_tender)
# The slider meets its stop at the given shock length; from there the main spring goes on alone.
at_cross = preload + longest - shock["springs"]["crossoverAt"] * MM
room = (main["freeLength"] - main["solidLength"]) * MM
force_cross = series * at_cross
solid_at = at_cross + room - force_cross / k_main


def spring(length):
    c = preload + longest - length
    if c <= 0:
        return 0.0
    if c <= at_cross:
        return series * c
    if c <= solid_at:
        return force_cross + k_main * (c - at_cross)
    return k_main * room + SOLID * (c - solid_at)


rod = np.pi / 4 * (shock["gas"]["rodDiameter"] * MM) ** 2
p0, v0 = shock["gas"]["pressure"] * 1e5 + ATMOSPHERE, shock["gas"]["volume"] * 1e-6


def gas_slow(length):
    return (p0 * v0 / (v0 - rod * (longest - length)) - ATMOSPHERE) * rod


sprung = car["weights"]["corner"] - car["weights"]["unsprung"]
unsprung = car["weights"]["unsprung"]
rest = brentq(lambda z: -slope["shock"](z) * (spring(curve["shock"](z)) + gas_slow(curve["shock"](z))) - sprung * G, -0.15, 0.14, xtol=1e-14)
in_rest = longest - float(curve["shock"](rest))
p_rest, v_rest = p0 * v0 / (v0 - rod * in_rest), v0 - rod * in_rest


def gas_fast(length):
    v = v_rest - rod * (longest - length - in_rest)
    return (p_rest * (v_rest / v) ** 1.4 - ATMOSPHERE) * rod


def through(points, x):
    """Straight from nothing through the points, on past the last."""
    x0 = f0 = 0.0
    for x1, f1 in points:
        if x <= x1:
            break
        x0, f0, last = x1, f1, (x0, f0, x1, f1)
    else:
        a, fa, b, fb = last
        return fb + (fb - fa) / (b - a) * (x - b)
    return f0 + (f1 - f0) / (x1 - x0) * (x - x0)


bump = [(p["speed"], p["force"]) for p in car["damper"]["bump"]]
rebound = [(p["speed"], p["force"]) for p in car["damper"]["rebound"]]
stretch = [(p["percent"] / 100 * car["strap"]["length"] * MM, p["force"]) for p in car["strap"]["stretch"]]
strap_length = car["strap"]["length"] * MM
reach, solid = car["bumpStop"]["reach"] * MM, car["bumpStop"]["solid"] * MM
stop_rod = np.pi / 4 * (car["bumpStop"]["gas"]["rodDiameter"] * MM) ** 2
stop_p, stop_v = car["bumpStop"]["gas"]["pressure"] * 1e5 + ATMOSPHERE, car["bumpStop"]["gas"]["volume"] * 1e-6


def stop_force(squeeze):
    if squeeze <= 0:
        return 0.0
    elastic = (stop_p * (stop_v / (stop_v - stop_rod * min(squeeze, reach - solid))) ** 1.4 - ATMOSPHERE) * stop_rod
    return elastic + SOLID * max(0.0, squeeze - (reach - solid))


k_tyre = car["wheel"]["tyreRate"] * 1000
c_tyre = 2 * 0.05 * np.sqrt(k_tyre * unsprung)


def parts(z, rate):
    """Shock without damper, damper, stop, strap (N), and all of them at the wheel by virtual work."""
    length, by = float(curve["shock"](z)), float(slope["shock"](z))
    push = spring(length) + gas_fast(length)
    if length < shortest:
        push += SOLID * (shortest - length)
    elif length > longest:
        push += SOLID * (longest - length)
    speed = -by * rate
    damper = through(bump, speed) if speed >= 0 else -through(rebound, -speed)
    stop = stop_force(reach - float(curve["stop"](z)))
    taut = float(curve["strap"](z)) - strap_length
    strap = through(stretch, taut) if taut > 0 else 0.0
    at_wheel = -by * (push + damper) - float(slope["stop"](z)) * stop + float(slope["strap"](z)) * strap
    return push, damper, stop, strap, at_wheel


def tyre(wheel, wheel_speed, ground, ground_rate):
    pressed = ground - wheel
    return max(0.0, k_tyre * pressed + c_tyre * (ground_rate - wheel_speed)) if pressed > 0 else 0.0


def ground_flat(t):
    return 0.0, 0.0


HEIGHT, LENGTH, SPEED = 0.15, 1.5, 12.0


def ground_bump(t):
    x = SPEED * t - 1
    if x <= 0 or x >= LENGTH:
        return 0.0, 0.0
    turn = 2 * np.pi / LENGTH
    return HEIGHT / 2 * (1 - np.cos(turn * x)), HEIGHT / 2 * turn * SPEED * np.sin(turn * x)


def rates(ground):
    def f(t, y):
        body, body_speed, wheel, wheel_speed = y
        at_wheel = parts(wheel - body, wheel_speed - body_speed)[4]
        load = tyre(wheel, wheel_speed, *ground(t))
        return [body_speed, at_wheel / sprung - G, wheel_speed, (load - at_wheel) / unsprung - G]

    return f


def run(name, ground, start, until):
    found = solve_ivp(rates(ground), (0, until), start, method="DOP853", rtol=1e-9, atol=1e-11, max_step=2e-4, dense_output=True)
    assert found.success
    times = np.arange(0, until + 5e-4, 1e-3)
    states = found.sol(np.minimum(times, until)).T
    fine = np.arange(0, until, 2e-5)
    worst = {"wheelLoad": [0, 0], "shockForce": [0, 0], "stopForce": [0, 0], "strapForce": [0, 0]}
    for t, (body, body_speed, wheel, wheel_speed) in zip(fine, found.sol(fine).T):
        push, damper, stop, strap, _ = parts(wheel - body, wheel_speed - body_speed)
        load = tyre(wheel, wheel_speed, *ground(t))
        for key, value in (("wheelLoad", load), ("shockForce", push + damper), ("stopForce", stop), ("strapForce", strap)):
            if value > worst[key][0]:
                worst[key] = [float(value), float(t)]
    print(name, {key: (round(value), round(t, 4)) for key, (value, t) in worst.items()}, len(found.t), "steps")
    return {"name": name, "until": until, "peaks": {key: {"value": v, "time": t} for key, (v, t) in worst.items()},
            "step": 1e-3, "states": [[float(f"{x:.12g}") for x in row] for row in states]}


def balance(force):
    return brentq(lambda z: parts(z, 0)[4] - force, -0.2, 0.15, xtol=1e-14)


hang, stand = balance(0), balance(sprung * G)
wheel = -(sprung + unsprung) * G / k_tyre
events = [
    run("drop", ground_flat, [0.5 - hang, 0, 0.5, 0], 1.2),
    run("bump", ground_bump, [wheel - stand, 0, wheel, 0], 1.2),
]
json.dump({"rest": rest, "drop": 0.5, "bump": {"height": HEIGHT, "length": LENGTH, "speed": SPEED}, "events": events},
          open(sys.argv[2], "w"))
