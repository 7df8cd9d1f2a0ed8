/*
 * labels.c - the words on the labels.
 */
#include "kitchen/exchange/labels.h"
#include "base/with_room.h"

#include <assert.h>
#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "base/utf8.h"
#include "engine/label/label_text.h"
#include "kitchen/board/board_private.h"
#include "kitchen/board/load_record.h"
#include "kitchen/canner/aside.h"
#include "kitchen/dryer/dryer.h"
#include "log/tables/canner.h"
#include "log/tables/pantry.h"

#define BETWEEN " \xc2\xb7 "

/* Their own words, after the cautions of the README. */
const char *const label_cautions[] = {
	"A label says what was done. It does not say that a jar is safe, and a sealed lid only shows a vacuum.",
	"Labels that say NOT VALID or UNKNOWN: nobody can tell whether that process was enough.",
	"Food that is not acid is pressure canned. No time in boiling water or steam makes up for that.",
	"Never taste to find out. A suspect jar of low-acid food or tomatoes counts as poisonous even if it looks right.",
	"Still sealed but swollen: do not open it; into a heavy bag, closed, into the trash.",
	"Open or leaking: lay the jars with their lids on their sides in a large pot, water an inch above, boil 30 minutes "
	"without splashing, let cool, discard everything, then wash hands and surfaces. Keep children and pets away.",
	"Double vision, drooping eyelids, slurred speech, trouble swallowing or breathing after home-canned food: get "
	"emergency help at once and tell them about the food.",
	"Bands off, jars washed; store cool, dark and dry, best at 50-70 F, and use within a year.",
	"Giving away and selling are not home use: ask the local health department first. These labels are notes, not a "
	"regulatory record.",
	"Your canner's manual and your extension office outrank this program.",
	NULL,
};

/* --- one label ------------------------------------------------------------------------ */

static void made_words(struct label *label, const struct log_lot *lot)
{
	char code[NAME_MAX_BYTES + 4];
	char date[16];

	utf8_clean(code, sizeof(code), lot->code);
	label_cut(code, sizeof(code), LABEL_LOT_COLUMNS * 1000, 1, LABEL_COLUMNS);
	clock_words_date(lot->made_wall_ms, date, sizeof(date));
	(void)snprintf(label->made, sizeof(label->made), "%s" BETWEEN "lot %s", date, code);
}

static void process_words(struct label *label, const struct log_load *load, const char *size)
{
	struct text text = TEXT_OVER(label->process);
	const struct jar_size *jar = jar_size_named(size);
	char named[WORD_MAX_BYTES];

	utf8_clean(named, sizeof(named), size);
	text_add(&text, "%s" BETWEEN "%s" BETWEEN, jar != NULL ? jar->words : named,
	         load->method_not_noted ? "canner not noted" : method_words(load->method));
	if (load->minutes > 0)
		text_add(&text, "%d min", load->minutes);
	else
		text_add(&text, "minutes not noted");
	if (load->pressure_psi != NO_PRESSURE)
		text_add(&text, " at %d psi", load->pressure_psi);
}

static void place_words(const struct kitchen *kitchen, struct label *label, const struct log_load *load,
                        const struct log_lot *lot, const struct log_jar *jar)
{
	char height[48] = "elevation not noted";
	char best[24] = "DO NOT EAT";
	char date[16];

	if (load->elevation.known)
		elevation_words(&load->elevation, height, sizeof(height));
	clock_words_date(clock_year_later(lot->made_wall_ms), date, sizeof(date));
	if (!jar_is_blocked(jar))
		(void)snprintf(best, sizeof(best), "best by %s", date);
	(void)snprintf(label->place, sizeof(label->place), "%s" BETWEEN "%s%s", height, best,
	               kitchen->board.house.invented ? BETWEEN "invented data" : "");
}

/* What the reader of the label must know, the worst first. */
/* The day, not the hour: a label is read days later. */
static void add_aside(struct text *text, const struct log_jar *jar)
{
	int64_t at;
	const char *words = aside_words(jar, &at);
	char day[16] = "";

	if (at != 0)
		clock_words_date(at, day, sizeof(day));
	text_add(text, "%c%s%s%s. ", toupper((unsigned char)words[0]), words + 1, at != 0 ? " " : "", day);
}

