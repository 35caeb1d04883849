#!/bin/sh
# How the code is written: layers, clang-format, clang-tidy. Every complaint is an error.
set -eu
cd "$(dirname "$0")/../.."

sh tests/meta/layers.sh
git ls-files '*.h' '*.cpp' | xargs clang-format --dry-run --Werror
cmake -S . -B build-lint -G Ninja -DCMAKE_BUILD_TYPE=Debug >/dev/null
tidy() { xargs -P 2 -n 4 clang-tidy -p build-lint --quiet "$@"; }
git ls-files 'domain/*.cpp' 'storage/*.cpp' 'reports/*.cpp' | tidy
# Not the analyzer: Qt's and the JSON library's headers cost it a minute a file, and no decision is
# taken in apps.
git ls-files 'apps/*.cpp' | tidy --checks='-clang-analyzer-*'
echo 'layers, format and tidy are clean'
