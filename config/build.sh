#!/bin/sh
# Configures build/release and builds the target named ("all" when none is): one build folder for try.sh and test.sh.
set -eu
top=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd)
build="$top/build/release"
mkdir -p "$build"
log="$build/last-build.log"
{ cmake -S "$top" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Release -DFLOATWRIGHT_SOURCES_TOGETHER=ON && cmake --build "$build" --parallel "$(nproc)" --target "${1:-all}"; } >"$log" 2>&1 || {
  echo "floatwright: the build failed; the end of $log:" >&2
  tail -n 40 "$log" >&2
  exit 1
}
