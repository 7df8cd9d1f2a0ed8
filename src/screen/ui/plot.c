/*
 * plot.c - bars, ranges and columns drawn with the glyph table.  Nothing here is
 * told by color alone.
 */
#include "screen/ui/plot.h"
#include "kitchen/board/board.h"
#include "screen/ui/desk.h"

static int columns_of(double share, int cols)
{
	int columns = (int)(share * cols + 0.5);

	return columns < 0 ? 0 : columns > cols ? cols : columns;
}

void plot_bar(const struct desk *desk, int row, int col, int cols, enum role role, double share)
{
	int columns = columns_of(share, cols);

	/* What is there at all shows. */
	terminal_fill(desk->terminal, row, col, columns == 0 && share > 0.0 ? 1 : columns, role, GLYPH_BLOCK);
}

void plot_range(const struct desk *desk, int row, int col, int cols, double low, double at, double high)
{
	int from = columns_of(low, cols - 1);
	int to = columns_of(high, cols - 1);

	terminal_fill(desk->terminal, row, col + from, to - from + 1, ROLE_QUIET, GLYPH_WATCHED);
	terminal_fill(desk->terminal, row, col + columns_of(at, cols - 1), 1, ROLE_STRONG, GLYPH_BLOCK);
}

void plot_columns(const struct desk *desk, int top, int rows, int col, int each, const double *shares, int count,
                  int marked)
{
	for (int n = 0; n < count; n++) {
		int eighths = (int)(shares[n] * rows * 8 + 0.5);

		eighths = eighths == 0 && shares[n] > 0.0 ? 1 : eighths;
		for (int level = 0; level < rows && eighths > level * 8; level++) {
			int left = eighths - level * 8;

			terminal_fill(desk->terminal, top + rows - 1 - level, col + n * each, each > 1 ? each - 1 : 1,
			              n == marked ? ROLE_STRONG : ROLE_QUIET, glyph_of_level(left > 8 ? 8 : left));
		}
	}
}