static void warning_words(const struct kitchen *kitchen, struct label *label, const struct log_judgement *judgement,
                          const struct log_jar *jar, bool recalled)
{
	static const char *const states[] = { "NOT CHECKED", "", "NOT SEALED", "SEAL DOUBTFUL", "BROKEN" };
	static_assert(sizeof(states) / sizeof(states[0]) == JAR_STATE_COUNT, "a word for every state");
	const struct log_house *house = &kitchen->board.house;
	const char *verdict = verdict_says(judgement->verdict);
	struct text text = TEXT_OVER(label->warning);
	char why[SENTENCE_MAX_BYTES];

	utf8_clean(why, sizeof(why), judgement->why);
	if (recalled)
		text_add(&text, "RECALLED. ");
	if (jar_is_blocked(jar))
		text_add(&text, "DO NOT EAT. ");
	if (jar->drying_id == 0 && verdict[0] != '\0')
		text_add(&text, "%s%s%s. ", verdict, why[0] != '\0' ? ": " : "", why);
	if (states[jar->state][0] != '\0')
		text_add(&text, "%s. ", states[jar->state]);
	if (jar->fate != FATE_NONE)
		add_aside(&text, jar);
	if (jar->siphoning == SIPHON_OVER_HALF)
		text_add(&text, "Over half the liquid lost. ");
	else if (jar->siphoning != SIPHON_NONE)
		text_add(&text, "Liquid lost: use first. ");
	if (house->practice_speed > 0)
		text_add(&text, "PRACTICE. ");
	if (text.used > 0 && label->warning[text.used - 1] == ' ')
		label->warning[text.used - 1] = '\0';
}

/* What was dried had no process. */
static void dried_words(const struct kitchen *kitchen, struct label *label, const struct log_lot *lot,
                        const struct log_jar *jar)
{
	char date[16];

	clock_words_date(lot_best_by_ms(kitchen, lot), date, sizeof(date));
	(void)snprintf(label->process, sizeof(label->process), "%s" BETWEEN "dried", jar_size_words(jar->size, 1));
	(void)snprintf(label->place, sizeof(label->place), "best by %s%s", date,
	               kitchen->board.house.invented ? BETWEEN "invented data" : "");
}

/* A jar, and what there is to know of it.  `load`: NULL, it is a package of dried food. */
struct labelled {
	const struct log_load *load;
	const struct log_lot *lot;
	const struct log_jar *jar;
	const struct log_judgement *said;
};

static void label_words_of(const struct kitchen *kitchen, const struct labelled *of, bool recalled, struct label *label)
{
	memset(label, 0, sizeof(*label));
	utf8_clean(label->product, sizeof(label->product), of->lot->product);
	made_words(label, of->lot);
	if (of->load == NULL) {
		dried_words(kitchen, label, of->lot, of->jar);
	} else {
		process_words(label, of->load, of->jar->size);
		place_words(kitchen, label, of->load, of->lot, of->jar);
	}
	warning_words(kitchen, label, of->said, of->jar, recalled);
	label->jars = 1;
}

static bool same_label(const struct label *a, const struct label *b)
{
	return strcmp(a->product, b->product) == 0 && strcmp(a->made, b->made) == 0 &&
	       strcmp(a->process, b->process) == 0 && strcmp(a->place, b->place) == 0 &&
	       strcmp(a->warning, b->warning) == 0;
}

/* --- all of them ------------------------------------------------------------------------ */

struct gathering {
	struct kitchen *kitchen;
	bool every_jar;
	struct label *rows;
	size_t count;
	size_t room;
	int jars;    /* with a label */
	int without; /* and those without: not sealed, or not looked at */
};

/* A jar that is kept, or any that still holds its food when every jar is asked for; none
 * that has left the pantry or lives on under a new lid. */
static bool wants_label(const struct gathering *all, const struct log_jar *jar)
{
	if (jar->gone_wall_ms != 0 || (jar->fate == FATE_REPROCESS && jar->fate_done_wall_ms != 0))
		return false;
	if (all->every_jar)
		return jar->state != JAR_BROKEN && jar->fate != FATE_DISCARD;
	return jar->state == JAR_SEALED && jar->fate == FATE_NONE;
}

static bool is_recalled(const struct gathering *all, const struct log_jar *jar, bool *recalled, struct fault *fault)
{
	struct log_recall_jar *marks;
	size_t count;

	*recalled = false;
	if (all->kitchen->board.recall_count == 0)
		return true;
	if (!log_marks_of_jar(all->kitchen->log, jar->id, RECALL_TO_FIND, &marks, &count, fault))
		return false;
	free(marks);
	*recalled = count > 0;
	return true;
}

