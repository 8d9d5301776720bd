"""Adds up what has to be bought for a job from its file alone, and holds the program's own lists against it.

Called with the job file, the lists as JSON, the price list, and the name of the sheet that is made. Knows nothing of the program
but the job file; says every difference, and ends with 1 if there is one.

The price list has one price for all articles of a kind and size (`kind_of`), so that what it all costs follows from the job file
and these prices alone.
"""

import csv
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


SIZED = ("ring", "spade", "ferrule", "butt", "plug", "tap", "clip", "shrink-sleeve", "tube", "sleeve", "fuse-holder", "signal-lead")
SLEEVED = ("ring", "butt", "solder")


def kind_of(article):
    """What of an article's name tells its price here: cable in full, else kind and size, equipment by its kind."""
    words = article.split()
    if words[0] in ("cable", "fuse"):
        return article
    return " ".join(words[:2]) if words[0] in SIZED else words[0]


def bought_length(metres):
    return math.ceil(metres * (1 + WASTE) - 1e-6)


def guards(run):
    listed = run.get("laying", {}).get("guards") or ""
    return [tuple(one.split(":")) for one in listed.split("/") if ":" in one]


def is_ours_and_new(thing, before):
    return thing.get("fitted_by", "us") == "us" if before is None else fate(thing) == "replace"


def pieces(job, sheet_name):
    """How much of each kind of article is bought, beside fuses, and what is cut for each cable."""
    order = ["found", "plan", "built"]
    sheet = job["sheets"][sheet_name]
    first = min(job["sheets"], key=order.index)
    base = job["sheets"][first] if first != sheet_name else None
    count, metres = defaultdict(int), defaultdict(float)
    laid, there = {}, set()
    for key, run in sheet["runs"].items():
        before = base["runs"].get(key) if base else None
        if run.get("fitted_by", "us") == "us" if before is None else is_cut(run, before):
            laid[key] = run
        elif before is not None:
            there.update(guards(before))
        made = is_finished(run, before, key in laid)
        if is_line(sheet, run["from"]) and is_line(sheet, run["to"]):
            continue
        for end in made:
            method, size = value(run.get(f"{end}_ending", {}).get("method")), value(run["wire"]["size"])
            if method in SIZED:
                count[f"{method} {size}"] += 1
            if method in SLEEVED:
                count[f"shrink-sleeve {size}"] += 1
    grommets = set()
    for run in laid.values():
        wire, laying = run["wire"], run.get("laying", {})
        slack = value(laying.get("slack"))
        length = value(wire["length"]) + (2 * SPARE_AT_EACH_END if slack is None else slack)
        length = math.ceil(round(length * 100, 6)) / 100
        size = value(wire["size"])
        for passage, guard in guards(run):
            if guard == "grommet" and (passage, guard) not in there:
                grommets.add(passage)
            elif guard in ("sleeve", "tube") and not wire["sheathed"]:
                count[f"{guard}-piece"] += 1
        if is_line(sheet, run["from"]) and is_line(sheet, run["to"]):
            count[f"signal-lead {math.ceil(length * 2 - 1e-6) / 2:g}m"] += 1
            continue
        insulation = f"{value(wire['insulation']):g}C"
        metres[" ".join(("cable", value(wire["material"]), size, wire["colour"], insulation))] += length
        if wire["sheathed"]:
            metres[f"tube {size}"] += length
        spacing = value(laying.get("support-spacing"))
        if spacing:
            count[f"clip {size}"] += math.ceil(length / spacing)
        count["label"] += 2
    count["grommet"] = len(grommets)
    for key, part in sheet["parts"].items():
        kind, it = next(iter(part["is"].items()))
        before = base["parts"].get(key) if base else None
        if not is_ours_and_new(part, before):
            continue
        if kind == "ground":
            count["ground-screw"] += value(it["surface"]) == "bare"
        elif kind == "fuse":
            same = before is not None and next(iter(before["is"].values()))["form"] == it["form"]
            count[f"fuse-holder {it['form']}"] += not same or fate(part) == "replace"
        elif kind != "vehicle":
            count[kind] += 1
    return {kind: many for kind, many in count.items() if many}, metres


def is_finished(run, before, is_laid):
    """Which ends are made by us: all of a run that is laid, of one that stays those that were moved or made anew."""
    made = []
    for end in ("from", "to"):
        if is_laid:
            made.append(end)
            continue
        now = value(run.get(f"{end}_ending", {}).get("method"))
        if before is None or now in (None, "factory", "loose"):
            continue
        was = value(before.get(f"{end}_ending", {}).get("method"))
        if before[end].get("on") != run[end].get("on") or (was is not None and was != now):
            made.append(end)
    return made


def hold_money(job, lists, prices_file, sheet_name, fuses, hold):
    """Pieces and metres of every kind, and what they cost."""
    count, metres = pieces(job, sheet_name)
    for (form, rating), many in fuses.items():
        count[f"fuse {form} {rating:g}A"] = many
    for kind, length in metres.items():
        count[kind] = bought_length(length)
    with open(prices_file, encoding="utf-8", newline="") as file:
        price = {kind_of(row["article"]): float(row["price"]) for row in csv.DictReader(file)}
    told, told_sums = defaultdict(float), defaultdict(float)
    for row in lists["order"]["rows"]:
        told[kind_of(row["article"])] += row["quantity"]
        told_sums[kind_of(row["article"])] += row.get("sum", 0.0)
    hold("bought", count, told)
    costs = {kind: many * price.get(kind, 0.0) for kind, many in count.items()}
    hold("cost", costs, told_sums)
    total = sum(costs.values())
    note = next((one for one in lists["order"]["notes"] if f"{total:.2f}" in one), None)
    if count and note is None:
        hold("total", {"all": total}, {"all": " / ".join(lists["order"]["notes"])})
    return total


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
    job_file, lists_file, prices_file, sheet_name = sys.argv[1:]
    with open(job_file, encoding="utf-8") as file:
        job = json.load(file)
    with open(lists_file, encoding="utf-8") as file:
        whole = {one["list"]: one for one in json.load(file)}
    lists = {name: one["rows"] for name, one in whole.items()}
    cable, endings, cuts, fuses = expected(job, sheet_name)
    told_cable, told_bought = defaultdict(float), defaultdict(float)
    told_endings, told_fuses = defaultdict(int), {}
    for row in lists["order"]:
        words = row["article"].split()
        if row["section"] == "Cable":
            told_cable[tuple(words[1:4])] += row["used"]
            told_bought[tuple(words[1:4])] += row["quantity"]
        elif row["section"] == "Terminals":
            told_endings[(words[0], words[1])] += row["quantity"]
        elif row["section"] == "Fuses":
            told_fuses[(words[1], float(words[2].rstrip("A")))] = row["quantity"]
    wrong = []

    def hold(what, ours, theirs):
        for key in sorted(set(ours) | set(theirs), key=str):
            one, other = ours.get(key, 0), theirs.get(key, 0)
            if isinstance(other, str) or abs(one - other) > 1e-6:
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
    total = hold_money(job, whole, prices_file, sheet_name, fuses, hold)
    print("\n".join(wrong) or f"{sheet_name}: {len(cuts)} cuts, {sum(cable.values()):.2f} m of cable, "
          f"{sum(endings.values())} endings, {sum(fuses.values())} fuses, {total:.2f} in all")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
