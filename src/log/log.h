/*
 * log.h - the one file that remembers everything; all SQL of the program.
 *
 * A `struct log` is one connection to one SQLite file (WAL, synchronous=FULL,
 * foreign keys on).  It hands out typed rows, never a statement.  One process
 * writes at a time; a second terminal may look on and write in turn.
 *
 * Acts.  Every change is an act: log_begin, some log_put_... calls, then
 * log_commit with a journal entry, or log_abandon.  The changes of the act are
 * captured by SQLite's session extension and stored beside the journal entry in
 * the same transaction: either all of it is on the disk when log_commit returns
 * true, or none of it is.  log_undo applies the inverse of an act, and is an
 * act itself.
 *
 * Ownership: rows are plain structs the caller holds; no pointer inside.
 * Arrays returned through `rows`/`count` are malloc'ed by the log and freed by
 * the caller with free().  Times: see base/moment.h.
 * Errors: FAULT_* kinds of base/fault.h; after any fault inside an act call
 * log_abandon.
 */
#ifndef STILLROOM_LOG_LOG_H
#define STILLROOM_LOG_LOG_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "base/moment.h"
#include "base/values.h"
#include "engine/gate/gate.h"
#include "engine/physics/elevation.h"
#include "engine/process/process.h"
#include "engine/recipe/juice_yield.h"
#include "engine/recipe/recipe.h"
#include "engine/recipe/scaling.h"

#define NAME_MAX_BYTES 96           /* names a person types, zero included */
#define SENTENCE_MAX_BYTES 400      /* sentences and reasons */
#define SAID_MAX_BYTES VALUES_BYTES /* values of an act: base/values.h */
#define SOURCE_MAX_BYTES 256
#define WORD_MAX_BYTES 24              /* phase names, verbs, pack words */
#define LOG_APPLICATION_ID 0x53746c72  /* "Stlr", header offset 68 of the file */
#define LOG_WEEK_MS INT64_C(604800000) /* weeks in which the use of jars is counted */
#define LOG_BUSY_MS 250                /* longest wait for another writer; the key loop must not hang */

struct log;

/* --- the file ------------------------------------------------------------ */

enum log_mode {
	LOG_CREATE,  /* make the file and its folder when missing */
	LOG_WRITE,   /* must exist */
	LOG_BOARD,   /* as LOG_CREATE, but its pages are checked later: log_check, then log_checked */
	LOG_LOOK,    /* must exist; nothing is written, its pages are not checked: reports */
	LOG_INSPECT, /* as LOG_LOOK, and checked */
};

/* Open, check identity (application_id, user_version), integrity (quick_check,
 * foreign_key_check; after an unclean end integrity_check) and migrate.  Faults: FAULT_MISSING, FAULT_NOT_OURS,
 * FAULT_NEWER, FAULT_OLDER (laid out before the first release), FAULT_READ_ONLY,
 * FAULT_DISK_FULL, FAULT_DAMAGED (the sentence names the newest backup that opens
 * whole, if there is one), FAULT_BUSY, FAULT_IO (also: an SQLite without full-text
 * search), FAULT_MEMORY.  *out is NULL on failure.  A missing or emptied log that has
 * backups is not begun anew by LOG_CREATE and LOG_BOARD (FAULT_MISSING, FAULT_DAMAGED,
 * naming the backup).  Before a migration the log is copied to
 * PATH.backups/DAY_before_N.db, which stays. */
bool log_open(const char *path, enum log_mode mode, struct log **out, struct fault *fault);
void log_close(struct log *log); /* NULL is allowed */

const char *log_path(const struct log *log);

/* What the person should know of this opening ("" when nothing): a -wal that is not
 * the log's own was put aside, or the log was copied while a board had it open. */
const char *log_notice(const struct log *log);

/* Do the files that were opened still stand under their names? Asked before each act
 * and each commit, and to be asked once a minute. FAULT_UNSAFE: one was removed, replaced
 * or cut short; so it stays then. */
bool log_stands(struct log *log, struct fault *fault);

/* And after a sync that failed: does the disk take one again?  FAULT_UNSAFE: not yet.
 * FAULT_DAMAGED: the check found the log damaged. */
bool log_is_safe(struct log *log, struct fault *fault);

/* True when another connection has committed since the last call (and on the
 * first call): read everything again. */
bool log_changed_elsewhere(struct log *log);

/* A descriptor that can be read when somebody, this process too, has written to a log opened
 * by LOG_BOARD; -1: the system tells nothing, ask log_changed_elsewhere now and then. */
int log_watch(const struct log *log);
/* Has somebody, since the last call? */
bool log_watch_take(struct log *log);

/* Is every page and every index as it should be, as they stand at this moment?  Reads the
 * whole file: seconds for a large one, in which other connections go on writing.
 * FAULT_DAMAGED: not; the sentence names the newest whole backup, if there is one. */
bool log_check(struct log *log, struct fault *fault);

/* Opened by LOG_BOARD and nobody has told yet how the check went?  Until then acts go to
 * the -wal and nothing of it is moved into the file, not even at the end. */
bool log_is_unchecked(const struct log *log);

/* How it went.  NULL: whole.  Else what log_check said of damage: no act is taken any more
 * (FAULT_DAMAGED) and the file stays as it is.  FAULT_IO and others: it could not be
 * noted, and the log counts as unchecked. */
bool log_checked(struct log *log, const char *damage, struct fault *fault);

/* Was damage told? */
bool log_is_damaged(const struct log *log);

/* Does the -wal hold anything? */
bool log_has_wal(const struct log *log);

/* Backups.  A backup is a whole copy, made by the backup API under a temporary name,
 * checked, fsynced and renamed: PATH.backups/2026-09-14_183000_412.db was made then (UTC)
 * and ends with entry 412 of the journal.  Which one is the newest goes by that entry: a
 * wall clock can be wrong for days.
 *
 * log_backup makes one when anything was recorded since the last; *made tells (may be
 * NULL).  It holds what was committed when it was begun, and other connections go on
 * writing.  They are thinned out by age (the table is in log_copies.c). */
bool log_backup(struct log *log, int64_t wall_ms, bool *made, struct fault *fault);

/* Is all that the log holds in one already? */
bool log_is_backed_up(struct log *log);

/* Another process may have made one: look at the folder before the next. */
void log_backed_up_elsewhere(struct log *log);
/* Clear away what a process that was ended while it copied has left. */
void log_clear_parts(const struct log *log);

/* A checked copy anywhere else.  FAULT_REFUSED: something is there that is not to be
 * replaced. */
bool log_save_copy(struct log *log, const char *target, bool replace, struct fault *fault);

#define ENTRY_NOT_KNOWN (-1)

struct log_copy {
	char name[64]; /* in PATH.backups */
	int64_t bytes;
	int64_t newest; /* entry; ENTRY_NOT_KNOWN: it cannot be read */
	int64_t newest_wall_ms;
	bool whole;
	bool aside;      /* of a past that was gone back from */
	int64_t missing; /* acts of the log that are not in it; ENTRY_NOT_KNOWN */
};

/* The backups of `path`, newest first, those set aside last; malloc'ed.  Each is opened
 * and checked.  How many acts a copy lacks is counted from the log's journal when that can
 * still be read. */
