/*
 * desk.h - what the views of the screen share.  Private to src/screen.
 *
 * A view is one file with one `struct view`: a drawing function that reads the
 * state, a table of keys, and a handler for typed text where it takes any.  The
 * views are listed in app/views.c.  Key handlers change state and never draw; the
 * loop in app/loop.c draws one frame after each event.
 */
#ifndef STILLROOM_SCREEN_UI_DESK_H
#define STILLROOM_SCREEN_UI_DESK_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "base/text.h"
#include "engine/process/process.h"
#include "kitchen/act/kitchen.h"
#include "kitchen/canner/aside.h"
#include "kitchen/canner/reprocess.h"
#include "kitchen/history/seasons.h"
#include "kitchen/pantry/pantry.h"
#include "kitchen/pantry/recall.h"
#include "kitchen/plan/plan.h"
#include "kitchen/recipe/sheet.h"
#include "kitchen/stock/acid_asked.h"
#include "kitchen/stock/ahead.h"
#include "kitchen/stock/shelf.h"
#include "kitchen/warning/warnings.h"
#include "screen/term/config.h"
#include "screen/term/terminal.h"
#include "screen/ui/picker.h"
#include "screen/ui/wishes.h"

#define MIN_ROWS 12
#define MIN_COLS 40
#define MESSAGE_MS 20000    /* how long a message stays when no key is pressed */
#define HELD_KEY_MS 700     /* the same key sooner than this is a held or bouncing key */
#define REPEAT_GAP_MS 250   /* the same key this soon after itself is a keyboard's repeat */
#define SURE_MS 10000       /* how long "press again" stands */
#define AGAIN_SHORT_MS 5000 /* the same while an alarm rings */
#define RINGS_MAX 32        /* ringing stations and loads that are told apart */

enum view_name {
	VIEW_BOARD,
	VIEW_START,
	VIEW_BATCH,
	VIEW_SHEET,
	VIEW_FILL,
	VIEW_CARD,
	VIEW_JUICE,
	VIEW_LOADER,
	VIEW_DAY,
	VIEW_PLAN,
	VIEW_EXCEPTIONS,
	VIEW_SEALS,
	VIEW_HOUSE,
	VIEW_SUPPLIES,
	VIEW_LEDGER,
	VIEW_FORECAST,
	VIEW_SHORTAGE,
	VIEW_RECIPE,
	VIEW_WARNINGS,
	VIEW_FATES,
	VIEW_REPROCESS,
	VIEW_PANTRY,
	VIEW_RECALLS,
	VIEW_TRACE,
	VIEW_STEPS,
	VIEW_SIGNS,
	VIEW_STORY,
	VIEW_SEASONS,
	VIEW_SEASON,
	VIEW_WORKS,
	VIEW_WORKS_PICK,
	VIEW_PAST,
	VIEW_HELP,
	VIEW_LEAVE,
	VIEW_COUNT
};

/* Keys beyond the characters: above Unicode, so that one number holds any key. */
enum {
	KEY_CODE_UP = 0x110000,
	KEY_CODE_DOWN,
	KEY_CODE_LEFT,
	KEY_CODE_RIGHT,
	KEY_CODE_PAGE_UP,
	KEY_CODE_PAGE_DOWN,
	KEY_CODE_BACKSPACE,
	KEY_CODE_OTHER,
	KEY_CODE_INTERRUPT = 3,   /* Ctrl-C: asks, from any view */
	KEY_CODE_EMPTY_LINE = 21, /* Ctrl-U */
	KEY_CODE_TAB = 9,
	KEY_CODE_ENTER = '\r',
	KEY_CODE_ESCAPE = 27,
};

struct desk;

/* What a view is opened for; each reads what it needs, the rest is 0. */
struct opening {
	int64_t id;                 /* of a station, batch, load or own recipe */
	struct log_subject subject; /* of the log: a load, batch or run */
	const struct log_lot *lot;  /* of jars that were thrown out */
	const char *advice;         /* what to do with them; a constant */
};

struct view_key {
	long key;
	long other;                              /* a second key for the same, or 0 */
	const char *cap;                         /* as shown: "Space" */
	const char *words;                       /* one or two words for the bottom line; NULL: not shown there */
	const char *help;                        /* a sentence for the key list */
	bool (*usable)(const struct desk *desk); /* NULL: always */
	void (*act)(struct desk *desk);
};

