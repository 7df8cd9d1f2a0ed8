/*
 * Tallies of seals and the lids used of each box are kept by triggers.  Whatever is
 * written, changed, taken back or brought back, they say what a plain count of the
 * jars would.
 */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"
#include "support/log_kit.h"
#include "support/tests.h"

#define CANNERS 3
#define BOXES 3 /* of 60, 8 and 3 lids: some acts are refused */
#define YEAR_MS (365 * KIT_DAY_MS)
#define DAYS 4
#define ACTS 70

static struct log_kit kit;
static uint64_t dice;
static int64_t boxes[BOXES];
static int64_t canners[CANNERS];
static int64_t acts[ACTS];
static int acts_made;
static int codes;

static int roll(int sides)
{
	dice ^= dice << 13;
	dice ^= dice >> 7;
	dice ^= dice << 17;
	return (int)((dice >> 33) % (uint64_t)sides);
}

static void begin(void)
{
	static const int lids[BOXES] = { 60, 8, 3 };
	acts_made = 0;
	codes = 0;
	kit_start(&kit);
	canners[0] = 1;
	for (int i = 1; i < CANNERS; i++) {
		struct log_entry entry = kit_entry("canner", 0, 0);
		KIT_OK(&kit, kit_put_canner(kit.log, i + 1, "another", &entry, &kit.fault));
		canners[i] = entry.station_id;
	}
	for (int i = 0; i < BOXES; i++) {
		struct log_lid_box box = { .label = "invented", .lids = lids[i] };
		struct log_entry entry = kit_entry("lids", 0, 0);
		KIT_OK(&kit, log_begin(kit.log, &kit.fault));
		KIT_OK(&kit, log_put_lid_box(kit.log, &box, &kit.fault));
		KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
		boxes[i] = box.id;
	}
}

static void end(void)
{
	kit_clear(&kit);
}

/* --- counted again ----------------------------------------------------------------- */

#define SEEN \
	"WITH seen AS (SELECT CAST(strftime('%Y', coalesce(checked_wall_ms, 0) / 1000, 'unixepoch') AS INTEGER) AS season," \
	" lid_box_id, station_id, closed_by, state <> 'sealed' AS failed FROM jar JOIN work ON work.id = jar.load_id" \
	" WHERE state IN ('sealed', 'unsealed', 'doubtful'))," \
	" counted AS (SELECT season, 'house' AS about, '' AS which, count(*) AS looked, sum(failed) AS failed FROM seen" \
	" GROUP BY season" \
	" UNION ALL SELECT season, 'lid_box', CAST(lid_box_id AS TEXT), count(*), sum(failed) FROM seen" \
	" WHERE lid_box_id IS NOT NULL GROUP BY season, lid_box_id" \
	" UNION ALL SELECT season, 'canner', CAST(station_id AS TEXT), count(*), sum(failed) FROM seen" \
	" GROUP BY season, station_id" \
	" UNION ALL SELECT season, 'person', closed_by, count(*), sum(failed) FROM seen WHERE closed_by <> ''" \
	" GROUP BY season, closed_by) "

/* Rows on one side only; a thousand for each box that is off. */
static const char off[] =
    SEEN "SELECT (SELECT count(*) FROM (SELECT * FROM counted EXCEPT SELECT * FROM seal_tally)) +"
         " (SELECT count(*) FROM (SELECT * FROM seal_tally EXCEPT SELECT * FROM counted)) +"
         " 1000 * (SELECT count(*) FROM lid_box LEFT JOIN lid_box_use ON lid_box_id = id"
         " WHERE used IS NOT (SELECT count(*) FROM jar WHERE jar.lid_box_id = lid_box.id)) +"
         " 1000 * (SELECT count(*) FROM lid_box_use WHERE lid_box_id NOT IN (SELECT id FROM lid_box))";

static void agree(const char *after)
{
	int64_t rows = kit_number(kit.path, off);
	ck_assert_msg(rows == 0, "%s is off after %s", rows >= 1000 ? "lid_box_use" : "seal_tally", after);
}

/* --- random acts --------------------------------------------------------------------- */

static int64_t some_box(void)
{
	int n = roll(BOXES + 1);
	return n == BOXES ? 0 : boxes[n];
}

static int64_t some_year(void)
{
	return KIT_MORNING_MS + (roll(4) - 1) * YEAR_MS;
}