bool log_backups(const char *path, struct log_copy **rows, size_t *count, struct fault *fault);

/* Put a backup in the place of a damaged or missing log, or, if it is named, of a whole
 * one.  `name` is one of PATH.backups or a path; NULL: the newest whole one.  What was
 * there is kept beside it as PATH.damaged-N, with its -wal; backups newer than the one
 * put back are set aside.  No connection may be open.  `used` gets the path of the
 * backup.  FAULT_REFUSED: the log is whole and no name was given; FAULT_BUSY: another
 * process has it open; FAULT_MISSING: no whole backup; FAULT_DAMAGED: that one is not. */
bool log_restore_backup(const char *path, const char *name, char *used, size_t used_size, struct fault *fault);

/* --- acts ---------------------------------------------------------------- */

struct log_entry {
	int64_t id; /* filled by the log */
	struct moment at;
	char verb[WORD_MAX_BYTES];
	char who[NAME_MAX_BYTES];
	int64_t station_id; /* 0: none */
	int64_t load_id;    /* 0: none */
	int64_t run_id;     /* 0: none */
	int64_t batch_id;   /* 0: none */
	/* What the act was about, a line of base/values.h; its sentence is made when it is shown
	 * (kitchen/board/verbs.h).  An undo or a redo has none of its own and is stored with "[]". */
	char said[SAID_MAX_BYTES];
	int64_t undoes_id; /* 0: none */
	int64_t undone_by; /* 0: still stands; filled on reading */
	/* Filled on reading: the verb of the act that its chain of undos began with, the act's own
	 * when it is no undo; `said` is then what was said of that act. */
	char act_verb[WORD_MAX_BYTES];
	bool breaks_hold; /* the act ended a hold or a vent; see kitchen_undo */
};

/* What acts are about, for undo and for stories. `id` is not used for the house. */
enum subject_kind { SUBJECT_HOUSE, SUBJECT_STATION, SUBJECT_LOAD, SUBJECT_RUN, SUBJECT_BATCH, SUBJECT_KIND_COUNT };
struct log_subject {
	enum subject_kind kind;
	int64_t id;
};
/* Where an entry has the id of such a subject; NULL: nowhere, it is the house. */
int64_t *log_entry_id(struct log_entry *entry, enum subject_kind kind);

bool log_begin(struct log *log, struct fault *fault); /* BEGIN IMMEDIATE */
/* The loads and batches whose evidence the open act has touched so far: a row of
 * theirs, of a phase, jar, lot or mark of theirs was written or taken away, and they are
 * still there; malloc'ed, each once. */
bool log_touched(struct log *log, struct log_subject **rows, size_t *count, struct fault *fault);
bool log_commit(struct log *log, struct log_entry *entry, struct fault *fault);
void log_abandon(struct log *log);

/* Undo act `id` (which may itself be an undo: that makes a redo) as a new act.
 * `entry` carries at, who, verb, station and load of the new act; undoes_id is set
 * here (an act that was undone and redone is undone through its redo).  FAULT_CONFLICT when rows the act touched have changed
 * since or the result would break a rule of the schema; nothing is changed then.
 * FAULT_MISSING when there is no such act or it has been undone already.  The kitchen takes
 * the two steps below; in one it is for tests. */
bool log_undo(struct log *log, int64_t id, struct log_entry *entry, struct fault *fault);
/* The same in two steps, for who must look at the rows before they are committed: after
 * the first the act is open, and ends by the second or by log_abandon.  `called`: how a
 * refusal begins, "It" or the act's sentence in quotation marks. */
bool log_undo_begin(struct log *log, int64_t id, const char *called, struct log_entry *entry, struct fault *fault);
bool log_undo_commit(struct log *log, struct log_entry *entry, struct fault *fault);

/* What an undo or a redo would take back about a subject.  Undos form chains:
 * act A, its undo U (undoes A), a redo R (undoes U), the next undo (undoes R) ...
 * The newest link of a chain, the one nobody has undone, is its tip; at an even
 * depth (A, R) the act is in force, at an odd depth (U) it is taken back.
 *   undone = false: the newest tip of even depth: log_undo of it is an undo.
 *   undone = true:  the newest tip of odd depth, provided no fresh act (one with
 *                   undoes_id 0) about that subject is newer: log_undo of it is
 *                   a redo.
 * FAULT_MISSING: there is none.  SUBJECT_HOUSE: acts about no station, load, run
 * or batch. */
bool log_last_act(struct log *log, struct log_subject subject, bool undone, struct log_entry *out, struct fault *fault);

/* The act that the chain of undos and redos of entry `id` began with; itself when
 * it is no undo.  FAULT_MISSING: no such entry. */
bool log_root_act(struct log *log, int64_t id, struct log_entry *out, struct fault *fault);

/* FAULT_MISSING: no such entry. */
bool log_entry_get(struct log *log, int64_t id, struct log_entry *out, struct fault *fault);

/* The story of a subject, oldest first. */
bool log_story(struct log *log, struct log_subject subject, struct log_entry **rows, size_t *count,
               struct fault *fault);

/* The newest entry of the whole journal; FAULT_MISSING on an empty journal. */
bool log_newest_entry(struct log *log, struct log_entry *out, struct fault *fault);

/* --- rows ---------------------------------------------------------------- */

#define STORAGE_NOT_READ INT64_MIN

struct log_house {
	char name[NAME_MAX_BYTES];
	struct elevation elevation;
	char elevation_by[NAME_MAX_BYTES];
	int64_t elevation_set_wall_ms; /* 0: never */
	int measured_boil_mc;          /* 0: not measured */
	int barometer_pa;              /* 0: none */
	bool invented;
	int practice_speed; /* 0: a real log */
	int64_t practice_wall_ms;
	int64_t practice_real_wall_ms;
	enum unit_system units;
	int run_minutes;         /* a juicer run in this house; 0: not set */
	int first_juice_minutes; /* hint that the first juice can be drawn; 0: no hint */
	int water_minutes;       /* between water checks of a juicer; 0: not set */
	int jar_wait_minutes;    /* filled jars may wait this long for a canner: house setting */
	int stand_minutes;       /* longest that filled jars or a finished pot may stand; 0: as STANDING_MAX_MS */
	int64_t storage_mc;      /* where jars are kept, thousandths of a degree Celsius */
	int64_t storage_wall_ms; /* when that was read; 0: never */
};

/* The canners, stored under the names of their methods (kitchen/board/phases.h has which is which), and the others. */
enum station_kind {
	STATION_BOILING_WATER,
	STATION_STEAM,
	STATION_DIAL_GAUGE,
	STATION_WEIGHTED_GAUGE,
	STATION_JUICER,
	STATION_POT,
	STATION_KIND_COUNT
};
const char *station_kind_name(enum station_kind kind); /* as stored */
bool station_kind_from_name(const char *name, enum station_kind *out);

struct log_station {
	int64_t id; /* 0 when putting a new row */
	int digit;
	enum station_kind kind;
	char name[NAME_MAX_BYTES];
	int64_t gauge_checked_wall_ms; /* 0: never */
	bool retired;
	int capacity[JAR_SIZES_MAX]; /* canners, by jar size index; 0: not stated */
	int64_t volume_ul;           /* pots, to the brim; 0: not stated */
	char who[NAME_MAX_BYTES];    /* initials of who has it; "" nobody */
	bool own_heat;               /* has its own heat; else a shared burner of the house */
	enum canner_wall wall;       /* pressure canners: how one sees that the pressure is gone */
	int watts;                   /* canners: heat into the water; 0: not stated */
};

