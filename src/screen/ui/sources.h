/*
 * sources.h - the page behind @: where what a view shows comes from.  Rules by their names,
 * sources, and how figures were worked out stand here, one key deeper than the views.
 *
 * A view writes its page in its hook `sources` (view.h) when the key is pressed; the page then
 * stays as it is while it is read.  Nothing of the view is touched: Esc goes back to it with
 * everything chosen and half typed as it was.
 */
#ifndef STILLROOM_SCREEN_UI_SOURCES_H
#define STILLROOM_SCREEN_UI_SOURCES_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "screen/term/role.h"
#include "screen/ui/view.h"

struct desk;
struct process;
struct recipe;
struct food;
struct board;
struct phase_rule;

#define SOURCES_BYTES 65536 /* WARNINGS_MAX of them with their sources, and as much again */
#define SOURCES_MAX 512

/* A page: paragraphs, one behind the other. */
struct sources {
	char words[SOURCES_BYTES];
	size_t used;
	struct {
		size_t at; /* in `words` */
		enum role role;
		int indent;
	} paragraphs[SOURCES_MAX];
	size_t count;
	bool full; /* more was to be said than finds room; the page says so */
};

/* One thing that is shown, by a sentence or figure, and where it comes from; each of these may
 * be NULL or "": a rule by its name, a source, and how it was worked out. */
struct source_of {
	const char *rule;
	const char *source;
	const char *how;
};
void sources_add(struct sources *page, const struct source_of *of, const char *format, ...)
    __attribute__((format(printf, 3, 4)));

/* Minutes and pressure, with the row they were read in and what else led to it. */
void sources_add_process(struct sources *page, const struct process *process);
/* What a food's own line asks for: its caution, its acid, what must not be in it; NULL: nothing. */
void sources_add_food(struct sources *page, const struct food *food);
/* A recipe and its steps. */
void sources_add_recipe(struct sources *page, const struct recipe *recipe);
/* What is to be done in a phase, and its caution. */
void sources_add_phase(struct sources *page, const struct board *board, const struct phase_rule *rule);

/* The page that is open, and what was said when it was opened. */
struct sources_card {
	struct sources page;
	bool open;
	enum view_name view_before;
	int top;   /* first line shown */
	int shown; /* lines shown, */
	int lines; /* of so many */
	char message[FAULT_SENTENCE_MAX];
	enum role message_role;
	int64_t message_until_ms;
};

struct sources_card *sources_card(const struct desk *desk);

/* Show the page of the present view; one without sources says so. */
void desk_show_sources(struct desk *desk);
/* Back to where it was opened; nothing where it is not open. */
void desk_close_sources(struct desk *desk);

#endif
