#!/bin/sh
# bake refuses a malformed table with FILE:LINE, and what it prints compiles.
# Usage: test_bake.sh [BAKE]; $BAKE, $SCHEMA, $REPO and $CC otherwise.
set -u

bake=${1:-${BAKE:?the bake program}}
repo=${REPO:-.}
schema=${SCHEMA:-$repo/schema}
work=$(mktemp -d "${TMPDIR:-/tmp}/bake.XXXXXX") || exit 1
trap 'rm -rf "$work"' EXIT
good=0
bad=0

fail() {
	bad=$((bad + 1))
	echo "FAILED: $*"
}

# refused "what it is" "FILE:LINE: words" VERB FILE...
refused() {
	what=$1
	words=$2
	shift 2
	"$bake" "$@" >"$work/out" 2>"$work/err"
	status=$?
	if [ "$status" -ne 1 ]; then
		fail "$what: exit status $status"
	elif ! grep -qF -- "$words" "$work/err"; then
		fail "$what: \"$words\" is not in: $(cat "$work/err")"
	elif [ "$(wc -l <"$work/err")" -ne 1 ]; then
		fail "$what: more than one line: $(cat "$work/err")"
	else
		good=$((good + 1))
	fi
}

# accepted "what it is" VERB FILE...
accepted() {
	what=$1
	shift
	if "$bake" "$@" >"$work/out" 2>"$work/err" && [ ! -s "$work/err" ]; then
		good=$((good + 1))
	else
		fail "$what: $(cat "$work/err")"
	fi
}

# printed "what it is" "words of the last output"
printed() {
	if grep -qF -- "$2" "$work/out"; then
		good=$((good + 1))
	else
		fail "$1: \"$2\" is not in the output"
	fi
}

jar=$work/jar.csv
table=$work/process.csv
header='food,style_of_pack,jar,method,headspace_in,alt_min_ft,alt_max_ft,minutes,pressure_psi,acidity,source,confirmed'
plum='plums,hot,pint,boiling_water,0.5,0,1000,20,,acid,"a guide, page 1",yes'
beans='beans,hot,pint,dial_gauge,1,0,2000,20,11,low_acid,a guide,yes'
cat >"$jar" <<'END'
name,words,plural,fluid_ounces,source
half_pint,half-pint,half-pints,8,a rule
pint,pint,pints,16,a rule
END

# row "what it is" "LINE: words" "row of a process table"...: refused with these rows
row() {
	what=$1
	words=$2
	shift 2
	printf '%s\n' "$header" "$@" >"$table"
	refused "$what" "$table:$words" process "$jar" "$table"
}

# --- a good table --------------------------------------------------------------

printf '%s\n' "$header" "$plum" "$beans" >"$table"
accepted "a good table" process "$jar" "$table"
printed "a quoted comma" '"a guide, page 1"'
printed "no pressure" 'NO_PRESSURE, ACIDITY_ACID'
printed "a jar by its place" '"hot", 1, METHOD_BOILING_WATER, 500, 0, 1000, 20'
printed "a pressure" 'METHOD_DIAL_GAUGE, 1000, 0, 2000, 20, 11, ACIDITY_LOW_ACID'
printf '%s\r\n' "$header" "$plum" >"$table"
accepted "lines that end in CR LF" process "$jar" "$table"
printf '%s\n%s' "$header" "$plum" >"$table"
accepted "a last line without its end" process "$jar" "$table"
printf '%s\n' "$header" 'plums,hot,pint,boiling_water,.125,0,,20,,acid,s,yes' >"$table"
refused "a headspace without its zero" "$table:2: headspace_in is not" process "$jar" "$table"
printf '%s\n' "$header" 'plums,hot,pint,boiling_water,1.125,0,,20,,acid,"a ""b"" \c??/",yes' >"$table"
accepted "an open top and signs that C would misread" process "$jar" "$table"
printed "exact thousandths and no top" '1125, 0, NO_TOP_FT, 20'
printed "escaped signs" '"a \"b\" \\c\077\077/"'

# --- CSV -----------------------------------------------------------------------