struct log_lid_box {
	int64_t id;
	char label[NAME_MAX_BYTES];
	int64_t bought_wall_ms; /* 0: not noted */
	int lids;
	int used; /* jars that carry one; filled on reading */
	bool retired;
};

struct log_lot {
	int64_t id;
	char code[NAME_MAX_BYTES];
	char product[NAME_MAX_BYTES];
	char food[NAME_MAX_BYTES];
	char pack[WORD_MAX_BYTES];
	enum acidity acidity;
	int64_t made_wall_ms;
	enum origin origin;                  /* whose recipe it was made by */
	char origin_words[ORIGIN_WORDS_MAX]; /* what own_recipe_judge said of it; "" nothing */
};

/* In the log "canner": only loads are moved about. */
enum load_place { PLACE_STATION, PLACE_RACK, PLACE_SHELF, PLACE_COUNT };

struct log_load {
	int64_t id;
	int64_t station_id;
	enum method method;
	enum load_place place;
	int minutes;        /* 0: not noted, in a notebook */
	int pressure_psi;   /* NO_PRESSURE: none */
	int headspace_thou; /* 0: not noted, in a notebook */
	char jar_in_table[WORD_MAX_BYTES];
	char source[SOURCE_MAX_BYTES];
	enum confirmed confirmed;
	struct elevation elevation; /* not known: only when a notebook does not say it */
	char elevation_by[NAME_MAX_BYTES];
	/* What the gate said last, and which version of it; filled on reading, written by
	 * log_put_judgement alone. OPEN and version 0: it was never asked. */
	enum verdict verdict;
	char verdict_why[SENTENCE_MAX_BYTES];
	int gate;
	int64_t process_ended_wall_ms; /* 0: not yet */
	int broken;
	int64_t opened_wall_ms;
	bool method_not_noted;         /* from a notebook that does not say it; `method` means nothing */
	char note[SENTENCE_MAX_BYTES]; /* what a notebook says besides */
};

/* Written down in a notebook and not by this program: `confirmed` means nothing.
 * (No process of the tables is without a headspace.) */
static inline bool load_from_notebook(const struct log_load *load)
{
	return load->headspace_thou == 0;
}

enum phase_end { PHASE_RUNNING, PHASE_DONE, PHASE_LOST, PHASE_CUT_SHORT, PHASE_STOPPED, PHASE_END_COUNT };

struct log_phase {
	int64_t id;
	int64_t work_id; /* loads, runs and batches have their numbers in one row */
	char name[WORD_MAX_BYTES];
	struct moment began;
	int64_t required_ms;
	int64_t acknowledged_wall_ms; /* 0: no */
	int64_t ended_wall_ms;        /* 0: running */
	enum phase_end ended_why;
	int64_t lasted_ms; /* once it has ended: by the clock that nobody sets */
};

enum jar_state { JAR_UNCHECKED, JAR_SEALED, JAR_UNSEALED, JAR_DOUBTFUL, JAR_BROKEN, JAR_STATE_COUNT };
enum siphoning { SIPHON_NONE, SIPHON_SLIGHT, SIPHON_UNDER_HALF, SIPHON_OVER_HALF, SIPHON_COUNT };
enum jar_fate { FATE_NONE, FATE_FRIDGE, FATE_FREEZER, FATE_REPROCESS, FATE_DISCARD, FATE_COUNT };
/* The three methods of the seal check, and what each said. */
enum seal_method { SEAL_PRESS, SEAL_TAP, SEAL_EYE, SEAL_METHOD_COUNT };
enum seal_tick { TICK_NONE, TICK_GOOD, TICK_BAD, TICK_COUNT };
/* Why a jar that was kept is no longer there. */
enum jar_gone {
	GONE_NOT,
	GONE_USED,
	GONE_GIVEN,
	GONE_SPOILED,
	GONE_MISSING,
	GONE_THROWN_OUT,
	GONE_NOT_NOTED,
	/* a notebook does not say where it went */ GONE_COUNT
};

struct log_jar {
	int64_t id;
	int64_t load_id;      /* 0: filled and waiting for a canner */
	int64_t batch_id;     /* 0: packed without a pot */
	struct moment filled; /* wall_ms 0: not noted */
	int64_t lot_id;
	int64_t lid_box_id; /* 0: not noted */
	int place_in_load;  /* 0: waiting */
	char size[WORD_MAX_BYTES];
	enum jar_state state;
	enum siphoning siphoning;
	enum jar_fate fate;
	int64_t fate_by_wall_ms;        /* 0: no deadline */
	int64_t fate_done_wall_ms;      /* 0: not yet */
	int64_t checked_wall_ms;        /* 0: not yet */
	char closed_by[NAME_MAX_BYTES]; /* initials of who filled and closed it; "" nobody said */
	enum seal_tick ticks[SEAL_METHOD_COUNT];
	char checked_by[NAME_MAX_BYTES]; /* initials; "" nobody said */
	int64_t from_jar_id;             /* the jar this one was before it was processed again; 0: none */
	enum jar_gone gone_why;
	int64_t gone_wall_ms; /* 0: still there */
	enum acid acid;       /* what was said of its acid when it was filled */
	enum verdict verdict; /* the gate's for this jar; filled on reading */
	enum acidity acidity; /* of its lot; filled on reading */
};

/* Nobody eats it, gives it away or puts a best-by date on it (engine/gate/gate.h). */
static inline bool jar_is_blocked(const struct log_jar *jar)
{
	return verdict_blocks(jar->verdict, jar->acidity);
}

/* What somebody saw or said that bears on a process and stands in no other row. */
enum mark_kind {
	/* Of a load: */
	MARK_STOPPED,     /* given up; the words say where */
	MARK_FOUND_WRONG, /* found afterward */
	MARK_VENT_CUT,    /* and why */
	MARK_EARLIER,     /* the hold began `amount` ms before its key; who saw it */
	MARK_FORCED_COOLING,
	MARK_WEIGHT_EARLY,
	MARK_RESTARTED,      /* the computer restarted in the hold */
	MARK_CLOCK_BEGAN,    /* another clock at the beginning and at the end of the hold, */
	MARK_CLOCK_ENDED,    /* `amount` ms of its day (the end may lie beyond 24 h) */
	MARK_IMPORTED_WORSE, /* the log it came from called it unknown (1) or not valid (2): `amount`; and why */
	MARK_RAISED,         /* an elevation found wrong in the process: what it is to get; it was to run `amount` ms */
	MARK_VENTED,         /* for `amount` ms, as a notebook says */
	/* Of a lot: */
	MARK_NOT_AS_RECIPE,
	MARK_MULTIPLIED,    /* `amount` batches in one pot, more than the recipe allows; why */
	MARK_VINEGAR,       /* its acid, tenths of a percent */
	MARK_POT_STOOD,     /* done in the pot for `amount` ms before it was filled */
	MARK_ACID_LEFT_OUT, /* and why */
	MARK_ACID_INSTEAD, /* its words: the name (engine/food/food.h) of the acid taken for its jars instead of the recipe's */
	MARK_KIND_COUNT
};