struct view {
	const char *title;
	const struct view_key *keys;
	size_t key_count;
	/* Reads what it shows and shows the view, or says why not and leaves the one that is
	 * shown.  NULL: there is nothing to read. */
	void (*enter)(struct desk *desk, const struct opening *opening);
	/* Draw between `top` and `top + rows`. */
	void (*draw)(struct desk *desk, int top, int rows);
	/* A key not in the table; true when it was taken.  May be NULL. */
	bool (*typed)(struct desk *desk, long key);
	/* Does a field being typed in take the key, before the table?  `typed` then gets it.
	 * NULL: there is no such field. */
	bool (*types)(const struct desk *desk, long key);
	/* True: it asked something, and the key acts only when pressed again.  May be NULL. */
	bool (*asks_first)(struct desk *desk, const struct view_key *key);
	bool keeps; /* holds what is not written down yet: one may come back to it */
	/* What the first key of the bottom line says, or NULL for its table words. */
	const char *(*first_key_words)(const struct desk *desk);
};

/* One line being typed. */
#define ENTRY_MAX 1024 /* as long as a line of a kitchen file */
struct entry {
	bool open;
	char prompt[80];
	char text[ENTRY_MAX];
	size_t at;    /* where the next character goes, in bytes */
	bool offered; /* the text is an offer: the first character takes its place */
	bool (*done)(struct desk *desk, const char *text); /* true closes the line */
	void (*blank)(struct desk *desk);                  /* Space in the empty line; NULL: a blank like any */
	const char *keys;                                  /* what its keys do; NULL: the usual words */
};

enum start_field {
	START_PRODUCT,
	START_PACK,
	START_JAR,
	START_PRESSURE,
	START_COUNT,
	START_LIDS,
	START_ACID,    /* which acid is in: only of a food that takes some */
	START_VINEGAR, /* how strong: only of a printed recipe that lives by it */
	START_READY
};

#define START_PRODUCTS_MAX 256
struct start_card {
	struct load_order order;
	enum method method;
	enum start_field field;
	struct picker picker;
	struct number_entry count;
	struct {
		const char *name;
		const char *food;
		const char *caution;
	} products[START_PRODUCTS_MAX];
	size_t product_count;
	size_t product; /* chosen */
	struct log_lid_box *boxes;
	size_t box_count;
	bool has_process;
	struct process process;
};

struct list_state {
	int cursor;
	int top;
};

enum batch_field { BATCH_RECIPE, BATCH_PACK, BATCH_JAR, BATCH_MULTIPLE, BATCH_READY };
struct batch_card {
	struct batch_order order;
	enum batch_field field;
	struct picker picker;
	struct number_entry multiple;
	struct batch_need need;
	bool need_known;
	struct list_state need_list; /* cursor: first line shown; top: how many are */
	struct fault refusal;        /* why there is no need */
	bool sure;                   /* asked already: nowhere to go */
};

/* What the sheet of a recipe's pectin says, while it is typed. */
struct sheet_card {
	char recipe[NAME_MAX_BYTES];
	struct sheet sheet;
	unsigned given; /* bit n: field n */
	bool kept;      /* in the log already */
	struct list_state list;
};

enum fill_field { FILL_JAR, FILL_COUNT, FILL_LIDS, FILL_ACID, FILL_VINEGAR, FILL_READY };
struct fill_card {
	int64_t batch_id;
	enum fill_field field;
	struct picker picker;
	struct number_entry count;
	char jar[WORD_MAX_BYTES];
	int64_t lid_box_id;      /* kept from one filling to the next */
	bool lids_said;          /* a box was chosen, or "not noted" */
	struct acid_asked asked; /* of the size chosen */
	bool acid_in;
	enum acid acid;
	int vinegar_tenths;
	bool sure;
	char reason[SENTENCE_MAX_BYTES];
	struct log_lid_box *boxes;
	size_t box_count;
};

/* The station card of a pot: lines to read and tick off. */
struct station_card {
	int64_t batch_id;
	struct log_batch batch;
	struct list_state list;
	struct log_batch_amount *amounts;
	size_t count;
	int place; /* while a reason is asked for: the line, and what was typed */
	int64_t used;
};

struct juice_card {
	struct list_state list;
	struct log_juice *juices;
	size_t count;
};

