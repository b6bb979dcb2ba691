"""The numpy side of sheet-lanes.mjs: the same formulas, in pieces that stay in the processor's cache.

Reads one JSON line (code, inputs, lanes, pieces), then one line a round; answers with the processor
seconds it took and a sum.
"""
import json
import sys
import time

import numpy as np

np.seterr(all="ignore")
setup = json.loads(sys.stdin.readline())
columns = {
    key: np.fromfile(path, dtype=np.float64) if isinstance(path, str) else path
    for key, path in setup["inputs"].items()
}
lanes = setup["lanes"]
outputs = setup["outputs"]
results = {key: np.empty(lanes) for key in outputs}
code = compile(setup["code"], "formulas", "exec")


def run(piece):
    start = time.process_time()
    for begin in range(0, lanes, piece):
        end = min(lanes, begin + piece)
        scope = {"np": np}
        for key, column in columns.items():
            scope[key] = column[begin:end] if isinstance(column, np.ndarray) else column
        exec(code, scope)
        for key in outputs:
            results[key][begin:end] = scope[key]
    return time.process_time() - start


print(json.dumps({"numpy": np.__version__}), flush=True)
for line in sys.stdin:
    seconds = run(json.loads(line)["piece"])
    total = float(sum(result[np.isfinite(result)].sum() for result in results.values()))
    print(json.dumps({"seconds": seconds, "sum": total}), flush=True)
