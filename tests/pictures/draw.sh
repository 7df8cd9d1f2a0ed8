#!/bin/sh
# draw.sh FOLDER: all the pictures of tests/pictures/, drawn anew into that folder, which is
# empty.  Each day is a process of its own.  SUPPORT: where draw_pictures is.
set -u
folder=$1
said=$(mktemp -d) || exit 1
trap 'rm -rf "$said"' EXIT
running=
bad=0

for view in $("$SUPPORT/draw_pictures" asked | grep -v ' '); do mkdir -p "$folder/$view" || exit 1; done
for day in tests/pictures/*.day; do
	"$SUPPORT/draw_pictures" tests/pictures/quince_hollow.kitchen "$folder" "$day" >"$said/${day##*/}" 2>&1 &
	running="$running $!"
done
for day in $running; do wait "$day" || bad=1; done
if [ "$bad" -ne 0 ]; then cat "$said"/*; fi
exit "$bad"
