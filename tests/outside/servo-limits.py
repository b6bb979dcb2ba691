"""Three numbers of an axis by general-purpose solvers, to be held against engine/simulate. Prints JSON.

bus: the highest bus voltage on braking, by scipy's solve_ivp of the bus alone under an ideally followed stop.
pullOut: the greatest mean torque of a stepping motor at a speed and voltage, both windings solved in time, over all angles
between voltage and rotor.
trip: the chance that an axis trips in a steady run, by a Monte Carlo of its own (numpy's random numbers) of the lag v/Kp.
"""
import json
import math

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import minimize_scalar


def bus(speed=0.12, stop=2.0, volts=75.0, capacitance=0.022):
    r = 0.005 / (2 * math.pi)
    R, K, b = 1.2, 0.35, 1e-3
    J = 8e-4 + 4e-4 + 120 * r * r
    dry = 0.25

    def power(t):
        w = (speed - stop * t) / r
        i = (-J * stop / r + dry + b * w) / K
        return R * i * i + K * w * i

    answer = solve_ivp(
        lambda t, v: -power(t) / (capacitance * v),
        [0, speed / stop],
        [volts],
        rtol=1e-11,
        atol=1e-11,
        max_step=1e-4,
    )
    return float(answer.y[0].max())


def pull_out(rpm, volts=68.0, holding=4.5, amps=5.6, R=0.4, L=3.5e-3, teeth=50):
    """Two windings, each with its back-EMF; peaks of sine waves, as the drive makes them of its bus."""
    k = holding / (math.sqrt(2) * amps)
    w = rpm * math.pi / 30
    we = teeth * w
    period = 2 * math.pi / we

    def torque(lead):
        def flow(t, i):
            a, b = we * t, we * t - math.pi / 2
            return [
                (volts * math.cos(a + lead) - R * i[0] - k * w * math.cos(a)) / L,
                (volts * math.cos(b + lead) - R * i[1] - k * w * math.cos(b)) / L,
            ]

        # Long enough for the winding to forget its start.
        end = math.ceil(16 * L / R / period) * period
        times = np.linspace(end, end + period, 401)
        answer = solve_ivp(flow, [0, end + period], [0, 0], t_eval=times, rtol=1e-8, atol=1e-9)
        pull = k * (answer.y[0] * np.cos(we * times) + answer.y[1] * np.cos(we * times - math.pi / 2))
        return float(np.trapezoid(pull, times) / period)

    # Sines with a constant in between have one top over a turn of the angle.
    best = minimize_scalar(lambda lead: -torque(lead), bounds=(0, math.pi), method="bounded", options={"xatol": 1e-5})
    return min(-best.fun, k * amps)


def trip(gain=40.0, share=0.1, speed=0.04, limit=1.05e-3, draws=2_000_000):
    """The lag of a steady run is speed over position gain; the gain is drawn normally."""
    kp = gain * (1 + share * np.random.default_rng(5).standard_normal(draws))
    return float(np.mean(speed / kp > limit))


print(
    json.dumps(
        {
            "bus": bus(),
            "pullOut": [[rpm, pull_out(rpm)] for rpm in (1200, 2000)],
            "trip": trip(),
        },
        indent=2,
    )
)
