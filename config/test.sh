#!/bin/sh
# Builds everything and runs all tests.
set -eu
top=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd)
sh "$top/config/setup.sh"
sh "$top/config/build.sh" all
sh "$top/config/build.sh" all_verify_interface_header_sets
exec ctest --test-dir "$top/build/release" --output-on-failure -j "$(nproc)"