struct log_mark {
	int64_t id;
	int64_t load_id; /* exactly one of load and lot is not 0 */
	int64_t lot_id;
	int64_t phase_id; /* the phase it is about, and counts with; 0: none */
	enum mark_kind kind;
	int64_t amount;
	char words[SENTENCE_MAX_BYTES];
	int64_t wall_ms;
	char who[NAME_MAX_BYTES];
};

/* What the gate said of a load or batch, or of a jar of a load that differs. */
struct log_judgement {
	int64_t jar_id; /* 0: the load or batch */
	enum verdict verdict;
	int gate;                         /* GATE_VERSION of the one that said it */
	char reasons[SENTENCE_MAX_BYTES]; /* ids of gate_reasons, blanks between */
	char why[SENTENCE_MAX_BYTES];
};

struct log_run {
	int64_t id;
	int64_t station_id;
	char fruit[NAME_MAX_BYTES];
	int64_t fruit_mg;
	bool open;
	int64_t water_every_ms;
	struct moment water; /* when the water was last seen; wall_ms 0: heat not on yet */
	int water_checks;
	int64_t opened_wall_ms;
};

enum juice_state { JUICE_HOT, JUICE_CHILLED, JUICE_FROZEN, JUICE_STATE_COUNT };

struct log_juice {
	int64_t id;
	int64_t run_id; /* 0: brought along */
	char kind[NAME_MAX_BYTES];
	int64_t made_ul;
	int64_t left_ul; /* made less used; filled on reading */
	enum juice_state state;
	int64_t made_wall_ms;
	int64_t state_wall_ms;
};

enum juice_why { JUICE_FOR_BATCH, JUICE_CORRECTION, JUICE_DISCARDED, JUICE_WHY_COUNT };

struct log_juice_use {
	int64_t id;
	int64_t juice_id;
	int64_t batch_id; /* 0: none */
	int64_t ul;
	enum juice_why why;
	int64_t wall_ms;
};

struct log_batch {
	int64_t id;
	int64_t station_id;
	int64_t lot_id;
	char recipe[NAME_MAX_BYTES];
	int multiple;
	int boil_hold_s;
	int headspace_thou;
	char source[SOURCE_MAX_BYTES];
	bool published; /* false: no published process */
	uint32_t ticks;
	bool warm_jars;
	bool open;
	char note[SENTENCE_MAX_BYTES];
	int64_t opened_wall_ms;
	/* What the gate said last of its recipe, acid and pot, as of a load: never VALID. */
	enum verdict verdict;
	char verdict_why[SENTENCE_MAX_BYTES];
	char jar[WORD_MAX_BYTES]; /* the size it is meant for; "" not said */
	int sheet_minutes;        /* of process by the sheet of its pectin; 0: it prints none */
};

struct log_batch_amount {
	int64_t id;
	int64_t batch_id;
	int place;
	char ingredient[NAME_MAX_BYTES];
	enum supply_kind supply;
	enum measure measure;
	int64_t wanted;
	int64_t used;
};

struct log_supply {
	int64_t id;
	enum supply_kind kind;
	char size[WORD_MAX_BYTES]; /* jars only */
	int64_t stock;             /* sum of its moves; filled on reading */
};

enum supply_why { SUPPLY_RECEIPT, SUPPLY_USE, SUPPLY_CORRECTION, SUPPLY_WHY_COUNT };

struct log_supply_move {
	int64_t id;
	int64_t supply_id;
	int64_t amount;
	enum supply_why why;
	int64_t batch_id; /* 0: none */
	int64_t load_id;  /* 0: none */
	char note[SENTENCE_MAX_BYTES];
	int64_t wall_ms;
	char who[NAME_MAX_BYTES]; /* initials; "" nobody said */
};

/* What one buys of a supply at a time: a bag, a bottle, a box of jars. */
struct log_sold_by {
	enum supply_kind kind;
	char size[WORD_MAX_BYTES]; /* jars only */
	int64_t amount;            /* in the unit of the kind */
};

/* Sums over the runs of a fruit that are over: see run_yield in schema/log.sql. */
struct log_fruit_yield {
	char fruit[NAME_MAX_BYTES]; /* as written, in lower case */
	struct juice_runs runs;
};

/* Jars of one lot that carry lids of one box. */
struct log_lid_use {
	char lot[NAME_MAX_BYTES];
	char product[NAME_MAX_BYTES];
	int jars;
	int64_t made_wall_ms; /* of the lot */
};

/* A recipe of the kitchen's own, with room for its words. */
#define RECIPE_TEXT_MAX_BYTES 200
#define OWN_INGREDIENTS_MAX 12 /* the CHECK of recipe_ingredient.place */
struct log_recipe_ingredient {
	char name[NAME_MAX_BYTES];
	enum supply_kind supply;
	enum measure measure;
	int64_t amount;
	char form[NAME_MAX_BYTES];
	enum adding adding;
	bool optional;
	char known[NAME_MAX_BYTES]; /* what it was picked as (engine/food/food.h); "" unlisted */
};
struct log_recipe {
	int64_t id;
	char name[NAME_MAX_BYTES];
	char food[NAME_MAX_BYTES]; /* "" = no published process */
	char packs[RECIPE_TEXT_MAX_BYTES];
	char jars[RECIPE_TEXT_MAX_BYTES];
	enum pectin pectin;
	enum acidity acidity;
	enum gel_test gel_test;
	int boil_hold_s;
	int headspace_thou;
	int multiple_max;
	int foam_percent;
	int boil_off_low_percent;
	int boil_off_high_percent;
	char caution[SENTENCE_MAX_BYTES];
	char source[SOURCE_MAX_BYTES];
	bool retired;
	int sheet_minutes; /* of process, for this elevation, by the sheet of its pectin; 0: it prints none */
	size_t ingredient_count;
	struct log_recipe_ingredient ingredients[OWN_INGREDIENTS_MAX];
};

/* Lids looked at, and those that had not sealed, in one season: kept by the log,
 * so that nobody counts jars again. */
enum tally_about { TALLY_HOUSE, TALLY_LID_BOX, TALLY_CANNER, TALLY_PERSON, TALLY_ABOUT_COUNT };
struct log_tally {
	enum tally_about about;
	char which[NAME_MAX_BYTES]; /* id of the lid box or station, or initials; "" the house */
	int64_t looked;
	int64_t failed; /* unsealed or doubtful */
};

/* Jars kept (sealed, without a fate, not gone) of one product and size. */
struct log_pantry_line {
	char product[NAME_MAX_BYTES];
	char size[WORD_MAX_BYTES];
	int64_t jars;
	struct log_lot oldest;      /* of these, the lot made first */
	enum verdict verdict;       /* the worst of its kept jars' loads */
	int64_t old_jars;           /* made before the instant asked about */
	int64_t used;               /* used or given in the weeks asked about */
	int64_t first_made_wall_ms; /* the first lot of that product ever */
};

/* Jars kept of one lot and size. */
struct log_pantry_lot {
	struct log_lot lot;
	char size[WORD_MAX_BYTES];
	int64_t jars;
	enum verdict verdict; /* the worst of their loads */
};