struct day_card {
	struct list_state list;
	struct day_item *items;
	size_t count;
	int64_t day_ms; /* an instant of the day shown */
};

/* The shelf, and the ledger of its line under the cursor. */
struct shelf_card {
	struct list_state list;
	struct shelf_line *lines;
	size_t count;
	int checked; /* lines a shelf check has counted, and kept */
	int kept;
	char who[NAME_MAX_BYTES]; /* initials for the journal */
	struct list_state ledger_list;
	struct ledger_line *ledger;
	size_t ledger_count;
};

/* The forecast, kept while the board is open. */
#define FORECAST_RECIPES_MAX 64
struct forecast_card {
	struct list_state list;
	char fruit[NAME_MAX_BYTES];
	int64_t fruit_mg;
	bool juice_in_stock;
	int in_pot; /* batches cooked in one pot at most; 0: one */
	struct {
		char recipe[NAME_MAX_BYTES];
		bool chosen;
		int batches; /* 0: as many as there is fruit for */
		int jar;     /* index among the sizes; -1: the usual one */
	} choice[FORECAST_RECIPES_MAX];
	size_t choices; /* recipes that are made of the fruit */
	bool known;
	struct ahead ahead;
	char refusal[FAULT_SENTENCE_MAX]; /* why it is not known */
	struct shortage_line *missing;
	size_t missing_count;
	struct list_state missing_list;
};

struct loader_card {
	int64_t station_id;
	int group; /* waiting group under the cursor */
	bool putting_away;
	struct loader_plan plan;
	int pressure_psi;
	bool has_process;
	struct process process;
	char refusal[FAULT_SENTENCE_MAX];
};

/* Looking back: the seasons, one of them, what was made, one of that. */
struct back_card {
	struct log_season *seasons;
	size_t season_count;
	struct list_state season_list;
	enum season_measure measure;
	int year; /* whose figures are shown */
	struct figure *figures;
	size_t figure_count;
	struct list_state figure_list; /* cursor: first line drawn; top: how many were */
	struct log_wish wish;
	struct works page;
	struct list_state page_list;
	int page_rows;    /* that found room in the last frame */
	int64_t older_id; /* where the next page begins, to either side */
	int64_t newer_id;
	bool picking_product; /* else a state */
	struct picker picker;
	struct log_name *products;
	size_t product_count;
	enum view_name opened_from; /* the way back from one of them */
	struct log_subject subject;
	struct past_line *facts;
	size_t fact_count;
	struct log_entry *entries;
	size_t entry_count;
	struct list_state past_list; /* as figure_list */
};

struct seal_card {
	int64_t load_id;
	int cursor;
	struct log_jar *jars;
	size_t count;
	bool choosing_fate;
	bool fate_for_all;
	bool round;          /* all loads past their 12 h, one after the other */
	bool asking;         /* by which methods the lids of this load are looked at */
	bool asking_for_all; /* then: every other jar is sealed, not only the one under the cursor */
	unsigned methods;    /* as said for this load, SEAL_BY(); 0: not said yet */
};

/* Jars to be processed again: which canner, which lids. */
struct reprocess_card {
	int64_t jar_id;
	int canner;       /* among the free ones of the method */
	int box;          /* among the boxes; box_count: not noted */
	bool asking_acid; /* which acid went in again */
	struct picker picker;
	enum acid acid;
	int64_t station_id; /* and the lids, while it is asked */
	int64_t box_id;
	struct log_lid_box *boxes;
	size_t box_count;
	bool planned;
	struct reprocess_plan plan;
	char refusal[FAULT_SENTENCE_MAX];
};

struct pantry_card {
	struct list_state list;
	struct pantry_line *lines;
	size_t count;
	bool in_lots; /* the lots of the line under the cursor are shown */
	struct list_state lot_list;
	struct pantry_lot *lots;
	size_t lot_count;
	enum jar_gone taking; /* while the number is asked for */
};

struct recall_card {
	struct list_state list;
	struct log_recall *recalls;
	size_t count;
	enum trace_about about; /* while it is asked which */
	/* Jars traced, or those of a recall. */
	char words[NAME_MAX_BYTES * 2];
	char said[SENTENCE_MAX_BYTES];
	struct log_recall recall; /* id 0: only traced */
	struct list_state jar_list;
	struct log_traced *jars;
	size_t jar_count;
	enum view_name from; /* the view to go back to */
};

