/* An act is wholly recorded or not at all, and the journal is never changed. */
#include <check.h>
#include <sqlite3.h>
#include <stdlib.h>
#include <string.h>

#include "log/file/file.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"
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

static int64_t count(const char *table)
{
	char *sql = sqlite3_mprintf("SELECT count(*) FROM %s", table);
	int64_t rows = kit_number(kit.path, sql);
	sqlite3_free(sql);
	return rows;
}

START_TEST(a_committed_act_has_its_rows_and_its_entry)
{
	struct log_entry entry = kit_entry("9 half-pints of quince jelly into canner 1", 0, 0);
	struct log_entry newest;
	entry.breaks_hold = true;
	KIT_OK(&kit, kit_start_load(kit.log, 1, "2026-09-14-B1", 9, &entry, &kit.fault));
	ck_assert_int_eq(entry.id, 2);
	ck_assert_int_eq(count("jar"), 9);
	KIT_OK(&kit, log_newest_entry(kit.log, &newest, &kit.fault));
	ck_assert_int_eq(newest.id, entry.id);
	ck_assert_int_eq(newest.at.wall_ms, KIT_MORNING_MS);
	ck_assert_int_eq(newest.at.awake_ms, 1000);
	ck_assert_str_eq(newest.at.boot, "boot-1");
	ck_assert_str_eq(newest.verb, "test");
	ck_assert_str_eq(newest.who, "AB");
	ck_assert_str_eq(newest.said, entry.said);
	ck_assert_int_eq(newest.station_id, 1);
	ck_assert_int_eq(newest.work_id, 1);
	ck_assert_int_eq(newest.undoes_id, 0);
	ck_assert_int_eq(newest.undone_by, 0);
	ck_assert(newest.breaks_hold);
}
END_TEST

START_TEST(an_abandoned_act_leaves_nothing)
{
	char *before = kit_dump(kit.path, true);
	struct log_lot lot = { .code = "x" };
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_lot(kit.log, &lot, &kit.fault));
	log_abandon(kit.log);
	log_abandon(kit.log); /* once too often does no harm */
	char *after = kit_dump(kit.path, true);
	ck_assert_str_eq(before, after);
	free(before);
	free(after);
}
END_TEST

/* What the journal must tell of cannot be written past it. */
START_TEST(a_change_that_acts_capture_is_not_committed_without_an_entry)
{
	char *before = kit_dump(kit.path, true);
	struct log_lot lot = { .code = "x" };

	ck_assert(!log_commit_unjournaled(kit.log, &kit.fault)); /* nothing is open */
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_lot(kit.log, &lot, &kit.fault));
	ck_assert(!log_commit_unjournaled(kit.log, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	char *after = kit_dump(kit.path, true);
	ck_assert_str_eq(before, after);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault)); /* and the next act is one */
	log_abandon(kit.log);
	free(before);
	free(after);
}
END_TEST

START_TEST(closing_in_the_middle_of_an_act_abandons_it)
{
	struct log_lot lot = { .code = "x" };
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_lot(kit.log, &lot, &kit.fault));
	kit_reopen(&kit);
	ck_assert_int_eq(count("lot"), 0);
	ck_assert(kit_whole(kit.path));
}
END_TEST

