#!/bin/sh
# Makes tomorrow's float plan for the invented Lantern River, from a shell and this checkout alone: installs what is
# missing, builds, and plans from the recorded payloads in fixtures/ (no network, no account).
set -eu
top=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd)
sh "$top/config/setup.sh"
echo "floatwright: building (a few minutes the first time) ..." >&2
sh "$top/config/build.sh" floatwright

program="$top/build/release/adapters/cli/floatwright"
out="$top/build/demo"
now=2027-05-13T19:50:00-06:00   # fixed, so that the plan is the same everywhere
export STATE_DIRECTORY="$top/build/demo-state"   # what a run remembers; yours is left alone
export CACHE_DIRECTORY="$top/build/demo-cache"   # fishing tables, worked out by the first run
"$program" plan --config "$top/config/demo" --offline --now "$now"
"$program" plan --config "$top/config/demo" --offline --now "$now" --as plan,json --out "$out"

cat <<TEXT

This is the demo. The same plan lies in $out as text and as JSON (2027-05-14-plan.json, see config/schemas/plan.schema.json).
What to type next:
  $program check --config $top/config/demo
  $program plan --config $top/config/demo --offline --now $now --units metric
For a river of your own: cp -r $top/config/demo ~/my-river, write your gauges, places, rods and habits into its three
files, take "readings" out of settings.json (they are fetched then) and name a directory of yours as "archive"; then
  $program check --config ~/my-river
  $program plan --config ~/my-river
TEXT
