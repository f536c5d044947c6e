#!/usr/bin/env python3
"""A night of rivers: the demo with random changes, planned one process a river, two at a time.

  python3 tests/night/night.py build/release/adapters/cli/floatwright [--rivers 1000] [--seed 1] [--keep DIR]

A tenth of them is planned once before, so that fishing tables are kept. Each plan must end with 0, or 75
(readings old or missing), or 78 with a sentence that names the file that was broken; its page must be at most 80
columns wide, carry the foot of every page, promise nothing and rig only rods, lines and flies that there are. Prints what
broke that, then time and memory. Ends with 1 if anything did.
"""
import argparse
import collections
import concurrent.futures
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import time

import random_rivers

FOOT = "the law, the agency and a licensed guide on the water decide."
PROMISES = re.compile(r"\bsafe(ly)?\b|\bOK\b|\bGO\b|good to go|\bnan\b|\binf\b", re.IGNORECASE)
FRESH, OLD, CONFIGURATION = 0, 75, 78


def run_of(program, evening, environment):
    """Exit code, page, JSON (none where it was not printed), what was told, seconds, megabytes at most.

    The megabytes are at least those of this script when it starts the program: that is how they are counted.
    """
    command = [program, "plan", "--config", evening.folder, "--offline", "--now", evening.now, "--date", evening.date]
    page, told = evening.folder / "page.txt", evening.folder / "told.txt"
    with open(page, "w") as out, open(told, "w") as err:
        start = time.monotonic()
        process = subprocess.Popen(command + ["--as", "plan,json"], stdout=out, stderr=err, env=environment)
        _, status, used = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    text, _, data = page.read_text().partition("\n{\n")
    return {
        "code": process.returncode,
        "page": text,
        "plan": json.loads("{\n" + data) if data else None,
        "told": told.read_text(),
        "wall": time.monotonic() - start,
        "cpu": used.ru_utime + used.ru_stime,
        "megabytes": used.ru_maxrss / 1024,
    }


def faults_of_rods(plan, tackle):
    known = {kind: {one["id"] for one in tackle[kind]} for kind in ("rods", "lines", "flies", "tips")}
    for stretch in plan["stretches"]:
        for rod in stretch["rods"]:
            rig = rod["at_launch"] or {}
            for value, kind in ((rod["rod"], "rods"), (rig.get("line"), "lines"), (rig.get("fly"), "flies"), (rig.get("tip"), "tips")):
                if value is not None and value not in known[kind]:
                    yield f"{value} is not among the {kind}"


def refusals(told):
    """What was told, but for the warnings, which come first."""
    return "\n".join(line for line in told.splitlines() if ": warning: " not in line)


def faults(evening, run):
    if run["code"] == CONFIGURATION:
        if evening.broken_file is None:
            yield "78, though nothing was broken: " + refusals(run["told"])[:300]
        elif evening.broken_file not in run["told"]:
            yield f"78, but {evening.broken_file} is not named: " + run["told"][:300]
        return
    if run["code"] not in (FRESH, OLD):
        yield f"ended with {run['code']}: " + run["told"][:300]
        return
    if evening.broken_file is not None:
        yield f"{evening.broken_file} was broken, and the day was planned"
    if run["code"] == OLD and not run["told"]:
        yield "75 without a word"
    if run["plan"] is None:
        yield "no JSON"
        return
    for line in run["page"].splitlines():
        if len(line) > 80:
            yield f"{len(line)} columns: {line}"
        if PROMISES.search(line):
            yield f"promises: {line}"
    if FOOT not in " ".join(run["page"].split()).replace("The law", "the law"):
        yield "no foot"
    yield from faults_of_rods(run["plan"], evening.tackle)


def verdict(run):
    if run["plan"] is None:
        return f"exit {run['code']}"
    best = [s["verdict"] for s in run["plan"]["stretches"]]
    return f"exit {run['code']}, " + ("a float" if "recommended" in best else "no float")


def planned(program, evening, environment):
    """What is told of one evening; plans are not kept, a thousand of them are a gigabyte."""
    run = run_of(program, evening, environment)
    told = {key: run[key] for key in ("wall", "cpu", "megabytes")}
    return {**told, "name": evening.folder.name, "verdict": verdict(run), "faults": list(faults(evening, run))}


def night(program, rivers, seed, folder):
    environment = {**os.environ, "CACHE_DIRECTORY": str(folder / "cache")}
    random_rivers.write_flows(folder)
    evenings = [random_rivers.Evening(number, seed, folder) for number in range(rivers)]
    with concurrent.futures.ThreadPoolExecutor(2) as pair:
        cold = time.monotonic()
        list(pair.map(lambda e: planned(program, e, environment), evenings[: max(1, rivers // 10)]))
        start = time.monotonic()
        runs = list(pair.map(lambda e: planned(program, e, environment), evenings))
        wall = time.monotonic() - start
    for evening, run in zip(evenings, runs):
        for fault in run["faults"]:
            print(f"{run['name']}, {evening.now}, day {evening.date}: {fault}")
    found = sum(len(run["faults"]) for run in runs)
    walls = sorted(run["wall"] for run in runs)
    print(f"{rivers} rivers, {found} faults; a tenth of them once before, for the tables: {start - cold:.0f} s")
    print(f"all: {wall:.0f} s wall, {sum(run['cpu'] for run in runs):.0f} s CPU; one: {walls[rivers // 2]:.2f} s in the middle, {walls[-1]:.2f} s at most")
    print(f"at most {max(run['megabytes'] for run in runs):.0f} MB")
    for run in sorted(runs, key=lambda run: -run["cpu"])[:5]:
        print(f"dearest: {run['name']} {run['cpu']:.1f} s CPU, {run['megabytes']:.0f} MB")
    for what, count in sorted(collections.Counter(run["verdict"] for run in runs).items()):
        print(f"{count:5d} {what}")
    return found == 0


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("program", type=lambda p: str(pathlib.Path(p).resolve()))
    parser.add_argument("--rivers", type=int, default=1000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--keep", type=pathlib.Path, help="where the rivers and their pages stay; else they are thrown away")
    asked = parser.parse_args()
    if asked.keep:
        sys.exit(not night(asked.program, asked.rivers, asked.seed, asked.keep.resolve()))
    with tempfile.TemporaryDirectory() as folder:
        sys.exit(not night(asked.program, asked.rivers, asked.seed, pathlib.Path(folder)))


if __name__ == "__main__":
    main()