/* A lot of which jars spoiled, while others are kept that no recall has looked at since. */
struct log_lot_spoiled {
	int64_t lot_id;
	char code[NAME_MAX_BYTES];
	char product[NAME_MAX_BYTES];
	int64_t spoiled;
	int64_t jars; /* that sealed and were kept, those gone since too */
};

/* Jars kept of one lot and size that are not to be eaten: those an open recall still
 * looks for, or those that verdict_blocks. */
struct log_pantry_part {
	int64_t lot_id;
	char product[NAME_MAX_BYTES];
	char size[WORD_MAX_BYTES];
	int64_t jars;
};

/* What jars can be traced from. */
enum trace_about {
	TRACE_LOT,
	TRACE_LID_BOX,
	TRACE_LOAD,
	TRACE_BATCH,
	TRACE_RUN,
	TRACE_PRODUCT,
	TRACE_DAY,
	TRACE_ABOUT_COUNT
};
struct log_trace {
	enum trace_about about;
	int64_t id;                   /* of the lot, lid box, load, batch or run */
	char product[NAME_MAX_BYTES]; /* capitals do not matter */
	int64_t from_wall_ms;         /* the day is [from, to) */
	int64_t to_wall_ms;
};

enum recall_outcome {
	RECALL_TO_FIND,
	RECALL_THROWN_OUT,
	RECALL_NOT_FOUND,
	RECALL_CLEARED,
	RECALL_REPROCESSED, /* it is another jar now, which the recall follows */
	RECALL_GONE,        /* somebody says that it is gone: it is looked for no more */
	RECALL_OUTCOME_COUNT
};

struct log_recall {
	int64_t id;
	enum trace_about about;
	char which[NAME_MAX_BYTES];     /* an id, a product, a day as 2026-09-14 */
	char words[SENTENCE_MAX_BYTES]; /* what it was called then */
	char reason[SENTENCE_MAX_BYTES];
	int64_t opened_wall_ms;
	int64_t jars;      /* filled on reading */
	int64_t to_find;   /* of these, still to be found; filled on reading */
	int64_t not_found; /* of these, looked for and not found; it stays open for them too */
};

struct log_recall_jar {
	int64_t recall_id;
	int64_t jar_id;
	enum recall_outcome outcome;
	int64_t outcome_wall_ms; /* 0: to be found */
	char who[NAME_MAX_BYTES];
};

/* A jar and all that says where it is. */
struct log_traced {
	struct log_jar jar;
	char lot[NAME_MAX_BYTES];
	char product[NAME_MAX_BYTES];
	char food[NAME_MAX_BYTES];
	enum acidity acidity;
	int64_t made_wall_ms;
	enum load_place place; /* only with a load */
	enum verdict verdict;
	int64_t next_jar_id;        /* what it became when it was processed again; 0: nothing */
	bool recalled;              /* an open recall still looks for it */
	struct log_recall_jar mark; /* of the recall that was asked for; recall_id 0: traced only */
};

/* A rule of the warnings that this house does not want to see. */
struct log_aside {
	char rule[WORD_MAX_BYTES * 2];
	int64_t since_wall_ms;
};

/* --- the day plan (see kitchen/plan/plan.h) --- */

/* What a plan needs to know of the house beside its stations. */
#define BURNERS_MAX 20
#define COOLING_NO_LIMIT (-1)
struct log_plan_house {
	int burners;         /* shared ones, 0 to BURNERS_MAX */
	int fillers;         /* places to fill at, 0 to BURNERS_MAX; 0: as many as people */
	int cooling_jars;    /* room for jars to cool untouched; COOLING_NO_LIMIT */
	int clean_minutes;   /* clean-down at the end, 0 to 600, by all */
	int64_t charge_mg;   /* fruit in a juicer's basket: house setting */
	int late_minutes;    /* a finish this much later than accepted is warned of, 1 to 600: house rule */
	bool meals_in_turns; /* helpers eat half by half; else all together */
};

/* Somebody who helps on such a day. */
struct log_helper {
	int64_t id;
	char initials[NAME_MAX_BYTES];
	int from_minutes; /* after local midnight; -1: from the start */
};

/* A meal: nobody works. */
struct log_plan_break {
	int64_t id;
	int start_minutes;
	int end_minutes;
};

/* The one plan there is: rows, then accepted, then finished. */
struct log_plan {
	int64_t day_wall_ms;      /* local midnight of its day; 0: today */
	int start_minutes;        /* of that day; -1: at once */
	int64_t accepted_wall_ms; /* 0: a draft */
	int64_t accepted_finish_wall_ms;
	int64_t finished_wall_ms; /* 0: not yet */
};

/* A planned charge of a juicer / a planned batch. Order: by id. */
struct log_plan_run {
	int64_t id;
	char fruit[NAME_MAX_BYTES];
	int64_t fruit_mg;
	int ready_minutes; /* the fruit arrives; -1: it is there */
	int64_t run_id;    /* the run that it became; 0: not begun */
};

#define PLAN_RUNS_AS_NEEDED (-1)
struct log_plan_batch {
	int64_t id;
	char recipe[NAME_MAX_BYTES];
	char pack[WORD_MAX_BYTES]; /* "" without a published process */
	char jar[WORD_MAX_BYTES];
	int multiple;
	int ready_minutes; /* not before; -1: any time */
	int after_runs;    /* waits for so many planned runs of its fruit: 0 juice in stock (or whole
	                      fruit); PLAN_RUNS_AS_NEEDED: as many as give the juice, batches in order */
	int64_t batch_id;  /* the batch that it became; 0: not begun */
};

/* A piece of work at a station, as it was planned when the plan was accepted. */
struct log_plan_block {
	int64_t id;
	int64_t station_id;
	int64_t plan_run_id;   /* 0 unless a run */
	int64_t plan_batch_id; /* 0 unless a batch in a pot */
	int jars;              /* loads (neither of both); else 0 */
	int64_t start_wall_ms;
	int64_t end_wall_ms;
};

/* How long phases of a kind have lasted that ended as they should: kept by the log.
 * Left out: those of over PHASE_FORGOTTEN_MS, at which nobody looked. */
#define PHASE_FORGOTTEN_MS (INT64_C(3) * 3600 * 1000) /* house rule */
struct log_phase_mean {
	enum station_kind kind;    /* of the load's method, a juicer or a pot */
	char name[WORD_MAX_BYTES]; /* of the phase */
	int64_t count;
	int64_t sum_ms;
};

/* --- looking back (log_season.c, log_find.c) --- */

/* A load, run or batch of any season as one line. */
struct log_work {
	int64_t id; /* its place in time: a later one is larger; changes when it is corrected */
	struct log_subject subject;
	int season;
	int64_t station_id;
	char product[NAME_MAX_BYTES]; /* loads of several: all of them, cut; runs: the fruit */
	char lot[NAME_MAX_BYTES];     /* likewise; runs: "" */
	enum verdict verdict;         /* runs: OPEN */
	bool open;                    /* still in a station, or its process has no end yet */
	int lost;                     /* boils, steam or pressure lost */
	int64_t fruit_mg;             /* runs that told both */
	int64_t juice_ul;
	int jars; /* loads: not broken */
	int broken;
	int looked; /* lids looked at, and those that had not sealed */
	int failed;
	int64_t opened_wall_ms; /* to the second */
};