row "a quote inside a field" "2: a quote inside" 'pl"ums,hot,pint,boiling_water,0.5,0,1000,20,,acid,s,yes'
row "text behind a quote" "2: text behind" '"plums"x,hot,pint,boiling_water,0.5,0,1000,20,,acid,s,yes'
row "an open quote" "3: a quoted field is never closed" "$plum" '"plums,hot'
row "a field too many" "3: 13 fields instead of 12" "$plum" "$plum,"
row "a field too few" "2: 11 fields instead of 12" 'plums,hot,pint,boiling_water,0.5,0,1000,20,,acid,yes'
row "an empty line" "3: 1 fields instead of 12" "$plum" ''
row "a field of two lines" "2: a control character" 'plums,hot,pint,boiling_water,0.5,0,1000,20,,acid,"a
guide",yes'
row "a stray space" '2: a space at the end' 'plums ,hot,pint,boiling_water,0.5,0,1000,20,,acid,s,yes'
printf '%s\nplums\rhot\n' "$header" >"$table"
refused "a lone carriage return" "$table:2: a carriage return" process "$jar" "$table"
printf '%s\nplums\000,hot\n' "$header" >"$table"
refused "a zero byte" "$table:2: a zero byte" process "$jar" "$table"
: >"$table"
refused "an empty file" "$table:1: the file is empty" process "$jar" "$table"
printf '%s\n' "$header" >"$table"
refused "no rows" "$table:2: no rows" process "$jar" "$table"
refused "a missing file" "$work/none.csv: cannot be read" process "$jar" "$work/none.csv"
printf '%s\n' "$header" | sed 's/minutes/mins/' >"$table"
refused "a column of another name" "$table:1: column 8 is \"mins\"" process "$jar" "$table"
printf '%s\n' 'food,minutes' >"$table"
refused "a header too short" "$table:1: the header has 2 columns" process "$jar" "$table"

# --- fields --------------------------------------------------------------------

row "no food" "2: food is empty" ',hot,pint,boiling_water,0.5,0,1000,20,,acid,s,yes'
row "an unknown pack" '2: unknown style_of_pack: "cold"' 'plums,cold,pint,boiling_water,0.5,0,1000,20,,acid,s,yes'
row "an unknown jar" '2: unknown jar: "quart"' 'plums,hot,quart,boiling_water,0.5,0,1000,20,,acid,s,yes'
row "an unknown method" '2: unknown method: "steam"' 'plums,hot,pint,steam,0.5,0,1000,20,,acid,s,yes'
row "an unknown acidity" '2: unknown acidity: "sour"' 'plums,hot,pint,boiling_water,0.5,0,1000,20,,sour,s,yes'
row "an unknown confirmed word" '2: unknown confirmed: "no"' 'plums,hot,pint,boiling_water,0.5,0,1000,20,,acid,s,no'
row "no source" '2: source is empty' 'plums,hot,pint,boiling_water,0.5,0,1000,20,,acid,,yes'
row "no minutes" '2: minutes is not a whole number' 'plums,hot,pint,boiling_water,0.5,0,1000,,,acid,s,yes'
row "zero minutes" '2: minutes is 0, outside' 'plums,hot,pint,boiling_water,0.5,0,1000,0,,acid,s,yes'
row "minutes below zero" '2: minutes is not a whole number' 'plums,hot,pint,boiling_water,0.5,0,1000,-5,,acid,s,yes'
row "half minutes" '2: minutes is not a whole number' 'plums,hot,pint,boiling_water,0.5,0,1000,7.5,,acid,s,yes'
row "endless minutes" '2: minutes is not a whole number' 'plums,hot,pint,boiling_water,0.5,0,1000,99999999999999999999,,acid,s,yes'
row "a padded number" '2: alt_max_ft is not a whole number' 'plums,hot,pint,boiling_water,0.5,0,01000,20,,acid,s,yes'
row "a top below its bottom" '2: alt_max_ft is 1000, outside 1001' 'plums,hot,pint,boiling_water,0.5,1001,1000,20,,acid,s,yes'
row "four decimals" '2: headspace_in is not a decimal' 'plums,hot,pint,boiling_water,0.1255,0,1000,20,,acid,s,yes'
row "no headspace" '2: headspace_in is out of range' 'plums,hot,pint,boiling_water,0.000,0,1000,20,,acid,s,yes'
row "a pressure in boiling water" '2: a pressure in a boiling-water canner' 'plums,hot,pint,boiling_water,0.5,0,1000,20,5,acid,s,yes'
row "no pressure in a pressure canner" '2: no pressure in a pressure canner' 'beans,hot,pint,dial_gauge,1,0,2000,20,,low_acid,s,yes'
row "low-acid food in boiling water" '2: low-acid food in a boiling-water canner' 'beans,hot,pint,boiling_water,1,0,1000,20,,low_acid,s,yes'

