/* asked.c - see asked.h. */
#include "support/asked.h"

#include <stdio.h>

#include "screen/app/views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"
#include "screen/ui/form.h"

/* clang-format off */
#define VIEW_WORD(TAG, word) [VIEW_##TAG] = #word,
static const char *const view_words[] = { EACH_VIEW(VIEW_WORD) };
/* clang-format on */

const char *view_word(enum view_name name)
{
	return view_words[name];
}

const char *asked_word(const struct desk *desk)
{
	const struct view *view = view_of(desk, desk->view);

	if (desk->view == VIEW_ENTRY) {
		static char word[80]; /* until the next call */

		(void)snprintf(word, sizeof(word), "%s %s", entry_form_of(desk)->name,
		               form_question(view->form(desk))->name);
		return word;
	}
	if (view->questions != NULL)
		return view->questions[view->form(desk)->at].name;
	return view->pages == NULL ? NULL : view->pages[view->page(desk)];
}

void asked_list(FILE *out)
{
	for (int name = 0; name < VIEW_COUNT; name++)
		(void)fprintf(out, "%s\n", view_words[name]);
	for (int name = 0; name < VIEW_COUNT; name++)
		for (size_t n = 0; n < screen_views[name]->question_count; n++)
			(void)fprintf(out, "%s %s\n", view_words[name], screen_views[name]->questions[n].name);
	for (int name = 0; name < ENTRY_COUNT; name++)
		for (size_t n = 0; n < screen_entries[name]->count; n++)
			(void)fprintf(out, "%s %s %s\n", view_words[VIEW_ENTRY], screen_entries[name]->name,
			              screen_entries[name]->questions[n].name);
	for (int name = 0; name < VIEW_COUNT; name++)
		for (const char *const *page = screen_views[name]->pages; page != NULL && *page != NULL; page++)
			(void)fprintf(out, "%s %s\n", view_words[name], *page);
}
