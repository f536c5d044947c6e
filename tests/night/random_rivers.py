"""Random changes of the demo: another river, other people and tackle, another evening. The same seed gives the same ones.

Boxes of tackle and casts are from a few fixed ones, as a guide's are, so that fishing tables are worked out once.
"""
import copy
import json
import pathlib
import random
import re

DEMO = pathlib.Path(__file__).resolve().parents[2] / "config/demo"
PAYLOADS = DEMO / "../../fixtures/lantern/payloads"
FLOW_FACTORS = (0.4, 0.6, 0.8, 1.0, 1.3, 1.8, 3.0)  # on the demo's readings and releases
CASTS_FT = (35, 55)
BEDS = ("sand", "gravel", "cobble", "boulder", "wood")
WATERS = ("riffle", "run", "pool", "tailout", "bank", "eddy", "pocket")
METHODS = ("swing", "strip", "indicator", "tight_line", "dry")
PLATFORMS = ("drifting", "held", "anchored", "wading")


def read(name):
    return json.loads(re.sub(r"^\s*//.*$", "", (DEMO / name).read_text(), flags=re.M))


def boxes():
    """The demo's tackle, then half of its rods, then few lines and few flies."""
    whole = read("tackle.json")
    half, few = copy.deepcopy(whole), copy.deepcopy(whole)
    half["rods"] = [r for r in half["rods"] if r["id"] in ("six", "five")]
    half["lines"] = [line for line in half["lines"] if line["on_rod"] in ("six", "five")]
    few["lines"] = [line for line in few["lines"] if line["id"] in ("seven_full", "dry_floater", "seven_head")]
    few["flies"] = [fly for fly in few["flies"] if fly["id"] != "streamer_weighted"]
    return [whole, half, few]


def flows_changed(text, factor):
    """Readings of discharge (parameter 00060) times the factor; everything else as it was."""
    payload = json.loads(text)
    for row in payload.get("features", []):
        p = row["properties"]
        if p["parameter_code"] == "00060" and p["value"] is not None:
            p["value"] = f"{float(p['value']) * factor:.0f}"
    for series in payload.get("value", {}).get("timeSeries", []):
        if series["variable"]["variableCode"][0]["value"] != "00060":
            continue
        for row in (row for values in series["values"] for row in values["value"]):
            if float(row["value"]) > 0:  # below: a code for a missing one
                row["value"] = f"{float(row['value']) * factor:.0f}"
    return json.dumps(payload)


def write_flows(folder):
    """What the gauges read and the dam releases, by factor, in flow_FACTOR/."""
    for factor in FLOW_FACTORS:
        out = folder / f"flow_{factor}"
        (out / "payloads").mkdir(parents=True, exist_ok=True)
        for payload in PAYLOADS.iterdir():
            (out / "payloads" / payload.name).write_text(flows_changed(payload.read_text(), factor))
        times = (DEMO / "heron_releases.csv").read_text().splitlines()
        changed = [f"{t},{float(q) * factor:.0f}" for t, q in (row.split(",") for row in times[1:])]
        (out / "heron_releases.csv").write_text("\n".join([times[0]] + changed) + "\n")


def scaled(rng, value, sd):
    return round(value * rng.lognormvariate(0.0, sd), 2)


def change_waters(rng, waters):
    for water in waters:
        if rng.random() < 0.2:
            water["water"] = rng.choice(WATERS)
        for note in water.get("notes", [water]):
            note["depth_ft"] = scaled(rng, note["depth_ft"], 0.35)
            note["surface_speed_ft_s"] = scaled(rng, note["surface_speed_ft_s"], 0.35)
    shares = [rng.uniform(0.2, 1.0) for _ in waters]
    for water, share in zip(waters, shares):
        water["fishing_time"] = round(share / sum(shares) - 0.0005, 3)
    names = [water["water"] for water in waters]
    return len(set(names)) == len(names)


def stretch_miles(thing, factor):
    for key, value in thing.items():
        if key.endswith("mile") and isinstance(value, (int, float)):
            thing[key] = round(value * factor, 2)
        for inner in value if isinstance(value, list) else [value]:
            if isinstance(inner, dict):
                stretch_miles(inner, factor)


def drop_some(rng, things, share):
    return [thing for thing in things if rng.random() >= share]


