/*
 * kind_views.h - the kinds of work as the screen knows them: which questions and views their
 * keys open, and what is shown beside their clock.
 */
#ifndef STILLROOM_SCREEN_BOARD_KIND_VIEWS_H
#define STILLROOM_SCREEN_BOARD_KIND_VIEWS_H

#include "kitchen/board/board.h"

struct desk;
struct sources;
struct text;

struct kind_views {
	enum subject_kind subject;
	/* At an empty station. */
	const char *(*start_words)(const struct desk *desk);
	void (*start)(struct desk *desk, const struct strip *strip);
	/* The step of the phase that asks for something (phases.h). */
	void (*answer)(struct desk *desk, const struct strip *strip);
	/* Of least weight: beside the tall clock, and in a line of its own. */
	void (*beside)(const struct desk *desk, const struct strip *strip, struct text *text);
	/* Must that be read now, in a narrow window too?  NULL: never. */
	bool (*must_read)(const struct strip *strip);
	void (*whole_line)(const struct desk *desk, const struct strip *strip, struct text *text);
	/* Where that comes from (ui/sources.h); NULL: it was measured here. */
	void (*sources)(const struct strip *strip, struct sources *page);
	/* In the day's list: something about it was not so. */
	void (*correct)(struct desk *desk, struct log_subject subject);
};

/* clang-format off */
#define KIND_VIEWS(TAG, word) extern const struct kind_views word##_views;
EACH_WORK(KIND_VIEWS)
/* clang-format on */

/* Of what is done at the strip's station. */
const struct kind_views *station_views(const struct strip *strip);
/* NULL: it is no work. */
const struct kind_views *subject_views(struct log_subject subject);

/* --- day_view.c --- */

/* The line under the cursor; NULL: none. */
const struct day_item *day_here(const struct desk *desk);
void day_refresh(struct desk *desk);

#endif
