#!/bin/sh
# An old notebook comes in; our own export comes back to the byte.
set -u
# shellcheck source=tests/report/out/out_kit.sh
. "$(dirname "$0")/../out/out_kit.sh"

round_trip() { # round_trip NAME LOG
	gives 0 export csv -f "$2" -o "$own/$1-out"
	gives 0 setup "$own/new.kitchen" -f "$own/$1-again.db"
	gives 0 import csv "$own/$1-out" -f "$own/$1-again.db"
	says "Nothing has been imported yet: --yes imports it."
	gives 0 import csv "$own/$1-out" -f "$own/$1-again.db" --yes
	gives 0 export csv -f "$own/$1-again.db" -o "$own/$1-back"
	for table in lots loads jars; do
		same "$own/$1-out/$table.csv" "$own/$1-back/$table.csv"
	done
	# By the gate, from what it has on record: jar by jar, the same answer and reasons.
	answers "$2" >"$own/$1-said"
	answers "$own/$1-again.db" >"$own/$1-said-again"
	if [ -s "$own/$1-said" ]; then good; else bad "$1: no answers"; fi
	same "$own/$1-said" "$own/$1-said-again"
}
python_with sqlite3
# Rows of a load as a whole and of jars of which something else is true.
answers() {
	"$python" -c '
import sqlite3, sys
for row in sqlite3.connect(sys.argv[1]).execute("""
    SELECT g.load_id, jar.place_in_load, g.verdict, g.reasons, g.why, g.gate FROM judgement g
    LEFT JOIN jar ON jar.id = g.jar_id WHERE g.load_id IS NOT NULL ORDER BY 1, 2"""):
    print(*row, sep="|")' "$1"
}

printf 'kitchen "Another"\n' >"$own/new.kitchen"

# --- an export ---------------------------------------------------------------------------

"$SUPPORT/season" "$own/season.db" || bad "no log"
round_trip season "$own/season.db"

# Places add up to the jars, also where one was processed again.
adds_up() { # adds_up JARS ARGUMENT...
	jars=$1
	shift
	gives 0 recall "$@"
	says "$jars jars of "
	sum=$(awk '/^$/ { exit } /^ +[0-9]+ [a-z]/ && !/processed again/ { n += $1 } END { print n + 0 }' "$own/out")
	if [ "$sum" = "$jars" ]; then good; else bad "the places of recall $* add up to $sum, not $jars"; fi
}
adds_up 4 --load 7 -f "$own/season.db"
says "1 of them processed again"
adds_up 9 --load 2 -f "$own/season.db"

gives 3 import csv "$own/season-out" -f "$own/season-again.db" --yes
says "is in the log already"
"$SUPPORT/season" "$own/open.db" open || bad "no log"
gives 0 export csv -f "$own/open.db" -o "$own/open-out"
gives 0 setup "$own/new.kitchen" -f "$own/other.db"
gives 3 import csv "$own/open-out" -f "$own/other.db" --yes
says "loads.csv:8: this load is still in its canner or on the rack"
"$SUPPORT/season" "$own/sought.db" recall || bad "no log"
gives 0 export csv -f "$own/sought.db" -o "$own/sought-out"
gives 3 import csv "$own/sought-out" -f "$own/other.db" --yes
says "a recall still looks for this jar"

# Nobody makes a process valid or a jar sealed by hand.
changed() { # changed FILE SED-SCRIPT
	rm -rf "$own/changed" "$own/changed.db"
	cp -r "$own/season-out" "$own/changed"
	sed "$2" "$own/season-out/$1" >"$own/changed/$1"
	if cmp -s "$own/season-out/$1" "$own/changed/$1"; then bad "nothing was changed: $2"; fi
	gives 0 setup "$own/new.kitchen" -f "$own/changed.db"
	gives 3 import csv "$own/changed" -f "$own/changed.db" --yes
	says "this line was changed after the export"
}
changed loads.csv 's/not_valid/valid/'
changed loads.csv 's/,10,/,12,/'
changed loads.csv 's/,[0-9a-f]*\r$/,\r/'
changed jars.csv 's/unsealed/sealed/'
changed lots.csv 's/low_acid/acid/'

