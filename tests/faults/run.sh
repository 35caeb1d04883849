#!/bin/sh
# Cuts the power, fails the disk and the memory, kills the window, at every point there is, and
# prints what was tried as one table. Built optimised and without sanitizers.
# usage: sh tests/faults/run.sh [STATES]     power cuts (1000000); disk and memory fail in every turn
# With a build folder in $FAULTS_BUILD that is built already, nothing is built.
set -eu
cd "$(dirname "$0")/../.."

build=${FAULTS_BUILD:-}
if [ -z "$build" ]; then
    sh apps/setup.sh tests
    build=build-release
    cmake --preset release >/dev/null
    cmake --build $build --target fault_tests desktop_kill_tests
fi
export QT_QPA_PLATFORM=offscreen
export FRAMEWRIGHT_FAULTS_STATES="${1:-1000000}"
export FRAMEWRIGHT_FAULTS_IO="${FRAMEWRIGHT_FAULTS_IO:-1000000}"
export FRAMEWRIGHT_FAULTS_MEMORY="${FRAMEWRIGHT_FAULTS_MEMORY:-1000000}"
export FRAMEWRIGHT_FAULTS_KILLS="${FRAMEWRIGHT_FAULTS_KILLS:-200}"
FRAMEWRIGHT_FAULTS_BOARD=$(mktemp)
export FRAMEWRIGHT_FAULTS_BOARD
trap 'rm -f "$FRAMEWRIGHT_FAULTS_BOARD"' EXIT
trap 'exit 1' INT TERM

failed=0
for program in fault_tests desktop_kill_tests; do
    "$build/tests/faults/$program" || failed=1
done
echo
awk -F '\t' '
    BEGIN {printf "%-30s %9s %10s %9s  %s\n", "what", "count", "seed", "failures", "remarks"}
    {printf "%-30s %9d %10s %9d  %s\n", $1, $2, $3, $4, $5}
' "$FRAMEWRIGHT_FAULTS_BOARD"
exit $failed
