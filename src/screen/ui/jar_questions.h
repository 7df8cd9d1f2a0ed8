/*
 * jar_questions.h - what is asked of jars wherever they are packed, filled or processed again:
 * how, into which size, how many, with which lids and which acid.  Each is a question of a form
 * (form.h) that is written here; the card adds what only it knows.
 */
#ifndef STILLROOM_SCREEN_UI_JAR_QUESTIONS_H
#define STILLROOM_SCREEN_UI_JAR_QUESTIONS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "engine/food/acid.h"
#include "engine/process/process.h"
#include "log/rows/canner.h"

struct desk;
struct text;

/* What the card keeps for them; its form names it (form.jars).  The boxes are the card's to free. */
struct jars_asked {
	struct log_lid_box *boxes; /* desk_read_lid_boxes */
	size_t box_count;
	const enum acid *acids; /* which may be said; the card's own */
	size_t acid_count;      /* 0: nothing is asked of it */
	const struct food *food;
	const struct jar_size *size;
	/* What was answered. */
	int count;
	int64_t lid_box_id; /* 0: not noted */
	bool lids_said;     /* a box, or that it is not noted */
	enum acid acid;
	int vinegar_tenths; /* percent on its label, tenths; 0: not said */
};

/* How it is packed; `asks`, `nth`, `take` by the card.  The only one goes without saying. */
#define ASKS_OF_PACK .kind = ASK_CHOICE, .name = "pack", .passes = true
/* That the minutes of a pack are common practice only; NULL: they are not. */
const char *jars_pack_caution(const struct desk *desk, const char *food, const char *pack, enum method method);

/* The size; `asks`, its sizes and `take` by the card. */
#define ASKS_OF_JAR .kind = ASK_CHOICE, .name = "jar"

/* How many; `asks`, `unit` and `take`, which puts it into `count`, by the card. */
#define ASKS_HOW_MANY_JARS .kind = ASK_NUMBER, .name = "count", .most = 99

/* Which lids; `asks` by the card, and `take`: jars_lids_taken, or one that goes on from it. */
#define ASKS_LIDS \
	.kind = ASK_CHOICE, .name = "lids", .count = jars_boxes, .words = jars_box_words, .offers = jars_box_offered, \
	.short_list = true
int jars_boxes(const struct desk *desk); /* the last: not noted */
void jars_box_words(const struct desk *desk, int n, char *buffer, size_t size);
/* That of before, as long as it is there; else the first that has a lid left. */
int jars_box_offered(const struct desk *desk);
/* For `count` jars; false, and it is said: it has too few. */
bool jars_lids_taken(struct desk *desk, int n);

/* Is the acid in; `asks`, `asked`, `words` and `take` by the card: those below, or others that go on from them. */
#define ASKS_OF_ACID .kind = ASK_CHOICE, .name = "acid", .count = jars_acids, .short_list = true
#define JARS_ACID_IS_SO "so it is" /* what Space says to it: that it is in, or that none is asked for */
int jars_acids(const struct desk *desk);
void jars_acid_words(const struct desk *desk, int n, char *buffer, size_t size);
bool jars_acid_taken(struct desk *desk, int n);

/* How strong the vinegar is; `asked` by the card. */
#define ASKS_OF_VINEGAR \
	.kind = ASK_TEXT, .name = "vinegar", .asks = "Vinegar: percent on label:", .typed = jars_vinegar_typed
bool jars_vinegar_typed(struct desk *desk, const char *text);

#endif
