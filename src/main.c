/*
 * main.c - arguments in, exit status out.  The only file that knows both the
 * screen and the reports.
 */
#include <fcntl.h>
#include <signal.h>
#include <unistd.h>

#include "kitchen/file/keeper.h"
#include "report/command/commands.h"
#include "report/exchange/labels.h"
#include "screen/app/loop.h"
#include "screen/term/config.h"

/* How this program is started anew.  Linux has a name for it that stays right when the file
 * is replaced meanwhile (proc(5)). */
static const char *own_program;

/* NOLINTNEXTLINE(readability-non-const-parameter): the board writes there */
static bool open_board(const struct arguments *arguments, const char *log_path, bool rehearsal, bool *rehearse,
                       struct fault *fault)
{
	struct board_wishes wishes = {
		.program = own_program,
		.ascii = arguments->given[OPTION_ASCII],
		.no_color = arguments->given[OPTION_NO_COLOR],
		.rehearsal = rehearsal,
		.rehearse = rehearse,
		.labels = labels_save_about,
	};

	return board_run(log_path, &wishes, fault);
}

/* A file opened later must not become standard output by its number.  What
 * stands in for a missing one cannot be written to, so that it is noticed. */
static bool standard_files_are_open(void)
{
	for (int fd = STDIN_FILENO; fd <= STDERR_FILENO; fd++)
		if (fcntl(fd, F_GETFD) == -1 && open("/dev/null", O_RDONLY | O_NOCTTY) != fd)
			return false;
	return true;
}

int main(int argc, char **argv)
{
	static const struct full_screen screen = { .board = open_board, .labels = config_labels };

	/* a file that may not grow is told by the write, as a full disk is */
	(void)signal(SIGXFSZ, SIG_IGN); /* NOLINT(concurrency-mt-unsafe): one thread */
	if (!standard_files_are_open())
		return 1;
	if (keeper_asked(argc, argv))
		return keeper_main(argv);
	own_program = access("/proc/self/exe", X_OK) == 0 ? "/proc/self/exe" : argv[0];
	return commands_answer(argc, argv, &screen);
}