enum plan_page { PLAN_PAGE_NEXT, PLAN_PAGE_RIBBON, PLAN_PAGE_ROWS, PLAN_PAGE_TIMES, PLAN_PAGE_COUNT };
struct plan_card {
	enum plan_page page;
	struct list_state next;
	struct list_state rows;
	struct list_state times;
	int top;           /* first station of the ribbons */
	int64_t scroll_ms; /* of the ribbons, from now */
	int extra;         /* the next "one more" to ask about */
	int64_t sure_until_ms;
};

/* What rings, with what its clock shows. */
struct ring {
	const struct strip *strip; /* the board's */
	struct face face;
};

/* The same, kept: which clocks of which phases rang when it was last looked. */
struct rung {
	int64_t phase_id;
	bool clock;
	bool water;
};

/* A question answered by pressing the same key again. */
enum again_about {
	AGAIN_NOTHING,
	AGAIN_ELSEWHERE, /* an act here while another station rings; id: as of a step */
	AGAIN_STEP,      /* a step the kitchen finds unlikely; id: the phase */
	AGAIN_WATER,     /* was it seen and topped up; id: the phase */
	AGAIN_STATION,   /* a figure typed where a number is asked for soon; id: the figure */
	AGAIN_SHELF,     /* what the shelf says is not there; id: the acid */
	AGAIN_OLD_UNDO,  /* an undo of the house that goes back over today; id: the act */
};
struct again {
	enum again_about about;
	int64_t id;
	int64_t until_ms; /* real time */
};

/* What a press of a key is. */
enum press { PRESS_TAKEN, PRESS_TOO_SOON, PRESS_HELD };

struct desk {
	const struct view *const *views; /* VIEW_COUNT, by name: app/views.h */
	struct terminal *terminal;
	struct kitchen *kitchen;
	const struct config *config;
	const struct board_wishes *wishes;
	const char *log_path;
	struct moment now; /* of the frame being drawn or the key being handled */
	int64_t awake_ms;  /* real time, for flashing, messages and held keys */
	enum view_name view;
	enum view_name view_before_help;
	enum view_name view_before_signs;
	struct list_state signs; /* cursor: first piece shown; top: first that found no room */
	bool leaving;
	bool redraw_all;

	/* Selection: a canner (load 0) or a racked load. */
	int64_t selected_station;
	int64_t selected_load;

	bool unsafe; /* the log can hold nothing more: said until it can, W writes what stands elsewhere */

	char message[FAULT_SENTENCE_MAX];
	enum role message_role;
	int64_t message_until_ms;

	long last_key;
	int64_t last_key_ms;   /* seen at all */
	int64_t last_taken_ms; /* counted, or part of a stream of repeats */
	struct again again;
	struct {
		bool refusing; /* what is being typed, to its end */
		long figure;   /* the last key was this one; 0: it was none */
		int64_t last_ms;
		int64_t station; /* what was selected before that figure */
		int64_t load;
	} words;                     /* typed where nothing asks for them */
	int64_t asked_soon_until_ms; /* a step was made after which a number is asked for */
	struct {
		bool can_go_back;
		enum view_name view;
		struct entry entry;
	} left; /* what was being typed when somebody went to what rings */

	int64_t redo_until_ms; /* an undo was just made: "do again" is on offer, there */
	int64_t redo_station;

	int64_t alarm_since_ms; /* real time the present alarm began; 0: none */
	int64_t alarm_seen_ms;
	enum alarm alarm;
	struct rung rung[RINGS_MAX];
	size_t rung_count;

	const struct warning *warnings; /* the kitchen's; valid during a frame or a key */
	size_t warning_count;

