"""Bus ripple and regeneration by general-purpose numerics, to be held against the handbook's closed forms.

Prints JSON. Needs numpy and scipy. Inputs stand in CASES and are written into the output.
"""
import json
import math
import sys

import numpy as np
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq

CASES = {
    "ideal": [
        {"f": 50.0, "C": 22e-3, "I": 8.0, "Vp": math.sqrt(2) * 50 - 2.2},
        {"f": 50.0, "C": 22e-3, "I": 8.0, "Vp": 0.9 * math.sqrt(2) * 50 - 2.2},
        {"f": 60.0, "C": 4.7e-3, "I": 12.0, "Vp": 95.0},
        {"f": 50.0, "C": 10e-3, "I": 0.2, "Vp": 40.0},
    ],
    "source": [
        {"E": 50.0, "Rs": 0.25, "Vd": 1.1, "f": 50.0, "C": 22e-3, "I": 8.0},
        {"E": 36.0, "Rs": 0.08, "Vd": 1.1, "f": 60.0, "C": 15e-3, "I": 12.0},
        {"E": 50.0, "Rs": 2.0, "Vd": 1.1, "f": 50.0, "C": 22e-3, "I": 8.0},
    ],
    "braking": [
        {"J": 0.00127599088773, "alpha": 2 * 2 * math.pi / 0.005, "Tc": 0.25, "b": 1e-3, "Kt": 0.35,
         "R": 1.2, "w1": 0.12 * 2 * math.pi / 0.005},
        {"J": 0.004, "alpha": 900.0, "Tc": 0.1, "b": 0.02, "Kt": 0.2, "R": 0.9, "w1": 260.0},
        {"J": 0.002, "alpha": 300.0, "Tc": 0.9, "b": 0.0, "Kt": 0.35, "R": 1.2, "w1": 200.0},
        {"J": 0.002, "alpha": 800.0, "Tc": 0.3, "b": 0.0, "Kt": 0.35, "R": 1.2, "w1": 200.0},
    ],
}


def ideal(f, C, I, Vp):
    """Capacitor fed by an ideal full-wave rectified sine; time counts from a peak."""
    w = 2 * math.pi * f
    half = 1 / (2 * f)
    leave = math.asin(I / (w * C * Vp)) / w
    line = lambda t: Vp * math.cos(w * leave) - I / C * (t - leave)
    meet = brentq(lambda t: line(t) - abs(Vp * math.cos(w * t)), half / 2, half, xtol=1e-16, rtol=1e-14)
    bus = lambda t: line(t) if leave <= t <= meet else abs(Vp * math.cos(w * t))
    area = sum(quad(bus, a, b, epsabs=1e-13)[0] for a, b in [(0, leave), (leave, meet), (meet, half)])
    return {"valley": line(meet), "mean": area / half}


def source(E, Rs, Vd, f, C, I):
    """Steps the circuit through the switching instants for many half cycles until it repeats."""
    w = 2 * math.pi * f
    half = 1 / (2 * f)
    emf = lambda t: math.sqrt(2) * E * abs(math.sin(w * t))
    opens = lambda t, y: emf(t) - 2 * Vd - y[0]
    charge = lambda t, y: [((emf(t) - 2 * Vd - y[0]) / Rs - I) / C]
    opens.terminal = True
    opens.direction = -1
    v = math.sqrt(2) * E - 2 * Vd - I * Rs
    for cycle in range(2000):
        # From the zero of the EMF the bus falls in a straight line until the EMF beats it.
        start = brentq(lambda t: emf(t) - 2 * Vd - (v - I / C * t), 0, half / 2, xtol=1e-16, rtol=1e-14)
        v0 = v - I / C * start
        run = solve_ivp(charge, (start + 1e-9, half), [v0], events=opens, method="DOP853", rtol=1e-12,
                        atol=1e-12, max_step=half / 200, dense_output=True)
        end = run.t_events[0][0] if len(run.t_events[0]) else half
        after = run.y_events[0][0][0] if len(run.t_events[0]) else run.y[0][-1]
        new = after - I / C * (half - end)
        if abs(new - v) < 1e-12:
            break
        v = new
    t = np.linspace(start + 1e-9, end, 200001)
    bus = run.sol(t)[0]
    e = math.sqrt(2) * E * np.sin(w * t)
    i = np.maximum((e - 2 * Vd - bus) / Rs, 0)
    rest = half - (end - start)
    fall = 2 * after - I / C * rest
    trapezoid = lambda y: float(np.sum((y[1:] + y[:-1]) / 2 * np.diff(t)))
    return {
        "mean": (trapezoid(bus) + fall / 2 * rest) / half,
        "valley": float(bus.min()),
        "ripple": float(bus.max() - bus.min()),
        "secondary": math.sqrt(trapezoid(i**2) / half),
        "peak": float(i.max()),
        "capacitor": math.sqrt((trapezoid((i - I) ** 2) + I * I * rest) / half),
        "power": trapezoid(e * i) / half,
    }


def braking(J, alpha, Tc, b, Kt, R, w1):
    def power(t):
        w = w1 - alpha * t
        torque = J * alpha - Tc - b * w
        return torque * w - (torque / Kt) ** 2 * R

    stop = w1 / alpha
    t = np.linspace(0, stop, 20001)
    p = np.array([power(x) for x in t])
    crossings = [brentq(power, t[k], t[k + 1], xtol=1e-15) for k in range(len(t) - 1) if p[k] * p[k + 1] < 0]
    edges = [0.0, *crossings, stop]
    energy = sum(quad(power, a, c, epsabs=1e-13)[0] for a, c in zip(edges, edges[1:]) if power((a + c) / 2) > 0)
    return {"energy": energy, "peak": max(0.0, float(p.max()))}


WORK = {"ideal": ideal, "source": source, "braking": braking}
json.dump({name: [{"given": case, "result": WORK[name](**case)} for case in cases] for name, cases in CASES.items()},
          sys.stdout, indent=1)
print()