static void some_mark(struct log_jar *jar)
{
	static const char *const people[] = { "", "EN", "RS" };
	jar->state = (enum jar_state)roll(JAR_STATE_COUNT);
	jar->checked_wall_ms = jar->state == JAR_UNCHECKED ? 0 : some_year();
	ck_assert(text_copy(jar->closed_by, sizeof(jar->closed_by), people[roll(3)]));
}

static int64_t some_id(const char *table)
{
	char sql[120];
	(void)snprintf(sql, sizeof(sql),
	               "SELECT coalesce((SELECT id FROM %s ORDER BY id LIMIT 1 OFFSET %d %% "
	               "max(1, (SELECT count(*) FROM %s))), 0)",
	               table, roll(1000), table);
	return kit_number(kit.path, sql);
}

/* A load with jars nobody has looked at, as the program makes it. */
static bool new_load(void)
{
	struct log_lot lot = { .product = "quince jelly",
		               .food = "jelly",
		               .pack = "hot",
		               .acidity = ACIDITY_ACID,
		               .made_wall_ms = KIT_MORNING_MS };
	struct log_load load = { .station_id = canners[roll(CANNERS)],
		                 .place = PLACE_RACK,
		                 .minutes = 10,
		                 .pressure_psi = NO_PRESSURE,
		                 .headspace_thou = 250,
		                 .jar_in_table = "half_pint",
		                 .source = "invented",
		                 .elevation = { .known = true },
		                 .opened_wall_ms = KIT_MORNING_MS };
	int64_t box = some_box();
	(void)snprintf(lot.code, sizeof(lot.code), "2026-09-14-B%d", ++codes);
	bool done = log_put_lot(kit.log, &lot, &kit.fault) && log_put_load(kit.log, &load, &kit.fault);
	for (int place = 1; done && place <= 4; place++) {
		struct log_jar jar = { .load_id = load.id,
			               .lot_id = lot.id,
			               .lid_box_id = box,
			               .place_in_load = place,
			               .size = "half_pint" };
		done = log_put_jar(kit.log, &jar, &kit.fault);
	}
	return done;
}

/* One more jar in a load that is there; it may have been looked at. */
static bool new_jar(void)
{
	int64_t load_id = some_id("load");
	int64_t lot_id = some_id("lot");
	struct log_jar jar = { .load_id = load_id,
		               .lot_id = lot_id,
		               .lid_box_id = some_box(),
		               .place_in_load = 5 + roll(95),
		               .size = "half_pint" };
	some_mark(&jar);
	return load_id != 0 && log_put_jar(kit.log, &jar, &kit.fault);
}

static bool change_jars(void)
{
	bool done = true;
	for (int i = roll(3); i >= 0 && done; i--) {
		int64_t id = some_id("jar");
		struct log_jar jar;
		if (id == 0 || !log_jar_get(kit.log, id, &jar, &kit.fault))
			return false;
		if (roll(3) != 0)
			some_mark(&jar);
		if (roll(3) == 0)
			jar.lid_box_id = some_box();
		if (roll(6) == 0) {
			jar.load_id = some_id("load");
			jar.place_in_load = 5 + roll(95);
		}
		done = log_put_jar(kit.log, &jar, &kit.fault);
	}
	return done;
}

static bool take_jar_away(void)
{
	int64_t id = some_id("jar");
	return id != 0 && log_remove_jar(kit.log, id, &kit.fault);
}

/* Also below what was used. */
static bool count_box(void)
{
	struct log_lid_box box;
	if (!log_lid_box_get(kit.log, boxes[roll(BOXES)], &box, &kit.fault))
		return false;
	box.lids = roll(30);
	box.retired = roll(4) == 0;
	return log_put_lid_box(kit.log, &box, &kit.fault);
}

static bool new_box(void)
{
	struct log_lid_box box = { .label = "one more", .lids = 12 };
	return log_put_lid_box(kit.log, &box, &kit.fault);
}

static const struct {
	const char *name;
	bool (*make)(void);
} kinds[] = {
	{ "a load", new_load },
	{ "a jar", new_jar },
	{ "a change", change_jars },
	{ "a look", change_jars },
	{ "a jar gone", take_jar_away },
	{ "a count of lids", count_box },
	{ "a box", new_box },
};
#define KINDS (int)(sizeof(kinds) / sizeof(kinds[0]))

static bool make(int kind)
{
	struct log_entry entry = kit_entry(kinds[kind].name, 0, 0);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	bool done = kinds[kind].make() && roll(8) != 0 && log_commit(kit.log, &entry, &kit.fault);
	log_abandon(kit.log);
	if (done)
		acts[acts_made++] = entry.id;
	return done;
}