enum work_state {
	WORK_ANY,
	WORK_UNSEALED, /* loads with a jar that did not seal, or a doubtful one */
	WORK_NOT_VALID,
	WORK_UNKNOWN,
	WORK_VALID,
	WORK_RESTARTED, /* a boil, steam or pressure was lost */
	WORK_LOSSES,    /* a jar lost liquid */
	WORK_BROKEN,    /* a jar broke */
	WORK_NOTED,     /* a note is on it */
	WORK_OPEN,
	WORK_STATE_COUNT
};

#define FIND_WORDS_MAX 12
#define FIND_MAX_BYTES 256
/* Makes the sentence of an entry of the journal from its verb and values, as a person reads it: a
 * search looks there. It must say the same of the same within one search. NULL: the values as they
 * are stored. */
struct log_teller {
	void (*tell)(const void *with, const char *verb, const char *said, char *buffer, size_t size);
	const void *with;
};

struct log_wish {
	int season;             /* 0: any */
	enum subject_kind kind; /* SUBJECT_HOUSE: any */
	enum work_state state;
	char product[NAME_MAX_BYTES]; /* exactly this; "": any */
	/* Each word, parted from the next by a blank, is any part of its product, lot, day, ingredients,
	 * notes, reasons, or of what the journal tells of it and by whom: "each" finds peaches. Capitals
	 * count for nothing in the letters A to Z (log/history/find_words.h). */
	char words[FIND_MAX_BYTES];
	struct log_teller teller;
};

/* What of a season is added up besides how much was begun: each is a look of its own through
 * the rows of that year. */
enum season_part {
	SEASON_WITH_JARS = 1,
	SEASON_WITH_VERDICTS = 2,
	SEASON_WITH_SEALS = 4,
	SEASON_WITH_YIELD = 8,
	SEASON_WITH_HOURS = 16,
	SEASON_WITH_COME_UP = 32,
	SEASON_WITH_BUSIEST = 64,
	SEASON_WHOLE = 127
};
/* The sums of a season: a year, UTC, of when the work was begun; the lids: of when
 * they were looked at. What was not asked for is 0. */
struct log_season {
	int season;
	int64_t loads;
	int64_t runs;
	int64_t batches;
	int64_t jars; /* not broken */
	int64_t broken;
	int64_t not_valid; /* loads */
	int64_t unknown;
	int64_t lost;     /* boils, steam or pressure lost */
	int64_t come_ups; /* loads that came up to a hold or a vent, and their time together */
	int64_t come_up_ms;
	int64_t fruit_mg; /* of runs that told both */
	int64_t juice_ul;
	int64_t acts;
	int64_t worked_ms; /* between acts less than two hours apart: house rule */
	int64_t looked;
	int64_t failed;
	char busiest[NAME_MAX_BYTES]; /* station; "": none was busy */
	int64_t busiest_ms;
};
struct log_season_product {
	char product[NAME_MAX_BYTES];
	int64_t loads;
	int64_t jars;
	int64_t broken;
	int64_t looked; /* here by the season in which they were made */
	int64_t failed;
};
struct log_season_station {
	int64_t station_id;
	char name[NAME_MAX_BYTES];
	enum station_kind kind;
	int64_t works; /* loads, runs or batches */
	int64_t busy_ms;
};
struct log_season_fruit {
	char fruit[NAME_MAX_BYTES]; /* in lower case */
	int64_t runs;
	int64_t fruit_mg;
	int64_t juice_ul;
};
#define COME_UP_MINUTES_MAX 240 /* that or more */
struct log_season_come_up {
	int64_t station_id;
	int minutes; /* begun */
	int64_t loads;
};

/* Words of the enums as stored; "?" when out of range. */
const char *load_place_name(enum load_place place);
const char *verdict_name(enum verdict verdict);
const char *jar_state_name(enum jar_state state);
const char *siphoning_name(enum siphoning siphoning);
const char *jar_fate_name(enum jar_fate fate);
const char *juice_state_name(enum juice_state state);
const char *juice_why_name(enum juice_why why);
const char *seal_tick_name(enum seal_tick tick); /* TICK_NONE: "" */
const char *jar_gone_name(enum jar_gone gone);   /* GONE_NOT: "" */
const char *trace_about_name(enum trace_about about);
const char *recall_outcome_name(enum recall_outcome outcome); /* RECALL_TO_FIND: "" */

/* Reading (inside or outside an act). A *_get of a missing id: FAULT_MISSING. */
bool log_house_get(struct log *log, struct log_house *out, struct fault *fault);
bool log_stations(struct log *log, struct log_station **rows, size_t *count,
                  struct fault *fault); /* not retired, by digit */
bool log_stations_all(struct log *log, struct log_station **rows, size_t *count,
                      struct fault *fault); /* retired too, by id */
bool log_station_get(struct log *log, int64_t id, struct log_station *out, struct fault *fault); /* retired too */
bool log_lid_boxes(struct log *log, struct log_lid_box **rows, size_t *count,
                   struct fault *fault); /* not retired, by id */
bool log_lid_boxes_all(struct log *log, struct log_lid_box **rows, size_t *count,
                       struct fault *fault); /* retired too, by id */
bool log_lid_box_get(struct log *log, int64_t id, struct log_lid_box *out, struct fault *fault);
bool log_load_get(struct log *log, int64_t id, struct log_load *out, struct fault *fault);
bool log_loads_open(struct log *log, struct log_load **rows, size_t *count,
                    struct fault *fault); /* canner and rack, oldest first */
/* Loads opened in [from, to), shelved ones too, oldest first. */
bool log_loads_between(struct log *log, int64_t from_wall_ms, int64_t to_wall_ms, struct log_load **rows, size_t *count,
                       struct fault *fault);
/* The newest load opened before an instant; FAULT_MISSING: none. */
bool log_load_before(struct log *log, int64_t wall_ms, struct log_load *out, struct fault *fault);
/* Phases of a load, run or batch (subject kinds of those names only). */
bool log_phase_running(struct log *log, struct log_subject subject, struct log_phase *out, struct fault *fault);
bool log_phases(struct log *log, struct log_subject subject, struct log_phase **rows, size_t *count,
                struct fault *fault); /* oldest first */
bool log_run_get(struct log *log, int64_t id, struct log_run *out, struct fault *fault);
bool log_runs_open(struct log *log, struct log_run **rows, size_t *count, struct fault *fault); /* oldest first */
/* Runs and batches opened in [from, to), closed ones too, oldest first. */
bool log_runs_between(struct log *log, int64_t from_wall_ms, int64_t to_wall_ms, struct log_run **rows, size_t *count,
                      struct fault *fault);
bool log_batches_between(struct log *log, int64_t from_wall_ms, int64_t to_wall_ms, struct log_batch **rows,
                         size_t *count, struct fault *fault);
bool log_juice_get(struct log *log, int64_t id, struct log_juice *out, struct fault *fault);
bool log_juices_left(struct log *log, struct log_juice **rows, size_t *count,
                     struct fault *fault); /* with left_ul > 0, oldest first */