# --- rows against each other ---------------------------------------------------

row "the same cell twice" "3: the same cell is already in $table:2" "$plum" 'plums,hot,pint,boiling_water,0.5,0,1000,25,,acid,s,yes'
row "bands that overlap" "3: the band overlaps that of $table:2" "$plum" 'plums,hot,pint,boiling_water,0.5,1000,,25,,acid,s,yes'
row "a hole between bands" '3: no band of the same table ends at 1001 ft' "$plum" 'plums,hot,pint,boiling_water,0.5,1002,,25,,acid,s,yes'
row "two spellings of one food" "3: the food \"Plums\" is spelt \"plums\" in $table:2" "$plum" 'Plums,raw,pint,boiling_water,0.5,0,1000,20,,acid,s,yes'
row "two acidities of one food" "3: the food has another acidity" "$plum" 'plums,raw,pint,boiling_water,0.5,0,1000,20,,acidified,s,yes'
printf '%s\n' "$header" "$plum" >"$table"
refused "the same cell in two files" "$table:2: the same cell is already in $table:2" process "$jar" "$table" "$table"

# --- jars ----------------------------------------------------------------------

jars() {
	what=$1
	words=$2
	shift 2
	printf '%s\n' 'name,words,plural,fluid_ounces,source' "$@" >"$work/jars.csv"
	refused "$what" "$work/jars.csv:$words" jar "$work/jars.csv"
}
jars "a jar twice" "3: the jar size is already on line 2" 'pint,pint,pints,16,s' 'Pint,a pint,some pints,20,s'
jars "jars out of order" "3: jar sizes are listed smallest first" 'pint,pint,pints,16,s' 'half_pint,half-pint,half-pints,8,s'
jars "a jar without a volume" "2: fluid_ounces is not a whole number" 'pint,pint,pints,,s'
jars "a jar without a source" "2: source is empty" 'pint,pint,pints,16,'

# --- products ------------------------------------------------------------------

product() {
	what=$1
	words=$2
	shift 2
	printf '%s\n' 'name,food,usual_jar,caution,source' "$@" >"$work/product.csv"
	refused "$what" "$work/product.csv:$words" product "$work/product.csv"
}
product "a product twice" "3: the product \"Plum-jam\" is there already" 'plum jam,plums,pint,,s' 'Plum-jam,plums,pint,,s'
product "a product without food" "2: food is empty" 'plum jam,,pint,,s'
product "a product without a source" "2: source is empty" 'plum jam,plums,pint,,'
printf '%s\n' 'name,food,usual_jar,caution,source' 'plum jam,plums,pint,,s' >"$work/product.csv"
accepted "a product without a caution" product "$work/product.csv"

# --- yields of juice -------------------------------------------------------------

yields='fruit,most_lb,likely_lb,least_lb,source,confirmed'
any='any fruit,5,4,3,s,practice'
# juice "what it is" "words" ROW...
juice() {
	what=$1
	words=$2
	shift 2
	printf '%s\n' "$yields" "$@" >"$work/yield.csv"
	refused "$what" "$work/yield.csv:$words" yield "$work/yield.csv"
}
juice "a fruit twice" '3: the fruit "Plum-s" is there already' 'plums,5,4,3,s,yes' 'Plum-s,5,4,3,s,yes' "$any"
juice "a yield without a spread" "2: most_lb, likely_lb and least_lb do not fall" 'plums,4,4,3,s,yes' "$any"
juice "a yield without a source" "2: source is empty" 'plums,5,4,3,,yes' "$any"
juice "no row for any fruit" '3: the last row is not "any fruit"' 'plums,5,4,3,s,yes'
juice "any fruit before the last" '4: the last row is not "any fruit"' "$any" 'plums,5,4,3,s,yes'
juice "an unknown word" '2: unknown confirmed: "maybe"' 'plums,5,4,3,s,maybe' "$any"
printf '%s\n' "$yields" 'plums,5.125,4,3,s,yes' "$any" >"$work/yield.csv"
accepted "a yield" yield "$work/yield.csv"
printed "thousandths of a pound" '{ "plums", 5125, 4000, 3000, "s", CONFIRMED_YES }'