def random_river(rng, releases):
    river = read("river.json")
    stretch_miles(river, rng.uniform(0.6, 1.6))
    for access in river["accesses"]:  # a shorter river no longer fits the map
        access["lat"] = round(45.2 + (access["lat"] - 45.2) * 0.5, 4)
        access["lon"] = round(-111.2 + (access["lon"] + 111.2) * 0.5, 4)
    river["dams"][0]["releases"] = str(releases)
    river["dams"][0]["ramping"] = rng.random() < 0.6
    if rng.random() < 0.3:
        del river["dams"][0]["releases"]
    river["altitude_ft"] = round(rng.uniform(0, 9000))
    river["snow_fed"] = rng.random() < 0.5
    river["fish"] = rng.sample(["rainbow", "brown", "cutthroat", "bull_trout"], rng.randint(1, 3))
    river["boat_limits"] = {"least_flow_cfs": round(rng.uniform(100, 600)), "most_flow_cfs": round(rng.uniform(3500, 12000))}
    for share, key in ((0.4, "closures"), (0.3, "hatches"), (0.3, "hazards"), (0.25, "reaches"), (0.15, "notes")):
        river[key] = drop_some(rng, river[key], share)
    for whole in river["notes"] + river["reaches"]:
        listed = drop_some(rng, whole["waters"], 0.1)
        whole["waters"] = copy.deepcopy(listed)
        while not change_waters(rng, whole["waters"]):
            whole["waters"] = copy.deepcopy(listed)
    for reach in river["reaches"]:
        reach["bed"] = rng.choice(BEDS)
        if not reach["waters"]:
            del reach["waters"]
    river["notes"] = [note for note in river["notes"] if note["waters"]]
    return river


def random_settings(rng, readings):
    settings = read("settings.json")
    for key in ("archive", "mail"):
        del settings[key]
    settings["readings"] = str(readings)
    settings["units"] = rng.choice(["us", "metric"])
    settings["people"] = [
        {"name": name, "cast_ft": rng.choice(CASTS_FT), "wades": rng.random() < 0.5}
        for name in rng.sample(["Ada", "Ben", "Cleo"], rng.randint(1, 2))
    ]
    settings["methods"] = {m: round(rng.uniform(0.3, 1.0), 1) for m in rng.sample(METHODS, rng.randint(1, 5))}
    settings["platforms"] = rng.sample(PLATFORMS, rng.randint(1, 4))
    settings["rods_aboard"] = rng.randint(1, 5)
    settings["hours"] = {"earliest_launch": f"{rng.randint(5, 9):02d}:00", "latest_off": f"{rng.randint(16, 21):02d}:30"}
    settings["stops_min"] = rng.randint(0, 180)
    settings["stretch"] = {"least_mi": round(rng.uniform(2, 8), 1), "most_mi": round(rng.uniform(9, 25), 1)}
    return settings


def break_it(rng, river, settings):
    """A mistake of the kind that people make; says in which file."""
    kind = rng.randrange(5)
    if kind == 0:
        river["accesses"][1]["mile"] = -4.0
    elif kind == 1:
        river["gauges"][0]["mile"] = "forty"
    elif kind == 2:
        river["notes"].append({"from": "dam", "to": "nowhere", "at_flow_cfs": 1800, "float_time_h": 2.4, "waters": []})
    elif kind == 3:
        settings["methods"] = {"whistling": 1.0}
    else:
        settings["hours"]["earliest_launch"] = "half past seven"
    return "settings.json" if kind > 2 else "river.json"


class Evening:
    """One configuration in a folder of its own, and the evening on which its plan is made."""

    def __init__(self, number, seed, folder):
        rng = random.Random(f"{seed}/{number}")
        self.folder = folder / f"river_{number:04d}"
        flow = folder / f"flow_{rng.choice(FLOW_FACTORS)}"
        river = random_river(rng, flow / "heron_releases.csv")
        settings = random_settings(rng, flow / "payloads")
        self.tackle = rng.choice(boxes())
        day, hour = rng.randint(8, 13), rng.randint(5, 19)
        self.now = f"2027-05-{day:02d}T{hour:02d}:50:00-06:00"
        self.date = f"2027-05-{day + rng.choice([0, 1, 1, 1, 1, 1, 2]):02d}"
        self.broken_file = break_it(rng, river, settings) if rng.random() < 0.05 else None
        self.folder.mkdir(parents=True, exist_ok=True)
        for name, content in (("river", river), ("settings", settings), ("tackle", self.tackle)):
            (self.folder / f"{name}.json").write_text(json.dumps(content, indent=1))
