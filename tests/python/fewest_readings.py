"""Fewest rows that cover all columns, and among so few the least effort, as two integer programmes.

Reads a line of JSON for each system: {"columns": n, "rows": [[effort, [column, ...]], ...]}. Writes a line for each: the least number of
rows, and the least effort of so many. Columns that no row covers are left out. Solver: HiGHS, through scipy.optimize.milp.
"""

import json
import sys

import numpy
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import csr_matrix, vstack


def solved(cost, constraints, size):
    result = milp(
        cost,
        constraints=constraints,
        integrality=numpy.ones(size),
        bounds=Bounds(0, 1),
        options={"mip_rel_gap": 0},
    )
    if not result.success:
        sys.exit("not solved: " + result.message)
    return round(result.fun)


for line in sys.stdin:
    system = json.loads(line)
    rows = system["rows"]
    size = len(rows)
    at = [(column, row) for row, (_, columns) in enumerate(rows) for column in columns]
    covered = sorted({column for column, _ in at})
    if not covered:
        print(0, 0)
        continue
    place = {column: number for number, column in enumerate(covered)}
    matrix = csr_matrix(
        (numpy.ones(len(at)), ([place[column] for column, _ in at], [row for _, row in at])),
        shape=(len(covered), size),
    )
    cover = LinearConstraint(matrix, lb=1)
    count = solved(numpy.ones(size), [cover], size)
    few = LinearConstraint(numpy.ones((1, size)), ub=count)
    effort = solved(numpy.array([effort for effort, _ in rows], dtype=float), [cover, few], size)
    print(count, effort)
