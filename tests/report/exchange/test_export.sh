#!/bin/sh
# What leaves the program, read by parsers that know nothing of us: python's csv and
# json modules, a JSON schema validator, python3-icalendar.
set -u
# shellcheck source=tests/report/out/out_kit.sh
. "$(dirname "$0")/../out/out_kit.sh"
python_with csv json icalendar jsonschema

log=$own/log.db
"$SUPPORT/season" "$log" open || bad "no log"

# --- CSV ------------------------------------------------------------------------------

gives 0 export csv -f "$log" -o "$own/csv"
says "tables in $own/csv"
tame "$own/csv"/*.csv
checks "CSV by RFC 4180" "$own/csv" "$REPO/docs/export.schema.json" <<'END'
import csv, glob, json, os, sys
schema = json.load(open(sys.argv[2]))["properties"]
tables = {}
for path in glob.glob(sys.argv[1] + "/*.csv"):
    text = open(path, newline="", encoding="utf-8").read()
    assert text.endswith("\r\n"), path
    rows = list(csv.reader(open(path, newline="", encoding="utf-8"), strict=True))
    assert all(len(row) == len(rows[0]) for row in rows), path
    name = os.path.basename(path)[:-4]
    table = schema[name].get("items", schema[name])
    # What tells a changed row stands in the CSV alone.
    assert rows[0] == list(table["properties"]) + (["check"] if name in ("lots", "loads", "dryings", "phases", "marks", "jars") else []), name
    tables[name] = [dict(zip(rows[0], row)) for row in rows[1:]]
    # Nothing a spreadsheet would take for a formula, but for plain numbers.
    for row in tables[name]:
        for column, cell in row.items():
            if cell and cell[0] in "=+-@\t\r\n":
                assert column != "check" and "number" in str(table["properties"][column]) or "integer" in str(table["properties"][column]), (name, column, cell)
                float(cell)
assert set(tables) == {name for name in schema if "properties" in schema[name] or "items" in schema[name]}
products = {row["product"] for row in tables["lots"]}
assert "'=1+1 <b>&\"'?[31m]]>\r\nred, é??" in products, products
assert {row["name"] for row in tables["stations"]} >= {"Big kettle", "'=Low kettle"}
assert [row["load"] for row in tables["loads"]] == ["2", "4", "5", "6", "7", "8", "9"] # 1 is a run, number 3 was undone
assert [row["verdict"] for row in tables["loads"]] == ["valid", "not_valid", "valid", "unknown", "valid", "valid", "valid"]
assert {row["who"] for row in tables["journal"]} == {"", "'@AB"}
# What was said, as it is stored and as a person reads it.
for row in tables["journal"]:
    values = json.loads(row["said"])
    assert all(type(value) in (str, int) for value in values), row
    assert row["sentence"] and not row["sentence"].startswith("?"), row
    assert (row["verb"] in ("undo", "redo")) == bool(row["undoes"]), row
    if row["verb"] == "undo":
        before = next(one for one in tables["journal"] if one["entry"] == row["undoes"])
        assert values == [] and row["sentence"] == "Undone: " + before["sentence"], row
    if row["verb"] == "start_load":
        assert row["sentence"].startswith("%s: load started, %d " % tuple(values[:2])), row
assert {"undo", "start_load", "supply_in"} <= {row["verb"] for row in tables["journal"]}
# 20 lb, exactly: 1 lb is 453.59237 g.
assert [row["stock"] for row in tables["supplies"] if row["kind"] == "sugar"] == ["9071.847"]
assert [row["elevation_m"] for row in tables["loads"]] == ["1417.32"] * 7
assert len(tables["jars"]) == 9 + 4 + 5 + 5 + 4 + 1 + 3
again = [row for row in tables["jars"] if row["from_load"]]
assert [(row["load"], row["from_load"], row["from_place"], row["lot"]) for row in again] == [("8", "7", "2", "2026-09-16-B2R1")]
assert sum(row["gone_why"] == "used" for row in tables["jars"]) == 2
assert [row["to_find"] for row in tables["recalls"]] == ["0"] and len(tables["recall_jars"]) == 9
END

gives 0 export csv -f "$log" --table jars
same "$own/out" "$own/csv/jars.csv"
gives 0 export csv -f "$log" --table jars -o "$own/jars.csv"
same "$own/jars.csv" "$own/csv/jars.csv"
gives 3 export csv -f "$log" -o "$own/csv"
says "already exists and was not changed"
gives 0 export csv -f "$log" -o "$own/csv" --yes
gives 2 export csv -f "$log"
gives 2 export csv -f "$log" --table sqlite_master
says "there is no table"
gives 2 export xml -f "$log"
gives 2 export json --table jars -f "$log"
gives 1 export csv -f "$log" -o "$own/jars.csv/no"
gives 1 export csv -f "$own/none.db" --table jars

# --- JSON -----------------------------------------------------------------------------

gives 0 export json --schema
same "$own/out" "$REPO/docs/export.schema.json"
gives 0 export json -f "$log" -o "$own/all.json"
tame "$own/all.json"
checks "JSON as its schema has it" "$own/all.json" "$REPO/docs/export.schema.json" "$own/csv" <<'END'
import csv, json, sys
import jsonschema
document, schema = json.load(open(sys.argv[1], encoding="utf-8")), json.load(open(sys.argv[2]))
jsonschema.Draft202012Validator.check_schema(schema)
jsonschema.Draft202012Validator(schema).validate(document)
assert list(document) == list(schema["properties"])
def same(cell, value):
    if value is None: return cell == ""
    if isinstance(value, bool): return cell == ("yes" if value else "no")
    if isinstance(value, (int, float)): return float(cell) == value
    if cell.startswith("'") and cell[1:2] in ("=", "@"): cell = cell[1:]
    return cell == value or "?" in cell # what CSV does not carry
for name, table in document.items():
    if not isinstance(table, (list, dict)): continue
    rows = list(csv.DictReader(open(sys.argv[3] + "/" + name + ".csv", newline="", encoding="utf-8")))
    table = table if isinstance(table, list) else [table]
    assert len(rows) == len(table), name
    for row, item in zip(rows, table):
        row.pop("check", None)
        assert list(row) == list(item)
        for column in row:
            assert same(row[column], item[column]), (name, column, row[column], item[column])
# A document that is not so is found out.
document["jars"][0]["place"] = "first"
try:
    jsonschema.Draft202012Validator(schema).validate(document)
except jsonschema.ValidationError:
    pass
else:
    raise SystemExit("the schema takes anything")
END

# --- the calendar -----------------------------------------------------------------------

gives 0 export ics -f "$log"
cp "$own/out" "$own/one.ics"
tame "$own/one.ics"
sleep 1.1 # DTSTAMP goes on, nothing else does
gives 0 export ics -f "$log" -o "$own/two.ics"
checks "iCalendar by RFC 5545" "$own/one.ics" "$own/two.ics" <<'END'
import datetime, sys
import icalendar
one, two = (open(path, newline="", encoding="utf-8").read() for path in sys.argv[1:])
for line in one.split("\r\n"):
    assert len(line.encode()) <= 75 and "\n" not in line and "\r" not in line, line
assert one.endswith("END:VCALENDAR\r\n")
calendar = icalendar.Calendar.from_ical(one)
assert str(calendar["VERSION"]) == "2.0" and calendar["PRODID"]
events = list(calendar.walk("VEVENT"))
uids = [str(event["UID"]) for event in events]
assert len(set(uids)) == len(uids) == 7, uids
assert uids == [str(event["UID"]) for event in icalendar.Calendar.from_ical(two).walk("VEVENT")]
kinds = {uid.split("-")[0]: event for uid, event in zip(uids, events)}
for event in events:
    assert event["DTSTAMP"].dt.utcoffset() == datetime.timedelta(0)
    assert event["SUMMARY"] and event["DESCRIPTION"]
    alarms = list(event.walk("VALARM"))
    assert len(alarms) == 1 and str(alarms[0]["ACTION"]) == "DISPLAY" and alarms[0]["TRIGGER"].dt <= datetime.timedelta(0)
assert kinds["best"]["DTSTART"].dt == datetime.date(2027, 9, 16)
seal = kinds["seal"]
assert seal["DTSTART"].dt.utcoffset() == datetime.timedelta(0) and seal["DTEND"].dt > seal["DTSTART"].dt
assert kinds["fate"]["DTSTART"].dt == datetime.datetime(2026, 9, 18, 0, 52, tzinfo=datetime.timezone.utc)
words = [str(event["SUMMARY"]) for event in events]
assert "Best by today, 5 jars: =1+1 <b>&\"'?[31m]]>  red, é?? (lot 2026-09-15-B2)" in words, words
assert any("桃ジャム" in w for w in words)
assert icalendar.Calendar.from_ical(calendar.to_ical()) is not None
END
printf 'kitchen "Empty"\n' >"$own/empty.kitchen"
gives 0 setup "$own/empty.kitchen" -f "$own/empty.db"
gives 3 export ics -f "$own/empty.db" -o "$own/empty.ics"
says "Nothing to remind you of"
if [ -e "$own/empty.ics" ]; then bad "an empty calendar was written"; else good; fi
gives 0 export csv -f "$own/empty.db" --table jars
gives 0 export json -f "$own/empty.db"

# --- a disk that is full, an output that is closed ------------------------------------------

if [ -w /dev/full ]; then
	"$STILLROOM" export json -f "$log" >/dev/full 2>"$own/err"
	if [ $? -eq 1 ]; then good; else bad "an answer that did not arrive was no failure"; fi
fi
finish
