/* Undo and redo: what they take back, and when they are refused. */
#include <check.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"
#include "support/fault_word.h"
#include "support/log_kit.h"
#include "support/tests.h"

static struct log_kit kit;

static void begin(void)
{
	kit_start(&kit);
}

static void end(void)
{
	kit_clear(&kit);
}

/* --- short acts ------------------------------------------------------------------ */

static int64_t start_load(const char *sentence, const char *code, int64_t *load_id)
{
	struct log_entry entry = kit_entry(sentence, 0, 0);
	KIT_OK(&kit, kit_start_load(kit.log, 1, code, 4, &entry, &kit.fault));
	*load_id = entry.work_id;
	return entry.id;
}

static int64_t next_phase(const char *sentence, int64_t load_id, const char *phase)
{
	struct log_entry entry = kit_entry(sentence, 1, load_id);
	KIT_OK(&kit, kit_next_phase(kit.log, load_id, phase, &entry, &kit.fault));
	return entry.id;
}

static int64_t act(const char *sentence, int64_t station_id, int64_t load_id)
{
	struct log_entry entry = kit_entry(sentence, station_id, load_id);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	return entry.id;
}

static int64_t undo(int64_t id, int64_t station_id, int64_t load_id)
{
	struct log_entry entry = kit_entry("undo", station_id, load_id);
	KIT_OK(&kit, log_undo(kit.log, id, &entry, &kit.fault));
	ck_assert_int_gt(entry.id, id);
	ck_assert_int_gt(entry.undoes_id, 0);
	return entry.id;
}

static void undo_fails(int64_t id, enum fault_kind kind)
{
	struct log_entry entry = kit_entry("undo", 0, 0);
	char *before = kit_dump(kit.path, true);
	kit.fault.kind = FAULT_NONE;
	ck_assert(!log_undo(kit.log, id, &entry, &kit.fault));
	ck_assert_msg(kit.fault.kind == kind, "%s: %s", fault_word(kit.fault.kind), kit.fault.sentence);
	char *after = kit_dump(kit.path, true);
	ck_assert_str_eq(before, after);
	free(before);
	free(after);
	/* and the log goes on */
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	log_abandon(kit.log);
}

static const struct log_subject house = { .kind = SUBJECT_HOUSE };

/* What undo (or redo) would take, 0 for none. */
static int64_t candidate(struct log_subject about, bool redo)
{
	struct log_entry entry;
	kit.fault.kind = FAULT_NONE;
	if (log_last_act(kit.log, about, redo, &entry, &kit.fault))
		return entry.id;
	ck_assert_msg(kit.fault.kind == FAULT_MISSING, "%s", kit.fault.sentence);
	return 0;
}