# --- a notebook -----------------------------------------------------------------------------

cat >"$own/notebook.csv" <<'END'
Product,Date,Jars,Size,Lot,Lid box,Method,Minutes,Unsealed,Left,Notes
"Peaches, in light syrup",2021-08-14,14,quarts,,spring box,boiling water,30,2,3,"windy day
kettle on the left"
Grape jelly,2021-09-02,9,half-pint,A7,,,,,,"'=HYPERLINK(""http://example.invalid"")"
END
gives 1 import csv "$own/notebook.csv" -f "$own/none.db" # nothing to look at yet
gives 0 import csv "$own/notebook.csv" -f "$own/none.db" --yes
says "2 lines: 2 lots, 2 loads, 23 jars, 1 lid box new here."
says "every process as unknown"
gives 0 loads --all -f "$own/none.db"
says "PROCESS UNKNOWN: written in a notebook, not by this program"
says "minutes not noted, canner not noted, elevation not noted"
says "note: windy day kettle on the left"
gives 0 loads --all --json -f "$own/none.db"
says '"method": null'
says '"minutes": null'
says '"elevation_m": null'
gives 0 recall --lot 2021-08-14-B1 -f "$own/none.db"
says "14 jars of lot"
says "     3 on the shelf"
says "    11 gone, nobody noted where"
gives 0 pantry -f "$own/none.db"
says "    3 quarts       Peaches, in light syrup"
says "    9 half-pints   Grape jelly"
gives 3 import csv "$own/notebook.csv" -f "$own/none.db" --yes # not a second time
says "of that day came in from a notebook already (lot 2021-08-14-B1)"
says "lot A7 is in the log already"
round_trip notebook "$own/none.db"
gives 0 jars --all -f "$own/none.db"

# What is not valid by its own words is told before, and after.
cat >"$own/beans.csv" <<'END'
product,date,jars,size,method,minutes,pressure_psi,elevation,pack,acid,vent,recipe
green beans,2020-08-14,7,quart,boiling_water,180,,900ft,,,,
carrots,2020-08-15,7,pint,weighted_gauge,25,5,900ft,,,,
carrots,2020-08-16,7,pint,weighted_gauge,25,10,900ft,hot,,10,printed
crushed tomatoes,2020-08-17,3,pint,boiling_water,35,,900ft,hot,citric acid,,printed
END
gives 0 setup "$own/new.kitchen" -f "$own/beans.db"
for yes in "" --yes; do
	# shellcheck disable=SC2086
	gives 0 import csv "$own/beans.csv" -f "$own/beans.db" $yes
	says "line 2: green beans: NOT VALID: low-acid food that was not pressure canned: do not eat; after the import"
	says "line 3: carrots: NOT VALID: it was given 5 psi and needs 10 at 900 ft (274 m): do not eat"
	says "line 4: carrots: PROCESS UNKNOWN, and low-acid: do not eat or give away"
	if grep -q "^line 5" "$own/out"; then bad "tomatoes with acid are told off"; else good; fi
done
says "What is NOT VALID is at the seal check"
gives 0 export csv -f "$own/beans.db" -o "$own/beans-out"
gives 3 import csv "$own/beans-out" -f "$own/other.db"
says "still in its canner or on the rack"

# Packages of dried food come in again with their dryings.
cat >"$own/dried.csv" <<'END'
product,date,jars,size,method,pack,left
Apple rings,2021-09-12,6,package,dried,,4
Plum roll,2021-09-13,3,package,dried,leather,
Grape jelly,2021-09-02,2,half-pint,,,
END
gives 0 setup "$own/new.kitchen" -f "$own/dried.db"
gives 0 import csv "$own/dried.csv" -f "$own/dried.db" --yes
round_trip dried "$own/dried.db"
same "$own/dried-out/dryings.csv" "$own/dried-back/dryings.csv"
gives 0 export json -f "$own/dried.db" -o "$own/dried.json"
gives 0 export json -f "$own/dried-again.db" -o "$own/dried-again.json"
for log in dried dried-again; do
	"$python" -c '
