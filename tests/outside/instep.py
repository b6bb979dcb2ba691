"""Tapping with spindle and axis in step by a general-purpose integrator, to be held against engine/simulate/instep.

Prints JSON. Needs scipy. Each look of the control is one call of solve_ivp (DOP853); where the spindle turns round, its
own event finder says so. The equations are written here anew: the spindle's drive is a speed loop (proportional and
integral) whose torque a straight line of speed limits, the axis a first-order lag behind straight pieces of command.
"""
import json
import math

from scipy.integrate import solve_ivp

J, DRAG, B, KV = 0.02, 0.6, 60.0, 30.0
LEAD, SPEED, CLEAR, DEPTH, CUT, RUB = 1.25e-3, 900 * 2 * math.pi / 60, 6e-3, 18e-3, 3.0, 0.3
COUNTS, PERIOD, DELAY = 4096, 1e-3, 0.012
TOP = 200.0
KP, KI = J * B, J * B * B / 4


def driving(w):
    return 12 - 4 * w / TOP


def braking(w):
    return 9 - 5 * w / TOP


def torque(w, held, wanted):
    asked = KP * (wanted - w) + held
    way = math.copysign(1, w) if w != 0 else math.copysign(1, asked)
    most = driving(abs(w)) if asked * way >= 0 else braking(abs(w))
    return (asked, False) if abs(asked) <= most else (math.copysign(most, asked), True)


def rates(way, cut, wanted, z0, c0, cv, t0):
    def f(t, y):
        angle, w, held, z = y
        drive, limited = torque(w, held, wanted)
        return [w, (drive - way * (DRAG + cut)) / J, 0 if limited else KI * (wanted - w), KV * (c0 + cv * (t - t0) - z)]

    return f


def turns_round(t, y):
    return y[1]


turns_round.terminal = True


def piece(t0, t1, y, cut, wanted, line):
    """From t0 to t1, in parts where the spindle turns round."""
    while t1 - t0 > 1e-13:
        w = y[1]
        if abs(w) < 1e-9:
            y[1] = 0.0
            drive, _ = torque(0.0, y[2], wanted)
            assert abs(drive) > DRAG + cut
            way = math.copysign(1, drive)
            y[1] = way * 1e-12
        else:
            way = math.copysign(1, w)
        turns_round.direction = -way
        s = solve_ivp(rates(way, cut, wanted, y[3], *line), (t0, t1), y, method="DOP853", rtol=1e-10, atol=1e-13,
                      events=turns_round, max_step=2e-4)
        y = list(s.y[:, -1])
        t0 = s.t[-1]
        if s.status == 1:
            y[1] = 0.0
    return y


def main():
    y = [0.0, 0.0, 0.0, 0.0]
    per = LEAD / (2 * math.pi)
    step = 2 * math.pi / COUNTS
    place, speed, start = 0.0, 0.0, 0.0
    wanted, change = SPEED, math.inf
    told = None
    farthest = 0.0
    rows = []
    look = 0
    while True:
        t = look * PERIOD
        if look % 100 == 0:
            rows.append({"t": t, "angle": y[0], "speed": y[1], "place": y[3] - CLEAR})
        if told is not None and y[1] < 0 and y[0] <= 0:
            break
        seen = math.floor(y[0] / step + 1e-9) * step
        here = place + speed * (t - start)
        place, start = here, t
        speed = (per * seen - here) / PERIOD
        if told is None and per * seen >= CLEAR + DEPTH:
            told = (t, y[0], y[1])
            change = t + DELAY
        in_hole = per * y[0] > CLEAR
        out = told is not None and y[1] <= 0
        cut = CUT * (RUB if out else 1) if in_hole else 0.0
        line = (place, speed, t)
        end = t + PERIOD
        if t <= change < end - 1e-12:
            y = piece(t, change, y, cut, wanted, line)
            wanted, change = -SPEED, math.inf
            y = piece(max(t, told[0] + DELAY), end, y, cut, wanted, line)
        else:
            y = piece(t, end, y, cut, wanted, line)
        farthest = max(farthest, y[0])
        look += 1
        assert look < 20000
    print(json.dumps({"told": {"t": told[0], "speed": told[2]}, "overTurn": farthest - told[1], "time": t,
                      "rows": rows}, indent=1))


main()
