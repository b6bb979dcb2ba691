"""A sampled servo axis with dry friction by a general-purpose integrator, to be held against engine/simulate.

Prints JSON. Needs scipy. Each sample of the current loop is one call of solve_ivp (DOP853); friction events are located
by its own event finder. With an argument (a relative tolerance) it prints peak error and processor seconds instead.
"""
import json
import math
import sys
import time

from scipy.integrate import solve_ivp

r = 0.005 / (2 * math.pi)
M = dict(R=1.2, L=3e-3, K=0.35, J1=1.2e-3, J2=120 * r * r, k=6e7 * r * r, c=5000 * r * r, T1=0.05, b1=1e-3, Ts=260 * r,
         Tc=200 * r, b2=500 * r * r, fall=0.002 / r, Kp=40, Kvp=0.7, Kvi=35, kff=1, Kcp=9.5, Kci=3800, limit=20,
         volt=0.95 * 75, T=5e-5, count=2 * math.pi / 4000, every=4, v=0.12 / r, a=2 / r, dist=0.05 / r)


def reference(t):
    """Trapezoid."""
    m = M
    up = m["v"] / m["a"]
    cruise = m["dist"] / m["v"] - up
    if t < up:
        return m["a"] * t * t / 2, m["a"] * t
    if t < up + cruise:
        return m["v"] * up / 2 + m["v"] * (t - up), m["v"]
    s = t - up - cruise
    if s < up:
        return m["v"] * (up / 2 + cruise + s) - m["a"] * s * s / 2, m["v"] - m["a"] * s
    return m["dist"], 0.0


def torque(y):
    return M["k"] * y[2] + M["c"] * (y[0] - y[1])


def rates(s1, s2, v):
    m = M
    sign = (s2 > 0) - (s2 < 0)
    if abs(s2) == 1:
        dry, slope = sign * m["Ts"], m["b2"] - (m["Ts"] - m["Tc"]) / m["fall"]
    else:
        dry, slope = sign * m["Tc"], m["b2"]

    def f(t, y):
        spring = torque(y)
        return [
            0 if s1 == 0 else (m["K"] * y[3] - spring - s1 * m["T1"] - m["b1"] * y[0]) / m["J1"],
            0 if s2 == 0 else (spring - dry - slope * y[1]) / m["J2"],
            y[0] - y[1],
            (v - m["R"] * y[3] - m["K"] * y[0]) / m["L"],
            y[0],
        ]

    return f


def guards(s1, s2):
    m = M
    found = []
    if s1 == 0:
        found += [("b1", lambda t, y: m["T1"] - (m["K"] * y[3] - torque(y))), ("b1", lambda t, y: m["T1"] + m["K"] * y[3] - torque(y))]
    else:
        found.append(("s1", lambda t, y: s1 * y[0]))
    if s2 == 0:
        found += [("b2", lambda t, y: m["Ts"] - torque(y)), ("b2", lambda t, y: m["Ts"] + torque(y))]
    elif abs(s2) == 1:
        found += [("s2", lambda t, y: s2 * y[1]), ("fast", lambda t, y: m["fall"] - s2 * y[1])]
    else:
        found.append(("slow", lambda t, y: s2 / 2 * y[1] - m["fall"]))
    for _, g in found:
        g.terminal = True
        g.direction = -1
    return found


def run(until, rtol, marks, method="DOP853"):
    m = M
    y = [0.0] * 5
    s1 = s2 = 0
    zv = zc = want = last = queue = 0.0
    peak = 0.0
    rows = {}
    n = round(until / m["T"])
    for k in range(n + 1):
        ref, ref1 = reference(k * m["T"])
        if k % m["every"] == 0:
            peak = max(peak, abs(ref - y[4]))
        if k in marks:
            rows[k] = {"t": k * m["T"], "following": (ref - y[4]) * r, "slide": (y[4] - y[2]) * r, "speed": y[0], "current": y[3]}
        if k == n:
            break
        if k % m["every"] == 0:
            seen = math.floor(y[4] / m["count"] + 0.5) * m["count"]
            e = m["Kp"] * (ref - seen) + m["kff"] * ref1 - (seen - last) / (m["T"] * m["every"])
            last = seen
            asked = m["Kvp"] * e + m["Kvi"] * zv
            want = max(-m["limit"], min(m["limit"], asked))
            zv += m["T"] * m["every"] * (e - (asked - want) / m["Kvp"])
        e = want - y[3]
        asked = m["Kcp"] * e + m["Kci"] * zc
        had = max(-m["volt"], min(m["volt"], asked))
        zc += m["T"] * (e - (asked - had) / m["Kcp"])
        v, queue = queue, had
        t, end = 0.0, m["T"]
        for _ in range(60):
            found = guards(s1, s2)
            sol = solve_ivp(rates(s1, s2, v), (t, end), y, method=method, rtol=rtol, atol=rtol * 1e-3, events=[g for _, g in found])
            y = [float(x) for x in sol.y[:, -1]]
            t = float(sol.t[-1])
            if sol.status != 1:
                break
            kind = next(found[i][0] for i in range(len(found)) if len(sol.t_events[i]))
            net1, net2 = m["K"] * y[3] - torque(y), torque(y)
            if kind == "s1":
                y[0] = 0.0
                net1 = m["K"] * y[3] - torque(y)
                s1 = 0 if abs(net1) <= m["T1"] else (1 if net1 > 0 else -1)
            elif kind == "b1":
                s1 = 1 if net1 > 0 else -1
            elif kind == "b2":
                s2 = 1 if net2 > 0 else -1
            elif kind == "s2":
                y[1] = 0.0
                net2 = torque(y)
                s2 = 0 if abs(net2) <= m["Ts"] else (1 if net2 > 0 else -1)
            elif kind == "fast":
                s2 *= 2
            else:
                s2 //= 2
    return peak * r, rows


if len(sys.argv) > 1:
    start = time.process_time()
    peak, _ = run(0.1, float(sys.argv[1]), {}, sys.argv[2] if len(sys.argv) > 2 else "RK45")
    print(json.dumps({"peak": peak, "seconds": time.process_time() - start}))
else:
    marks = {20, 100, 200, 400, 1000, 1400, 2000}
    peak, rows = run(0.1, 1e-11, marks)
    json.dump({"peak": peak, "rows": [rows[k] for k in sorted(rows)]}, sys.stdout, indent=1)
    print()