	struct entry entry;
	struct start_card start;
	struct seal_card seals;
	struct batch_card batch;
	struct sheet_card sheet;
	struct fill_card fill;
	struct station_card card;
	struct juice_card juice;
	struct loader_card loader;
	struct day_card day;
	struct plan_card plan;
	struct shelf_card shelf;
	struct forecast_card forecast;
	struct reprocess_card reprocess;
	struct pantry_card pantry;
	struct recall_card recall;
	const char *steps; /* what to do with jars that were thrown out; a constant */
	enum view_name view_before_steps;
	struct back_card back;
	char run_fruit[NAME_MAX_BYTES]; /* between the two questions of a run */
	struct list_state exceptions;
	enum exception excepting; /* while its minutes or a reason are asked for */
	int64_t excepting_amount;
	struct list_state house;
	struct list_state warned;
	struct list_state fates;
	struct aside_order aside; /* what is being noted of a jar set aside */
	struct list_state story;
	struct list_state help; /* cursor: first key shown; top: first that found no room */
	struct log_entry *story_rows;
	size_t story_count;
	struct log_lid_box *house_boxes;
	size_t house_box_count;
	struct {
		int64_t phase_id;
		int64_t began_ms;
		int64_t asked_ms;       /* the end that was too soon; the same again means it */
	} other_clock;                  /* while a hold is read off one */
	struct log_station new_station; /* while its questions are asked */
	int asked_time;                 /* likewise of the times of a first juicer */
	char new_elevation[64];         /* likewise */
	struct log_supply *house_supplies;
	size_t house_supply_count;
	struct log_recipe recipe; /* being written down */
	bool recipe_unsaved;
	enum { RECIPE_LINES, RECIPE_FOOD, RECIPE_INGREDIENT } recipe_choosing; /* its food, or what a line is */
	const struct known_ingredient *recipe_known; /* picked, while its amount is asked for */
	struct picker recipe_picker;
#define RECIPE_FOODS_MAX 256
	const char *recipe_foods[RECIPE_FOODS_MAX]; /* that have a process; of the tables */
	size_t recipe_food_count;
	struct list_state recipe_list;
};

/* --- views ------------------------------------------------------------------ */

const struct view *view_of(const struct desk *desk, enum view_name name);
extern const struct view board_view;
extern const struct view start_view;
extern const struct view batch_view;
extern const struct view sheet_view;
extern const struct view fill_view;
extern const struct view card_view;
extern const struct view juice_view;
extern const struct view loader_view;
extern const struct view day_view;
extern const struct view plan_view;
extern const struct view exceptions_view;
extern const struct view seals_view;
extern const struct view house_view;
extern const struct view supplies_view;
extern const struct view ledger_view;
extern const struct view forecast_view;
extern const struct view shortage_view;
extern const struct view recipe_view;
extern const struct view warnings_view;
extern const struct view fates_view;
extern const struct view reprocess_view;
extern const struct view pantry_view;
extern const struct view recalls_view;
extern const struct view trace_view;
extern const struct view steps_view;
extern const struct view signs_view;
extern const struct view story_view;
extern const struct view seasons_view;
extern const struct view season_view;
extern const struct view works_view;
extern const struct view works_pick_view;
extern const struct view past_view;
extern const struct view help_view;
extern const struct view leave_view;

/* Entering a view that needs reading first. */
void batch_view_go_on(struct desk *desk); /* back from the sheet of its recipe */
void sheet_view_enter(struct desk *desk, const char *recipe);
const struct kitchen_plan *desk_plan(const struct desk *desk);
/* What the accepted plan starts there next; NULL: nothing.  Valid until the next act. */
const struct log_plan_run *desk_planned_run(const struct desk *desk, int64_t station_id);
const struct log_plan_batch *desk_planned_batch(const struct desk *desk, int64_t station_id);
void seal_round_enter(struct desk *desk); /* all loads past their 12 h */
void reprocess_view_enter(struct desk *desk, int64_t jar_id);
void recalls_view_enter(struct desk *desk);
void recalls_key(struct desk *desk); /* the lot that jars spoiled of, or that list */
bool some_spoiled(const struct desk *desk);
void recalls_view_refresh(struct desk *desk);
/* Trace the jars of something and show them; Esc goes back to the present view. */
void trace_view_enter(struct desk *desk, enum trace_about about, const char *words);
void recall_view_open(struct desk *desk, int64_t recall_id);
void house_view_welcome(struct desk *desk); /* what a kitchen without stations is asked for first */
void seasons_view_enter(struct desk *desk);
void season_view_enter(struct desk *desk, int year);
void works_view_enter(struct desk *desk, int season); /* 0: every one */
void works_view_search(struct desk *desk);            /* asks for words */
void works_view_lot(struct desk *desk);               /* the batch and the loads of what is open */
void past_view_enter(struct desk *desk, struct log_subject subject);
void house_view_refresh(struct desk *desk);

