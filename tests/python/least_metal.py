"""The least metal with which the drop to every load stays within its limit, as an integer programme (HiGHS, by scipy).

Reads JSON: `runs`, for each the costs and the drops of the sizes that may be laid; `loads`, for each its limit and the runs on
its way. Prints the least sum of costs, or `none`.
"""

import json
import sys

import numpy
from scipy.optimize import Bounds, LinearConstraint, milp

asked = json.load(sys.stdin)
places = []
for run in asked["runs"]:
    start = len(places)
    places.extend(range(start, start + len(run["costs"])))
    run["start"] = start
count = len(places)
costs = numpy.concatenate([run["costs"] for run in asked["runs"]])
rows, least, most = [], [], []
for run in asked["runs"]:
    row = numpy.zeros(count)
    row[run["start"] : run["start"] + len(run["costs"])] = 1.0
    rows.append(row)
    least.append(1.0)
    most.append(1.0)
for load in asked["loads"]:
    row = numpy.zeros(count)
    for at in load["way"]:
        run = asked["runs"][at]
        row[run["start"] : run["start"] + len(run["drops"])] = run["drops"]
    rows.append(row)
    least.append(-numpy.inf)
    most.append(load["limit"])
found = milp(
    costs,
    constraints=LinearConstraint(numpy.array(rows), least, most),
    integrality=numpy.ones(count),
    bounds=Bounds(0, 1),
    options={"mip_rel_gap": 0.0},
)
print("none" if found.x is None else repr(float(costs @ numpy.round(found.x))))
