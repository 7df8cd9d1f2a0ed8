/*
 * board_private.h - the kitchen itself, and what its acts ask of the board.  Inside the
 * kitchen floor only.
 */
#ifndef STILLROOM_KITCHEN_BOARD_BOARD_PRIVATE_H
#define STILLROOM_KITCHEN_BOARD_BOARD_PRIVATE_H

#include "kitchen/board/board.h"
#include "kitchen/board/book.h"
#include "kitchen/board/look.h"
#include "kitchen/board/planned.h"
#include "kitchen/warning/warnings.h"
#include "log/rows/journal.h"

struct log;

struct planning; /* plan/plan_private.h */

struct judged_anew; /* act/verdict.h */

/* For backups.c: the board when it was last looked at, and what is in no copy yet. */
struct backup_watch {
	bool begun;
	int64_t day_ms;
	size_t racked;
	size_t busy;
	bool due;
	uint64_t reads;          /* the board that is in a copy */
	int64_t behind_since_ms; /* real time; 0: nothing is behind */
};

/* A recipe that the kitchen knows. */
struct known_recipe {
	const struct recipe *recipe; /* built in, or in `own` of the kitchen */
	int64_t own_id;              /* 0: built in */
};

struct act; /* act/act.h */

struct kitchen {
	struct log *log;
	/* What is looked up again where an undo changed the elevation: kitchen/house, which kitchen/act stands below. */
	bool (*elevation_back)(struct act *act, const struct log_entry *first, struct fault *fault);
	struct clock clock;
	char who[NAME_MAX_BYTES];
	struct board board;
	struct strip *strips;
	struct log_jar *fates;
	struct log_jar *waiting;
	struct log_lid_box *boxes;
	struct log_supply *supplies;
	struct log_rule_off *rules_off;
	struct log_tally *tallies; /* of this season */
	size_t tally_count;
	bool had_day;                /* a load was made before today; */
	struct log_load last_before; /* the newest of these */
	struct log_lot kept;         /* of the oldest jar still kept; id 0: none */
	uint64_t reads;              /* how often the board was read: tells what is stale */
	struct warned {
		struct warning rows[WARNINGS_MAX];
		size_t count;
		struct moment at;
		int64_t again_ms; /* after `at`: something may change by itself */
		int64_t fires_ms; /* after `at`: one more may fire */
		uint64_t reads;   /* the board it was found on; 0: none */
		uint64_t plan;    /* the version of the plan that was asked about */
	} warned;
	struct log_recipe *own_recipes; /* their words; `own` points into them */
	struct recipe *own;
	struct known_recipe *book; /* built-in ones, or the own ones that complete them, then the other own ones */
	size_t book_count;
	int64_t latest_wall_ms;         /* of the entries written before this computer started; 0: none seen */
	int64_t day_start_ms;           /* the local day jars_today counts */
	struct planned planned;         /* rows of the day plan */
	struct planning *planning;      /* what is worked out from them, by kitchen/plan */
	struct log_subject fate_done;   /* what the newest fate carried out was about; id 0: none */
	struct log_subject pantry_done; /* likewise of what was taken out, counted or recalled; kind: the house */
	struct log_recall *recalls;
	struct judged_anew *anew; /* what this gate makes worse of loads of an older one; as it was opened */
	size_t anew_count;
	struct log_lot_spoiled *spoiled;
	struct backup_watch backup;
	int64_t asked_ms; /* awake time at which the log was last asked for acts of others; 0: never */
	int64_t told_ms;  /* and at which the system last told of a write; 0: never */
	int64_t today_ms; /* of kitchen_day_start */
	int64_t tomorrow_ms;
};

/* clock_day_start of an instant that is mostly of the same day as the last. */
int64_t kitchen_day_start(struct kitchen *kitchen, int64_t wall_ms);
struct log *kitchen_log(const struct kitchen *kitchen);
/* Does an answer worked out `at` then, on the board of so many `reads`, still stand?
 * For again_ms at most, on the same board, while nobody sets the wall clock. */
bool still_stands(const struct kitchen *kitchen, const struct moment *at, uint64_t reads, int64_t again_ms,
                  const struct moment *now);

/* --- strips --- */

/* The strip of a load on the board; NULL with FAULT_STALE when it is gone. */
const struct strip *kitchen_strip(const struct kitchen *kitchen, int64_t load_id, struct fault *fault);
/* A copy of the strip whose running phase is `phase_id`, as an act ends by reading the board
 * again; false with FAULT_STALE when that phase has ended meanwhile. */