bool log_juices_of_run(struct log *log, int64_t run_id, struct log_juice **rows, size_t *count, struct fault *fault);
bool log_juice_uses(struct log *log, int64_t batch_id, struct log_juice_use **rows, size_t *count, struct fault *fault);
bool log_batch_get(struct log *log, int64_t id, struct log_batch *out, struct fault *fault);
bool log_batches_open(struct log *log, struct log_batch **rows, size_t *count, struct fault *fault); /* oldest first */
bool log_batch_amounts(struct log *log, int64_t batch_id, struct log_batch_amount **rows, size_t *count,
                       struct fault *fault); /* by place */
bool log_jars_of_batch(struct log *log, int64_t batch_id, struct log_jar **rows, size_t *count,
                       struct fault *fault); /* by id */
/* Filled jars without a load that are not broken and have no fate, longest waiting first. */
bool log_jars_waiting(struct log *log, struct log_jar **rows, size_t *count, struct fault *fault);
bool log_supplies(struct log *log, struct log_supply **rows, size_t *count,
                  struct fault *fault); /* by kind, then size */
bool log_supply_of(struct log *log, enum supply_kind kind, const char *size, struct log_supply *out,
                   struct fault *fault);
/* The newest `most` moves, newest first. */
bool log_supply_moves_newest(struct log *log, int64_t supply_id, int most, struct log_supply_move **rows, size_t *count,
                             struct fault *fault);
bool log_sold_by(struct log *log, struct log_sold_by **rows, size_t *count,
                 struct fault *fault); /* by kind, then size */
bool log_fruit_yields(struct log *log, struct log_fruit_yield **rows, size_t *count,
                      struct fault *fault); /* by fruit */
bool log_lid_uses(struct log *log, int64_t lid_box_id, struct log_lid_use **rows, size_t *count,
                  struct fault *fault); /* newest lot first */
/* What was taken of a juice, oldest first. */
bool log_uses_of_juice(struct log *log, int64_t juice_id, struct log_juice_use **rows, size_t *count,
                       struct fault *fault);
bool log_recipes(struct log *log, struct log_recipe **rows, size_t *count,
                 struct fault *fault); /* not retired, by name */
bool log_recipe_get(struct log *log, int64_t id, struct log_recipe *out, struct fault *fault);
bool log_jars(struct log *log, int64_t load_id, struct log_jar **rows, size_t *count,
              struct fault *fault); /* by place */
bool log_jar_get(struct log *log, int64_t id, struct log_jar *out, struct fault *fault);
bool log_marks_of_load(struct log *log, int64_t load_id, struct log_mark **rows, size_t *count,
                       struct fault *fault); /* oldest first */
bool log_marks_of_lot(struct log *log, int64_t lot_id, struct log_mark **rows, size_t *count, struct fault *fault);
/* What the gate said of a jar: its own answer, or its load's. */
bool log_judgement_of_jar(struct log *log, const struct log_jar *jar, struct log_judgement *out, struct fault *fault);
bool log_lot_get(struct log *log, int64_t id, struct log_lot *out, struct fault *fault);
/* The first lot of that product (capitals do not matter) made at that instant. */
bool log_lot_made(struct log *log, const char *product, int64_t made_wall_ms, struct log_lot *out, struct fault *fault);
bool log_lot_named(struct log *log, const char *code, struct log_lot *out,
                   struct fault *fault); /* its code, to the letter */
bool log_jars_of_lot(struct log *log, int64_t lot_id, struct log_jar **rows, size_t *count,
                     struct fault *fault); /* by id */
/* Lots with jars that sealed and have no fate, by code, and how many. */
struct log_lot_kept {
	struct log_lot lot;
	int64_t jars;
};
bool log_lots_kept(struct log *log, struct log_lot_kept **rows, size_t *count, struct fault *fault);
/* Jars set aside whose fate is not carried out, and what is in fridge and freezer, of any load; the
 * nearest deadline first, what is frozen last. */
bool log_jars_with_open_fate(struct log *log, struct log_jar **rows, size_t *count, struct fault *fault);
/* Jars in loads opened in [from, to) that are not broken. */
bool log_jars_made_between(struct log *log, int64_t from_wall_ms, int64_t to_wall_ms, int *jars, struct fault *fault);
/* Of the jars kept that may be eaten, one of the oldest lot; FAULT_MISSING: none. */
bool log_jar_oldest(struct log *log, struct log_jar *out, struct fault *fault);
/* Of a season: the year, UTC, in which the lids were looked at. */
bool log_tallies(struct log *log, int season, struct log_tally **rows, size_t *count, struct fault *fault);
bool log_rules_aside(struct log *log, struct log_aside **rows, size_t *count, struct fault *fault); /* by name */
bool log_plan_house_get(struct log *log, struct log_plan_house *out, struct fault *fault);
bool log_helpers(struct log *log, struct log_helper **rows, size_t *count, struct fault *fault);         /* by id */
bool log_plan_breaks(struct log *log, struct log_plan_break **rows, size_t *count, struct fault *fault); /* by start */
bool log_plan_get(struct log *log, struct log_plan *out, struct fault *fault);
bool log_plan_runs(struct log *log, struct log_plan_run **rows, size_t *count, struct fault *fault);      /* by id */
bool log_plan_batches(struct log *log, struct log_plan_batch **rows, size_t *count, struct fault *fault); /* by id */
bool log_plan_blocks(struct log *log, struct log_plan_block **rows, size_t *count,
                     struct fault *fault); /* by start, id */
bool log_phase_means(struct log *log, struct log_phase_mean **rows, size_t *count, struct fault *fault);
/* What is kept, by product and size; `from_week`: use is counted from that week on
 * (an instant divided by LOG_WEEK_MS); `old_wall_ms`: jars made before it are counted as old. */
bool log_pantry(struct log *log, int64_t from_week, int64_t old_wall_ms, struct log_pantry_line **rows, size_t *count,
                struct fault *fault);
/* The lots of one line, oldest first. */
bool log_pantry_lots(struct log *log, const char *product, const char *size, struct log_pantry_lot **rows,
                     size_t *count, struct fault *fault);
bool log_pantry_recalled(struct log *log, struct log_pantry_part **rows, size_t *count, struct fault *fault);
bool log_pantry_blocked(struct log *log, struct log_pantry_part **rows, size_t *count, struct fault *fault);
/* Jars kept of a lot and size, the first `most` of them by id. */
bool log_jars_kept(struct log *log, int64_t lot_id, const char *size, int64_t most, struct log_jar **rows,
                   size_t *count, struct fault *fault);
/* Jars of a product and size that were used, given away or not found, the newest to go first, at
 * most `most`; those a count did not find before all others. */
bool log_jars_gone(struct log *log, const char *product, const char *size, int64_t most, struct log_jar **rows,
                   size_t *count, struct fault *fault);
/* Loads with kept jars that a version of the gate before this one judged last. */
bool log_loads_of_old_gate(struct log *log, int gate, int64_t **ids, size_t *count, struct fault *fault);
bool log_lot_by_code(struct log *log, const char *code, struct log_lot *out,
                     struct fault *fault); /* capitals do not matter */