import json, sys
for row in json.load(open(sys.argv[1]))["dryings"]:
    print(*(row[key] for key in ("drying", "station", "lot", "class", "packages", "open")))' \
		"$own/$log.json" >"$own/$log.told"
done
printf '%s\n' '2 from a notebook 2021-09-12-B1 fruit 6 False' '3 from a notebook 2021-09-13-B1 leather 3 False' >"$own/wanted.told"
same "$own/wanted.told" "$own/dried.told"
same "$own/dried.told" "$own/dried-again.told"
gives 0 pantry -f "$own/dried-again.db"
says "    4 packages     Apple rings"
gives 0 season 2021 -f "$own/dried-again.db"
says "9 packages of dried food from 2 dryings"
rm -rf "$own/dried-half"
cp -r "$own/dried-out" "$own/dried-half"
rm "$own/dried-half/dryings.csv"
gives 3 import csv "$own/dried-half" -f "$own/other.db" --yes
says "dryings.csv has no drying 2"

# Leather keeps the lot of the pot that it was taken from, though the pot stays in its log.
"$python" - "$own/dried.db" <<'END'
import sqlite3, sys
log = sqlite3.connect(sys.argv[1])
log.executescript('''
INSERT INTO work (kind, station_id, opened_wall_ms, at_station) SELECT 'batch', min(id), 0, 0 FROM station;
INSERT INTO batch (id, lot_id, recipe, multiple, boil_hold_s, headspace_thou, source, published)
	SELECT max(work.id), (SELECT id FROM lot WHERE product = 'Grape jelly'), 'grape jelly', 1, 60, 250, 'invented', 1 FROM work;
UPDATE drying SET puree_ul = 709000, batch_id = (SELECT max(id) FROM batch) WHERE class = 'leather';
''')
log.commit()
END
rm -rf "$own/dried-again.db" "$own/dried-out" "$own/dried-back"
round_trip dried "$own/dried.db"
same "$own/dried-out/dryings.csv" "$own/dried-back/dryings.csv"
gives 0 recall --lot 2021-09-02-B1 -f "$own/dried-again.db"
says "Plum roll"
says "out of the pot of 2021-09-02-B1"
rm -rf "$own/dried-potless"
cp -r "$own/dried-out" "$own/dried-potless"
grep -v '^2021-09-02' "$own/dried-out/lots.csv" >"$own/dried-potless/lots.csv"
gives 3 import csv "$own/dried-potless" -f "$own/other.db" --yes
says 'pot_lot: lots.csv has no lot "2021-09-02-B1"'

# --- what is wrong with it --------------------------------------------------------------------

printf 'product,date,jars,size\na\033]0;title\007,2021-08-14,1,pint\nb,2021-08-14,1,\033[2Jpint\n' >"$own/hostile.csv"
gives 3 import csv "$own/hostile.csv" -f "$own/none.db" --yes
says "hostile.csv:2: product holds a control character"
says 'no jar size "?[2Jpint"'
says "nothing was imported: 2 things to fix in 2 lines"
tame "$own/out" "$own/err"
printf 'product,date,jars,size\n' >"$own/headed.csv"
gives 0 import csv "$own/headed.csv" -f "$own/none.db" --yes
says "Nothing to import."
printf 'color\nred\n' >"$own/wrong.csv"
gives 1 import csv "$own/wrong.csv" -f "$own/none.db"
says 'there is no column "color"; the columns are product, date, jars, size'
gives 1 import csv "$own/absent.csv" -f "$own/none.db"
gives 2 import json "$own/notebook.csv" -f "$own/none.db"
gives 2 import csv -f "$own/none.db"
says "import csv needs a PATH"
gives 2 import csv a b -f "$own/none.db"
head -c 3000 /dev/urandom >"$own/noise.csv"
"$STILLROOM" import csv "$own/noise.csv" -f "$own/none.db" --yes >"$own/out" 2>"$own/err"
tame "$own/out" "$own/err"
finish
