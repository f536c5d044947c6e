#!/usr/bin/env python3
"""The demo over twenty years of daily record with 24 lines: what season is timed on.

  python3 tests/night/long_season.py build/release/adapters/cli/floatwright

Each year is one of the demo's two, by daily means, its flows times a random factor and its water a little warmer or cooler.
The tables are worked out once before, so that the time told is that of a kept shelf.
"""
import argparse
import collections
import datetime
import json
import os
import pathlib
import random
import re
import subprocess
import sys
import tempfile
import time

import random_rivers

YEARS, LINES = 20, 24
FIRST = datetime.date(2007, 5, 1)


def daily_means(record):
    """By date: mean flow and temperature of its rows, None where there is none."""
    rows = collections.defaultdict(lambda: ([], []))
    for line in record.read_text().splitlines():
        fields = line.split("\t")
        if fields[0] != "USGS":
            continue
        day = datetime.date.fromisoformat(fields[2][:10])
        for values, field in zip(rows[day], fields[4:6]):
            if re.fullmatch(r"-?[0-9.]+", field):
                values.append(float(field))
    mean = lambda values: sum(values) / len(values) if values else None
    return {day: (mean(flows), mean(warmth)) for day, (flows, warmth) in rows.items()}


def write_years(folder):
    rng = random.Random(1)
    kinds = [(rng.randrange(2), rng.lognormvariate(0.0, 0.3), rng.gauss(0.0, 1.0)) for _ in range(YEARS)]
    for record in sorted((random_rivers.DEMO / "years").glob("*.rdb")):
        station = record.stem.split("_")[-1]
        means = daily_means(record)
        out = ["agency_cd\tsite_no\tdatetime\t1_00060_00003\t2_00010_00003", "5s\t15s\t20d\t14n\t14n"]
        for year, (of, factor, warmer) in enumerate(kinds):
            for day in range(365):
                flow, warmth = means.get(min(means) + datetime.timedelta(days=365 * of + day), (None, None))
                date = FIRST + datetime.timedelta(days=365 * year + day)
                flow = "" if flow is None else f"{flow * factor:.0f}"
                warmth = "" if warmth is None else f"{max(0.0, warmth + warmer):.1f}"
                out.append(f"USGS\t{station}\t{date}\t{flow}\t{warmth}")
        (folder / record.name).write_text("\n".join(out) + "\n")


def write_configuration(folder):
    for name in ("river", "settings"):
        content = random_rivers.read(f"{name}.json")
        for key in ("archive", "mail", "readings"):
            content.pop(key, None)
        for dam in content.get("dams", []):
            dam.pop("releases", None)
        (folder / f"{name}.json").write_text(json.dumps(content))
    tackle = random_rivers.read("tackle.json")
    owned = [line for line in tackle["lines"] if line["kind"] in ("sinking_tip", "floating_with_sinking_leader")]
    for number in range(LINES - len(tackle["lines"])):
        like = dict(owned[number % len(owned)], id=f"more_{number}", spool="spare", tip_length_ft=6.0 + number)
        tackle["lines"].append({**like, "owned": number % 2 == 0})
    (folder / "tackle.json").write_text(json.dumps(tackle))


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("program", type=lambda p: str(pathlib.Path(p).resolve()))
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        (folder / "years").mkdir()
        write_years(folder / "years")
        write_configuration(folder)
        command = [asked.program, "season", "--config", name, "--payload", str(folder / "years"), "--now", "2027-05-13T19:50:00-06:00"]
        for what in ("no tables kept", "tables kept"):
            start, before = time.monotonic(), os.times()
            told = subprocess.run(command, env={**os.environ, "CACHE_DIRECTORY": str(folder / "cache")}, capture_output=True, text=True)
            used = os.times()
            print(f"{what}: {time.monotonic() - start:.1f} s wall, {used.children_user - before.children_user:.1f} s user CPU, exit {told.returncode}")
        print("\n".join(told.stdout.splitlines()[:12]) or told.stderr)
        sys.exit(told.returncode)


if __name__ == "__main__":
    main()