/* Loads that share jars with a load because they were processed again, before or after. */
bool log_loads_linked(struct log *log, int64_t load_id, int64_t **ids, size_t *count, struct fault *fault);
/* Every jar of it, and what became of it under a new lid; by lot, load and place. */
bool log_trace(struct log *log, const struct log_trace *trace, struct log_traced **rows, size_t *count,
               struct fault *fault);
bool log_recalls(struct log *log, struct log_recall **rows, size_t *count, struct fault *fault); /* newest first */
bool log_recalls_open(struct log *log, struct log_recall **rows, size_t *count,
                      struct fault *fault); /* with jars to find, oldest first */
/* Its jars with their marks, as log_trace orders them. */
bool log_recall_jars(struct log *log, int64_t recall_id, struct log_traced **rows, size_t *count, struct fault *fault);
/* The marks of a jar with that outcome; RECALL_TO_FIND: by which open recalls still look for it. */
bool log_marks_of_jar(struct log *log, int64_t jar_id, enum recall_outcome outcome, struct log_recall_jar **rows,
                      size_t *count, struct fault *fault);
/* How many jars of a lot an open recall still looks for. */
bool log_lot_recalled(struct log *log, int64_t lot_id, int64_t *jars, struct fault *fault);
bool log_lots_spoiled(struct log *log, struct log_lot_spoiled **rows, size_t *count, struct fault *fault);
/* Lots already made with codes that begin with `prefix` (a date): the next sequence number, from 1. */
bool log_next_lot_number(struct log *log, const char *prefix, int *number, struct fault *fault);

/* At most `most` works that are as wished, those next to `from_id` in time: older
 * ones, newest first, or newer ones, oldest first. INT64_MAX and INT64_MIN begin at
 * either end. FAULT_MISUSE: more than FIND_WORDS_MAX words. */
bool log_works(struct log *log, const struct log_wish *wish, int64_t from_id, bool older, int most,
               struct log_work **rows, size_t *count, struct fault *fault);
bool log_work_get(struct log *log, struct log_subject subject, struct log_work *out, struct fault *fault);
/* The smallest id a work of that season can have; public for a timing. */
int64_t log_season_begins(int season);
/* Years in which something was begun, newest first; `parts`: bits of enum season_part. */
bool log_seasons(struct log *log, unsigned parts, struct log_season **rows, size_t *count, struct fault *fault);
/* One year, in which nothing need have been begun. */
bool log_season_get(struct log *log, int year, unsigned parts, struct log_season *out, struct fault *fault);
bool log_season_products(struct log *log, int season, struct log_season_product **rows, size_t *count,
                         struct fault *fault); /* most jars first */
bool log_season_stations(struct log *log, int season, struct log_season_station **rows, size_t *count,
                         struct fault *fault); /* busiest first */
bool log_season_fruits(struct log *log, int season, struct log_season_fruit **rows, size_t *count,
                       struct fault *fault); /* most fruit first */
bool log_season_come_ups(struct log *log, int season, struct log_season_come_up **rows, size_t *count,
                         struct fault *fault); /* shortest first */
/* Every product that was ever in a load, by name; the first NAME_MAX_BYTES - 1 bytes. */
struct log_name {
	char name[NAME_MAX_BYTES];
};
bool log_product_names(struct log *log, struct log_name **rows, size_t *count, struct fault *fault);

/* Writing, only inside an act. A row with id 0 is inserted and its id filled
 * in; otherwise the row of that id is replaced (FAULT_MISSING: no such row).
 * FAULT_REFUSED: a rule of the schema forbids it.  Ids of stations,
 * loads, phases, jars, runs, juice, batches and moves are never given twice, not
 * even after an undo: a second terminal must be able to tell a phase begun anew
 * from the undone one it still shows. */
bool log_put_house(struct log *log, const struct log_house *row, struct fault *fault);
bool log_put_station(struct log *log, struct log_station *row, struct fault *fault);
bool log_put_lid_box(struct log *log, struct log_lid_box *row, struct fault *fault);
bool log_put_lot(struct log *log, struct log_lot *row, struct fault *fault);
bool log_put_load(struct log *log, struct log_load *row, struct fault *fault);
/* Insert a load (id 0) that comes back from an export: under the number it had when
 * that is above every number ever given here, else under a fresh one. */
bool log_put_load_numbered(struct log *log, struct log_load *row, int64_t number, struct fault *fault);
bool log_put_phase(struct log *log, struct log_phase *row, struct fault *fault);
bool log_put_jar(struct log *log, struct log_jar *row, struct fault *fault);
bool log_put_mark(struct log *log, struct log_mark *row, struct fault *fault);
/* In the place of what the gate said of a load and its jars, or of a batch, before.  Not
 * captured for undo: after an undo the gate is asked again. */
bool log_put_judgement(struct log *log, struct log_subject subject, const struct log_judgement *rows, size_t count,
                       struct fault *fault);
/* Set a rule aside, or take it up again. */
bool log_put_aside(struct log *log, const struct log_aside *row, bool aside, struct fault *fault);
/* A jar that was counted but never was; only one that waits. */
bool log_remove_jar(struct log *log, int64_t id, struct fault *fault);
bool log_put_run(struct log *log, struct log_run *row, struct fault *fault);
bool log_put_juice(struct log *log, struct log_juice *row, struct fault *fault);
bool log_put_juice_use(struct log *log, struct log_juice_use *row, struct fault *fault);
bool log_put_batch(struct log *log, struct log_batch *row, struct fault *fault);
bool log_put_batch_amount(struct log *log, struct log_batch_amount *row, struct fault *fault);
bool log_put_supply(struct log *log, struct log_supply *row, struct fault *fault);
bool log_put_supply_move(struct log *log, struct log_supply_move *row, struct fault *fault);
/* Amount 0: no longer set. */
bool log_put_sold_by(struct log *log, const struct log_sold_by *row, struct fault *fault);
bool log_put_plan_house(struct log *log, const struct log_plan_house *row, struct fault *fault);
bool log_put_helper(struct log *log, struct log_helper *row, struct fault *fault);
bool log_remove_helper(struct log *log, int64_t id, struct fault *fault);
bool log_put_plan_break(struct log *log, struct log_plan_break *row, struct fault *fault);
bool log_remove_plan_break(struct log *log, int64_t id, struct fault *fault);
bool log_put_plan(struct log *log, const struct log_plan *row, struct fault *fault);
bool log_put_plan_run(struct log *log, struct log_plan_run *row, struct fault *fault);
bool log_remove_plan_run(struct log *log, int64_t id, struct fault *fault);
bool log_put_plan_batch(struct log *log, struct log_plan_batch *row, struct fault *fault);
bool log_remove_plan_batch(struct log *log, int64_t id, struct fault *fault);
bool log_put_plan_block(struct log *log, struct log_plan_block *row, struct fault *fault);
bool log_clear_plan_blocks(struct log *log, struct fault *fault);
bool log_clear_plan_rows(struct log *log, struct fault *fault);                    /* runs and batches */
bool log_put_recipe(struct log *log, struct log_recipe *row, struct fault *fault); /* replaces its ingredients */
bool log_put_recall(struct log *log, struct log_recall *row, struct fault *fault);
/* Inserted, or its outcome changed when it is there. */
bool log_put_recall_jar(struct log *log, const struct log_recall_jar *row, struct fault *fault);

#endif
