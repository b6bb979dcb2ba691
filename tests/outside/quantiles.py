"""Quantiles and probabilities of Student's t, chi square and the normal distribution, to be held against our own.

Prints JSON. Needs numpy and scipy. Inputs stand in CASES and are written into the output.
"""
import json
import sys

from scipy import stats

FREEDOMS = [0.5, 1, 1.5, 2, 3, 4, 5.3, 8, 9.99, 16, 30.5, 50, 120, 1000, 54321.5, 999999, 1000001, 1e9]
TAILS = [0.4, 0.25, 0.1, 0.05, 0.025, 0.005, 5e-4, 1e-6, 1e-9]

CASES = {
    "student": [{"tail": q, "freedom": v} for v in FREEDOMS for q in TAILS],
    "chi": [{"p": p, "freedom": v} for v in FREEDOMS[:-1] for p in [1e-6, 0.001, 0.025, 0.3, 0.5, 0.7, 0.95, 0.975, 0.999]],
    "normal": [{"tail": q} for q in [0.49, *TAILS, 1e-12, 1e-20, 1e-100]],
    "below": [{"t": t, "freedom": v} for v in [0.5, 1, 3, 12.5, 400, 1e7] for t in [-30, -4, -1.2, -0.01, 0.3, 2, 7]],
}

WORK = {
    # Upper tails as inputs, so that no probability near one loses its digits on the way.
    "student": lambda tail, freedom: stats.t.isf(tail, freedom),
    "chi": lambda p, freedom: stats.chi2.ppf(p, freedom),
    "normal": lambda tail: stats.norm.isf(tail),
    "below": lambda t, freedom: stats.t.cdf(t, freedom),
}
json.dump({name: [{"given": case, "result": float(WORK[name](**case))} for case in cases] for name, cases in CASES.items()},
          sys.stdout, indent=1)
print()
