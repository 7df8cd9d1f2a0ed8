/*
 * kind_views.c - the kinds of work as the screen knows them: loads and batches.
 */
#include "screen/board/kind_views.h"
#include "base/count.h"
#include "base/text.h"
#include "kitchen/board/kinds.h"
#include "kitchen/canner/canner.h"
#include "screen/board/board_views.h"
#include "screen/ui/desk.h"

/* --- loads ------------------------------------------------------------------------------ */

static const char *load_start_words(const struct desk *desk)
{
	const struct strip *strip = desk_selected(desk);
	struct loader_proposal offer;

	if (kitchen_board(desk->kitchen)->waiting_count == 0 || strip == NULL)
		return "start a load";
	kitchen_propose(desk->kitchen, &desk->now, strip->station.id, &offer);
	return kitchen_takes_waiting(desk->kitchen, &desk->now, strip->station.id, &offer, NULL)
	           ? "load the waiting jars"
	           : "where the waiting jars go";
}

static void load_start(struct desk *desk, const struct strip *strip)
{
	desk_open_for(desk, kitchen_board(desk->kitchen)->waiting_count > 0 ? VIEW_LOADER : VIEW_START,
	              (struct opening){ .id = strip->station.id });
}

static void load_answer(struct desk *desk, const struct strip *strip)
{
	desk_open_for(desk, VIEW_SEALS, (struct opening){ .id = strip_work_id(strip) });
}

static void load_beside(const struct desk *desk, const struct strip *strip, struct text *text)
{
	const struct strip_load *in = strip_load(strip);
	const struct log_load *load = &in->row;
	char headspace[24];

	(void)desk;
	headspace_words(load->headspace_thou, headspace, sizeof(headspace));
	if (load->minutes > 0)
		text_add(text, "%d min", load->minutes);
	else
		text_add(text, "minutes not noted");
	if (load->pressure_psi != NO_PRESSURE)
		text_add(text, " at %d psi", load->pressure_psi);
	if (load_from_notebook(load)) {
		text_add(text, "; from a notebook");
		return;
	}
	text_add(text, ", headspace %s", headspace);
	if (in->hold_starts > 1)
		text_add(text, "; hold start %d", in->hold_starts);
	if (load->confirmed == CONFIRMED_PRACTICE)
		text_add(text, "; unpublished");
	if (load->broken > 0)
		text_add(text, "; %d broken", load->broken);
}

static void load_line(const struct desk *desk, const struct strip *strip, struct text *text)
{
	text_add(text, "%s: ", strip->lot.code);
	load_beside(desk, strip, text);
}

static void load_sources(const struct strip *strip, struct sources *page)
{
	const struct log_load *load = &strip_load(strip)->row;
	struct source_of of = { .source = load->source };

	if (load_from_notebook(load))
		of.how = "written down from a notebook; nobody looked it up";
	else if (load->confirmed == CONFIRMED_PRACTICE)
		of.how = "common practice, no source: no published table has these minutes";
	sources_add(page, &of, "%s: %d min%s", strip->lot.code, load->minutes,
	            load->pressure_psi != NO_PRESSURE ? " and the pressure" : "");
}

static bool wrong_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };

	if (!kitchen_found_wrong(desk->kitchen, day_here(desk)->subject.id, text, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	day_refresh(desk);
	desk_say(desk, ROLE_STOP,
	         "Noted: process NOT valid. Its jars are at the seal check (0): each needs a fate. (u undoes)");
	return true;
}

static void load_correct(struct desk *desk, struct log_subject subject)
{
	(void)subject;
	desk_ask(desk, "What was wrong with its process:", "", wrong_typed);
}

const struct kind_views load_views = {
	.subject = SUBJECT_LOAD,
	.start_words = load_start_words,
	.start = load_start,
	.answer = load_answer,
	.beside = load_beside,
	.whole_line = load_line,
	.sources = load_sources,
	.correct = load_correct,
};

/* --- batches ---------------------------------------------------------------------------- */

static const char *batch_start_words(const struct desk *desk)
{
	(void)desk;
	return "start a batch";
}

static void batch_start(struct desk *desk, const struct strip *strip)
{
	desk_open_for(desk, VIEW_BATCH, (struct opening){ .id = strip->station.id });
}

static void batch_answer(struct desk *desk, const struct strip *strip)
{
	desk_open_for(desk, VIEW_FILL, (struct opening){ .id = strip_work_id(strip) });
}

static void batch_beside(const struct desk *desk, const struct strip *strip, struct text *text)
{
	(void)desk;
	text_add(text, "%s, %s filled", strip->lot.code, count_words(strip_batch(strip)->filled, "jar").words);
}

static void batch_sources(const struct strip *strip, struct sources *page)
{
	const struct log_batch *batch = &strip_batch(strip)->row;

	sources_add(page, &(struct source_of){ .source = batch->source }, "%s: recipe %s", strip->lot.code,
	            batch->recipe);
}

static void batch_correct(struct desk *desk, struct log_subject subject)
{
	desk_open_for(desk, VIEW_CARD, (struct opening){ .id = subject.id });
}

const struct kind_views batch_views = {
	.subject = SUBJECT_BATCH,
	.start_words = batch_start_words,
	.start = batch_start,
	.answer = batch_answer,
	.beside = batch_beside,
	.whole_line = batch_beside,
	.sources = batch_sources,
	.correct = batch_correct,
};