static int64_t undone_by(int64_t load_id, int64_t id)
{
	struct log_entry *story;
	size_t count;
	int64_t by = -1;
	KIT_OK(&kit, log_story(kit.log, kit_load(load_id), &story, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		if (story[i].id == id)
			by = story[i].undone_by;
	free(story);
	return by;
}

/* --- taking back and bringing back --------------------------------------------------- */

START_TEST(undo_brings_every_row_back_and_redo_again)
{
	int64_t load_id;
	char *empty = kit_dump(kit.path, false);
	int64_t started = start_load("Loaded", "2026-09-14-B1", &load_id);
	char *loaded = kit_dump(kit.path, false);
	int64_t boiled = next_phase("Boils", load_id, "hold");
	char *boiling = kit_dump(kit.path, false);
	int64_t tips[2] = { undo(boiled, 1, load_id), 0 };
	char *now = kit_dump(kit.path, false);
	ck_assert_str_eq(now, loaded);
	free(now);
	tips[1] = undo(started, 1, load_id);
	now = kit_dump(kit.path, false);
	ck_assert_str_eq(now, empty);
	free(now);
	(void)undo(tips[1], 1, load_id);
	now = kit_dump(kit.path, false);
	ck_assert_str_eq(now, loaded);
	free(now);
	(void)undo(tips[0], 1, load_id);
	now = kit_dump(kit.path, false);
	ck_assert_str_eq(now, boiling);
	free(now);
	free(empty);
	free(loaded);
	free(boiling);
	ck_assert(kit_whole(kit.path));
}
END_TEST

/* Both the house's single row and a table without rowid are captured. */
START_TEST(every_captured_table_is_brought_back)
{
	struct log_entry entry = kit_entry("All at once", 0, 0);
	struct log_house row;
	struct log_station station;
	struct log_lid_box box = { .label = "box", .lids = 60 };
	char *before = kit_dump(kit.path, false);
	KIT_OK(&kit, log_house_get(kit.log, &row, &kit.fault));
	KIT_OK(&kit, log_station_get(kit.log, 1, &station, &kit.fault));
	memcpy(row.name, "Quince Hollow", sizeof("Quince Hollow"));
	row.elevation = (struct elevation){ .known = true, .um = 4650 * FOOT_UM };
	station.capacity[0] = 0;
	station.capacity[1] = 7;
	station.capacity[3] = 5;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_house(kit.log, &row, &kit.fault));
	KIT_OK(&kit, log_put_station(kit.log, &station, &kit.fault));
	KIT_OK(&kit, log_put_lid_box(kit.log, &box, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	char *changed = kit_dump(kit.path, false);
	ck_assert_str_ne(before, changed);
	int64_t tip = undo(entry.id, 0, 0);
	char *now = kit_dump(kit.path, false);
	ck_assert_str_eq(now, before);
	free(now);
	(void)undo(tip, 0, 0);
	now = kit_dump(kit.path, false);
	ck_assert_str_eq(now, changed);
	free(now);
	free(before);
	free(changed);
}
END_TEST

START_TEST(an_act_without_a_change_can_be_undone)
{
	int64_t id = act("Looked at the pot", 1, 0);
	int64_t tip = undo(id, 1, 0);
	undo_fails(id, FAULT_MISSING);
	(void)undo(tip, 1, 0);
}
END_TEST

START_TEST(what_is_not_there_cannot_be_undone)
{
	undo_fails(404, FAULT_MISSING);
	undo_fails(0, FAULT_MISSING);
	undo_fails(-1, FAULT_MISSING);
}
END_TEST

START_TEST(an_act_is_undone_once_until_it_is_redone)
{
	int64_t load_id;
	int64_t id = start_load("Loaded", "2026-09-14-B1", &load_id);
	int64_t tip = undo(id, 1, load_id);
	undo_fails(id, FAULT_MISSING);
	int64_t redo = undo(tip, 1, load_id);
	undo_fails(tip, FAULT_MISSING);
	/* in force again: taking back the act means taking back the redo */
	int64_t again = undo(id, 1, load_id);
	ck_assert_int_eq(kit_number(kit.path, "SELECT undoes_id FROM journal ORDER BY id DESC LIMIT 1"), redo);
	undo_fails(redo, FAULT_MISSING);
	(void)undo(again, 1, load_id);
}
END_TEST

START_TEST(the_story_tells_what_still_stands)
{
	int64_t load_id;
	int64_t id = start_load("Loaded", "2026-09-14-B1", &load_id);
	ck_assert_int_eq(undone_by(load_id, id), 0);
	int64_t first = undo(id, 1, load_id);
	ck_assert_int_eq(undone_by(load_id, id), first);
	ck_assert_int_eq(undone_by(load_id, first), 0);
	int64_t second = undo(first, 1, load_id);
	ck_assert_int_eq(undone_by(load_id, id), 0);
	ck_assert_int_eq(undone_by(load_id, first), second);
	ck_assert_int_eq(undone_by(load_id, second), 0);
	int64_t third = undo(second, 1, load_id);
	ck_assert_int_eq(undone_by(load_id, id), third);
	ck_assert_int_eq(undone_by(load_id, first), 0);
	ck_assert_int_eq(undone_by(load_id, second), third);
}
END_TEST

/* --- refusals ------------------------------------------------------------------------ */

START_TEST(a_row_changed_since_is_not_overwritten)
{
	int64_t load_id;
	int64_t id = start_load("Loaded", "2026-09-14-B1", &load_id);
	(void)next_phase("Boils", load_id, "hold");
	struct log_entry by_name = kit_entry("undo", 0, 0);
	undo_fails(id, FAULT_CONFLICT);
	ck_assert_int_eq(strncmp(kit.fault.sentence, "It cannot be undone: ", 21), 0);
	ck_assert(!log_undo_begin(kit.log, id, "\"Loaded\"", &by_name, &kit.fault));
	ck_assert_int_eq(strncmp(kit.fault.sentence, "\"Loaded\" cannot be undone: ", 27), 0);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "changed since"));
}
END_TEST

START_TEST(a_field_changed_since_is_not_overwritten)
{
	struct log_entry first = kit_entry("Named", 0, 0);
	struct log_house row;
	KIT_OK(&kit, log_house_get(kit.log, &row, &kit.fault));
	memcpy(row.name, "Quince Hollow", sizeof("Quince Hollow"));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_house(kit.log, &row, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &first, &kit.fault));
	struct log_entry second = kit_entry("Renamed", 0, 0);
	row.name[0] = 'P';
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_house(kit.log, &row, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &second, &kit.fault));
	undo_fails(first.id, FAULT_CONFLICT);
}
END_TEST

