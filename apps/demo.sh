#!/bin/sh
# The main job on a bare Debian 12, as root or with sudo: installs, builds, and runs the demo of an
# invented laboratory in the folder demo/.
set -eu
cd "$(dirname "$0")/.."

sh apps/setup.sh
cmake -S . -B build -G Ninja -DWITH_TESTS=OFF >/dev/null
cmake --build build
build/apps/cli/framewright demo --folder demo
