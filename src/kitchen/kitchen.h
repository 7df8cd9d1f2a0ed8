/*
 * kitchen.h - the working day: what stands where, what is due, and the acts.
 *
 * A `struct kitchen` joins one log and one clock (both owned by the caller and
 * outliving it).  It keeps a picture of the open work, the board, which is read
 * again after each act and whenever another terminal has written.
 *
 * Acts are one function, one transaction, one journal entry each.  Each returns
 * true when the log holds it durably, or false with a fault and nothing changed.
 * FAULT_CONFIRM: allowed but unlikely; call again with `sure` = true after the
 * person has pressed again.  FAULT_STALE: the phase is no longer the one the
 * person was looking at (another terminal, or a second press), or another
 * terminal has written since the board was read, which is read again then.
 *
 * Sources of the figures: phases.h and the tables in the .c files.
 */
#ifndef STILLROOM_KITCHEN_KITCHEN_H
#define STILLROOM_KITCHEN_KITCHEN_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "engine/boiling.h"
#include "engine/fault.h"
#include "engine/process.h"
#include "kitchen/clock.h"
#include "kitchen/phases.h"
#include "log/log.h"

#define PRESS_AGAIN_MS 1500 /* a second press this soon is a bouncing finger */
#define BREAK_UNDO_MS (INT64_C(2) * 60 * 1000) /* house rule: a broken hold is joined again only this soon */
#define HOLDS_MAX_BYTES 160

struct kitchen;

/* --- the board ------------------------------------------------------------ */

/* A phase a load has been through, for the ribbon. */
#define PAST_PHASES_MAX 12
struct past_phase {
	enum phase_name name;
	int64_t began_wall_ms;
	int64_t ended_wall_ms;
	enum phase_end why;
};

/* One line of the board: a canner, empty or with its load, or a load on the
 * cooling rack. */
struct strip {
	struct log_station station; /* the canner the load is or was in */
	bool has_load;
	/* Only with a load: */
	struct log_load load;
	struct log_lot lot;
	struct log_phase phase;
	const struct phase_rule *rule;
	char jar_size[WORD_MAX_BYTES];
	char holds[HOLDS_MAX_BYTES]; /* "9 half-pints of grape jelly" */
	int jars;
	int unchecked;
	int without_fate; /* jars that need a fate and have none */
	int hold_starts;  /* 2 after one lost boil */
	bool hold_across_restart; /* the computer restarted during the hold */
	struct past_phase past[PAST_PHASES_MAX]; /* the newest ones, oldest first */
	size_t past_count;
};

struct board {
	struct log_house house;
	struct boil boil;
	bool boil_known;
	const struct strip *strips; /* canners by digit, then the rack, oldest first */
	size_t canners;
	size_t racked;
	int jars_today;
	const struct log_jar *fates; /* jars whose fate is not carried out yet */
	size_t fate_count;
};

/* What the clock of a strip shows at a moment. */
struct face {
	bool timed;       /* counts down; otherwise it counts up since the phase began */
	int64_t left_s;   /* timed: seconds left, negative when over */
	int64_t passed_s; /* since the phase began */
	bool due;         /* timed and over */
	bool ringing;     /* due and not acknowledged */
	enum alarm alarm; /* of this phase */
	const char *act;  /* what to do now, in words */
};

bool kitchen_open(struct log *log, struct clock clock, struct kitchen **out, struct fault *fault);
void kitchen_close(struct kitchen *kitchen); /* NULL is allowed */

struct moment kitchen_now(const struct kitchen *kitchen);

/* Read the board again when another terminal or a new local day makes it
 * necessary (`force`: in any case). */
bool kitchen_refresh(struct kitchen *kitchen, bool force, struct fault *fault);
/* Valid until the next act or refresh. */
const struct board *kitchen_board(const struct kitchen *kitchen);

/* What to call the strip: its canner while the load is in it, else the lot. */
const char *strip_title(const struct strip *strip);
void strip_face(const struct strip *strip, const struct moment *now, struct face *out);
/* Smaller = sooner needs a person: ringing first, then least time left. */
int64_t strip_urgency(const struct strip *strip, const struct moment *now);
/* When the seal check of a racked load is overdue, in wall time; 0: not yet cooling. */
int64_t strip_seal_overdue_ms(const struct strip *strip);