/* Views open one another by name alone. */
void desk_open(struct desk *desk, enum view_name name);
void desk_open_for(struct desk *desk, enum view_name name, struct opening opening);
void desk_show_view(struct desk *desk, enum view_name name); /* as it was when it was last left */
void desk_show_board(struct desk *desk);
/* To the board in the middle of something, and back to it where the view keeps it. */
void desk_leave_for_board(struct desk *desk);
void desk_go_back(struct desk *desk);

/* --- the desk ----------------------------------------------------------------- */

void desk_clear(struct desk *desk); /* frees what the cards hold */
void desk_say(struct desk *desk, enum role role, const char *format, ...) __attribute__((format(printf, 3, 4)));
void desk_say_fault(struct desk *desk, const struct fault *fault);

const struct strip *desk_selected(const struct desk *desk); /* NULL: nothing to select */
void desk_select(struct desk *desk, const struct strip *strip);
const struct strip *desk_most_urgent(const struct desk *desk); /* NULL: no work anywhere */

/* --- what rings (ringing.c) --- */

/* Worst first; returns how many, of which RINGS_MAX at most are in `out`. */
size_t desk_rings(const struct desk *desk, struct ring out[RINGS_MAX]);
/* Those that cannot wait: all but loads whose seals can be looked at. */
size_t desk_shouting(const struct desk *desk, struct ring out[RINGS_MAX]);
/* That of a strip; NULL: it does not ring. */
const struct ring *ring_of(const struct ring rings[RINGS_MAX], size_t count, const struct strip *strip);
int strip_digit(const struct strip *strip); /* the key that chooses it: 0 on the rack */
/* Look what rings: an alarm that has begun since ends the question that stands. */
void desk_watch_alarms(struct desk *desk);
void desk_go_to_ringing(struct desk *desk); /* again: to the next */
void desk_hear(struct desk *desk);          /* an alarm was heard */
/* What rings, large, in as many rows as ringing_rows() says; 0: no room. */
int ringing_rows(const struct desk *desk, int room);
void ringing_draw(struct desk *desk, int row, int rows);

/* --- between two events (frame.c) --- */

/* Read again what others wrote, what is warned of and what rings; let lapse what is over. */
void desk_look(struct desk *desk);
void desk_draw(struct desk *desk); /* one whole frame */

/* --- questions answered by pressing again (again.c) --- */

void desk_ask_again(struct desk *desk, enum again_about about, int64_t id, int64_t for_ms, const char *format, ...)
    __attribute__((format(printf, 5, 6)));
bool desk_asks_again(const struct desk *desk, enum again_about about, int64_t id);
/* The same; a question of that kind is over with it. */
bool desk_is_sure(struct desk *desk, enum again_about about, int64_t id);
void desk_lapse(struct desk *desk); /* whatever is asked, it is asked no more */
/* Take back the last act about the subject and say what it was. */
void desk_undo(struct desk *desk, struct log_subject subject);
/* Likewise by one of the kitchen's undos that know what they are about. */
void desk_undo_by(struct desk *desk, bool (*undo)(struct kitchen *, char *, size_t, struct fault *));
/* Write the labels of a load or a batch's lot to a file, and say where. */
void desk_labels(struct desk *desk, struct log_subject about);
/* Write what stands to a new file, of a log that can hold nothing more. */
void desk_save_elsewhere(struct desk *desk);

/* Read the lid boxes anew into a malloc'ed list, freeing the old one. */
void desk_read_lid_boxes(struct desk *desk, struct log_lid_box **boxes, size_t *count);

/* One key from the terminal, to where keys.c says that it goes. */
void desk_key(struct desk *desk, long key);
void entry_key(struct desk *desk, long key); /* into the line being typed */
/* A paste: text for a line or a name being typed, and for nothing else.  `whole`: it is
 * all there and holds no function key. */
void desk_paste(struct desk *desk, const char *text, bool whole);
/* The key was one of words that nothing asks for: those right behind it do nothing. */
void desk_refuse_words(struct desk *desk);
/* The keys that mean the same in every view; returns how many. */
size_t desk_keys_everywhere(const struct view_key **keys);

/* Ask for one line of text. */
void desk_ask(struct desk *desk, const char *prompt, const char *text, bool (*done)(struct desk *, const char *));