# --- recipes -------------------------------------------------------------------

recipe_header='name,food,packs,jars,pectin,acidity,gel_test,boil_hold_s,headspace_in,multiple_max,foam_percent,boil_off_low_percent,boil_off_high_percent,yield_low,yield_high,caution,source'
item_header='recipe,name,supply,amount,form,adding,optional'
jelly='plum jelly,plums,hot,pint,none,acid,temperature,0,0.5,2,50,20,40,,,,a house'
juice='plum jelly,plum juice,juice,4 cup,,at_start,no'
sugar='plum jelly,sugar,sugar,3 cup,granulated,at_boil,no'
tables="$jar $work/plums.csv"
printf '%s\n' "$header" "$plum" "$beans" 'tomatoes crushed,hot,pint,boiling_water,0.5,0,1000,35,,acidified,s,yes' \
	'pears,hot,pint,boiling_water,0.5,0,1000,20,,acid,s,memory' >"$work/plums.csv"

# recipe "what it is" "LINE: words" "row of recipes" "row of ingredients"...
recipe() {
	what=$1
	words=$2
	printf '%s\n' "$recipe_header" "$3" >"$work/recipe.csv"
	shift 3
	printf '%s\n' "$item_header" "$@" >"$work/item.csv"
	# shellcheck disable=SC2086 # two files
	refused "$what" "$words" recipe "$work/recipe.csv" "$work/item.csv" $tables
}
book=$work/recipe.csv
items=$work/item.csv

printf '%s\n' "$recipe_header" "$jelly" >"$book"
printf '%s\n' "$item_header" "$juice" 'plum jelly,acid,lemon_juice,1.5 tsp,bottled,at_start,yes' "$sugar" \
	'plum jelly,plums,fruit,24.5 lb,,at_boil,no' >"$items"
# shellcheck disable=SC2086
accepted "a good recipe" recipe "$book" "$items" $tables
printed "4 cups are 946.352946 mL" '.amount = 946353,'
printed "1-1/2 tsp are 7.393 mL" '.amount = 7393,'
printed "3 cups of sugar are 600 g" '.measure = MEASURE_MASS, .amount = 600000,'
printed "24-1/2 lb are 11.113013 kg" '.amount = 11113013,'
accepted "a good recipe without the tables" recipe "$book" "$items"

low=$(echo "$jelly" | sed 's/none,acid,temperature/low_methoxyl,acid,none/')
waits=$(echo "$low" | sed 's/,0.5,2,/,0.5,,/')
of_sheet='plum jelly,pectin,pectin_low,,,at_start,no'
printf '%s\n' "$recipe_header" "$waits" >"$book"
printf '%s\n' "$item_header" "$juice" 'plum jelly,calcium solution,calcium_solution,,,at_start,no' "$of_sheet" >"$items"
# shellcheck disable=SC2086 # two files
accepted "a recipe that waits for the sheet of its pectin" recipe "$book" "$items" $tables
printed "no multiple" '.multiple_max = 0,'
printed "no amount" '.measure = MEASURE_MASS, .amount = 0,'
recipe "a multiple without the amount" "$book:2: multiple_max and the amount of pectin: give both or neither" "$low" "$juice" "$of_sheet"
recipe "an amount without the multiple" "$book:2: multiple_max and the amount of pectin" "$waits" "$juice" 'plum jelly,pectin,pectin_low,4 g,,at_start,no'
recipe "the acid of a sheet" "$book:2: the acid is the sheet's, too" "$waits" "$juice" 'plum jelly,acid,citric_acid,4 g,,at_start,no' "$of_sheet"
recipe "no multiple without such a pectin" "$book:2: multiple_max is empty" "$(echo "$jelly" | sed 's/,0.5,2,/,0.5,,/')" "$juice"
recipe "no amount of sugar" "$items:2: amount is" "$jelly" "$(echo "$sugar" | sed 's/3 cup//')"

