#!/bin/sh
# run.sh BUILD LIMIT [READER ...]: builds the fuzzer in the folder BUILD and runs the named readers, or all, each until
# LIMIT, one of libFuzzer's: -runs=500, -max_total_time=3600. Inputs that taught it something are kept in BUILD/corpus,
# what broke a reader in BUILD/broken. Ends with 77 where clang 16 is not installed.
set -eu
build=$1 limit=$2
shift 2
here=$(CDPATH= cd -- "$(dirname -- "$0")" && pwd)
top=$(CDPATH= cd -- "$here/../.." && pwd)
command -v clang++-16 >/dev/null || {
  echo "not run here: the packages clang-16 and libclang-rt-16-dev are not installed" >&2
  exit 77
}
cmake -S "$top" -B "$build" -G Ninja -DCMAKE_CXX_COMPILER=clang++-16 -DFLOATWRIGHT_FUZZERS=ON \
  -DCMAKE_BUILD_TYPE="${FUZZ_BUILD_TYPE:-Debug}" -DFLOATWRIGHT_PRECOMPILED_TESTS=OFF >"$build.log" 2>&1 &&
  cmake --build "$build" --target fuzz_reader >>"$build.log" 2>&1 || {
  tail -n 30 "$build.log" >&2
  exit 1
}
fuzz="$build/tests/fuzz/fuzz_reader"
[ $# -gt 0 ] || set -- $("$fuzz" --list)

# Where a reader's first inputs lie, below fixtures/recorded.
seeds_of() {
  case $1 in
    rating | usgs-rdb*) echo usgs-rdb ;;
    csv-gauge | wsc-*) echo wsc ;;
    usgs-stations | usgs-field-visits) echo usgs-water-data ;;
    ea-*) echo ea ;;
    nws-weather) echo nwps ;;
    *) echo "$1" ;;
  esac
}
mkdir -p "$build/broken"
for reader; do
  mkdir -p "$build/corpus/$reader"
  found="$here/found/$reader"
  [ -d "$found" ] || found=
  "$fuzz" --reader="$reader" "$limit" -seed=7 -timeout=20 -rss_limit_mb=2000 -max_len=20000 \
    -artifact_prefix="$build/broken/$reader-" "$build/corpus/$reader" "$top/fixtures/recorded/$(seeds_of "$reader")" $found \
    >"$build/$reader.log" 2>&1 || {
    grep -h -m 3 "^$reader: \|ERROR\|runtime error" "$build/$reader.log" >&2 || true
    echo "$reader: broken; the input lies in $build/broken, the rest of it in $build/$reader.log" >&2
    exit 1
  }
  echo "$reader: $(grep -h '^Done' "$build/$reader.log")"
done
