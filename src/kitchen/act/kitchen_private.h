/*
 * kitchen_private.h - shared by the files of the kitchen floor only.
 */
#ifndef STILLROOM_KITCHEN_ACT_KITCHEN_PRIVATE_H
#define STILLROOM_KITCHEN_ACT_KITCHEN_PRIVATE_H

#include "kitchen/act/kitchen.h"
#include "kitchen/warning/warnings.h"

struct planning;    /* plan_private.h */
struct judged_anew; /* verdict.h */

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

struct kitchen {
	struct log *log;
	struct clock clock;
	char who[NAME_MAX_BYTES];
	struct board board;
	struct strip *strips;
	struct log_jar *fates;
	struct log_jar *waiting;
	struct log_lid_box *boxes;
	struct log_supply *supplies;
	struct log_aside *asides;
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
		uint64_t reads;   /* the board it was found on; 0: none */
	} warned;
	struct log_recipe *own_recipes; /* their words; `own` points into them */
	struct recipe *own;
	struct known_recipe *book; /* built-in ones, or the own ones that complete them, then the other own ones */
	size_t book_count;
	int64_t latest_wall_ms;         /* of the entries written before this computer started; 0: none seen */
	int64_t day_start_ms;           /* the local day jars_today counts */
	struct planning *planning;      /* the day plan; what it works out is kept in there */
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

/* An act being made: what the journal will say of it. */
struct act {
	struct kitchen *kitchen;
	struct log_entry entry;
};

/* Begin an act at the present moment. */
bool act_begin(struct act *act, struct kitchen *kitchen, const char *verb, int64_t station_id, struct fault *fault);
/* What the act is about. */
void act_about(struct act *act, struct log_subject subject);
/* Commit with the sentence for the journal and read the board again. */
bool act_commit(struct act *act, struct fault *fault, const char *format, ...) __attribute__((format(printf, 3, 4)));
/* Abandon the act; returns false so that a failing line reads `return act_fail(...)`. */
bool act_fail(struct act *act);

/* --- stops.c --- */

/* Does any stop rule hold this key up?  `facts` about ABOUT_KEY.  True: no, or the
 * reason lets it pass.  False: FAULT_STOPPED (a reason would let it pass) or
 * FAULT_REFUSED, with the rule's id. */
bool stops_let_pass(const struct facts *facts, const char *reason, struct fault *fault);
/* A process was refused with the sentence in *fault: say it again as the stop rule
 * it falls under.  Always false. */
bool stop_no_process(const struct kitchen *kitchen, enum method method, const char *food, struct fault *fault);

#define VERB_TAKEN "pantry_taken"
#define VERB_COUNTED "pantry_counted"
#define VERB_RECALLED "recall"
#define VERB_FOLLOWED "recall_follow_up"
/* Nobody eats what a recall looks for, or a lot of which jars spoiled.  False: FAULT_REFUSED. */
bool lot_may_be_eaten(const struct kitchen *kitchen, const struct log_lot *lot, struct fault *fault);
/* The last act of the pantry or of a recall, if it bears one of two verbs. */
bool undo_kept(struct kitchen *kitchen, const char *verb, const char *other, char *said, size_t said_size,
               struct fault *fault);

#define VERB_CLOCK_RIGHT "clock_right"
/* How far the wall clock is before the log's last entry; 0: it is not. */
int64_t clock_behind_ms(const struct kitchen *kitchen, const struct moment *now);
/* Work is started or a clock begun: refused while the wall clock is behind. */
bool refuse_clock_behind(const struct kitchen *kitchen, struct fault *fault);

/* How long food of that acidity may stand in this house before it is heated again. */
int64_t stand_limit_of(const struct kitchen *kitchen, enum acidity acidity);
/* It stood over the caution: "; its jars waited 3 h 12 min" for the journal, else "". */
void say_stood(const struct kitchen *kitchen, const char *what, int64_t stood_ms, char *buffer, size_t size);
/* Low-acid food over its limit is not loaded, and not filled: `facts` says which key. */
bool stood_too_long(const struct kitchen *kitchen, const struct log_lot *lot, int64_t stood_ms, struct facts facts,
                    struct fault *fault);