static bool add_jar(struct gathering *all, const struct labelled *of, struct fault *fault)
{
	struct label *rows;
	bool recalled;

	if (!wants_label(all, of->jar)) {
		all->without++;
		return true;
	}
	rows = with_room(all->rows, all->count, &all->room, sizeof(*rows), "the labels", fault);
	if (rows == NULL)
		return false;
	all->rows = rows;
	if (!is_recalled(all, of->jar, &recalled, fault))
		return false;
	label_words_of(all->kitchen, of, recalled, &all->rows[all->count]);
	all->jars++;
	if (all->count > 0 && same_label(&all->rows[all->count - 1], &all->rows[all->count]))
		all->rows[all->count - 1].jars++;
	else
		all->count++;
	if (all->jars > LABELS_MAX)
		return fault_set(fault, FAULT_REFUSED,
		                 "That is more than %d labels: choose fewer loads, by lot or date.", LABELS_MAX);
	return true;
}

/* Its jars of that lot; 0: all. */
static bool add_record(struct gathering *all, const struct load_record *record, int64_t lot_id, struct fault *fault)
{
	for (size_t i = 0; i < record->jar_count; i++) {
		const struct log_jar *jar = &record->jars[i];
		const struct labelled of = { &record->load, &load_record_lot(record, jar->lot_id)->row, jar,
			                     &record->said[i + 1] };

		if ((lot_id == 0 || jar->lot_id == lot_id) && !add_jar(all, &of, fault))
			return false;
	}
	return true;
}

static bool add_dried(struct gathering *all, const struct log_lot *lot, const struct log_jar *jar, struct fault *fault)
{
	struct log_judgement said;

	return log_judgement_of_jar(all->kitchen->log, jar, &said, fault) &&
	       add_jar(all, &(struct labelled){ NULL, lot, jar, &said }, fault);
}

static bool add_load(struct gathering *all, int64_t load_id, int64_t lot_id, struct fault *fault)
{
	struct load_record record;
	bool done;

	if (!load_record_read(all->kitchen->log, load_id, LOAD_SAID, &record, fault))
		return false;
	done = add_record(all, &record, lot_id, fault);
	load_record_free(&record);
	return done;
}

static bool is_first_of_its_load(const struct log_jar *jars, size_t at)
{
	for (size_t i = 0; i < at; i++)
		if (jars[i].load_id == jars[at].load_id)
			return false;
	return true;
}

static bool add_lot(struct gathering *all, const char *code, struct fault *fault)
{
	struct log *log = all->kitchen->log;
	struct log_jar *jars;
	struct log_lot lot;
	size_t count;
	bool done = true;

	if (!log_lot_by_code(log, code, &lot, NULL))
		return fault_set(fault, FAULT_MISSING, "There is no lot \"%s\".", code);
	if (!log_jars_of_lot(log, lot.id, &jars, &count, fault))
		return false;
	for (size_t i = 0; done && i < count; i++) /* of neither: no process, no label */
		if (jars[i].drying_id != 0)
			done = add_dried(all, &lot, &jars[i], fault);
		else if (jars[i].load_id != 0 && is_first_of_its_load(jars, i))
			done = add_load(all, jars[i].load_id, lot.id, fault);
	free(jars);
	return done;
}

static bool add_loads(struct gathering *all, const struct load_choice *choice, struct fault *fault)
{
	struct load_facts *rows;
	size_t count;
	bool done = true;

	if (!facts_choose(all->kitchen, choice, &rows, &count, fault))
		return false;
	for (size_t i = 0; done && i < count; i++)
		done = add_load(all, rows[i].record.load.id, 0, fault);
	facts_free(rows, count);
	return done;
}

static bool add_chosen(struct gathering *all, const struct label_choice *choice, struct fault *fault)
{
	if (choice->lot != NULL)
		return add_lot(all, choice->lot, fault);
	if (choice->load_id == 0)
		return add_loads(all, &choice->loads, fault);
	return add_load(all, choice->load_id, 0, fault);
}

static bool no_labels(const struct gathering *all, bool by_day, struct fault *fault)
{
	if (all->without == 0 && by_day)
		return fault_set(fault, FAULT_REFUSED,
		                 "There are no jars there to label. Loads of other days: --since, --lot "
		                 "or --all.");
	if (all->without == 0)
		return fault_set(fault, FAULT_REFUSED, "There are no jars there to label.");
	return fault_set(fault, FAULT_REFUSED,
	                 "%s, and none has sealed yet: such jars are labeled only when asked for.",
	                 count_words(all->without, "jar").words);
}

bool labels_read(struct kitchen *kitchen, const struct label_choice *choice, struct label **rows, size_t *count,
                 struct fault *fault)
{
	struct gathering all = { .kitchen = kitchen, .every_jar = choice->every_jar };

	*rows = NULL;
	*count = 0;
	if (!add_chosen(&all, choice, fault) ||
	    (all.count == 0 && !no_labels(&all, choice->lot == NULL && choice->load_id == 0, fault))) {
		free(all.rows);
		return false;
	}
	*rows = all.rows;
	*count = all.count;
	return true;
}