START_TEST(a_refused_write_spoils_the_whole_act)
{
	struct log_entry entry = kit_entry("two canners with one digit", 0, 0);
	struct log_station good = { .digit = 5, .name = "good" };
	struct log_station bad = { .digit = 1, .name = "digit taken" };
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_station(kit.log, &good, &kit.fault));
	ck_assert(!log_put_station(kit.log, &bad, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	ck_assert_int_eq(bad.id, 0);
	good.digit = 6; /* whoever goes on regardless gets nowhere */
	ck_assert(!log_put_station(kit.log, &good, &kit.fault));
	ck_assert(!log_commit(kit.log, &entry, &kit.fault));
	ck_assert_int_eq(count("station"), 1);
	ck_assert_int_eq(count("journal"), 1);
	KIT_OK(&kit, kit_put_canner(kit.log, 5, "next", &entry, &kit.fault));
}
END_TEST

START_TEST(the_rules_of_the_schema_hold)
{
	struct log_entry entry = kit_entry("load", 0, 0);
	struct log_jar jar = { .load_id = 404, .lot_id = 404, .place_in_load = 1, .size = "pint" };
	struct log_station nameless = { .digit = 8 };
	kit_reopen(&kit); /* each connection has to ask for foreign keys */
	KIT_OK(&kit, kit_start_load(kit.log, 1, "2026-09-14-B1", 1, &entry, &kit.fault));
	/* one load at a time in a canner */
	ck_assert(!kit_start_load(kit.log, 1, "2026-09-14-B2", 1, &entry, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	/* no jar without its load */
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	ck_assert(!log_put_jar(kit.log, &jar, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	log_abandon(kit.log);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	ck_assert(!log_put_station(kit.log, &nameless, &kit.fault));
	log_abandon(kit.log);
	ck_assert_int_eq(count("load"), 1);
	ck_assert_int_eq(count("lot"), 1);
}
END_TEST

START_TEST(an_enum_out_of_range_is_refused)
{
	struct log_station station = { .digit = 8, .kind = STATION_KIND_COUNT, .name = "what" };
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	ck_assert(!log_put_station(kit.log, &station, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	log_abandon(kit.log);
}
END_TEST

START_TEST(nothing_is_written_outside_an_act)
{
	struct log_entry entry = kit_entry("late", 0, 0);
	struct log_house house = { .name = "late" };
	struct log_station station = { .digit = 2, .name = "late" };
	struct log_lot lot = { .code = "late" };
	ck_assert(!log_put_house(kit.log, &house, &kit.fault));
	ck_assert(!log_put_station(kit.log, &station, &kit.fault));
	ck_assert(!log_put_lot(kit.log, &lot, &kit.fault));
	ck_assert(!log_commit(kit.log, &entry, &kit.fault));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "outside an act"));
	ck_assert_int_eq(count("journal"), 1);
	ck_assert_int_eq(count("lot"), 0);
}
END_TEST

START_TEST(acts_do_not_nest)
{
	struct log_entry entry = kit_entry("outer", 0, 0);
	struct log_entry undo = kit_entry("undo", 0, 0);
	struct log_lot lot = { .code = "outer" };
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_lot(kit.log, &lot, &kit.fault));
	ck_assert(!log_begin(kit.log, &kit.fault));
	ck_assert(!log_undo(kit.log, 1, &undo, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	ck_assert_int_eq(count("lot"), 1);
}
END_TEST

START_TEST(an_act_without_a_change_is_journalled_too)
{
	struct log_entry entry = kit_entry("Nothing was done", 0, 0);
	struct log_station station;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	ck_assert_int_eq(kit_number(kit.path, "SELECT length(changes) FROM journal WHERE id = 2"), 0);
	/* putting a row as it is changes nothing either */
	KIT_OK(&kit, log_station_get(kit.log, 1, &station, &kit.fault));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_station(kit.log, &station, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	ck_assert_int_eq(kit_number(kit.path, "SELECT length(changes) FROM journal WHERE id = 3"), 0);
}
END_TEST

START_TEST(only_undo_marks_an_entry_as_an_undo)
{
	struct log_entry entry = kit_entry("An honest act", 0, 0);
	entry.undoes_id = 1;
	entry.undone_by = 7;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	ck_assert_int_eq(entry.undoes_id, 0);
	ck_assert_int_eq(entry.undone_by, 0);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(undoes_id) FROM journal"), 0);
}
END_TEST

START_TEST(the_journal_cannot_be_changed_or_shortened)
{
	sqlite3 *db;
	ck_assert_int_eq(sqlite3_open(kit.path, &db), SQLITE_OK);
	ck_assert_int_eq(sqlite3_exec(db, "UPDATE journal SET said = 'x'", NULL, NULL, NULL), SQLITE_CONSTRAINT);
	ck_assert_str_eq(sqlite3_errmsg(db), "the journal is never changed");
	ck_assert_int_eq(sqlite3_exec(db, "DELETE FROM journal", NULL, NULL, NULL), SQLITE_CONSTRAINT);
	ck_assert_str_eq(sqlite3_errmsg(db), "the journal is never deleted");
	ck_assert_int_eq(sqlite3_close(db), SQLITE_OK);
	ck_assert_int_eq(count("journal"), 1);
}
END_TEST

START_TEST(the_story_of_a_load_is_told_in_order)
{
	struct log_entry entry = kit_entry("Loaded", 0, 0);
	struct log_entry *story;
	size_t entries;
	KIT_OK(&kit, kit_start_load(kit.log, 1, "2026-09-14-B1", 2, &entry, &kit.fault));
	int64_t load_id = entry.work_id;
	struct log_entry other = kit_entry("Canner 2 set up", 0, 0);
	KIT_OK(&kit, kit_put_canner(kit.log, 2, "Second", &other, &kit.fault));
	struct log_entry boil = kit_entry("Boils", 1, load_id);
	KIT_OK(&kit, kit_next_phase(kit.log, load_id, "hold", &boil, &kit.fault));
	KIT_OK(&kit, log_story(kit.log, kit_load(load_id), &story, &entries, &kit.fault));
	ck_assert_uint_eq(entries, 2);
	ck_assert_str_eq(story[0].said, "[\"Loaded\"]");
	ck_assert_str_eq(story[1].said, "[\"Boils\"]");
	free(story);
	KIT_OK(&kit, log_story(kit.log, kit_load(404), &story, &entries, &kit.fault));
	ck_assert_uint_eq(entries, 0);
	ck_assert_ptr_null(story);
}
END_TEST

START_TEST(an_empty_journal_has_no_newest_entry)
{
	struct log_entry newest;
	kit_close(&kit);
	memcpy(kit.path + strlen(kit.path) - strlen("log.db"), "new", strlen("new"));
	kit_open(&kit, LOG_CREATE);
	ck_assert(!log_newest_entry(kit.log, &newest, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_MISSING);
}
END_TEST

START_TEST(hostile_words_do_not_leave_the_journal)
{
	static const char words[] = "'); DROP TABLE journal; --\x1b]0;x\x07\n\"";
	struct log_entry entry = kit_entry(words, 0, 0);
	struct log_entry newest;
	struct values values;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	KIT_OK(&kit, log_newest_entry(kit.log, &newest, &kit.fault));
	ck_assert(values_read(newest.said, &values));
	ck_assert_str_eq(values.list[0].text, words);
}
END_TEST

START_TEST(looking_writes_nothing)
{
	struct log_entry entry = kit_entry("look", 0, 0);
	struct log_station station;
	struct log *look;
	KIT_OK(&kit, log_open(kit.path, LOG_LOOK, &look, &kit.fault));
	ck_assert(!log_begin(look, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_READ_ONLY);
	ck_assert(!log_undo(look, 1, &entry, &kit.fault));
	KIT_OK(&kit, log_backup(look, KIT_MORNING_MS, NULL, &kit.fault)); /* nothing of the log is written */
	KIT_OK(&kit, log_station_get(look, 1, &station, &kit.fault));
	log_close(look);
}
END_TEST

/* A number that was once told of is not given to another load. */
START_TEST(the_number_of_an_undone_load_is_not_used_again)
{
	struct log_entry first = kit_entry("First", 0, 0);
	struct log_entry undo = kit_entry("Undone", 0, 0);
	struct log_entry second = kit_entry("Second", 0, 0);
	KIT_OK(&kit, kit_start_load(kit.log, 1, "2026-09-14-B1", 2, &first, &kit.fault));
	KIT_OK(&kit, log_undo(kit.log, first.id, &undo, &kit.fault));
	ck_assert_int_eq(count("load"), 0);
	KIT_OK(&kit, kit_start_load(kit.log, 1, "2026-09-14-B1", 2, &second, &kit.fault));
	ck_assert_int_eq(second.work_id, first.work_id + 1);
}
END_TEST

/* Whoever still looks at an undone phase is not taken to look at its successor. */
START_TEST(the_number_of_an_undone_phase_is_not_used_again)
{
	struct log_entry load = kit_entry("Loaded", 0, 0);
	struct log_entry boils = kit_entry("Boils", 1, 0);
	struct log_entry undo = kit_entry("Undone", 1, 0);
	struct log_entry again = kit_entry("Boils after all", 1, 0);
	struct log_phase first;
	struct log_phase second;
	KIT_OK(&kit, kit_start_load(kit.log, 1, "2026-09-14-B1", 2, &load, &kit.fault));
	KIT_OK(&kit, kit_next_phase(kit.log, load.work_id, "hold", &boils, &kit.fault));
	KIT_OK(&kit, log_phase_running(kit.log, kit_load(load.work_id), &first, &kit.fault));
	KIT_OK(&kit, log_undo(kit.log, boils.id, &undo, &kit.fault));
	KIT_OK(&kit, kit_next_phase(kit.log, load.work_id, "hold", &again, &kit.fault));
	KIT_OK(&kit, log_phase_running(kit.log, kit_load(load.work_id), &second, &kit.fault));
	ck_assert_int_gt(second.id, first.id);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("acts", .begin = begin, .end = end),
	TEST(a_committed_act_has_its_rows_and_its_entry),
	TEST(an_abandoned_act_leaves_nothing),
	TEST(a_change_that_acts_capture_is_not_committed_without_an_entry),
	TEST(closing_in_the_middle_of_an_act_abandons_it),
	TEST(a_refused_write_spoils_the_whole_act),
	TEST(the_rules_of_the_schema_hold),
	TEST(an_enum_out_of_range_is_refused),
	TEST(nothing_is_written_outside_an_act),
	TEST(acts_do_not_nest),
	TEST(an_act_without_a_change_is_journalled_too),
	TEST(only_undo_marks_an_entry_as_an_undo),
	TEST(the_journal_cannot_be_changed_or_shortened),
	TEST(the_story_of_a_load_is_told_in_order),
	TEST(an_empty_journal_has_no_newest_entry),
	TEST(hostile_words_do_not_leave_the_journal),
	TEST(looking_writes_nothing),
	TEST(the_number_of_an_undone_load_is_not_used_again),
	TEST(the_number_of_an_undone_phase_is_not_used_again),
};

TESTS("log acts", listed)