/* --- day_list.c --- */

/* Of the jars of a batch, those that were filled from its pot: one under a second lid is no
 * other jar.  `size` NULL: of every size. */
int jars_filled(const struct log_jar *rows, size_t count, const char *size);

/* --- batch_need.c --- */

bool juice_serves(const struct log_juice *juice, const struct ingredient *ingredient);
/* Batches one pot may hold: as the recipe says, and of one of the house no more than its
 * class or the pectin's sheet. */
int multiple_allowed(const struct recipe *recipe);
bool refuse_short(const struct kitchen *kitchen, const struct batch_need *need, struct fault *fault);
/* When a canner that can process the batch in a pot is free; -1: none can. */
int64_t canner_for_batch_ms(const struct kitchen *kitchen, const struct strip *strip, const struct moment *now);
/* What the pot will likely still fill, and take of a supply that goes into jars. */
int batch_jars_to_come(const struct strip *strip);
int64_t batch_acid_to_come(const struct strip *strip, enum supply_kind kind);

/* --- ahead.c --- */

/* Sums over all the names a fruit was logged by. */
bool own_runs(const struct kitchen *kitchen, const char *fruit, struct juice_runs *out, struct fault *fault);

/* --- acid_asked.c --- */

/* An ingredient as an acid; NOT_SAID: none. */
enum acid acid_of(const struct ingredient *ingredient);
/* The line of a recipe that puts acid into each jar; NULL: none. */
const struct ingredient *acid_in_jar(const struct recipe *recipe);
/* Of acid that a recipe cooks in its pot: AS_PRINTED, LEFT_OUT (less of it went in than it
 * asks for) or NONE_ASKED. */
bool acid_in_pot(const struct kitchen *kitchen, int64_t batch_id, enum acid *acid, struct fault *fault);
/* Is it acid that a recipe asks for, and not one that may be left out? */
bool amount_is_acid(const struct recipe *recipe, const struct log_batch_amount *amount);
/* What can stand in the jars for the recipe's own acid, from the shelf; fresh juice never. */
bool find_acid_instead(const struct kitchen *kitchen, const struct recipe *recipe, const char *jar, int jars,
                       struct acid_instead *out, struct fault *fault);
/* What one jar takes of an acid of its food, in the measure of its ledger. */
int64_t acid_share(const char *food, enum acid acid, const struct jar_size *jar);
bool mark_acid_instead(struct act *act, int64_t lot_id, enum acid acid, struct fault *fault);
/* Which was taken when the batch was begun; NOT_SAID: none. */
bool acid_taken_instead(const struct kitchen *kitchen, int64_t lot_id, enum acid *acid, struct fault *fault);
bool mark_acid_left_out(struct act *act, int64_t lot_id, const char *why, struct fault *fault);
bool mark_vinegar(struct act *act, int64_t lot_id, int tenths, const char *why, struct fault *fault);

/* --- batch_acts.c, for corrections --- */

/* `like`: what the jars have in common beside their size: lid box, moment, who, acid. */
bool put_filled(struct act *act, const struct strip *strip, const char *size, int jars, const struct log_jar *like,
                struct fault *fault);
/* Acid of that kind, and jars, that went with so many of a size. */
bool use_with_jars(struct act *act, const struct strip *strip, const char *jar, int jars, enum acid acid,
                   struct fault *fault);
bool take_juice(struct act *act, const struct ingredient *ingredient, int64_t batch_id, int64_t ul,
                struct fault *fault);

/* --- seal_acts.c --- */

/* A process that is not valid or unknown: its jars have 2 h, and no seal is
 * trusted. */
bool load_is_wrong(const struct log_load *load);
/* Does the jar's fate have to be chosen before a window closes? */
bool jar_has_window(const struct log_jar *jar, const struct log_load *load);

/* --- phase_acts.c --- */

/* Put a mark: its moment and who are those of the act. */
bool act_mark(struct act *act, const struct log_mark *what, struct fault *fault);
/* Jars that cool or stand on the shelf need a fate now: back to the seal check. */
bool back_to_check(struct act *act, const struct log_load *load, struct fault *fault);

