#!/bin/sh
# Runs a test program where umockdev shows a serial line and plays what comes over it: umockdev.sh FOLDER PROGRAM
# Exit status 77 (skipped) where umockdev is not installed.
set -eu
if ! command -v umockdev-run >/dev/null; then
    echo "SKIPPED: umockdev-run is missing; install the Debian package umockdev"
    exit 77
fi
# umockdev is preloaded, before the sanitizers' own library
export ASAN_OPTIONS="verify_asan_link_order=0:${ASAN_OPTIONS:-}"
exec umockdev-run --device="$1/devices.umockdev" --script=/dev/ttyUSB0="$1/ttyUSB0.script" -- "$2"
