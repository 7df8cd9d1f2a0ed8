#include "screen/ui/picker.h"

#include <limits.h>
#include <stdio.h>
#include <string.h>
#include <wchar.h>

#include "base/text.h"
#include "kitchen/exchange/labels.h"
#include "screen/ui/desk.h"

void picker_reset(struct picker *picker)
{
	memset(picker, 0, sizeof(*picker));
}

static char small(char c)
{
	return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

/* A hyphen is typed as a blank as well as by itself. */
static bool is_blank(char c)
{
	return c == ' ' || c == '-';
}

/* Where the name goes on after the letters, if it begins with them; else NULL.  A blank,
 * hyphen or comma of the name may be left out; one that was typed must be there, but for
 * those behind the whole name: a longer one may have been meant. */
static const char *goes_on(const char *name, const char *filter)
{
	while (*filter != '\0') {
		if (*name == '\0' && filter[strspn(filter, " ")] == '\0')
			return name;
		if (*name != '\0' && (small(*name) == small(*filter) || (*filter == ' ' && is_blank(*name)))) {
			name++;
			filter++;
		} else if (is_blank(*name) || *name == ',') {
			name++;
		} else {
			return NULL;
		}
	}
	return name;
}

bool picker_matches(const struct picker *picker, const char *name)
{
	if (picker->filter[0] == '\0')
		return true;
	for (; *name != '\0'; name++)
		if (goes_on(name, picker->filter) != NULL)
			return true;
	return false;
}

/* Does a blank follow in the name where it holds the letters? */
static bool blank_follows(const char *name, const char *filter)
{
	for (; *name != '\0'; name++) {
		const char *rest = goes_on(name, filter);

		if (rest != NULL && is_blank(*rest))
			return true;
	}
	return false;
}

bool picker_types(const struct desk *desk, const struct picker *picker, long key,
                  const char *(*name)(const struct desk *desk, int n))
{
	const char *at;

	if (key == KEY_CODE_BACKSPACE || key == KEY_CODE_EMPTY_LINE)
		return picker->filter[0] != '\0';
	if (key != ' ')
		return key > ' ' && key < KEY_CODE_UP && key != 127 && key != '?' && key != '!' && key != '@';
	if (picker->filter[0] == '\0' || picker->moved)
		return false;
	for (int n = 0; (at = name(desk, n)) != NULL; n++)
		if (blank_follows(at, picker->filter))
			return true;
	return false;
}

static bool same_name(const char *name, const char *typed)
{
	while (*name != '\0' && small(*name) == small(*typed)) {
		name++;
		typed++;
	}
	return *name == '\0' && *typed == '\0';
}

static void add_letter(struct picker *picker, long key)
{
	char bytes[MB_LEN_MAX];
	mbstate_t state;
	size_t length = strlen(picker->filter);
	size_t more;

	memset(&state, 0, sizeof(state));
	more = wcrtomb(bytes, (wchar_t)key, &state);
	if (more == (size_t)-1 || length + more >= sizeof(picker->filter))
		return;
	memcpy(picker->filter + length, bytes, more);
	picker->filter[length + more] = '\0';
}

static void take_letter_off(struct picker *picker)
{
	size_t length = strlen(picker->filter);

	if (length > 0)
		length--;
	while (length > 0 && ((unsigned char)picker->filter[length] & 0xC0u) == 0x80u)
		length--;
	picker->filter[length] = '\0';
}

/* Is it the whole name, blanks and commas aside? */
static bool is_whole(const char *name, const char *typed)
{
	const char *rest = typed[0] == '\0' ? NULL : goes_on(name, typed);

	return rest != NULL && *rest == '\0';
}

bool picker_is_whole(const struct picker *picker, const char *name)
{
	return is_whole(name, picker->filter);
}

/* Do the letters begin a word of it? */
static bool begins_word(const char *name, const char *typed)
{
	bool at_word = true;

	for (; *name != '\0'; name++) {
		if (at_word && goes_on(name, typed) != NULL)
			return true;
		at_word = strchr(" -/(", *name) != NULL;
	}
	return false;
}

/* How well a name fits what is typed; 0: it holds the letters somewhere. */
static int fit_of(const char *name, const char *typed)
{
	if (same_name(name, typed))
		return 3;
	if (is_whole(name, typed))
		return 2;
	return typed[0] != '\0' && begins_word(name, typed);
}

/* The mark goes to the name that is typed to the letter, else to one typed but for its
 * blanks and commas, else to the first of which a word begins so. */
static void point_at_best(const struct desk *desk, struct picker *picker,
                          const char *(*name)(const struct desk *desk, int n))
{
	const char *at;
	int best = 0;
	int left = 0;

	for (int n = 0; (at = name(desk, n)) != NULL; n++) {
		int fit = fit_of(at, picker->filter);

		if (!picker_matches(picker, at))
			continue;
		if (fit > best) {
			best = fit;
			picker->cursor = left;
		}
		left++;
	}
}

void picker_typed(struct desk *desk, struct picker *picker, long key,
                  const char *(*name)(const struct desk *desk, int n))
{
	if (key == KEY_CODE_BACKSPACE)
		take_letter_off(picker);
	else if (key == KEY_CODE_EMPTY_LINE)
		picker->filter[0] = '\0';
	else
		add_letter(picker, key);
	picker->cursor = 0;
	picker->moved = false;
	point_at_best(desk, picker, name);
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

bool picker_blank(struct desk *desk, const struct picker *picker, const char *name, int count)
{
	if (desk->last_key != ' ' || is_whole(name, picker->filter) || picker->filter[0] == '\0' || picker->moved ||
	    count < 2)
		return false;
	desk_say(desk, ROLE_QUIET,
	         "%d names have these letters: keep typing, or Enter takes the one at the "
	         "mark.",
	         count);
	return true;
}

int picker_question_draw(const struct desk *desk, const struct picker *picker, int row, int cols, const char *brief,
                         const char *question, enum role role)
{
	int used;

	if (picker->filter[0] == '\0' && (int)strlen(question) > cols - 2)
		question = brief;
	if (picker->filter[0] == '\0')
		return terminal_put(desk->terminal, row, 1, cols - 2, role, question);
	used = terminal_put(desk->terminal, row, 1, cols - 2, ROLE_PLAIN, brief) + 1;
	return used + terminal_putf(desk->terminal, row, 1 + used, cols - 2 - used, ROLE_STRONG, "%s_", picker->filter);
}

struct choices {
	void (*words)(const struct desk *desk, int n, char *buffer, size_t size);
};

static void choice_line(const struct desk *desk, struct list_line *line)
{
	const struct choices *choices = line->of;

	choices->words(desk, line->n, line->words, sizeof(line->words));
}

void picker_draw(const struct desk *desk, const struct picker *picker, int top, int rows, int count,
                 void (*words)(const struct desk *desk, int n, char *buffer, size_t size))
{
	const struct choices choices = { words };
	const struct list_area area = {
		.top = top, .rows = rows, .left = 1, .count = count, .of = &choices, .line = choice_line
	};
	struct list_state list = { .cursor = picker->cursor };

	(void)list_draw(desk, &list, &area);
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