/* Another field of the same row is no reason to refuse. */
START_TEST(a_change_beside_it_does_not_matter)
{
	struct log_entry first = kit_entry("Named", 0, 0);
	struct log_house row;
	KIT_OK(&kit, log_house_get(kit.log, &row, &kit.fault));
	memcpy(row.name, "Quince Hollow", sizeof("Quince Hollow"));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_house(kit.log, &row, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &first, &kit.fault));
	struct log_entry second = kit_entry("Barometer", 0, 0);
	row.barometer_pa = 85000;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_house(kit.log, &row, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &second, &kit.fault));
	(void)undo(first.id, 0, 0);
	KIT_OK(&kit, log_house_get(kit.log, &row, &kit.fault));
	ck_assert_str_eq(row.name, "");
	ck_assert_int_eq(row.barometer_pa, 85000);
}
END_TEST

START_TEST(a_place_taken_since_is_not_taken_twice)
{
	int64_t first;
	int64_t second;
	struct log_load load;
	struct log_entry racked = kit_entry("Lifted out", 1, 0);
	(void)start_load("Loaded", "2026-09-14-B1", &first);
	KIT_OK(&kit, log_load_get(kit.log, first, &load, &kit.fault));
	load.place = PLACE_RACK;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_load(kit.log, &load, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &racked, &kit.fault));
	(void)start_load("Loaded again", "2026-09-14-B2", &second);
	undo_fails(racked.id, FAULT_CONFLICT);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "taken since"));
}
END_TEST

START_TEST(what_others_refer_to_stays)
{
	struct log_entry boxed = kit_entry("Box opened", 0, 0);
	struct log_entry used = kit_entry("Lids noted", 0, 0);
	struct log_jar *jars;
	int64_t box_id;
	int64_t load_id;
	size_t count;
	(void)start_load("Loaded", "2026-09-14-B1", &load_id);
	KIT_OK(&kit, kit_put_lid_box(kit.log, "box", &box_id, &boxed, &kit.fault));
	KIT_OK(&kit, log_jars(kit.log, load_id, &jars, &count, &kit.fault));
	jars[0].lid_box_id = box_id;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_jar(kit.log, &jars[0], &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &used, &kit.fault));
	free(jars);
	undo_fails(boxed.id, FAULT_CONFLICT);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "depends on it"));
	(void)undo(used.id, 0, 0);
	(void)undo(boxed.id, 0, 0);
}
END_TEST

/* The schema would delete a later jar together with its load: not by an undo. */
START_TEST(a_later_row_is_not_swept_away_by_a_cascade)
{
	struct log_entry added = kit_entry("One more jar", 1, 0);
	struct log_jar *jars;
	int64_t load_id;
	size_t count;
	int64_t id = start_load("Loaded", "2026-09-14-B1", &load_id);
	KIT_OK(&kit, log_jars(kit.log, load_id, &jars, &count, &kit.fault));
	struct log_entry other = kit_entry("Another lot", 0, 0);
	struct log_lot lot = { .code = "2026-09-14-B2", .pack = "hot" };
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_lot(kit.log, &lot, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &other, &kit.fault));
	struct log_jar jar = jars[0];
	free(jars);
	jar.id = 0;
	jar.lot_id = lot.id; /* hangs on the load only */
	jar.place_in_load = 5;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_jar(kit.log, &jar, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &added, &kit.fault));
	undo_fails(id, FAULT_CONFLICT);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "depends on it"));
	KIT_OK(&kit, log_jar_get(kit.log, jar.id, &jar, &kit.fault));
}
END_TEST

START_TEST(a_redo_over_a_newer_load_is_refused)
{
	int64_t first;
	int64_t second;
	int64_t id = start_load("Loaded", "2026-09-14-B1", &first);
	int64_t tip = undo(id, 1, first);
	(void)start_load("Another", "2026-09-14-B2", &second);
	undo_fails(tip, FAULT_CONFLICT);
}
END_TEST

/* --- which act is meant ----------------------------------------------------------------- */

START_TEST(undo_walks_back_and_redo_forward)
{
	int64_t a = act("A", 1, 9);
	int64_t b = act("B", 1, 9);
	int64_t c = act("C", 1, 9);
	ck_assert_int_eq(candidate(kit_load(9), false), c);
	ck_assert_int_eq(candidate(kit_load(9), true), 0);
	int64_t uc = undo(c, 1, 9);
	ck_assert_int_eq(candidate(kit_load(9), false), b);
	ck_assert_int_eq(candidate(kit_load(9), true), uc);
	int64_t ub = undo(b, 1, 9);
	int64_t ua = undo(a, 1, 9);
	ck_assert_int_eq(candidate(kit_load(9), false), 0);
	ck_assert_int_eq(candidate(kit_load(9), true), ua);
	int64_t ra = undo(ua, 1, 9);
	ck_assert_int_eq(candidate(kit_load(9), false), ra);
	ck_assert_int_eq(candidate(kit_load(9), true), ub);
	int64_t rb = undo(ub, 1, 9);
	int64_t rc = undo(uc, 1, 9);
	ck_assert_int_eq(candidate(kit_load(9), true), 0);
	ck_assert_int_eq(candidate(kit_load(9), false), rc);
	(void)undo(rc, 1, 9);
	ck_assert_int_eq(candidate(kit_load(9), false), rb);
}
END_TEST

