/*
 * labels.h - sheets of labels as HTML, SVG or plain text.
 *
 * Open formats only: HTML with a style sheet for printing (one document), SVG 1.1
 * (one file a sheet, lengths in micrometres), text for a printer of ten letters and
 * six lines an inch (common practice, no source).  Whatever stands in a name is
 * escaped; words that do not fit are set smaller, wrapped and at last cut.
 */
#ifndef STILLROOM_REPORT_EXCHANGE_LABELS_H
#define STILLROOM_REPORT_EXCHANGE_LABELS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>

#include "base/fault.h"
#include "engine/label/label_sheet.h"
#include "engine/label/label_text.h"
#include "kitchen/exchange/labels.h"

#define COPIES_MAX 50
#define CAUTION_TITLE "Before these jars are opened"

struct label_print {
	struct label_sheet sheet;
	enum label_format format;
	int copies; /* of each label */
	int start;  /* first free label of the first sheet, from 1 */
	const struct label *rows;
	size_t count;
};

/* FAULT_MISUSE: too small for the words, a start beyond the sheet. */
bool labels_check(const struct label_print *print, struct fault *fault);
int labels_total(const struct label_print *print); /* copies counted */
int labels_sheets(const struct label_print *print);

/* Every sheet and the cautions, on one stream; not for SVG. */
void labels_put(FILE *out, const struct label_print *print);

/* Into a file; SVG of several sheets makes NAME-01.svg, NAME-02.svg ... and in any
 * case NAME-cautions.svg.  `first` gets the path of the first one. */
bool labels_save(const struct label_print *print, const char *path, bool replace, char *first, size_t first_size,
                 struct fault *fault);

/* The labels of a load, or of the lot of a batch, as a key of the board asks for them:
 * into the folder of the log, under a name nobody has: labels-LOT.html and so on. */
bool labels_save_about(struct kitchen *kitchen, const struct log_subject *about, const char *log_path,
                       const struct label_sheet *sheet, enum label_format format, struct labels_saved *saved,
                       struct fault *fault);

/* --- for the writers only ------------------------------------------------------------ */

/* The label at a place of the whole run, counted from 0 with the places that are
 * used up already; NULL: none there. */
const struct label *label_at(const struct label_print *print, int place);
/* Its words in the type they fit in: the cut ones are copied into `copy`. */
struct label_fit label_fitted(const struct label_print *print, const struct label *label, struct label *copy);
void label_words(const struct label *label, struct label_words *words);

#define LABEL_PADDING_UM 1500 /* white inside each label, so that no printer's slip cuts a word */

void labels_put_html(FILE *out, const struct label_print *print);
void labels_put_text(FILE *out, const struct label_print *print);
void labels_put_svg(FILE *out, const struct label_print *print, int sheet); /* from 0 */
void labels_put_svg_cautions(FILE *out, const struct label_print *print);
bool labels_text_fits(const struct label_print *print, struct fault *fault);

/* Type and margin of the cautions: they fit on one page down to about 90 x 120 mm. */
int caution_cpt(const struct label_sheet *sheet);
int caution_margin_um(const struct label_sheet *sheet);

/* Text between tags or in an attribute, for HTML and XML. */
void markup_put(FILE *out, const char *text);
/* Micrometres as millimetres: "12.7". */
void millimetres_put(FILE *out, int um);

#endif
