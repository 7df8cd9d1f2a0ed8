#!/bin/sh
# keep.sh: brings the pictures of tests/pictures/ up to date with the program and shows what
# differs, line by line; those that no day draws any more are taken away.
set -eu
fresh=$(mktemp -d)
trap 'rm -rf "$fresh"' EXIT
sh tests/pictures/draw.sh "$fresh"
if diff -ruN -x '*.sh' -x '*.awk' -x '*.day' -x '*.kitchen' tests/pictures "$fresh"; then exit 0; fi
find tests/pictures -name '*.txt' -exec rm -f {} +
cp -R "$fresh"/. tests/pictures/