/* One of the newest acts, which may be an undo itself; older ones are in the way of
 * others. */
static bool take_back(void)
{
	struct log_entry entry = kit_entry("undo", 0, 0);
	int back = roll(acts_made < 4 ? acts_made : 4);
	bool done = log_undo(kit.log, acts[acts_made - 1 - back], &entry, &kit.fault);
	log_abandon(kit.log);
	if (done)
		acts[acts_made++] = entry.id;
	return done;
}

START_TEST(on_random_days_tallies_and_lids_are_what_a_count_says)
{
	int undone = 0;
	int refused = 0;
	dice = (uint64_t)(_i + 1) * UINT64_C(0x9E3779B97F4A7C15);
	for (int act = 0; act < ACTS; act++) {
		bool back = acts_made > 0 && roll(3) == 0;
		int kind = act < 3 ? 0 : roll(KINDS);
		bool done = back ? take_back() : make(kind);
		undone += back && done;
		refused += !done;
		agree(back ? "an undo" : kinds[kind].name);
	}
	ck_assert_int_gt(undone, 5); /* or this looked at nothing */
	ck_assert_int_gt(refused, 0);
	ck_assert_int_gt(kit_number(kit.path, "SELECT count(*) FROM seal_tally"), 3);
	ck_assert(kit_whole(kit.path));
}
END_TEST

/* --- what the log hands out ------------------------------------------------------------- */

static void put_seen(int64_t load_id, int place, enum jar_state state, int64_t checked, const char *by)
{
	struct log_entry entry = kit_entry("a jar", 0, 0);
	struct log_jar jar = { .load_id = load_id,
		               .lot_id = 1,
		               .lid_box_id = boxes[0],
		               .place_in_load = place,
		               .size = "half_pint",
		               .state = state,
		               .checked_wall_ms = checked };
	ck_assert(text_copy(jar.closed_by, sizeof(jar.closed_by), by));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_jar(kit.log, &jar, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
}

static void a_tally(enum tally_about about, const char *which, int season, int64_t looked, int64_t failed)
{
	struct log_tally *rows;
	size_t count;
	bool found = false;
	KIT_OK(&kit, log_tallies(kit.log, season, &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++) {
		if (rows[i].about != about || strcmp(rows[i].which, which) != 0)
			continue;
		found = true;
		ck_assert_int_eq(rows[i].looked, looked);
		ck_assert_int_eq(rows[i].failed, failed);
	}
	free(rows);
	ck_assert_int_eq(found, looked > 0);
}

START_TEST(a_season_is_the_year_of_the_look)
{
	const int64_t new_year = INT64_C(1798761600000); /* 2027-01-01 00:00 UTC */
	struct log_entry entry = kit_entry("a load", 0, 0);
	KIT_OK(&kit, kit_start_load(kit.log, 1, "2026-09-14-B1", 1, &entry, &kit.fault));
	put_seen(entry.work_id, 11, JAR_SEALED, KIT_MORNING_MS, "EN");
	put_seen(entry.work_id, 12, JAR_UNSEALED, KIT_MORNING_MS, "EN");
	put_seen(entry.work_id, 13, JAR_DOUBTFUL, new_year - 1, "RS");
	put_seen(entry.work_id, 14, JAR_SEALED, new_year, "RS");
	put_seen(entry.work_id, 15, JAR_BROKEN, KIT_MORNING_MS, "EN"); /* says nothing of a lid */
	put_seen(entry.work_id, 16, JAR_UNCHECKED, 0, "EN");
	a_tally(TALLY_HOUSE, "", 2026, 3, 2);
	a_tally(TALLY_HOUSE, "", 2027, 1, 0);
	a_tally(TALLY_LID_BOX, "1", 2026, 3, 2);
	a_tally(TALLY_CANNER, "1", 2026, 3, 2);
	a_tally(TALLY_PERSON, "EN", 2026, 2, 1);
	a_tally(TALLY_PERSON, "RS", 2026, 1, 1);
	a_tally(TALLY_PERSON, "RS", 2027, 1, 0);
	a_tally(TALLY_PERSON, "", 2026, 0, 0);
	a_tally(TALLY_HOUSE, "", 2025, 0, 0);
	agree("a season");
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("kept", .begin = begin, .end = end, .seconds = 30),
	EACH(on_random_days_tallies_and_lids_are_what_a_count_says, 0, DAYS),
	TEST(a_season_is_the_year_of_the_look),
};

TESTS("tallies", listed)
