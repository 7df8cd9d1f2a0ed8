#include "screen/picker.h"

#include <stdio.h>
#include <string.h>

#include "engine/text.h"
#include "screen/desk.h"

#define CHOICE_WORDS_MAX 200

void picker_reset(struct picker *picker)
{
	memset(picker, 0, sizeof(*picker));
}

bool picker_typed(struct picker *picker, long key)
{
	size_t length = strlen(picker->filter);

	if (key >= 'A' && key <= 'Z')
		key += 'a' - 'A';
	if (key == KEY_CODE_BACKSPACE && length > 0) {
		picker->filter[length - 1] = '\0';
	} else if (((key >= 'a' && key <= 'z') || key == '-' || (key >= '0' && key <= '9')) &&
	           length + 1 < sizeof(picker->filter)) {
		picker->filter[length] = (char)key;
		picker->filter[length + 1] = '\0';
	} else {
		return false;
	}
	picker->cursor = 0;
	picker->moved = false;
	return true;
}

static bool matches_at(const char *name, const char *filter)
{
	/* Blanks and commas in names are not typed: Space chooses. */
	while (*filter != '\0' && *name != '\0') {
		char c = *name >= 'A' && *name <= 'Z' ? (char)(*name - 'A' + 'a') : *name;

		if (*name != ' ' && *name != ',') {
			if (c != *filter)
				return false;
			filter++;
		}
		name++;
	}
	return *filter == '\0';
}

bool picker_matches(const struct picker *picker, const char *name)
{
	if (picker->filter[0] == '\0')
		return true;
	for (; *name != '\0'; name++)
		if (matches_at(name, picker->filter))
			return true;
	return false;
}

void picker_move(struct picker *picker, int by, int count)
{
	picker->moved = true;
	picker->cursor += by;
	if (picker->cursor >= count)
		picker->cursor = count - 1;
	if (picker->cursor < 0)
		picker->cursor = 0;
}

/* Are the letters the whole name? */
static bool is_whole(const char *name, const char *filter)
{
	size_t letters = 0;

	for (const char *at = name; *at != '\0'; at++)
		letters += *at != ' ' && *at != ',';
	return letters == strlen(filter) && matches_at(name, filter);
}

bool picker_blank(struct desk *desk, const struct picker *picker, const char *name, int count)
{
	if (desk->last_key != ' ' || is_whole(name, picker->filter) || picker->filter[0] == '\0' || picker->moved || count < 2)
		return false;
	desk_say(desk, ROLE_QUIET, "%d names hold these letters: type on, or Enter takes the one at the mark.", count);
	return true;
}

void picker_draw(struct desk *desk, const struct picker *picker, int top, int rows, int cols, int count,
                 void (*words)(const struct desk *desk, int n, char *buffer, size_t size))
{
	struct list_state list = { .cursor = picker->cursor };
	int first = list_scroll(&list, count, rows);

	for (int i = first; i < count && i < first + rows; i++) {
		char buffer[CHOICE_WORDS_MAX];
		bool here = i == picker->cursor;

		words(desk, i, buffer, sizeof(buffer));
		terminal_put(desk->terminal, top + i - first, 1, 2, ROLE_STRONG,
		             here ? glyph(desk->terminal, GLYPH_SELECTION) : " ");
		terminal_put(desk->terminal, top + i - first, 3, cols - 4, here ? ROLE_SELECTED : ROLE_PLAIN, buffer);
	}
}

bool number_typed(struct number_entry *number, long key, int max)
{
	if (key == KEY_CODE_BACKSPACE && number->value > 0) {
		number->value /= 10;
	} else if (key >= '0' && key <= '9') {
		int digit = (int)(key - '0');
		int joined = number->touched ? number->value * 10 + digit : digit;

		number->value = joined <= max ? joined : digit;
	} else {
		return false;
	}
	number->touched = true;
	return true;
}

void lid_box_words(const struct log_lid_box *boxes, size_t count, int n, char *buffer, size_t size)
{
	if (n >= (int)count)
		text_copy(buffer, size, "not noted");
	else
		(void)snprintf(buffer, size, "%s  (%d left)", boxes[n].label, boxes[n].lids - boxes[n].used);
}

bool lid_box_choose(struct desk *desk, const struct log_lid_box *boxes, size_t count, int n, int jars,
                    int64_t *id)
{
	*id = 0;
	if (n >= (int)count)
		return true;
	if (boxes[n].lids - boxes[n].used < jars) {
		desk_say(desk, ROLE_CAUTION, "That box has too few lids for %d jars. Flat lids are used once.", jars);
		return false;
	}
	*id = boxes[n].id;
	return true;
}
