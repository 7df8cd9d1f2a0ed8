/*
 * labels_html.c - labels as one HTML document; a browser prints it as it stands.
 */
#include "engine/label/label_text.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/recipe/sheet.h"
#include "report/exchange/labels.h"

static void put_style(FILE *out, const struct label_sheet *sheet)
{
	(void)fputs("<style>\n@page { size: ", out);
	millimetres_put(out, sheet->page_width_um);
	(void)fputs("mm ", out);
	millimetres_put(out, sheet->page_height_um);
	(void)fputs(
	    "mm; margin: 0 }\n"
	    "html, body { margin: 0; padding: 0; background: #fff; color: #000 }\n"
	    "body { font-family: sans-serif }\n"
	    ".sheet { position: relative; overflow: hidden; break-after: page; page-break-after: always; width: ",
	    out);
	millimetres_put(out, sheet->page_width_um);
	(void)fputs("mm; height: ", out);
	/* A hair less than the page, so that rounding never pushes out an empty one. */
	millimetres_put(out, sheet->page_height_um - 100);
	(void)fputs("mm }\n.label { position: absolute; box-sizing: border-box; overflow: hidden; display: flex;\n"
	            "\tflex-direction: column; justify-content: center; line-height: ",
	            out);
	(void)fprintf(out, "%d.%02d; padding: ", LEADING_PERCENT / 100, LEADING_PERCENT % 100);
	millimetres_put(out, LABEL_PADDING_UM);
	(void)fputs("mm; width: ", out);
	millimetres_put(out, label_width_um(sheet));
	(void)fputs("mm; height: ", out);
	millimetres_put(out, label_height_um(sheet));
	(void)fputs("mm }\n"
	            ".label p { margin: 0; overflow-wrap: anywhere }\n"
	            ".label .product, .label .warning { font-weight: bold }\n"
	            ".cautions { box-sizing: border-box; line-height: 1.3; max-width: 190mm; ",
	            out);
	(void)fprintf(out, "padding: %dmm; font-size: %dpt }\n", caution_margin_um(sheet) / 1000,
	              caution_cpt(sheet) / 100);
	(void)fputs(
	    ".cautions h1 { font-size: 150%; margin: 0 0 0.5em }\n.cautions ul { margin: 0; padding-left: 1.2em }\n"
	    "@media screen {\n"
	    "\tbody { background: #ddd }\n"
	    "\t.sheet, .cautions { background: #fff; margin: 5mm }\n"
	    "\t.label { outline: 1px dotted #999 }\n"
	    "}\n</style>\n",
	    out);
}

static void put_points(FILE *out, int cpt)
{
	(void)fprintf(out, "%d.%02dpt", cpt / 100, cpt % 100);
}

static void put_line(FILE *out, const char *kind, int cpt, const char *text)
{
	if (text[0] == '\0')
		return;
	(void)fprintf(out, "<p class=\"%s\" dir=\"auto\" style=\"font-size: ", kind);
	put_points(out, cpt);
	(void)fputs("\">", out);
	markup_put(out, text);
	(void)fputs("</p>\n", out);
}

static void put_label(FILE *out, const struct label_print *print, const struct label *label, int place)
{
	struct label copy;
	struct label_fit fit = label_fitted(print, label, &copy);
	int x;
	int y;

	label_corner(&print->sheet, place, &x, &y);
	(void)fputs("<div class=\"label\" style=\"left: ", out);
	millimetres_put(out, x);
	(void)fputs("mm; top: ", out);
	millimetres_put(out, y);
	(void)fputs("mm\">\n", out);
	put_line(out, "product", fit.product_cpt, copy.product);
	put_line(out, "warning", fit.body_cpt, copy.warning);
	put_line(out, "made", fit.body_cpt, copy.made);
	put_line(out, "process", fit.body_cpt, copy.process);
	put_line(out, "place", fit.body_cpt, copy.place);
	(void)fputs("</div>\n", out);
}

static void put_cautions(FILE *out)
{
	(void)fputs("<section class=\"cautions\">\n<h1>" CAUTION_TITLE "</h1>\n<ul>\n", out);
	for (const char *const *line = label_cautions; *line != NULL; line++) {
		(void)fputs("<li>", out);
		markup_put(out, *line);
		(void)fputs("</li>\n", out);
	}
	(void)fputs("</ul>\n</section>\n", out);
}

void labels_put_html(FILE *out, const struct label_print *print)
{
	int per_sheet = labels_per_sheet(&print->sheet);
	int sheets = labels_sheets(print);

	(void)fputs("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>Labels</title>\n",
	            out);
	put_style(out, &print->sheet);
	(void)fputs("</head>\n<body>\n", out);
	for (int sheet = 0; sheet < sheets; sheet++) {
		(void)fputs("<div class=\"sheet\">\n", out);
		for (int place = 0; place < per_sheet; place++) {
			const struct label *label = label_at(print, sheet * per_sheet + place);

			if (label != NULL)
				put_label(out, print, label, place);
		}
		(void)fputs("</div>\n", out);
	}
	put_cautions(out);
	(void)fputs("</body>\n</html>\n", out);
}
