"""Solves the warming of conductors in a shorted loop with a general solver of differential equations, knowing nothing but physics.

Reads from the file that is named: the electromotive force, what resistance stays, the wires with their metal, and the points of a
fuse's operating times. Writes when the fuse opens and when each wire reaches its limit, and the temperatures at given times.

    dT/dt = (I^2 r(T) - (T - Ta) / Rth) / C          for each wire, per metre
    I     = E / (R + sum of r(T) * length)
    age   = integral of dt / t_open(I)
"""

import json
import math
import sys

from scipy.integrate import solve_ivp

with open(sys.argv[1]) as file:
    told = json.load(file)

wires = told["wires"]
for wire in wires:
    # Ohms per metre at 20 degC and joules per kelvin and metre, from resistivity and heat by volume.
    wire["r"] = wire["rho"] / wire["area"]
    wire["c"] = wire["heat"] * wire["area"] * 1000.0
    # The rated current at 30 degC brings it to its rating: that gives the thermal resistance.
    hot = wire["r"] * (1.0 + wire["alpha"] * (wire["rating"] - 20.0))
    wire["rth"] = (wire["rating"] - 30.0) / (wire["rated"] ** 2 * hot)


def resistance(wire, temperature):
    return wire["ohms"] * (1.0 + wire["alpha"] * (temperature - 20.0))


def current(temperatures):
    total = told["stays"] + sum(resistance(w, t) for w, t in zip(wires, temperatures))
    return told["emf"] / total


def opens_after(amps):
    points = told["points"]
    multiple = amps / told["fuse"]
    if multiple < points[0][0]:
        return math.inf
    for (x0, y0), (x1, y1) in zip(points, points[1:]):
        if multiple <= x1:
            share = math.log(multiple / x0) / math.log(x1 / x0)
            return y0 * (y1 / y0) ** share
    x, y = points[-1]
    return y * (x / multiple) ** 2


def law(_, state):
    temperatures = state[:-1]
    amps = current(temperatures)
    out = []
    for wire, t in zip(wires, temperatures):
        heat = amps**2 * wire["r"] * (1.0 + wire["alpha"] * (t - 20.0))
        out.append((heat - (t - wire["ambient"]) / wire["rth"]) / wire["c"])
    out.append(1.0 / opens_after(amps))
    return out


def passes(at, limit):
    def event(_, state):
        return state[at] - limit

    event.direction = 1
    return event


events = [passes(at, wire["limit"]) for at, wire in enumerate(wires)] + [passes(len(wires), 1.0)]
begin = [wire["begins"] for wire in wires] + [0.0]
span = told["until"]
answer = solve_ivp(
    law, (0.0, span), begin, method="LSODA", rtol=1e-9, atol=1e-9, events=events, t_eval=sorted({0.0, span, *told["times"]})
)
if not answer.success:
    sys.exit(answer.message)
firsts = [float(times[0]) if len(times) else None for times in answer.t_events]
by_time = {float(t): [float(x) for x in answer.y[:-1, at]] for at, t in enumerate(answer.t)}
print(
    json.dumps(
        {
            "limits": firsts[:-1],
            "opens": firsts[-1],
            "temperatures": [by_time[float(t)] for t in told["times"]],
        }
    )
)