recipe "a recipe without source" "$book:2: source is empty" "${jelly%a house}" "$juice"
recipe "a recipe without ingredients" "$book:2: the recipe \"plum jelly\" has no ingredients" "$jelly"
recipe "an ingredient of no recipe" "$items:2: unknown recipe: \"pear jelly\"" "$jelly" 'pear jelly,pears,fruit,1 lb,,at_start,no'
recipe "an ingredient twice" "$items:3: the ingredient is already on line 2" "$jelly" "$juice" "$juice"
recipe "ingredients out of order" "$items:3: ingredients are listed in the order" "$jelly" "$sugar" "$juice"
recipe "an amount without a unit" "$items:2: amount is not a number, a blank and a unit: \"4\"" "$jelly" "$(echo "$juice" | sed 's/4 cup/4/')"
recipe "a fraction" "$items:2: amount is not a number" "$jelly" "$(echo "$juice" | sed 's,4 cup,1/2 cup,')"
recipe "four decimals of an amount" "$items:2: amount is not a number" "$jelly" "$(echo "$juice" | sed 's/4 cup/4.0001 cup/')"
recipe "nothing of it" "$items:2: amount is nothing" "$jelly" "$(echo "$juice" | sed 's/4 cup/0 cup/')"
recipe "an unknown unit" "$items:2: unknown unit of amount: \"4 stone\"" "$jelly" "$(echo "$juice" | sed 's/4 cup/4 stone/')"
recipe "half a piece" "$items:2: amount is not a whole number of pieces" "$jelly" "$(echo "$juice" | sed 's/juice,4 cup/other,1.5 each/')"
recipe "juice by weight" "$items:2: juice is kept by volume" "$jelly" "$(echo "$juice" | sed 's/4 cup/4 lb/')"
recipe "fruit by volume" "$items:2: fruit is kept by weight" "$jelly" "$(echo "$juice" | sed 's/juice,4/fruit,4/')"
recipe "fresh lemon juice" "$items:2: fresh lemon juice as the acid" "$jelly" 'plum jelly,Fresh lemon juice,lemon_juice,1 tbsp,,at_start,no'
recipe "lemon juice under another name" "$items:2: lemon juice is the supply lemon_juice" "$jelly" 'plum jelly,Lemon juice,other,1 tbsp,,at_start,no'
recipe "two batches of regular pectin" "$book:2: regular pectin is never multiplied" "$(echo "$jelly" | sed 's/none,acid/regular,acid/')" 'plum jelly,pectin,pectin_regular,49 g,,at_start,no'
recipe "a pectin that is not in it" "$book:2: the ingredients hold another pectin" "$(echo "$jelly" | sed 's/none,acid/low_methoxyl,acid/')" "$juice"
recipe "a gel test with pectin" "$book:2: a gel test with added pectin" "$(echo "$jelly" | sed 's/none,acid/low_methoxyl,acid/')" 'plum jelly,pectin,pectin_low,4 tsp,,at_start,no'
recipe "a pot that boils off more than most" "$book:2: boil_off_low_percent is above" "$(echo "$jelly" | sed 's/,20,40,/,41,40,/')" "$juice"
recipe "half a range of yield" "$book:2: yield_low and yield_high are no range" "$(echo "$jelly" | sed 's/,40,,,/,40,7 qt,,/')" "$juice"
recipe "no jars" "$book:2: no jars" "$(echo "$jelly" | sed 's/,pint,/,,/')" "$juice"
recipe "an unknown jar" "$book:2: unknown jar: \"bucket\"" "$(echo "$jelly" | sed 's/,pint,/,pint bucket,/')" "$juice"
recipe "an unknown pack" "$book:2: unknown pack: \"cold\"" "$(echo "$jelly" | sed 's/,hot,/,hot cold,/')" "$juice"
recipe "a pack that is not in the table" "$book:2: no process of \"plums\", raw, in a pint jar" "$(echo "$jelly" | sed 's/,hot,/,raw,/')" "$juice"
recipe "a food that is not in the table" "$book:2: no process of \"moons\"" "$(echo "$jelly" | sed 's/,plums,/,moons,/')" "$juice"
recipe "a food whose rows are not confirmed" "$book:2: no process of \"pears\"" "$(echo "$jelly" | sed 's/,plums,/,pears,/')" "$juice"
recipe "another acidity than the table" "$book:2: the food is acid in $work/plums.csv:2" "$(echo "$jelly" | sed 's/none,acid/none,low_acid/')" "$juice"
recipe "another headspace than the table" "$book:2: the headspace differs from $work/plums.csv:2" "$(echo "$jelly" | sed 's/,0.5,/,0.25,/')" "$juice"
tomatoes='plum jelly,tomatoes crushed,hot,pint,none,acidified,none,0,0.5,1,50,20,40,,,,a house'
recipe "tomatoes without acid" "$book:2: tomatoes without the published acid" "$tomatoes" "$juice"
recipe "tomatoes with too little acid" "$book:2: tomatoes without the published acid" "$tomatoes" 'plum jelly,acid,lemon_juice,1.5 tbsp,,in_jar,no'
recipe "tomatoes with acid as one likes" "$book:2: tomatoes without the published acid" "$tomatoes" 'plum jelly,acid,citric_acid,0.5 tsp,,in_jar,yes'
printf '%s\n' "$recipe_header" "$tomatoes" >"$book"
printf '%s\n' "$item_header" 'plum jelly,acid,citric_acid,0.5 tsp,,in_jar,no' >"$items"
# shellcheck disable=SC2086
accepted "tomatoes with citric acid" recipe "$book" "$items" $tables
printf '%s\n' "$recipe_header" "$jelly" "$(echo "$jelly" | sed 's/plum jelly/Plum-Jelly/')" >"$book"
refused "a recipe twice" "$book:3: the recipe \"Plum-Jelly\" is already on line 2" recipe "$book" "$items"

