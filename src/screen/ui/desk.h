/*
 * desk.h - what the views of the screen share.  Private to src/screen.
 */
#ifndef STILLROOM_SCREEN_UI_DESK_H
#define STILLROOM_SCREEN_UI_DESK_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "base/text.h"
#include "kitchen/step/step.h"
#include "kitchen/warning/warnings.h"
#include "screen/term/config.h"
#include "screen/term/terminal.h"
#include "screen/ui/again.h"
#include "screen/ui/entry.h"
#include "screen/ui/list.h"
#include "screen/ui/picker.h"
#include "screen/ui/ringing.h"
#include "screen/ui/sources.h"
#include "screen/ui/typing.h"
#include "screen/ui/view.h"
#include "screen/ui/wishes.h"

#define MIN_ROWS 12
#define MIN_COLS 40
#define NARROW 60            /* columns: in fewer than that words are brief */
#define MESSAGE_MS 20000     /* how long a message stays when no key is pressed */
#define HELD_KEY_MS 700      /* the same key sooner than this is a held or bouncing key */
#define QUESTION_READ_MS 400 /* a new question that stood this long was to be read */
#define REPEAT_GAP_MS 250    /* the same key this soon after itself is a keyboard's repeat */

#define HELP_ROWS_MAX 64 /* keys of a view and those of every view */

struct entry_form;

struct desk {
	const struct view *const *views;         /* VIEW_COUNT, by name: app/views.h */
	const struct entry_form *const *entries; /* ENTRY_COUNT, by name: likewise */
	void *states[VIEW_COUNT];                /* what they keep: desk_state() */
	struct terminal *terminal;
	struct kitchen *kitchen;
	const struct config *config;
	const struct board_wishes *wishes;
	const char *log_path;
	struct moment now; /* of the frame being drawn or the key being handled */
	int64_t awake_ms;  /* real time, for flashing, messages and held keys */
	enum view_name view;
	enum view_name view_before_help;
	enum view_name home; /* where a view that leads to the board leads instead; the board: nowhere else */
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
	int64_t last_key_ms;      /* seen at all */
	bool question_new;        /* the last press opened the question that is asked, */
	int64_t question_seen_ms; /* which was first drawn then; 0: not yet */
	int64_t last_taken_ms;    /* counted, or part of a stream of repeats */
	struct again again;
	struct typing typing;        /* where nothing asks for it */
	int64_t asked_soon_until_ms; /* a step was made after which a number is asked for */
	struct {
		bool can_go_back;
		enum view_name view;
		struct entry entry;
		int64_t station; /* what was selected there */
		int64_t load;
	} left; /* what was being typed when somebody went to what rings */
	struct {
		enum view_name view;
		struct entry entry;
		bool can_go_back;
	} staying; /* what was being done, and typed, when it was asked whether to leave */

	int64_t alarm_since_ms; /* real time the present alarm began; 0: none */
	int64_t alarm_seen_ms;
	enum alarm alarm;
	struct rung rung[RINGS_MAX];
	size_t rung_count;

	const struct warning *warnings; /* the kitchen's; valid during a frame or a key */
	size_t warning_count;

	struct entry entry;
	bool help_told[HELP_ROWS_MAX]; /* of the keys of the view, and of every view: one row for each key */
};

const struct view *view_of(const struct desk *desk, enum view_name name);
/* Views open one another by name alone. */
void desk_open(struct desk *desk, enum view_name name);
void desk_open_for(struct desk *desk, enum view_name name, struct opening opening);
void desk_show_view(struct desk *desk, enum view_name name); /* as it was when it was last left */
void desk_show_board(struct desk *desk);
void desk_show_home(struct desk *desk); /* the board, or the page that led to the view */
/* To the board in the middle of something, and back to it: to a line being typed, and to a view
 * that keeps what is not written down yet. */
void desk_leave_for_board(struct desk *desk);
void desk_go_back(struct desk *desk);
/* Asks whether to leave the program; no: all is as it was, the line being typed too. */
void desk_ask_to_leave(struct desk *desk);
void desk_stay(struct desk *desk);

/* --- the desk ----------------------------------------------------------------- */

/* Its views, the forms of what is entered, and room for what they keep.  False: there is no memory. */
bool desk_begin(struct desk *desk, const struct view *const *views, const struct entry_form *const *entries,
                struct fault *fault);
void desk_clear(struct desk *desk);                             /* frees it, and what it holds */
void *desk_state(const struct desk *desk, enum view_name name); /* what that view keeps */
void desk_say(struct desk *desk, enum role role, const char *format, ...) __attribute__((format(printf, 3, 4)));
void desk_say_fault(struct desk *desk, const struct fault *fault);

bool desk_has_station(const struct desk *desk, enum station_kind kind); /* one stands here */
const struct strip *desk_selected(const struct desk *desk);             /* NULL: nothing to select */
void desk_select(struct desk *desk, const struct strip *strip);
const struct strip *desk_most_urgent(const struct desk *desk); /* NULL: no work anywhere */

/* Undo the last act about the subject and say what it was. */
void desk_undo(struct desk *desk, struct log_subject subject);
/* Undo the newest act about one of these (enum done_to, joined by |), whatever was done elsewhere since.
 * `what`: "the plan", for the refusal. */
void desk_undo_about(struct desk *desk, unsigned about, const char *what);
/* Likewise by one of the kitchen's undos that know what they are about. */
void desk_undo_by(struct desk *desk, bool (*undo)(struct kitchen *, char *, size_t, struct fault *));
/* Write the labels of a load or a batch's lot to a file, and say where. */
void desk_labels(struct desk *desk, struct log_subject about);
/* Write what stands to a new file, of a log that can hold nothing more. */
void desk_save_elsewhere(struct desk *desk);

/* Read the lid boxes anew into a malloc'ed list, freeing the old one. */
void desk_read_lid_boxes(struct desk *desk, struct log_lid_box **boxes, size_t *count);

/* Shared by views. */
const struct kitchen_plan *desk_plan(const struct desk *desk); /* as of now */
int desk_columns(const struct desk *desk);                     /* of the window */
enum unit_system desk_units(const struct desk *desk);

#endif
