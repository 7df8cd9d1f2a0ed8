/*
 * name_form.c - what the kitchen is called; a number is hardly its name.
 */
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/house/house.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"

static char *name_of(const struct desk *desk)
{
	return entry_answers(desk);
}

static bool begin(struct desk *desk, int64_t id)
{
	(void)id;
	text_copy(name_of(desk), NAME_MAX_BYTES, kitchen_board(desk->kitchen)->house.name);
	return true;
}

static void name_now(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", name_of(desk));
}

static bool typed(struct desk *desk, const char *text)
{
	if (strlen(text) >= NAME_MAX_BYTES) {
		desk_say(desk, ROLE_CAUTION, "That name is too long: at most %d bytes.", NAME_MAX_BYTES - 1);
		return false;
	}
	text_copy(name_of(desk), NAME_MAX_BYTES, text);
	return true;
}

/* "3200", "4,650 ft": the elevation, which a new kitchen is asked for too. */
static bool is_a_number(const struct desk *desk)
{
	const char *name = name_of(desk);
	struct elevation elevation;

	return name[0] != '\0' && (name[strspn(name, "0123456789.,+-/ ")] == '\0' ||
	                           (elevation_read(name, &elevation, NULL) && elevation.known));
}

static const char *number_put(const struct desk *desk)
{
	static char words[NAME_MAX_BYTES + 80]; /* until the next call */

	(void)snprintf(words, sizeof(words), "%s looks like an elevation. Is it the kitchen's name?", name_of(desk));
	return words;
}

static const char *const sures[] = { "no, type the name", "yes, it is called that", NULL };

static bool sure_taken(struct desk *desk, int n)
{
	if (n == 1)
		return true;
	begin(desk, 0);
	form_to(desk, entry_view.form(desk), &name_form.questions[0]);
	return false;
}

static bool done(struct desk *desk, struct text *noted, struct fault *fault)
{
	text_add(noted, "%s", name_of(desk)[0] != '\0' ? name_of(desk) : "no name");
	return kitchen_set_name(desk->kitchen, name_of(desk), fault);
}

static const struct question questions[] = {
	{ .kind = ASK_TEXT,
	  .name = "Name",
	  .asks = "What is the kitchen called?",
	  .help = "It stands at the top of the screen. Nothing: it has no name.",
	  .text = name_now,
	  .typed = typed },
	{ .kind = ASK_CHOICE,
	  .name = "A number",
	  .asks = "Is it the kitchen's name?",
	  .put = number_put,
	  .asked = is_a_number,
	  .list = sures,
	  .take = sure_taken },
};

const struct entry_form name_form = {
	.name = "kitchen",
	.title = "What the kitchen is called",
	.questions = questions,
	.count = sizeof(questions) / sizeof(questions[0]),
	.size = NAME_MAX_BYTES,
	.begin = begin,
	.done = done,
};
