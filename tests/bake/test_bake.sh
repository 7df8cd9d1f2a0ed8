#!/bin/sh
# bake and bake_recipes refuse a malformed table with FILE:LINE, and what they print
# compiles.  $LINK_BAKE_RECIPES links bake_recipes but for the tables it checks against.
set -u

bake=${BAKE:?the bake program}
bake_recipes=${BAKE_RECIPES:?the program that bakes recipes}
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

# run VERB FILE...: by the program whose verb it is
run() {
	case $1 in
	recipe | step) "$bake_recipes" "$@" ;;
	*) "$bake" "$@" ;;
	esac
}

# refused "what it is" "FILE:LINE: words" VERB FILE...
refused() {
	what=$1
	words=$2
	shift 2
	run "$@" >"$work/out" 2>"$work/err"
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
	if run "$@" >"$work/out" 2>"$work/err" && [ ! -s "$work/err" ]; then
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

pack=$work/pack.csv
cat >"$pack" <<'END'
pack,words,packed,jars
hot,hot pack,hot,either
raw,raw pack,raw,either
hot_sterile_jar,hot into boiled jars,hot,boiled_first
END

# row "what it is" "LINE: words" "row of a process table"...: refused with these rows
row() {
	what=$1
	words=$2
	shift 2
	printf '%s\n' "$header" "$@" >"$table"
	refused "$what" "$table:$words" process "$jar" "$pack" "$table"
}

# --- a good table --------------------------------------------------------------

printf '%s\n' "$header" "$plum" "$beans" >"$table"
accepted "a good table" process "$jar" "$pack" "$table"
printed "a quoted comma" '"a guide, page 1"'
printed "no pressure" 'NO_PRESSURE, ACIDITY_ACID'
printed "a jar by its place" '"hot", 1, METHOD_BOILING_WATER, 500, 0, 1000, 20'
printed "a pressure" 'METHOD_DIAL_GAUGE, 1000, 0, 2000, 20, 11, ACIDITY_LOW_ACID'
printf '%s\r\n' "$header" "$plum" >"$table"
accepted "lines that end in CR LF" process "$jar" "$pack" "$table"
printf '%s\n%s' "$header" "$plum" >"$table"
accepted "a last line without its end" process "$jar" "$pack" "$table"
printf '%s\n' "$header" 'plums,hot,pint,boiling_water,.125,0,,20,,acid,s,yes' >"$table"
refused "a headspace without its zero" "$table:2: headspace_in is not" process "$jar" "$pack" "$table"
printf '%s\n' "$header" 'plums,hot,pint,boiling_water,1.125,0,,20,,acid,"a ""b"" \c??/",yes' >"$table"
accepted "an open top and signs that C would misread" process "$jar" "$pack" "$table"
printed "exact thousandths and no top" '1125, 0, NO_TOP_FT, 20'
printed "escaped signs" '"a \"b\" \\c\077\077/"'

# --- CSV -----------------------------------------------------------------------

row "a quote inside a field" "2: a quotation mark stands inside a field: write the field between quotation marks and the mark in it twice" 'pl"ums,hot,pint,boiling_water,0.5,0,1000,20,,acid,s,yes'
row "text behind a quote" "2: after a closing quotation mark comes the next field or the end of the line" '"plums"x,hot,pint,boiling_water,0.5,0,1000,20,,acid,s,yes'
row "an open quote" "3: a quotation mark is not closed" "$plum" '"plums,hot'
row "a field too many" "3: 13 fields instead of 12" "$plum" "$plum,"
row "a field too few" "2: 11 fields instead of 12" 'plums,hot,pint,boiling_water,0.5,0,1000,20,,acid,yes'
row "an empty line" "3: an empty line" "$plum" '' "$beans"
row "an empty line at the end" "3: an empty line" "$plum" ''
row "bytes that are not UTF-8" "2: there are bytes that are not UTF-8: save the file as UTF-8" "$(printf 'pl\374ms')${plum#plums}"
row "a field of two lines" "2: a control character" 'plums,hot,pint,boiling_water,0.5,0,1000,20,,acid,"a
guide",yes'
row "a stray space" '2: a space at the end' 'plums ,hot,pint,boiling_water,0.5,0,1000,20,,acid,s,yes'
printf '%s\nplums\rhot\n' "$header" >"$table"
refused "a lone carriage return" "$table:2: a carriage return" process "$jar" "$pack" "$table"
printf '%s\nplums\000,hot\n' "$header" >"$table"
refused "a zero byte" "$table:2: a zero byte" process "$jar" "$pack" "$table"
: >"$table"
refused "an empty file" "$table:1: the file is empty" process "$jar" "$pack" "$table"
printf '%s\n' "$header" >"$table"
refused "no rows" "$table:2: no rows" process "$jar" "$pack" "$table"
refused "a missing file" "$work/none.csv: cannot be read" process "$jar" "$pack" "$work/none.csv"
printf '%s\n' "$header" | sed 's/minutes/mins/' >"$table"
refused "a column of another name" "$table:1: column 8 is \"mins\"" process "$jar" "$pack" "$table"
printf '%s\n' 'food,minutes' >"$table"
refused "a header too short" "$table:1: the header has 2 columns" process "$jar" "$pack" "$table"

# --- fields --------------------------------------------------------------------

row "no food" "2: food is empty" ',hot,pint,boiling_water,0.5,0,1000,20,,acid,s,yes'
row "an unknown pack" '2: unknown style_of_pack: "cold"' 'plums,cold,pint,boiling_water,0.5,0,1000,20,,acid,s,yes'
row "an unknown jar" '2: unknown jar: "quart"' 'plums,hot,quart,boiling_water,0.5,0,1000,20,,acid,s,yes'
row "an unknown method" '2: a steam canner has no rows of its own: it uses boiling water'"'s" 'plums,hot,pint,steam,0.5,0,1000,20,,acid,s,yes'
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

# One table goes on over the open top of boiling water, from 8,001 to 10,000 ft, and
# nothing else lies over anything.
open='plums,hot,pint,boiling_water,0.5,1001,,25,,acid,s,yes'
second='plums,hot,pint,boiling_water,0.5,8001,10000,30,,acid,t,yes'
printf '%s\n' "$header" "$second" "$plum" "$open" "$beans" >"$table"
accepted "the second table over an open top, in any order" process "$jar" "$pack" "$table"
if [ "$(grep -o 'METHOD_[^a-z]*' "$work/out" | cut -d, -f3-5 | tr '\n' ';')" = \
	' 0, 1000, 20; 1001, NO_TOP_FT, 25; 8001, 10000, 30; 0, 2000, 20;' ]; then
	good=$((good + 1))
else
	fail "the second table's row does not stand behind the one it lies over: $(cat "$work/out")"
fi
overlap="4: the band overlaps that of $table:3"
row "a second band that begins lower" "$overlap" "$plum" "$open" "$(echo "$second" | sed 's/8001/8000/')"
row "a second band that begins higher" "$overlap" "$plum" "$open" "$(echo "$second" | sed 's/8001/8002/')"
row "a second band that ends lower" "$overlap" "$plum" "$open" "$(echo "$second" | sed 's/,10000/,9999/')"
row "a second band that ends higher" "$overlap" "$plum" "$open" "$(echo "$second" | sed 's/,10000/,10001/')"
row "a second open band" "$overlap" "$plum" "$open" "$(echo "$second" | sed 's/,10000/,/')"
row "a second band over a closed one" "$overlap" "$plum" "$(echo "$open" | sed 's/1001,/&12000/')" "$second"
row "a second band over one that begins with it" "$overlap" "$(echo "$plum" | sed 's/,1000,/,8000,/')" \
	"$(echo "$open" | sed 's/1001/8001/')" "$second"
row "a second band over nothing" '3: no band of the same table ends at 8000 ft' "$plum" "$second"
row "a second band over another pack" '4: no band of the same table ends at 8000 ft' "$plum" "$open" "$(echo "$second" | sed 's/hot/raw/')"
row "a second table twice" "5: the same cell is already in $table:4" "$plum" "$open" "$second" "$(echo "$second" | sed 's/,30,/,35,/')"
row "a second table of another headspace" "4: the headspace differs from $table:3" "$plum" "$open" "$(echo "$second" | sed 's/0.5/0.25/')"
row "a second table that is not confirmed" "4: not confirmed, over the open band of $table:3" "$plum" "$open" "$(echo "$second" | sed 's/yes/memory/')"
row "a second band under pressure" "3: the band overlaps that of $table:2" 'beans,hot,pint,weighted_gauge,1,0,,20,15,low_acid,s,yes' \
	'beans,hot,pint,weighted_gauge,1,8001,10000,25,15,low_acid,t,yes'
row "two spellings of one food" "3: the food \"Plums\" is spelt \"plums\" in $table:2" "$plum" 'Plums,raw,pint,boiling_water,0.5,0,1000,20,,acid,s,yes'
row "two acidities of one food" "3: the food has another acidity" "$plum" 'plums,raw,pint,boiling_water,0.5,0,1000,20,,acidified,s,yes'
printf '%s\n' "$header" "$plum" >"$table"
refused "the same cell in two files" "$table:2: the same cell is already in $table:2" process "$jar" "$pack" "$table" "$table"

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

# --- packs -----------------------------------------------------------------------

packs() {
	what=$1
	words=$2
	shift 2
	printf '%s\n' 'pack,words,packed,jars' "$@" >"$work/packs.csv"
	refused "$what" "$work/packs.csv:$words" pack "$work/packs.csv"
}
packs "a pack twice" "3: the pack is already on line 2" 'hot,hot pack,hot,either' 'warm,Hot pack,hot,either'
packs "a pack that is neither hot nor raw" '2: unknown packed: "warm"' 'hot,hot pack,warm,either'
packs "jars made ready otherwise" '2: unknown jars: "washed"' 'hot,hot pack,hot,washed'
packs "no packs" '2: no rows'
accepted "packs" pack "$pack"
printed "a pack by what is done" '{ "hot_sterile_jar", "hot into boiled jars", PACKED_HOT, JARS_BOILED_FIRST }'

# --- products ------------------------------------------------------------------

product() {
	what=$1
	words=$2
	shift 2
	printf '%s\n' 'name,food,usual_jar,caution,source' "$@" >"$work/product.csv"
	refused "$what" "$work/product.csv:$words" product "$work/product.csv"
}
product "a product twice" "3: the product \"Plum-jam\" already exists" 'plum jam,plums,pint,,s' 'Plum-jam,plums,pint,,s'
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
juice "a fruit twice" '3: the fruit "Plum-s" already exists' 'plums,5,4,3,s,yes' 'Plum-s,5,4,3,s,yes' "$any"
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
needs="$schema/food.csv $schema/acid_rule.csv $schema/ingredient_class.csv $schema/own_recipe.csv
	$schema/ingredient.csv $schema/suspect_step.csv"
printf '%s\n' "$header" "$plum" 'tomatoes crushed,hot,pint,boiling_water,0.5,0,1000,35,,acidified,s,yes' \
	'apricots,hot,pint,boiling_water,0.5,0,1000,20,,acid,s,memory' >"$work/plums.csv"
# Linked with the tables of these few rows instead of the program's.
own=$work/bake_recipes
"$bake" jar "$jar" >"$work/jar_table.c" || fail "the jars"
"$bake" process "$jar" "$pack" "$work/plums.csv" >"$work/process_table.c" || fail "the processes"
# shellcheck disable=SC2086 # several files
"$bake" food $needs "$jar" "$pack" "$work/plums.csv" >"$work/food_table.c" || fail "the needs"
# shellcheck disable=SC2086 # a command with its options
${LINK_BAKE_RECIPES:?links it} -I"$repo/src" -o "$own" "$work/jar_table.c" "$work/process_table.c" "$work/food_table.c" ||
	fail "bake_recipes cannot be linked with other tables"
bake_recipes=$own

# recipe "what it is" "LINE: words" "row of recipes" "row of ingredients"...
recipe() {
	what=$1
	words=$2
	printf '%s\n' "$recipe_header" "$3" >"$work/recipe.csv"
	shift 3
	printf '%s\n' "$item_header" "$@" >"$work/item.csv"
	refused "$what" "$words" recipe "$work/recipe.csv" "$work/item.csv"
}
book=$work/recipe.csv
items=$work/item.csv

printf '%s\n' "$recipe_header" "$jelly" >"$book"
printf '%s\n' "$item_header" "$juice" 'plum jelly,acid,lemon_juice,1.5 tsp,bottled,at_start,yes' "$sugar" \
	'plum jelly,plums,fruit,24.5 lb,,at_boil,no' >"$items"
accepted "a good recipe" recipe "$book" "$items"
printed "4 cups are 946.352946 mL" '.amount = 946353,'
printed "1-1/2 tsp are 7.393 mL" '.amount = 7393,'
printed "3 cups of sugar are 600 g" '.measure = MEASURE_MASS, .amount = 600000,'
printed "24-1/2 lb are 11.113013 kg" '.amount = 11113013,'

low=$(echo "$jelly" | sed 's/none,acid,temperature/low_methoxyl,acid,none/')
waits=$(echo "$low" | sed 's/,0.5,2,/,0.5,,/')
of_sheet='plum jelly,pectin,pectin_low,,,at_start,no'
printf '%s\n' "$recipe_header" "$waits" >"$book"
printf '%s\n' "$item_header" "$juice" 'plum jelly,calcium solution,calcium_solution,,,at_start,no' "$of_sheet" >"$items"
accepted "a recipe that waits for the sheet of its pectin" recipe "$book" "$items"
printed "no multiple" '.multiple_max = 0,'
printed "no amount" '.measure = MEASURE_MASS, .amount = 0,'
recipe "a multiple without the amount" "$book:2: plum jelly: ingredient 2 has no amount." "$low" "$juice" "$of_sheet"
recipe "an amount without the multiple" "$book:2: plum jelly: the amount of pectin and how far it is multiplied come from one sheet; give both or neither." "$waits" "$juice" 'plum jelly,pectin,pectin_low,4 g,,at_start,no'
recipe "the acid of a sheet" "$book:2: plum jelly: the acid comes from the sheet too; leave acid out." "$waits" "$juice" 'plum jelly,acid,citric_acid,4 g,,at_start,no' "$of_sheet"
recipe "no multiple without such a pectin" "$book:2: plum jelly: one pot holds 1 to 16 batches." "$(echo "$jelly" | sed 's/,0.5,2,/,0.5,,/')" "$juice"
recipe "no amount of sugar" "$items:2: amount is not a number, a blank and a unit: \"\"" "$jelly" "$(echo "$sugar" | sed 's/3 cup//')"

recipe "a recipe without source" "$book:2: source is empty" "${jelly%a house}" "$juice"
recipe "a recipe without ingredients" "$book:2: plum jelly: a recipe has 1 to 16 ingredients." "$jelly"
recipe "an ingredient of no recipe" "$items:2: unknown recipe: \"pear jelly\"" "$jelly" 'pear jelly,pears,fruit,1 lb,,at_start,no'
recipe "an ingredient twice" "$items:3: the ingredient \"plum juice\" is in it already" "$jelly" "$juice" "$juice"
recipe "ingredients out of order" "$book:2: plum jelly: list ingredients in the order they go in; \"plum juice\" comes too late." "$jelly" "$sugar" "$juice"
recipe "an amount without a unit" "$items:2: amount is not a number, a blank and a unit: \"4\"" "$jelly" "$(echo "$juice" | sed 's/4 cup/4/')"
recipe "a fraction" "$items:2: amount is not a number, a blank and a unit: \"1/2 cup\"" "$jelly" "$(echo "$juice" | sed 's,4 cup,1/2 cup,')"
recipe "two amounts" "$items:2: amount is not a number, a blank and a unit: \"4 cup + 1 tbsp\"" "$jelly" "$(echo "$juice" | sed 's/4 cup/4 cup + 1 tbsp/')"
recipe "four decimals of an amount" "$items:2: amount is not a number, a blank and a unit: \"4.0001 cup\"" "$jelly" "$(echo "$juice" | sed 's/4 cup/4.0001 cup/')"
recipe "nothing of it" "$items:2: amount is nothing: \"0 cup\"" "$jelly" "$(echo "$juice" | sed 's/4 cup/0 cup/')"
recipe "an unknown unit" "$items:2: amount \"4 stone\": \"stone\" is not a unit this program knows: gal, qt, pt, cup, fl oz, tbsp, tsp, L, mL, lb, oz, kg, g or dozen." "$jelly" "$(echo "$juice" | sed 's/4 cup/4 stone/')"
recipe "half a piece" "$items:2: amount \"1.5 each\": Pieces are whole numbers." "$jelly" "$(echo "$juice" | sed 's/juice,4 cup/other,1.5 each/')"
recipe "juice by weight" "$items:2: amount \"4 lb\": \"lb\" is a weight and this is measured by volume: write it like 3 qt, 1 1/2 cups or 2.5 L." "$jelly" "$(echo "$juice" | sed 's/4 cup/4 lb/')"
recipe "fruit by volume" "$items:2: amount \"4 cup\": \"cup\" is a volume and this is weighed: write it like 20 lb, 12 oz or 2.5 kg." "$jelly" "$(echo "$juice" | sed 's/juice,4/fruit,4/')"
recipe "fresh lemon juice" "$book:2: plum jelly: the acid is bottled lemon juice. Fresh juice varies in strength, so no rate holds for it." "$jelly" 'plum jelly,Fresh lemon juice,lemon_juice,1 tbsp,,at_start,no'
recipe "lemon juice under another name" "$book:2: plum jelly: the acid is bottled lemon juice. Fresh juice varies in strength, so no rate holds for it." "$jelly" 'plum jelly,Lemon juice,other,1 tbsp,,at_start,no'
recipe "two batches of regular pectin" "$book:2: plum jelly: regular pectin is made one batch a pot; a larger one often stays soft." "$(echo "$jelly" | sed 's/none,acid/regular,acid/')" 'plum jelly,pectin,pectin_regular,49 g,,at_start,no'
recipe "a pectin that is not in it" "$book:2: plum jelly: the pectin named (low-methoxyl pectin) and the one among the ingredients differ." "$(echo "$jelly" | sed 's/none,acid/low_methoxyl,acid/')" "$juice"
recipe "a gel test with pectin" "$book:2: plum jelly: with added pectin there is no gel test." "$(echo "$jelly" | sed 's/none,acid/low_methoxyl,acid/')" 'plum jelly,pectin,pectin_low,4 tsp,,at_start,no'
recipe "a pot that boils off more than most" "$book:2: plum jelly: what boils off is a range from low to high, 0 to 90 %." "$(echo "$jelly" | sed 's/,20,40,/,41,40,/')" "$juice"
recipe "half a range of yield" "$book:2: plum jelly: the yield is a range from low to high." "$(echo "$jelly" | sed 's/,40,,,/,40,7 qt,,/')" "$juice"
recipe "no jars" "$book:2: plum jelly: say which jars it may be filled into." "$(echo "$jelly" | sed 's/,pint,/,,/')" "$juice"
recipe "an unknown jar" "$book:2: plum jelly: there is no jar size \"bucket\"." "$(echo "$jelly" | sed 's/,pint,/,pint bucket,/')" "$juice"
recipe "an unknown pack" "$book:2: plum jelly: the tables have no process for plums, cold, in a pint jar." "$(echo "$jelly" | sed 's/,hot,/,hot cold,/')" "$juice"
recipe "a pack that is not in the table" "$book:2: plum jelly: the tables have no process for plums, raw, in a pint jar." "$(echo "$jelly" | sed 's/,hot,/,raw,/')" "$juice"
recipe "a food that is not in the table" "$book:2: plum jelly: the tables have no food \"moons\"." "$(echo "$jelly" | sed 's/,plums,/,moons,/')" "$juice"
recipe "a food whose rows are not confirmed" "$book:2: plum jelly: the tables have no process for apricots, hot, in a pint jar." "$(echo "$jelly" | sed 's/,plums,/,apricots,/')" "$juice"
recipe "another acidity than the table" "$book:2: plum jelly: plums is acid in the tables." "$(echo "$jelly" | sed 's/none,acid/none,low_acid/')" "$juice"
recipe "another headspace than the table" "$book:2: plum jelly: the tables print another headspace for plums, hot, in a pint jar" "$(echo "$jelly" | sed 's/,0.5,/,0.25,/')" "$juice"
tomatoes='plum jelly,tomatoes crushed,hot,pint,none,acidified,none,0,0.5,1,50,20,40,,,,a house'
recipe "tomatoes without acid" "$book:2: plum jelly: tomatoes crushed takes acid in every jar: 2 tbsp bottled lemon juice or 1/2 tsp citric acid or 4 tbsp vinegar of 5 percent a quart. A pint takes no acid whose amount is not printed for it." "$tomatoes" "$juice"
recipe "tomatoes with too little acid" "$book:2: plum jelly: tomatoes crushed takes acid in every jar: 2 tbsp bottled lemon juice or 1/2 tsp citric acid or 4 tbsp vinegar of 5 percent a quart. A pint takes no acid whose amount is not printed for it." "$tomatoes" 'plum jelly,acid,lemon_juice,1.5 tbsp,,in_jar,no'
recipe "tomatoes with acid as one likes" "$book:2: plum jelly: tomatoes crushed takes acid in every jar: 2 tbsp bottled lemon juice or 1/2 tsp citric acid or 4 tbsp vinegar of 5 percent a quart. A pint takes no acid whose amount is not printed for it." "$tomatoes" 'plum jelly,acid,citric_acid,0.5 tsp,,in_jar,yes'
recipe "vinegar in a pint of tomatoes" "$book:2: plum jelly: tomatoes crushed takes acid in every jar: 2 tbsp bottled lemon juice or 1/2 tsp citric acid or 4 tbsp vinegar of 5 percent a quart. A pint takes no acid whose amount is not printed for it." "$tomatoes" 'plum jelly,acid,vinegar,4 tbsp,,in_jar,no'
printf '%s\n' "$recipe_header" "$tomatoes" >"$book"
printf '%s\n' "$item_header" 'plum jelly,acid,citric_acid,0.5 tsp,,in_jar,no' >"$items"
accepted "tomatoes with citric acid" recipe "$book" "$items"

# The columns that the guide's recipes have more.
guide_header="$recipe_header,vinegar_percent,acid_swap,not_startable"
guide_items="$item_header,amount_most,instead_of"
# guide "what it is" "LINE: words" "row of recipes" "row of ingredients"...
guide() {
	what=$1
	words=$2
	printf '%s\n' "$guide_header" "$3" >"$book"
	shift 3
	printf '%s\n' "$guide_items" "$@" >"$items"
	refused "$what" "$words" recipe "$book" "$items"
}
guide "a range upside down" "$book:2: plum jelly: plum juice, the amounts are a range from low to high." "$jelly,,," "$juice,3 cup,"
guide "a range of two measures" "$items:2: amount and amount_most are of two measures" "$jelly,,," 'plum jelly,plums,other,4 cup,,at_start,no,5 lb,'
guide "an alternative to nothing" "$book:2: plum jelly: plum juice takes the place of \"quince juice\", which is not in it." "$jelly,,," "$juice,,quince juice"
guide "the strength of no vinegar" "$book:2: plum jelly: what is said of its vinegar does not fit." "$jelly,5,," "$juice,,"
guide "a swap of no vinegar" "$book:2: plum jelly: what is said of its vinegar does not fit." "$jelly,,lemon_for_vinegar," "$juice,,"
guide "a swap the other way" "$book:2: unknown acid_swap: \"vinegar_for_lemon\"" "$jelly,,vinegar_for_lemon," "$juice,,"
printf '%s\n' "$guide_header" "$jelly,5,lemon_for_vinegar,It is kept cold." >"$book"
printf '%s\n' "$guide_items" 'plum jelly,salt,salt,1 tbsp,,ahead,no,,' "$juice,5 cup," 'plum jelly,apple juice,juice,4 cup,,at_start,no,,plum juice' \
	'plum jelly,vinegar,vinegar,1 cup,,at_start,no,,' 'plum jelly,cloves,other,3 each,,packed,no,,' >"$items"
accepted "a recipe of the guide" recipe "$book" "$items"
printed "a range" '.amount_most = 1182941,'
printed "an alternative" '.instead_of = "plum juice"'
printed "why it is not started" '.not_startable = "It is kept cold."'
steps=$work/step.csv
step_header='recipe,step_no,what,low,high,unit,source'
# step "what it is" "LINE: words" "row"...
step() {
	what=$1
	words=$2
	shift 2
	printf '%s\n' "$step_header" "$@" >"$steps"
	refused "$what" "$words" step "$steps" "$book"
}
step "a step of no recipe" "$steps:2: unknown recipe" 'pear jelly,1,soak,3,4,h,s'
step "a step left out" "$steps:2: step 1 of \"plum jelly\" is numbered 2" 'plum jelly,2,soak,3,4,h,s'
step "a time upside down" "$steps:2: high is 3, outside 4" 'plum jelly,1,soak,4,3,h,s'
step "a time without its unit" "$steps:2: a time without its unit" 'plum jelly,1,soak,4,,,s'
step "an unknown unit of time" "$steps:2: unknown unit" 'plum jelly,1,soak,4,5,fortnight,s'
printf '%s\n' "$step_header" 'plum jelly,1,soak,3,4,week,s' 'plum jelly,2,drain,,,,s' >"$steps"
accepted "steps" step "$steps" "$book"
printed "weeks in minutes" '"soak", 30240, 40320,'

printf '%s\n' "$recipe_header" "$jelly" "$(echo "$jelly" | sed 's/plum jelly/Plum-Jelly/')" >"$book"
printf '%s\n' "$item_header" "$juice" >"$items"
refused "a recipe twice" "$book:3: the recipe \"Plum-Jelly\" is already on line 2" recipe "$book" "$items"

# --- what each food needs ------------------------------------------------------------

mkdir "$work/needs"
for file in $needs; do
	cp "$file" "$work/needs/"
done
cd "$work/needs" || exit 1
food_files='food.csv acid_rule.csv ingredient_class.csv own_recipe.csv ingredient.csv suspect_step.csv'
printf '%s\n' "$header" 'plums,hot,pint,boiling_water,0.5,0,1000,20,,acid,s,yes' >table.csv
# shellcheck disable=SC2086
accepted "the needs of the program" food $food_files "$jar" "$pack" table.csv

# need "what it is" FILE "words behind the line's number" "sed script that spoils it"
need() {
	sed "$4" "$schema/$2" >"$2"
	if cmp -s "$2" "$schema/$2"; then
		fail "$1: the script changes nothing"
	fi
	# shellcheck disable=SC2086
	refused "$1" "$3" food $food_files "$jar" "$pack" table.csv
	cp "$schema/$2" "$2"
}
line=$(grep -n '^plums,' food.csv | cut -d: -f1)
printf '%s\n' "$header" 'moons,hot,pint,boiling_water,0.5,0,1000,20,,acid,s,yes' >moons.csv
# shellcheck disable=SC2086
refused "a food without a line" 'moons.csv:2: the food "moons" has no line in food.csv' food $food_files "$jar" "$pack" moons.csv
need "another acidity" food.csv "table.csv:2: the food is acidified in food.csv:$line" 's/^plums,acid,,/plums,acidified,tomato_per_jar,/'
need "a food twice" food.csv 'the food is already on line' 's/^apricots,/Plums,/'
need "acidified food without a rule" food.csv "food.csv:$line: acidified food without an acid rule" 's/^plums,acid,/plums,acidified,/'
need "an unknown acid rule" food.csv "food.csv:$line: unknown acid rule: \"plum_rule\"" 's/^plums,acid,/plums,acid,plum_rule/'
need "an unknown class" food.csv "food.csv:$line: unknown ingredient class: \"pebble\"" 's/^plums,acid,,thickener /plums,acid,,pebble /'
need "a class twice" food.csv "food.csv:$line: the class \"flour\" is there twice" 's/^plums,acid,,thickener /plums,acid,,flour /'
need "an exception from what is not barred" food.csv 'an exception from what is not barred' 's/^plums,acid,,\([^,]*\),,/plums,acid,,\1,wild_mushroom,/'
need "an unknown group" food.csv "food.csv:$line: unknown suspect_group" "${line}s/,acid,yes,/,sour,yes,/"
need "a refusal without its sentence" food.csv "food.csv:$line: reprocess_why says why not" "${line}s/,acid,yes,/,acid,no,/"
need "made of what nobody knows" food.csv 'unknown ingredient: "moon"' 's/,none,asparagus,/,none,moon,/'
need "an acid per jar without a quart" acid_rule.csv 'acid_rule.csv:2: an acid per jar without its amount for a quart' '2s/,2 tbsp,/,,/'
need "an amount of half a spoon more" acid_rule.csv 'acid_rule.csv:2: no spoon holds "1.125 tbsp"' '2s/,1 tbsp,/,1.125 tbsp,/'
need "a rule in two places" acid_rule.csv 'lines of one acid rule stand together' 's/^remade_jelly_lemon,by_recipe/fig_per_jar,by_recipe/'
need "an acid that is none" acid_rule.csv 'acid_rule.csv:2: "left_out" is no acid that goes in' '2s/,lemon_juice,/,left_out,/'
need "a class without words" ingredient_class.csv 'ingredient_class.csv:2: words is empty' '2s/,a thickener,/,,/'
need "a name for two ingredients" ingredient.csv '"grape" already exists' 's/^plum,plum juice/plum,grape/'
need "an acid that does not say which" ingredient.csv 'an acid says which' 's/^citric acid,,acid,,citric_acid,/citric acid,,acid,,,/'
need "a class of nothing" ingredient.csv 'no class' 's/^garlic,,of_class,[^,]*,/garlic,,of_class,,/'
need "an own recipe of an unknown fruit" own_recipe.csv 'unknown ingredient: "moon berry"' 's/^\(jam without added pectin\),blackberry,/\1,moon berry,/'
need "an own recipe of an unknown food" own_recipe.csv 'unknown food: "moon jam"' 's/^jam without added pectin,blackberry,/moon jam,blackberry,/'
need "an own recipe of what takes none" own_recipe.csv 'no own recipe may use "chile salsa"' 's/^jam without added pectin,blackberry,/chile salsa,blackberry,/'
need "a reading from memory that allows" own_recipe.csv '"memory" never allows' '/^jam without added pectin,blackberry,/s/,yes,/,memory,/'
need "a disputed reading that allows" own_recipe.csv '"disputed" never allows' '/^jam without added pectin,blackberry,/s/,yes,/,disputed,/'
need "a class without its condition" own_recipe.csv 'own recipes of it have no condition' '/^applesauce,\*/d'
need "a class that says nothing of other fruit" own_recipe.csv 'have no line for any other fruit' '/^applesauce,any other/d'
need "acid for a fruit without its amount" own_recipe.csv 'allowed_with_acid says how much acid' 's/^\(jam without added pectin,apricot,[^"]*\),2 tbsp,4.5 cup,/\1,,,/'
need "a step left out" suspect_step.csv 'suspect_step.csv:3: step 2 of the group comes next' '3d'
cd - >/dev/null || exit 1

# --- the layout of the log and its migrations ----------------------------------

# A text past the longest string literal of C17, with every sign that matters.
{
	printf "PRAGMA user_version = 41;\n"
	printf "CREATE TABLE t (a TEXT DEFAULT '\\\\?\?/\"'); -- caf\303\251\n\t"
	yes 'INSERT INTO t VALUES (1);' | head -n 400
} >"$work/log.sql"
layout=41
# NNNN of the migration so many after log.sql
number() {
	printf '%04d' $((layout + $1))
}
first=$work/$(number 1)_first.sql
second=$work/$(number 2)_second.sql
fourth=$work/$(number 4)_fourth.sql
echo 'SELECT 1;' >"$first"
echo 'SELECT 2;' >"$second"
echo 'SELECT 4;' >"$fourth"
echo 'SELECT 5;' >"$work/5_fifth.sql"
: >"$work/$(number 3)_empty.sql"
: >"$work/empty.sql"
refused "a number left out" "fourth.sql:1: migration $(number 3) is expected" layout \
	"$work/log.sql" "$first" "$second" "$fourth"
refused "the order of the files" "second.sql:1: migration $(number 1) is expected" layout \
	"$work/log.sql" "$second" "$first"
refused "a name without four digits" "5_fifth.sql:1: a migration is named" layout "$work/log.sql" "$work/5_fifth.sql"
refused "an empty migration" "empty.sql:1: the file is empty" layout \
	"$work/log.sql" "$first" "$second" "$work/$(number 3)_empty.sql"
refused "an empty layout" "empty.sql:1: the file is empty" layout "$work/empty.sql"
cat >"$work/say.c" <<'END'
#include <stdio.h>
#include "log/file/layout.h"
int
main(void)
{
	fputs(log_layouts.schema, stdout);
	for (size_t i = 0; i < log_layouts.migration_count; i++)
		fputs(log_layouts.migrations[i], stdout);
	return 0;
}
END
strict='-std=c17 -Wall -Wextra -Wpedantic -Wconversion -Woverlength-strings -Werror'
# Do these files come out of the compiler as they went in?
come_out() {
	name=$1
	shift
	accepted "$name" layout "$@"
	cp "$work/out" "$work/layouts.c"
	# shellcheck disable=SC2086 # a list of options
	if ${CC:-cc} $strict -I"$repo/src" -o "$work/say" "$work/say.c" "$work/layouts.c" 2>"$work/err" &&
		"$work/say" >"$work/said" && cat "$@" | cmp -s - "$work/said"; then
		good=$((good + 1))
	else
		fail "$name: do not come out as they went in: $(head -n 3 "$work/err")"
	fi
}
come_out "a layout without migrations" "$work/log.sql"
come_out "a layout and two migrations" "$work/log.sql" "$first" "$second"

# The first migration follows on the number that log.sql gives itself.
refused "a first migration with another number" "second.sql:1: migration $(number 1) is expected" layout \
	"$work/log.sql" "$second"
sed '1d' "$work/log.sql" >"$work/unnumbered.sql"
refused "a layout without a number" 'unnumbered.sql:1: "PRAGMA user_version = ...;" gives the layout its number' layout \
	"$work/unnumbered.sql"

# --- the tables of the program ---------------------------------------------------

bake_recipes=$BAKE_RECIPES
for verb in jar pack process product yield recipe step food layout; do
	# shellcheck disable=SC2086 # several files
	case $verb in
	process) set -- "$schema/jar.csv" "$schema/pack.csv" "$schema"/process_*.csv ;;
	recipe) set -- "$schema/recipe.csv" "$schema/recipe_ingredient.csv" \
		"$schema/recipe_guide.csv" "$schema/recipe_guide_ingredient.csv" ;;
	step) set -- "$schema/recipe_step.csv" "$schema/recipe.csv" "$schema/recipe_guide.csv" ;;
	food) set -- $needs "$schema/jar.csv" "$schema/pack.csv" "$schema"/process_*.csv ;;
	layout)
		set -- "$schema/log.sql"
		for migration in "$schema"/migration/*.sql; do
			[ ! -f "$migration" ] || set -- "$@" "$migration"
		done
		;;
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

for program in "$bake" "$bake_recipes"; do
	"$program" >/dev/null 2>&1
	status=$?
	if [ "$status" -eq 2 ]; then
		good=$((good + 1))
	else
		fail "$program without arguments: exit status $status"
	fi
done

echo "$good passed, $bad failed"
[ "$bad" -eq 0 ]
