"""Margins of position loops by scipy.signal and scipy.optimize, to be held against engine/simulate/margins.ts.

Prints JSON. The benchmark axis: 120 kg on a 5 mm screw, rigid or with 60 N/um, the loop cut at the drive's output.
Sampling and computing count as a dead time.
"""
import json
import math

import numpy as np
from scipy.optimize import brentq
from scipy.signal import TransferFunction

r = 0.005 / (2 * math.pi)
R, L, K, b = 1.2, 3e-3, 0.35, 1e-3
J1, J2 = 8e-4 + 4e-4, 120 * r * r
k, c = 6e7 * r * r, 2 * 0.03 * math.sqrt(6e7 * 120) * r * r
P, I, D = 47.248119654, 944.96239308, 0.43746866162

mul = np.polymul
add = np.polyadd


def mechanics(rigid):
    """Motor speed for torque, as polynomials."""
    if rigid:
        return [1.0], [J1 + J2, b]
    first = [J1, b + c, k]
    second = [J2, c, k]
    spring = [c, k]
    # Each has one s too many where speed is asked: second/(first*second - spring^2), times s.
    return mul(second, [1, 0]), np.polysub(mul(first, second), mul(spring, spring))


def pid_on_voltage(rigid):
    top, bottom = mechanics(rigid)
    # i = (v - K w)/(R + L s), w = G K i
    speed_top = mul(top, [K])
    speed_bottom = add(mul(bottom, [L, R]), mul(top, [K * K]))
    return mul([D, P, I], speed_top), mul(speed_bottom, [1, 0, 0])


def cascade_ideal(rigid, Kp=40.0, Kv=0.9, Ki=45.0):
    """Loops act together on the current: (Kv + Ki/s)(s + Kp) of the angle."""
    top, bottom = mechanics(rigid)
    law = mul([Kv, Ki], [1, Kp])
    return mul(law, mul(top, [K])), mul(bottom, [1, 0, 0])


def margins(loop, dead):
    system = TransferFunction(*loop)

    def response(w):
        _, h = system.freqresp(w=[w])
        return h[0] * np.exp(-1j * w * dead)

    grid = np.logspace(-1, 5, 60001)
    _, h = system.freqresp(w=grid)
    h = h * np.exp(-1j * grid * dead)
    size = np.abs(h)
    phase = np.unwrap(np.angle(h))
    phase -= 2 * math.pi * round((phase[0] + math.pi) / (2 * math.pi))
    crossings = [i for i in range(len(grid) - 1) if (size[i] - 1) * (size[i + 1] - 1) < 0]
    at = [brentq(lambda w: abs(response(w)) - 1, grid[i], grid[i + 1], xtol=1e-12, rtol=1e-14) for i in crossings]
    left = [math.pi + phase[i] + np.angle(response(w) / h[i]) for i, w in zip(crossings, at)]
    least = int(np.argmin(left))
    swings = []
    for i in range(len(grid) - 1):
        if (phase[i] + math.pi) * (phase[i + 1] + math.pi) < 0 and phase[i] > phase[i + 1]:
            w = brentq(lambda w: np.angle(-response(w)), grid[i], grid[i + 1], xtol=1e-12, rtol=1e-14)
            swings.append((1 / abs(response(w)), w))
    gain, swing = min((each for each in swings if each[0] > 1), default=(None, None))
    return {"phaseMargin": left[least], "crossover": at[least], "gainMargin": gain, "oscillatesAt": swing}


print(json.dumps({
    "pid": {name: margins(pid_on_voltage(rigid), 1.5 * 0.0005) for name, rigid in [("rigid", True), ("yielding", False)]},
    "cascade": {name: margins(cascade_ideal(rigid), 1.5 * 0.0002) for name, rigid in [("rigid", True), ("yielding", False)]},
}, indent=1))
