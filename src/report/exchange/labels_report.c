/*
 * labels_report.c - which label stands where, and the files.
 */
#include <limits.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/utf8.h"
#include "engine/label/label_text.h"
#include "kitchen/board/look.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/recipe/sheet.h"
#include "report/exchange/labels.h"
#include "report/out/out_file.h"

#define NAME_TRIES 99

bool labels_check(const struct label_print *print, struct fault *fault)
{
	int per_sheet = labels_per_sheet(&print->sheet);

	if (!label_sheet_check(&print->sheet, fault))
		return false;
	if (print->start < 1 || print->start > per_sheet)
		return fault_set(fault, FAULT_MISUSE, "a sheet has labels 1 to %d; there is no label %d to start at",
		                 per_sheet, print->start);
	if (labels_total(print) > LABELS_MAX)
		return fault_set(fault, FAULT_REFUSED, "That is more than %d labels: choose fewer loads or copies.",
		                 LABELS_MAX);
	return print->format != LABEL_TEXT || labels_text_fits(print, fault);
}

int labels_total(const struct label_print *print)
{
	long total = 0;

	for (size_t i = 0; i < print->count; i++)
		total += (long)print->rows[i].jars * print->copies;
	return total > INT_MAX ? INT_MAX : (int)total;
}

int labels_sheets(const struct label_print *print)
{
	int per_sheet = labels_per_sheet(&print->sheet);

	return (print->start - 1 + labels_total(print) + per_sheet - 1) / per_sheet;
}

const struct label *label_at(const struct label_print *print, int place)
{
	int left = place - (print->start - 1);

	for (size_t i = 0; left >= 0 && i < print->count; i++) {
		left -= print->rows[i].jars * print->copies;
		if (left < 0)
			return &print->rows[i];
	}
	return NULL;
}

void label_words(const struct label *label, struct label_words *words)
{
	*words = (struct label_words){
		.product = label->product,
		.lines = { label->made, label->process, label->place },
		.line_count = 3,
		.warning = label->warning,
	};
}

struct label_fit label_fitted(const struct label_print *print, const struct label *label, struct label *copy)
{
	int width = label_width_um(&print->sheet) - 2 * LABEL_PADDING_UM;
	int height = label_height_um(&print->sheet) - 2 * LABEL_PADDING_UM;
	struct label_words words;
	struct label_fit fit;

	label_words(label, &words);
	fit = label_fit(&words, width, height);
	*copy = *label;
	label_cut(copy->product, sizeof(copy->product), fit.product_room, fit.product_lines, LABEL_PRINT);
	label_cut(copy->warning, sizeof(copy->warning), fit.body_room, fit.warning_lines, LABEL_PRINT);
	return fit;
}

/* --- parts of HTML and SVG -------------------------------------------------------------- */

void markup_put(FILE *out, const char *text)
{
	while (*text != '\0') {
		uint32_t character = 0;
		size_t length = utf8_next(text, strnlen(text, 4), &character);

		/* The last two are no characters of XML 1.0. */
		if (length == 0 || utf8_is_control(character) || utf8_is_trick(character) || character == 0xfffe ||
		    character == 0xffff)
			(void)fputc('?', out);
		else if (character == '&' || character == '<' || character == '>' || character == '"' ||
		         character == '\'')
			(void)fprintf(out, "&#%d;", (int)character);
		else
			(void)fwrite(text, 1, length, out);
		text += length == 0 ? 1 : length;
	}
}

void millimetres_put(FILE *out, int um)
{
	(void)fprintf(out, "%d.%03d", um / 1000, um % 1000);
}

/* The smaller side decides; 11 point from 180 mm on, 5 at the least. */
int caution_cpt(const struct label_sheet *sheet)
{
	int side = sheet->page_width_um < sheet->page_height_um ? sheet->page_width_um : sheet->page_height_um;
	int cpt = side / 1800 * 11;

	return cpt < 500 ? 500 : cpt > 1100 ? 1100 : cpt;
}

int caution_margin_um(const struct label_sheet *sheet)
{
	return sheet->page_width_um / 14;
}

/* --- files -------------------------------------------------------------------------------- */

void labels_put(FILE *out, const struct label_print *print)
{
	if (print->format == LABEL_HTML)
		labels_put_html(out, print);
	else
		labels_put_text(out, print);
}

#define PART_CAUTIONS (-1)
#define PART_ALL (-2)

static bool save_part(const struct label_print *print, const char *path, int part, bool replace, struct fault *fault)
{
	struct out_file file;

	if (!out_open(&file, path, replace, fault))
		return false;
	if (part == PART_ALL)
		labels_put(file.stream, print);
	else if (part == PART_CAUTIONS)
		labels_put_svg_cautions(file.stream, print);
	else
		labels_put_svg(file.stream, print, part);
	return out_close(&file, fault);
}