/* The same with one value that the first character takes the place of, so that "1" with
 * a 3 typed behind it is never 13; Left or Backspace changes it instead. */
void desk_offer(struct desk *desk, const char *prompt, const char *text, bool (*done)(struct desk *, const char *));

/* A stop (FAULT_STOPPED) asks why to go on all the same; `done` tries again with the
 * reason. `tried`: the reason that was not enough, "" the first time. */
void desk_ask_reason(struct desk *desk, const struct fault *fault, const char *tried,
                     bool (*done)(struct desk *, const char *));

/* How strong the vinegar is: "5", "4.5", "6%" in tenths of a percent, 1 to 300; 0, and it
 * is said, when that is no strength. */
int desk_vinegar(struct desk *desk, const char *text);

/* Shared by views. */
int desk_columns(const struct desk *desk); /* of the window */
enum unit_system desk_units(const struct desk *desk);
void list_move(struct list_state *list, int by, int count);
/* First row to show so that the cursor is within `rows`. */
int list_scroll(struct list_state *list, int count, int rows);

/* Draw text over several lines, broken at blanks; returns lines used. */
int desk_paragraph_lines(const char *text, int cols); /* that it would take */
int desk_paragraph(struct desk *desk, int row, int col, int cols, int rows, enum role role, const char *text);

/* --- the jars of a seal check (seal_picture.c) -------------------------------------- */

int seal_picture_wide(int cols); /* jars in a row */
void seal_picture_draw(struct desk *desk, int top, int rows, int cols);

/* --- plots (plot.c) ------------------------------------------------------------------ */

/* Draw lines `list->cursor` and on between `top` and `top + rows`, each as high as it
 * must be; how many were drawn is left in list->top.  `draw` draws one, in `rows` at
 * most, and says how many it took. */
void scroll_draw(struct desk *desk, struct list_state *list, int count, int top, int rows,
                 int (*draw)(struct desk *desk, int n, int row, int rows));
void scroll_move(struct list_state *list, int by, int count);
/* A bar, and a range with a mark in it, over `cols` columns; shares from 0 to 1. */
void plot_bar(struct desk *desk, int row, int col, int cols, enum role role, double share);
void plot_range(struct desk *desk, int row, int col, int cols, double low, double at, double high);
/* Columns side by side, each `each` wide, over `rows` rows; the marked one stands out. */
void plot_columns(struct desk *desk, int top, int rows, int col, int each, const double *shares, int count, int marked);

/* --- parts of the board (strips.c, ribbon.c, header.c) -------------------------- */

int header_rows(const struct desk *desk);
void header_draw(struct desk *desk);
void footer_draw(struct desk *desk);
int footer_rows(const struct desk *desk);

void urgent_draw(struct desk *desk, int row, int rows);
/* The most urgent clock in one line, for the views that hide the board. */
void clock_line_draw(struct desk *desk, int row);
int urgent_rows(const struct desk *desk, int room);
void strips_draw(struct desk *desk, int row, int rows, int rows_each);
/* A time axis over `cols` columns from `col` on. */
#define AXIS_LABEL_COLS 12 /* before it: what the ribbon is of */
struct axis {
	int col;
	int cols;
	int64_t from_ms; /* relative to now */
	int64_t per_col_ms;
};
struct axis axis_of_plan(int cols, int64_t scroll_ms);
int axis_column(const struct axis *axis, int64_t ms); /* 0 to cols */
void axis_draw(struct desk *desk, const struct axis *axis, int row);
void plan_ribbon_draw(struct desk *desk, int row, int rows);

/* Rows the ribbon would use of `room`; 0: not worth it. */
int ribbon_rows(const struct desk *desk, int room);
void ribbon_draw(struct desk *desk, int row, int rows);

/* The clock of a strip: "12:34", "+1:02" when over, counting up with a
 * trailing "^" in phases without a clock.  `hours_only` for the rack. */
void strip_clock_words(const struct strip *strip, const struct face *face, char *buffer, size_t size);
/* The process of a load, juice drawn, jars filled: what is of least weight. */
void strip_beside_words(const struct desk *desk, const struct strip *strip, struct text *text);
/* The role a strip is drawn in now: flashing when it rings. */
enum role strip_role(const struct desk *desk, const struct face *face);

#endif
