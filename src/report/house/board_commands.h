/*
 * board_commands.h - a new log, the board on it, and practice on a log of its own.
 *
 * The board itself is the screen's; report->screen lends it.
 */
#ifndef STILLROOM_REPORT_HOUSE_BOARD_COMMANDS_H
#define STILLROOM_REPORT_HOUSE_BOARD_COMMANDS_H

#include <stdbool.h>

#include "base/fault.h"
#include "report/out/answer.h"

bool setup_command_check(const struct arguments *arguments, const struct report *to, struct fault *fault);
bool setup_command(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);
bool board_command(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);
/* It finds the log to copy the kitchen from by itself, where one is needed. */
bool rehearse_command(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);

#endif