/* "quince.svg", part 2 -> "quince-03.svg"; a single sheet keeps its name. */
static bool part_path(const char *path, int part, int sheets, char *out, size_t size, struct fault *fault)
{
	const char *slash = strrchr(path, '/');
	const char *dot = strrchr(path, '.');
	size_t stem =
	    dot != NULL && dot > path && (slash == NULL || dot > slash + 1) ? (size_t)(dot - path) : strlen(path);
	struct text text = text_over(out, size);

	text_add(&text, "%.*s", (int)stem, path);
	if (part == PART_CAUTIONS)
		text_add(&text, "-cautions");
	else if (sheets > 1)
		text_add(&text, "-%02d", part + 1);
	text_add(&text, "%s", path + stem);
	return !text.cut || fault_set(fault, FAULT_IO, "the path of the file is too long");
}

static bool save_svg(const struct label_print *print, const char *path, bool replace, char *first, size_t first_size,
                     struct fault *fault)
{
	int sheets = labels_sheets(print);
	char part[OUT_PATH_BYTES];

	/* All of them or none: is there room for the last one, too? */
	for (int i = PART_CAUTIONS; i < sheets && !replace; i++)
		if (!part_path(path, i, sheets, part, sizeof(part), fault) || !out_is_free(part, fault))
			return false;
	for (int i = 0; i < sheets; i++) {
		if (!part_path(path, i, sheets, part, sizeof(part), fault) ||
		    !save_part(print, part, i, replace, fault))
			return false;
		if (i == 0)
			(void)text_copy(first, first_size, part);
	}
	return part_path(path, PART_CAUTIONS, sheets, part, sizeof(part), fault) &&
	       save_part(print, part, PART_CAUTIONS, replace, fault);
}

bool labels_save(const struct label_print *print, const char *path, bool replace, char *first, size_t first_size,
                 struct fault *fault)
{
	if (print->format == LABEL_SVG)
		return save_svg(print, path, replace, first, first_size, fault);
	(void)text_copy(first, first_size, path);
	return save_part(print, path, PART_ALL, replace, fault);
}

/* A person looks for the file from anywhere: its path from the root, if there is one. */
static void say_whole_path(const char *found, char *path, size_t size)
{
	char *whole = realpath(found, NULL);

	(void)text_copy(path, size, whole != NULL ? whole : found);
	free(whole);
}

/* The lot out of "2026-09-14 . lot 2026-09-14-B1", as part of a file name. */
static void lot_as_name(const struct label *label, char *name, size_t size)
{
	const char *lot = strstr(label->made, "lot ");
	size_t used = 0;

	for (lot = lot == NULL ? "" : lot + strlen("lot "); *lot != '\0' && used + 1 < size; lot++) {
		bool plain =
		    (*lot >= 'a' && *lot <= 'z') || (*lot >= 'A' && *lot <= 'Z') || (*lot >= '0' && *lot <= '9');

		name[used++] = plain ? *lot : '-';
	}
	name[used] = '\0';
}

static bool save_beside(const struct label_print *print, const char *log_path, char *path, size_t size,
                        struct fault *fault)
{
	const char *slash = strrchr(log_path, '/');
	int folder = slash == NULL ? 0 : (int)(slash - log_path) + 1;
	const char *ending = print->format == LABEL_TEXT ? "txt" : label_format_name(print->format);
	char lot[64];
	char first[OUT_PATH_BYTES];

	lot_as_name(&print->rows[0], lot, sizeof(lot));
	for (int i = 1; i <= NAME_TRIES; i++) {
		struct text text = text_over(path, size);

		text_add(&text, "%.*slabels-%s", folder, log_path, lot);
		if (i > 1)
			text_add(&text, "-%d", i);
		text_add(&text, ".%s", ending);
		if (text.cut)
			return fault_set(fault, FAULT_IO, "the path of the file is too long");
		if (labels_save(print, path, false, first, sizeof(first), fault)) {
			say_whole_path(first, path, size);
			return true;
		}
		if (fault->kind != FAULT_REFUSED)
			return false;
	}
	return false;
}

bool labels_save_about(struct kitchen *kitchen, const struct log_subject *about, const char *log_path,
                       const struct label_sheet *sheet, enum label_format format, struct labels_saved *saved,
                       struct fault *fault)
{
	struct label_print print = { .sheet = *sheet, .format = format, .copies = 1, .start = 1 };
	struct label_choice choice = { .load_id = about->kind == SUBJECT_LOAD ? about->id : 0 };
	struct label *rows = NULL;
	struct log_batch batch;
	char code[NAME_MAX_BYTES];
	bool done;

	if (about->kind == SUBJECT_BATCH) {
		if (!kitchen_batch_get(kitchen, about->id, &batch, fault))
			return false;
		kitchen_lot_code(kitchen, batch.lot_id, code, sizeof(code));
		choice.lot = code;
	}
	done = labels_read(kitchen, &choice, &rows, &print.count, fault);
	print.rows = rows;
	done = done && labels_check(&print, fault) &&
	       save_beside(&print, log_path, saved->path, sizeof(saved->path), fault);
	if (done) {
		saved->labels = labels_total(&print);
		saved->sheets = labels_sheets(&print);
	}
	free(rows);
	return done;
}
