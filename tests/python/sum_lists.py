"""Adds up what has to be bought for a job from its file alone, and holds the program's own lists against it.

Called with the job file, the lists as JSON, and the name of the sheet that is made. Knows nothing of the program but the job
file; says every difference, and ends with 1 if there is one.
"""

import json
import math
import sys
from collections import defaultdict

WASTE = 0.10
SPARE_AT_EACH_END = 0.10


def value(fact):
    """A fact: bare, {"assumed": x}, or null."""
    return fact.get("assumed") if isinstance(fact, dict) else fact


def given(fact):
    return None if isinstance(fact, dict) else fact


def is_line(sheet, end):
    """Whether an end is on a jack that carries a line-level signal."""
    if "on" not in end:
        return False
    kind = next(iter(sheet["parts"][end["on"]["part"]]["is"]))
    name = end["on"]["terminal"]
    if kind == "head":
        return name in ("front-l", "front-r", "rear-l", "rear-r", "sub")
    if kind in ("amplifier", "processor", "line-converter"):
        stem = name.rstrip("0123456789")
        return stem in ("in", "line") and name != stem
    return False


def fate(thing):
    return thing.get("handling", {}).get("fate")


def another_wire(before, after):
    was, now = before["wire"], after["wire"]
    for name in ("size", "material"):
        if given(was[name]) is not None and value(now[name]) not in (None, given(was[name])):
            return True
    old, new = given(was["insulation"]), given(now["insulation"])
    if old is not None and new is not None and old != new:
        return True
    if was["colour"] != now["colour"]:
        return True
    old, new = given(was["length"]), given(now["length"])
    if old is not None and new is not None and new > old + 0.05:
        return True
    spoilt = value(was["condition"]) not in (None, "sound", "wet")
    return spoilt and value(now["condition"]) == "sound"


def is_cut(run, before):
    if before is None:
        return run.get("fitted_by", "us") == "us"
    return fate(run) == "replace" or another_wire(before, run)


def fuses_of(part):
    """Form and rating of the fuses in a part."""
    kind, it = next(iter(part["is"].items()))
    if kind == "fuse" and value(it["rating"]) is not None:
        return [(it["form"], value(it["rating"]))]
    if kind == "block":
        ratings = [one.strip() for one in it["fuses"].split(",") if one.strip() not in ("", "-")]
        return [(it["form"], float(one.rstrip("A"))) for one in ratings]
    return []


def expected(job, sheet_name):
    sheet = job["sheets"][sheet_name]
    order = ["found", "plan", "built"]
    first = min(job["sheets"], key=order.index)
    base = job["sheets"][first] if first != sheet_name else None
    cable, endings, cuts = defaultdict(float), defaultdict(int), {}
    for key, run in sheet["runs"].items():
        before = base["runs"].get(key) if base else None
        if base is None and run.get("fitted_by", "us") != "us":
            continue
        wire = run["wire"]
        cut = is_cut(run, before) and (before is not None or run.get("fitted_by", "us") == "us")
        lead = is_line(sheet, run["from"]) and is_line(sheet, run["to"])
        if cut:
            length = value(wire["length"])
            slack = run.get("laying", {}).get("slack")
            length += value(slack) if slack is not None else 2 * SPARE_AT_EACH_END
            length = math.ceil(round(length * 100, 6)) / 100
            cuts[run["tag"]] = length
            if not lead:
                cable[(value(wire["material"]), value(wire["size"]), wire["colour"])] += length
        if lead:
            continue
        for end in ("from", "to"):
            method = value(run.get(f"{end}_ending", {}).get("method"))
            if not cut:
                old = value(before[f"{end}_ending"]["method"]) if before and f"{end}_ending" in before else None
                moved = before is not None and before[end].get("on") != run[end].get("on")
                made = before is not None and method not in (None, "factory", "loose")
                if not (made and (moved or (old is not None and old != method))):
                    continue
            if method in ("ring", "spade", "ferrule", "butt"):
                endings[(method, value(wire["size"]))] += 1
    fuses = defaultdict(int)
    for key, part in sheet["parts"].items():
        before = base["parts"].get(key) if base else None
        ours = part.get("fitted_by", "us") == "us"
        there = fuses_of(before) if before else []
        for at, fuse in enumerate(fuses_of(part)):
            bought = ours if before is None else fate(part) == "replace" or at >= len(there) or there[at] != fuse
            fuses[fuse] += bought
    return cable, endings, cuts, {fuse: count for fuse, count in fuses.items() if count}


def main():
    job_file, lists_file, sheet_name = sys.argv[1:]
    with open(job_file, encoding="utf-8") as file:
        job = json.load(file)
    with open(lists_file, encoding="utf-8") as file:
        lists = {one["list"]: one["rows"] for one in json.load(file)}
    cable, endings, cuts, fuses = expected(job, sheet_name)
    told_cable, told_bought = defaultdict(float), defaultdict(float)
    told_endings, told_fuses, labels = defaultdict(int), {}, 0
    for row in lists["order"]:
        words = row["article"].split()
        if row["section"] == "Cable":
            told_cable[tuple(words[1:4])] += row["used"]
            told_bought[tuple(words[1:4])] += row["quantity"]
        elif row["section"] == "Terminals":
            told_endings[(words[0], words[1])] += row["quantity"]
        elif row["section"] == "Fuses":
            told_fuses[(words[1], float(words[2].rstrip("A")))] = row["quantity"]
        elif row["article"] == "label":
            labels = row["quantity"]
    wrong = []

    def hold(what, ours, theirs):
        for key in sorted(set(ours) | set(theirs), key=str):
            one, other = ours.get(key, 0), theirs.get(key, 0)
            if abs(one - other) > 1e-6:
                wrong.append(f"{sheet_name}: {what} {key}: {one} by the file, {other} in the list")

    hold("cable", cable, told_cable)
    hold("ending", endings, {key: count for key, count in told_endings.items() if key[0] in ("ring", "spade", "ferrule", "butt")})
    hold("fuse", fuses, told_fuses)
    hold("cut", cuts, {row["tag"]: row["cut-length"] for row in lists["cut"]})
    if 2 * len(cuts) != len(lists["labels"]):
        wrong.append(f"{sheet_name}: {2 * len(cuts)} labels by the file, {len(lists['labels'])} in the list")
    for key, metres in cable.items():
        # One article of a size and colour may come in several insulations: each is rounded up by itself.
        if not metres * (1 + WASTE) - 1e-6 <= told_bought[key] < metres * (1 + WASTE) + 2:
            wrong.append(f"{sheet_name}: {metres} m of {key} are used, {told_bought[key]} bought")
    if labels and labels % 2:
        wrong.append(f"{sheet_name}: {labels} labels are an odd number")
    print("\n".join(wrong) or f"{sheet_name}: {len(cuts)} cuts, {sum(cable.values()):.2f} m of cable, "
          f"{sum(endings.values())} endings, {sum(fuses.values())} fuses")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