/* Who is acting, for the journal ("" = nobody said). */
void kitchen_set_who(struct kitchen *kitchen, const char *initials);

/* --- a load ---------------------------------------------------------------- */

struct load_order {
	int64_t station_id;
	char product[NAME_MAX_BYTES]; /* what the label will say */
	char food[NAME_MAX_BYTES];    /* of the process tables */
	char pack[WORD_MAX_BYTES];
	char jar[WORD_MAX_BYTES];
	int jars;
	int pressure_psi;    /* NO_PRESSURE: the longest option */
	int64_t lid_box_id;  /* 0: not noted */
};

/* The process the order would get here: a look, nothing is written. */
bool kitchen_process(const struct kitchen *kitchen, const struct load_order *order,
                     struct process *out, struct fault *fault);
/* How many jars of a size a canner takes: its stated capacity, or that of the
 * next larger stated size; 0: nothing is stated that would fit; *stated tells
 * whether this very size is stated (may be NULL). */
int station_room(const struct log_station *station, const struct jar_size *jar, bool *stated);

bool kitchen_start_load(struct kitchen *kitchen, const struct load_order *order, int64_t *load_id,
                        struct fault *fault);

/* The next step of a load: a condition seen or a thing done.  `phase_id` is the
 * phase the person was looking at.  The seal check's own step shelves the load
 * and is refused while a jar is unchecked or lacks a fate. */
bool kitchen_step(struct kitchen *kitchen, int64_t load_id, int64_t phase_id, bool sure,
                  struct fault *fault);
/* Boil, steam or pressure was lost: the full time again. */
bool kitchen_lost(struct kitchen *kitchen, int64_t load_id, int64_t phase_id, struct fault *fault);
/* The alarm of the load was heard. */
bool kitchen_acknowledge(struct kitchen *kitchen, int64_t load_id, int64_t phase_id,
                         struct fault *fault);

/* --- exceptions of the present phase ---------------------------------------- */

enum exception {
	EXCEPTION_LOST,       /* as kitchen_lost */
	EXCEPTION_STOP,       /* the process is given up: not valid */
	EXCEPTION_VENT_SHORT, /* vent was cut short: not valid */
	EXCEPTION_EARLIER,    /* the condition was reached earlier than the key: estimated */
	EXCEPTION_BROKEN_JAR, /* a jar broke in the canner */
	EXCEPTION_REDO,       /* the full process again, within 2 h of the failure */
	EXCEPTION_COUNT
};

/* Is the exception open to the strip now, and what does its line say? NULL: no. */
const char *exception_words(const struct strip *strip, enum exception exception,
                            const struct moment *now);
/* `minutes` only for EXCEPTION_EARLIER (1 to the time since heat-on). */
bool kitchen_exception(struct kitchen *kitchen, int64_t load_id, int64_t phase_id,
                       enum exception exception, int minutes, struct fault *fault);

/* --- seal check ------------------------------------------------------------- */

/* Every jar not looked at yet is sealed.  Refused, as is JAR_SEALED, before the
 * seal check: a jar that failed may be marked while the load still cools. */
bool kitchen_all_sealed(struct kitchen *kitchen, int64_t load_id, struct fault *fault);
bool kitchen_jar_state(struct kitchen *kitchen, int64_t jar_id, enum jar_state state,
                       struct fault *fault);
bool kitchen_jar_siphoning(struct kitchen *kitchen, int64_t jar_id, enum siphoning siphoning,
                           struct fault *fault);
/* Sets the fate and its deadline; refused when the window is closed. */
bool kitchen_jar_fate(struct kitchen *kitchen, int64_t jar_id, enum jar_fate fate,
                      struct fault *fault);
/* The same fate for every jar that needs one and has none. */
bool kitchen_fate_rest(struct kitchen *kitchen, int64_t load_id, enum jar_fate fate,
                       struct fault *fault);