/* The strip of a load on the board; NULL with FAULT_STALE when it is gone. */
const struct strip *kitchen_strip(const struct kitchen *kitchen, int64_t load_id, struct fault *fault);
/* The strip whose running phase is `phase_id`; NULL with FAULT_STALE when that
 * phase has ended meanwhile. */
const struct strip *kitchen_strip_at(const struct kitchen *kitchen, int64_t phase_id, struct fault *fault);
/* An empty station of the board; NULL with a fault. */
const struct strip *kitchen_free_station(const struct kitchen *kitchen, int64_t station_id, struct fault *fault);
const struct strip *kitchen_batch_strip(const struct kitchen *kitchen, int64_t batch_id, struct fault *fault);

/* Required length of a phase for the work in the strip, ms; 0: no clock. */
int64_t strip_required_ms(const struct kitchen *kitchen, const struct strip *strip, const struct phase_rule *rule);

/* Refused while a canner holds a load; `what` is what would change under it. */
bool canners_are_empty(const struct kitchen *kitchen, const char *what, struct fault *fault);

/* Sooner than that the end of a watched phase is asked about. */
int64_t strip_soon_ms(const struct strip *strip, const struct phase_rule *rule);

/* Is the running phase before or in the hold? */
bool phase_comes_before_end(enum phase_name name);
bool strip_before_end(const struct strip *strip);

int64_t strip_passed_ms(const struct strip *strip, const struct moment *now);

/* Begin a phase of a subject (load, run or batch), part of an act. */
bool phase_begin(struct act *act, struct log_subject subject, const struct phase_rule *rule, int64_t required_ms,
                 struct fault *fault);
/* Move a supply as part of an act, for what the act is about; a kind nobody keeps a ledger of is left alone. */
bool supply_move(struct act *act, enum supply_kind kind, const char *size, int64_t amount, enum supply_why why,
                 struct fault *fault);
/* Lids left for `jars` more jars? */
bool check_lids(struct kitchen *kitchen, int64_t lid_box_id, int jars, struct fault *fault);
/* The next lot code of the day and its row. */
bool put_lot(struct act *act, const char *product, const char *food, const char *pack,
             const struct recipe_standing *standing, enum acidity acidity, struct log_lot *lot, struct fault *fault);
/* Minutes of process that the sheet of its pectin asked of a batch (0: none). */
bool batch_sheet_minutes(const struct kitchen *kitchen, int64_t batch_id, int *minutes, struct fault *fault);
bool put_load(struct act *act, const struct strip *canner, const struct process *process, struct log_load *load,
              struct fault *fault);
/* What a load is written down with of its process, and where that was looked up. */
void set_process(struct log_load *load, const struct process *process, const struct log_house *house);
/* --- loader.c --- the process that all these jars have in common, with its other pairs. */
bool process_of_jars(const struct kitchen *kitchen, enum method method, const struct log_jar *jars, size_t count,
                     const struct elevation *here, struct process *out, struct fault *fault);
/* --- raise.c --- */

/* The elevation was wrong, and the load is in or before its hold: it gets what the
 * right one asks.  `said` takes what is to be done now, "" nothing. */
bool raise_running(struct act *act, const struct strip *strip, const struct log_house *house, struct text *said,
                   struct fault *fault);
/* The load's process as looked up at the elevation of the house, its pressure kept if
 * it may be: for the whole process again. */
bool look_up_again(struct act *act, const struct strip *strip, struct log_load *load, struct fault *fault);

/* Would the load have needed more at another elevation: a longer hold (*minutes), or
 * is there no process at its pressure or less (*minutes 0)? */
bool load_asks_more(const struct log_load *load, const struct log_lot *lot, const char *jar,
                    const struct elevation *elevation, int *minutes);
/* Check an own recipe and keep it: one act. */
bool put_recipe(struct kitchen *kitchen, struct log_recipe *recipe, const char *verb, const char *sentence,
                struct fault *fault);
/* Recipes of the log's own, read with the board. */
bool read_own_recipes(struct kitchen *kitchen, struct fault *fault);

/* End the running phase and begin `next` (NULL: none) as part of an act. */
bool phase_change(struct act *act, const struct strip *strip, enum phase_end why, const struct phase_rule *next,
                  struct fault *fault);

#endif