bool kitchen_strip_at(const struct kitchen *kitchen, int64_t phase_id, struct strip *out, struct fault *fault);
/* An empty station of the board; NULL with a fault. */
const struct strip *kitchen_free_station(const struct kitchen *kitchen, int64_t station_id, struct fault *fault);
const struct strip *kitchen_batch_strip(const struct kitchen *kitchen, int64_t batch_id, struct fault *fault);
/* Required length of a phase for the work in the strip, ms; 0: no clock. */
int64_t strip_required_ms(const struct strip *strip, const struct phase_rule *rule);
/* Of a phase whose length is OF_THE_WORK; 0: not known, or nothing is in it. */
int64_t strip_work_ms(const struct strip *strip);
/* Before the contents wherever they are shown: "NOT VALID: ". */
const char *verdict_mark(enum verdict verdict, const struct log_lot *lot);
/* Refused while a canner holds a load; `what` is what would change under it. */
bool canners_are_empty(const struct kitchen *kitchen, const char *what, struct fault *fault);
/* Sooner than that the end of a watched phase is asked about. */
int64_t strip_soon_ms(const struct strip *strip, const struct phase_rule *rule);
/* Is the running phase before or in the hold? */
bool phase_comes_before_end(enum phase_name name);
bool strip_before_end(const struct strip *strip);

/* --- rows --- */

/* A process that is not valid or unknown: its jars have 2 h, and no seal is
 * trusted. */
bool load_is_wrong(const struct log_load *load);
/* Does the jar's fate have to be chosen before a window closes? */
bool jar_has_window(const struct log_jar *jar, const struct log_load *load);
/* The way of a load to its hold: how long it is on it after this phase, and how long a
 * jar stood filled before the load was begun (0: its filling was not noted). */
int64_t way_to_hold_ms(const struct phase_rule *rule, const struct log_phase *phase, int64_t so_far_ms);
int64_t waited_for_canner_ms(const struct log_load *load, const struct log_jar *jar);
/* Is the jar one of that batch and size? */
bool of_group(const struct log_jar *jar, int64_t batch_id, const char *size);
/* How long a jar waits; 0: its filling was not noted. */
int64_t waited_ms(const struct log_jar *jar, const struct moment *now);
/* How long food of that acidity may stand in this house before it is heated again. */
int64_t stand_limit_of(const struct kitchen *kitchen, enum acidity acidity);
/* Minutes of process that the sheet of its pectin asked of a batch (0: none). */
bool batch_sheet_minutes(const struct kitchen *kitchen, int64_t batch_id, int *minutes, struct fault *fault);
/* Of the jars of a batch, those that were filled from its pot: one under a second lid is no
 * other jar.  `size` NULL: of every size. */
int jars_filled(const struct log_jar *rows, size_t count, const char *size);
/* What the pot will likely still fill, and take of a supply that goes into jars. */
int batch_jars_to_come(const struct strip *strip);
int64_t batch_acid_to_come(const struct strip *strip, enum supply_kind kind);
/* Recipes of the log's own, read with the board. */
bool read_own_recipes(struct kitchen *kitchen, struct fault *fault);
/* A recipe whose words lie in a row of the log, which must outlive it. */
void recipe_over(const struct log_recipe *row, struct recipe *out);

/* --- lines of acid --- */

/* An ingredient as an acid; NOT_SAID: none. */
enum acid acid_of(const struct ingredient *ingredient);
/* The first line of acid that a recipe asks for, and that may not be left out; NULL: none. */
const struct ingredient *acid_asked_by(const struct recipe *recipe);
/* The line of a recipe that puts acid into each jar; NULL: none. */
const struct ingredient *acid_in_jar(const struct recipe *recipe);
/* What the card says of acid in the pot; `text` NULL: not told in words. */
bool look_in_pot(const struct kitchen *kitchen, const struct log_batch *batch, enum acid *acid, struct text *text,
                 struct fault *fault);
/* Of acid that a recipe cooks in its pot: AS_PRINTED, LEFT_OUT (less of it went in than it
 * asks for) or NONE_ASKED. */
bool acid_in_pot(const struct kitchen *kitchen, int64_t batch_id, enum acid *acid, struct fault *fault);
/* Is it acid that a recipe asks for, and not one that may be left out? */
bool amount_is_acid(const struct recipe *recipe, const struct log_batch_amount *amount);
/* Which was taken when the batch was begun; NOT_SAID: none. */
bool acid_taken_instead(const struct kitchen *kitchen, int64_t lot_id, enum acid *acid, struct fault *fault);
/* What one jar takes of an acid of its food, in the measure of its ledger. */
int64_t acid_share(const char *food, enum acid acid, const struct jar_size *jar);

#endif