bool kitchen_jar_fate_done(struct kitchen *kitchen, int64_t jar_id, struct fault *fault);
/* Take back the newest kitchen_jar_fate_done of this run of the program. */
bool kitchen_undo_fate(struct kitchen *kitchen, char *said, size_t said_size, struct fault *fault);
/* "" when there is no such lot. */
void kitchen_lot_code(const struct kitchen *kitchen, int64_t lot_id, char *buffer, size_t size);

/* Does the jar need a fate (unsealed, doubtful, over half lost, process not valid)? */
bool jar_needs_fate(const struct log_jar *jar, const struct log_load *load);
/* May the fate be chosen now, and until when would it run (wall ms, 0: at once)? */
bool jar_fate_open(const struct log_jar *jar, const struct log_load *load, enum jar_fate fate,
                   int64_t now_wall_ms, int64_t *by_wall_ms, struct fault *fault);
const char *jar_fate_words(enum jar_fate fate); /* "fridge" ... what to do, with source */
const char *jar_fate_advice(enum jar_fate fate, const struct log_lot *lot);

/* --- undo ------------------------------------------------------------------- */

/* Take back the last act about the load (or, with load_id 0, at the station).
 * An act that broke or ended a hold can be taken back for BREAK_UNDO_MS only:
 * a hold is never joined together again over a gap nobody watched.
 * `said` gets the sentence of what was undone. */
bool kitchen_undo(struct kitchen *kitchen, int64_t station_id, int64_t load_id, char *said,
                  size_t said_size, struct fault *fault);
/* Take back the undo, while nothing else has been done since. */
bool kitchen_redo(struct kitchen *kitchen, int64_t station_id, int64_t load_id, char *said,
                  size_t said_size, struct fault *fault);

/* --- the house -------------------------------------------------------------- */

bool kitchen_set_name(struct kitchen *kitchen, const char *name, struct fault *fault);
/* `words` as elevation_read takes them; refused while a load is in a canner. */
bool kitchen_set_elevation(struct kitchen *kitchen, const char *words, struct fault *fault);
/* Thermometer in boiling water here, "203.1F" or "95.1C"; "" forgets it. */
bool kitchen_set_measured_boil(struct kitchen *kitchen, const char *words, struct fault *fault);
bool kitchen_set_barometer(struct kitchen *kitchen, const char *words, struct fault *fault);
bool kitchen_set_invented(struct kitchen *kitchen, bool invented, struct fault *fault);
bool kitchen_set_practice(struct kitchen *kitchen, int speed, struct fault *fault);
/* id 0 adds; the digit must be free. A canner with a load in it cannot change its method or retire. */
bool kitchen_put_canner(struct kitchen *kitchen, struct log_station *station, struct fault *fault);
bool kitchen_put_lid_box(struct kitchen *kitchen, struct log_lid_box *box, struct fault *fault);

/* Read a kitchen file (form: setup.c; example: demo/quince-hollow.kitchen) into a
 * log nothing has been written in.  One act a line; the fault names
 * `path:line: why`, and the lines before it stand: throw the new log away. */
bool kitchen_setup(struct kitchen *kitchen, const char *path, struct fault *fault);

/* One line of a kitchen file as an act, for the house view.  `id` > 0 changes
 * that canner or lid box instead of adding one. */
bool kitchen_setup_line(struct kitchen *kitchen, const char *line, int64_t id, struct fault *fault);
/* The line that would set a canner or lid box as it is now. */
void kitchen_canner_line(const struct log_station *station, char *buffer, size_t size);
void kitchen_lid_box_line(const struct log_lid_box *box, char *buffer, size_t size);

/* --- reading for views ------------------------------------------------------- */

/* Arrays are malloc'ed and freed by the caller; rows as log.h says. */
bool kitchen_jars(const struct kitchen *kitchen, int64_t load_id, struct log_jar **rows,
                  size_t *count, struct fault *fault);
bool kitchen_story(const struct kitchen *kitchen, int64_t load_id, struct log_entry **rows,
                   size_t *count, struct fault *fault);
bool kitchen_lid_boxes(const struct kitchen *kitchen, struct log_lid_box **rows, size_t *count,
                       struct fault *fault);
/* Today's backup, unless it is there already. */
bool kitchen_backup(const struct kitchen *kitchen, struct fault *fault);

#endif
