/*
 * pot_views.h - the views of juice and batches: begun, followed, filled, and own recipes.
 */
#ifndef STILLROOM_SCREEN_POT_POT_VIEWS_H
#define STILLROOM_SCREEN_POT_POT_VIEWS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "kitchen/pot/pot.h"
#include "kitchen/recipe/sheet.h"
#include "kitchen/stock/acid_asked.h"
#include "screen/ui/list.h"
#include "screen/ui/picker.h"

struct desk;
struct view;

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

extern const struct view batch_view;
extern const struct view sheet_view;
extern const struct view fill_view;
extern const struct view card_view;
extern const struct view juice_view;
extern const struct view recipe_view;

void batch_view_go_on(struct desk *desk); /* back from the sheet of its recipe */
void sheet_view_enter(struct desk *desk, const char *recipe);

#endif