# --- migrations ----------------------------------------------------------------

# A text past the longest string literal of C17, with every sign that matters.
{
	printf "CREATE TABLE t (a TEXT DEFAULT '\\\\?\?/\"'); -- caf\303\251\n\t"
	yes 'INSERT INTO t VALUES (1);' | head -n 400
} >"$work/0001_first.sql"
echo 'SELECT 2;' >"$work/0002_second.sql"
echo 'SELECT 4;' >"$work/0004_fourth.sql"
echo 'SELECT 5;' >"$work/5_fifth.sql"
: >"$work/0001_empty.sql"
refused "a number left out" "0004_fourth.sql:1: migration 0003 is expected" migration \
	"$work/0001_first.sql" "$work/0002_second.sql" "$work/0004_fourth.sql"
refused "the order of the files" "0002_second.sql:1: migration 0001 is expected" migration \
	"$work/0002_second.sql" "$work/0001_first.sql"
refused "a name without four digits" "5_fifth.sql:1: a migration is named" migration "$work/5_fifth.sql"
refused "an empty migration" "0001_empty.sql:1: the file is empty" migration "$work/0001_empty.sql"
accepted "two migrations" migration "$work/0001_first.sql" "$work/0002_second.sql"
cp "$work/out" "$work/migrations.c"
cat >"$work/say.c" <<'END'
#include <stdio.h>
#include "log/migrations.h"
int
main(void)
{
	for (size_t i = 0; i < log_migration_count; i++)
		fputs(log_migrations[i], stdout);
	return 0;
}
END
strict='-std=c17 -Wall -Wextra -Wpedantic -Wconversion -Woverlength-strings -Werror'
# shellcheck disable=SC2086 # a list of options
if ${CC:-cc} $strict -I"$repo/src" -o "$work/say" "$work/say.c" "$work/migrations.c" 2>"$work/err" &&
	"$work/say" >"$work/said" &&
	cat "$work/0001_first.sql" "$work/0002_second.sql" | cmp -s - "$work/said"; then
	good=$((good + 1))
else
	fail "migrations come out of the compiler as they went in: $(head -n 3 "$work/err")"
fi

# --- the tables of the program ---------------------------------------------------

for verb in jar process product yield recipe migration; do
	case $verb in
	process) set -- "$schema/jar.csv" "$schema"/process_*.csv ;;
	recipe) set -- "$schema/recipe.csv" "$schema/recipe_ingredient.csv" "$schema/jar.csv" "$schema"/process_*.csv ;;
	migration) set -- "$schema"/migration/*.sql ;;
	*) set -- "$schema/$verb.csv" ;;
	esac
	accepted "schema: $verb" "$verb" "$@"
	cp "$work/out" "$work/$verb.c"
	# shellcheck disable=SC2086
	if ${CC:-cc} $strict -I"$repo/src" -c -o "$work/$verb.o" "$work/$verb.c" 2>"$work/err"; then
		good=$((good + 1))
	else
		fail "schema: $verb does not compile: $(head -n 3 "$work/err")"
	fi
done

"$bake" >/dev/null 2>&1
status=$?
if [ "$status" -eq 2 ]; then
	good=$((good + 1))
else
	fail "no arguments: exit status $status"
fi

echo "$good passed, $bad failed"
[ "$bad" -eq 0 ]
