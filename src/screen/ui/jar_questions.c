/*
 * jar_questions.c - see jar_questions.h.
 */
#include "screen/ui/jar_questions.h"

#include <stdio.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/food/food.h"
#include "screen/ui/desk.h"
#include "screen/ui/form.h"

static struct jars_asked *asked_of(const struct desk *desk)
{
	return view_of(desk, desk->view)->form(desk)->jars;
}

const char *jars_pack_caution(const struct desk *desk, const char *food, const char *pack, enum method method)
{
	const struct elevation *elevation = &kitchen_board(desk->kitchen)->house.elevation;

	return process_pack_is_practice(food, pack, method, elevation) ? PACK_IS_PRACTICE : NULL;
}

int jars_boxes(const struct desk *desk)
{
	return (int)asked_of(desk)->box_count + 1;
}

void jars_box_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	const struct jars_asked *asked = asked_of(desk);
	const struct log_lid_box *box = &asked->boxes[n];

	if (n >= (int)asked->box_count)
		text_copy(buffer, size, "not noted");
	else
		(void)snprintf(buffer, size, "%s  (%d left)", box->label, box->lids - box->used);
}

int jars_box_offered(const struct desk *desk)
{
	const struct jars_asked *asked = asked_of(desk);
	size_t count = asked->box_count;
	size_t n = 0;

	if (asked->lids_said && asked->lid_box_id == 0)
		return (int)count;
	while (n < count && asked->boxes[n].id != asked->lid_box_id)
		n++;
	for (size_t i = 0; n == count && i < count; i++)
		if (asked->boxes[i].used < asked->boxes[i].lids)
			n = i;
	return n < count ? (int)n : 0;
}

bool jars_lids_taken(struct desk *desk, int n)
{
	struct jars_asked *asked = asked_of(desk);
	const struct log_lid_box *box = &asked->boxes[n];
	bool noted = n < (int)asked->box_count;

	if (noted && box->lids - box->used < asked->count) {
		desk_say(desk, ROLE_CAUTION, "That box has too few lids for %s. Flat lids are used once.",
		         count_words(asked->count, "jar").words);
		return false;
	}
	asked->lid_box_id = noted ? box->id : 0;
	asked->lids_said = true;
	return true;
}

int jars_acids(const struct desk *desk)
{
	return (int)asked_of(desk)->acid_count;
}

void jars_acid_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	const struct jars_asked *asked = asked_of(desk);
	struct text text = text_over(buffer, size);

	acid_answer_words(asked->food, asked->acids[n], asked->size, asked->count, &text);
}

bool jars_acid_taken(struct desk *desk, int n)
{
	asked_of(desk)->acid = asked_of(desk)->acids[n];
	asked_of(desk)->vinegar_tenths = 0;
	return true;
}

bool jars_vinegar_typed(struct desk *desk, const char *text)
{
	asked_of(desk)->vinegar_tenths = desk_vinegar(desk, text);
	return asked_of(desk)->vinegar_tenths > 0;
}