START_TEST(a_fresh_act_ends_redo)
{
	int64_t a = act("A", 1, 9);
	int64_t b = act("B", 1, 9);
	int64_t ub = undo(b, 1, 9);
	int64_t c = act("C", 1, 9);
	ck_assert_int_eq(candidate(kit_load(9), true), 0);
	ck_assert_int_eq(candidate(kit_load(9), false), c);
	/* undoing the fresh act offers it alone for redo, not what it displaced */
	int64_t uc = undo(c, 1, 9);
	ck_assert_int_eq(candidate(kit_load(9), true), uc);
	ck_assert_int_eq(candidate(kit_load(9), false), a);
	(void)undo(uc, 1, 9);
	ck_assert_int_eq(candidate(kit_load(9), true), 0);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM journal WHERE undoes_id IS NOT NULL"), 3);
	(void)ub;
}
END_TEST

START_TEST(loads_and_canners_do_not_mix)
{
	int64_t first = act("load 9 in canner 1", 1, 9);
	int64_t second = act("load 8 in canner 2", 2, 8);
	int64_t third = act("canner 2 alone", 2, 0);
	int64_t fourth = act("the house", 0, 0);
	ck_assert_int_eq(candidate(kit_load(9), false), first); /* the load decides */
	ck_assert_int_eq(candidate(kit_load(8), false), second);
	ck_assert_int_eq(candidate(kit_station(2), false), third);
	ck_assert_int_eq(candidate(house, false), fourth);
	ck_assert_int_eq(candidate(kit_load(7), false), 0);
	int64_t tip = undo(second, 2, 8);
	ck_assert_int_eq(candidate(kit_load(8), true), tip);
	ck_assert_int_eq(candidate(kit_load(9), true), 0);
	ck_assert_int_eq(candidate(kit_station(2), true), tip);
	ck_assert_int_eq(candidate(kit_station(1), true), 0);
}
END_TEST

/* Asked at every key, so a long journal must not slow the keys down. In the
 * worst one every act of the load was undone and nothing is left to find. */
START_TEST(the_question_stays_quick_in_a_long_journal)
{
	kit_close(&kit);
	kit_sql(kit.path, "WITH RECURSIVE n (i) AS (SELECT 2 UNION ALL SELECT i + 1 FROM n WHERE i < 4001) "
	                  "INSERT INTO journal SELECT i, 0, 0, '', 'v', '', 1, 9, 's', CASE WHEN i % 2 THEN i - 1 END, "
	                  "0, x'' FROM n");
	kit_open(&kit, LOG_WRITE);
	clock_t start = clock();
	for (int i = 0; i < 10; i++) {
		ck_assert_int_eq(candidate(kit_load(9), false), 0);
		ck_assert_int_eq(candidate(kit_load(9), true), 4001);
	}
	double seconds = (double)(clock() - start) / CLOCKS_PER_SEC;
	ck_assert_msg(seconds < 3.0, "20 questions took %.2f s", seconds); /* 0.03 s measured */
	(void)act("fresh", 1, 9);
	ck_assert_int_eq(candidate(kit_load(9), false), 4002);
	ck_assert_int_eq(candidate(kit_load(9), true), 0);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("undo", .begin = begin, .end = end),
	TEST(undo_brings_every_row_back_and_redo_again),
	TEST(every_captured_table_is_brought_back),
	TEST(an_act_without_a_change_can_be_undone),
	TEST(what_is_not_there_cannot_be_undone),
	TEST(an_act_is_undone_once_until_it_is_redone),
	TEST(the_story_tells_what_still_stands),
	TEST(a_row_changed_since_is_not_overwritten),
	TEST(a_field_changed_since_is_not_overwritten),
	TEST(a_change_beside_it_does_not_matter),
	TEST(a_place_taken_since_is_not_taken_twice),
	TEST(what_others_refer_to_stays),
	TEST(a_later_row_is_not_swept_away_by_a_cascade),
	TEST(a_redo_over_a_newer_load_is_refused),
	TEST(undo_walks_back_and_redo_forward),
	TEST(a_fresh_act_ends_redo),
	TEST(loads_and_canners_do_not_mix),
	TEST(the_question_stays_quick_in_a_long_journal),
};

TESTS("log undo", listed)
