/*
 * labels_svg.c - a sheet of labels as an SVG picture in its true size.
 *
 * SVG does not break lines by itself: they are broken as label_text.h reckons, and
 * each label is a window of its own, out of which nothing can stick.
 */
#include "engine/label/label_text.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/recipe/sheet.h"
#include "report/exchange/labels.h"

#define POINT_UM(cpt) ((int)(254LL * (cpt) / 72)) /* of hundredths of a point */

static void put_head(FILE *out, const struct label_sheet *sheet, const char *title)
{
	(void)fputs("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
	            "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"",
	            out);
	millimetres_put(out, sheet->page_width_um);
	(void)fputs("mm\" height=\"", out);
	millimetres_put(out, sheet->page_height_um);
	(void)fprintf(out, "mm\" viewBox=\"0 0 %d %d\" font-family=\"sans-serif\">\n<title>%s</title>\n",
	              sheet->page_width_um, sheet->page_height_um, title);
	(void)fputs("<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n", out);
}

/* One text in as many lines as it takes; returns where the next one may begin. */
static int put_text(FILE *out, const char *text, int x, int y, int room, int cpt, bool bold)
{
	while (*text != '\0') {
		size_t length = label_break(text, room, LABEL_PRINT);
		char line[1024];

		y += POINT_UM(cpt) * LEADING_PERCENT / 100;
		(void)snprintf(line, sizeof(line), "%.*s", (int)length, text);
		/* The base line lies a quarter of the type size above the foot of the line. */
		(void)fprintf(out, "<text x=\"%d\" y=\"%d\" font-size=\"%d\"%s>", x, y - POINT_UM(cpt) / 4,
		              POINT_UM(cpt), bold ? " font-weight=\"bold\"" : "");
		markup_put(out, line);
		(void)fputs("</text>\n", out);
		text = label_next(text, length);
	}
	return y;
}

static int height_of_label(const struct label *label, const struct label_fit *fit)
{
	int product = label_lines(label->product, fit->product_room, LABEL_PRINT);
	int body = label_lines(label->warning, fit->body_room, LABEL_PRINT) +
	           label_lines(label->made, fit->body_room, LABEL_PRINT) +
	           label_lines(label->process, fit->body_room, LABEL_PRINT) +
	           label_lines(label->place, fit->body_room, LABEL_PRINT);

	return product * (POINT_UM(fit->product_cpt) * LEADING_PERCENT / 100) +
	       body * (POINT_UM(fit->body_cpt) * LEADING_PERCENT / 100);
}

static void put_label(FILE *out, const struct label_print *print, const struct label *label, int place)
{
	struct label copy;
	struct label_fit fit = label_fitted(print, label, &copy);
	int height = label_height_um(&print->sheet);
	int free_um = height - height_of_label(&copy, &fit);
	int y = free_um > 0 ? free_um / 2 : 0;
	int left;
	int top;

	label_corner(&print->sheet, place, &left, &top);
	(void)fprintf(out, "<svg x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" overflow=\"hidden\">\n", left, top,
	              label_width_um(&print->sheet), height);
	y = put_text(out, copy.product, LABEL_PADDING_UM, y, fit.product_room, fit.product_cpt, true);
	y = put_text(out, copy.warning, LABEL_PADDING_UM, y, fit.body_room, fit.body_cpt, true);
	y = put_text(out, copy.made, LABEL_PADDING_UM, y, fit.body_room, fit.body_cpt, false);
	y = put_text(out, copy.process, LABEL_PADDING_UM, y, fit.body_room, fit.body_cpt, false);
	(void)put_text(out, copy.place, LABEL_PADDING_UM, y, fit.body_room, fit.body_cpt, false);
	(void)fputs("</svg>\n", out);
}

void labels_put_svg(FILE *out, const struct label_print *print, int sheet)
{
	int per_sheet = labels_per_sheet(&print->sheet);

	put_head(out, &print->sheet, "Labels");
	for (int place = 0; place < per_sheet; place++) {
		const struct label *label = label_at(print, sheet * per_sheet + place);

		if (label != NULL)
			put_label(out, print, label, place);
	}
	(void)fputs("</svg>\n", out);
}

void labels_put_svg_cautions(FILE *out, const struct label_print *print)
{
	int margin = caution_margin_um(&print->sheet);
	int cpt = caution_cpt(&print->sheet);
	int room = (int)((long long)(print->sheet.page_width_um - 2 * margin) * 1000 / POINT_UM(cpt));
	int y = margin;

	put_head(out, &print->sheet, CAUTION_TITLE);
	y = put_text(out, CAUTION_TITLE, margin, y, room * 2 / 3, cpt * 3 / 2, true) + POINT_UM(cpt) / 2;
	for (const char *const *line = label_cautions; *line != NULL; line++)
		y = put_text(out, *line, margin, y, room, cpt, false) + POINT_UM(cpt) / 2;
	(void)fputs("</svg>\n", out);
}
