#!/bin/sh
# Installs the Debian packages the project needs: `sh apps/setup.sh`, or `sh apps/setup.sh tests`
# for those of the tests as well. Installs nothing when all are there.
set -eu

packages='build-essential cmake ninja-build qt6-base-dev libqt6sql6-sqlite libhpdf-dev
    libsodium-dev libsqlite3-dev libzint-dev nlohmann-json3-dev fonts-dejavu-core'
if [ "${1:-}" = tests ]; then
    packages="$packages libgtest-dev libgmock-dev libgsl-dev libbenchmark-dev librapidcheck-dev
        libsqlite3-dev clang-22 clang-format-22 clang-tidy-22 libclang-rt-22-dev llvm-22 lld gcovr ccache
        git qpdf poppler-utils python3 python3-jsonschema sqlite3 xvfb zbar-tools"
fi

missing=''
for package in $packages; do
    dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'ok installed' ||
        missing="$missing $package"
done
[ -n "$missing" ] || exit 0

as_root=''
[ "$(id -u)" -eq 0 ] || as_root=sudo
echo "installing:$missing"
$as_root apt-get update -qq
# shellcheck disable=SC2086 # one word per package is what is wanted
$as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing \
    >/dev/null
