/*
 * out_commands.h - the commands that take things out of the log and into it.
 */
#ifndef STILLROOM_REPORT_EXCHANGE_OUT_COMMANDS_H
#define STILLROOM_REPORT_EXCHANGE_OUT_COMMANDS_H

#include <stdbool.h>

#include "base/fault.h"
#include "report/out/answer.h"

/* How labels are set comes from the configuration; options outrank it. */
bool labels_command(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);
bool labels_command_check(const struct arguments *arguments, const struct report *to, struct fault *fault);
/* `day` is not used for --schema and may be NULL then. */
bool export_command(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);
bool export_command_check(const struct arguments *arguments, const struct report *to, struct fault *fault);
/* With --yes into a log that is open to be written. */
bool import_command(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);
bool import_command_check(const struct arguments *arguments, const struct report *to, struct fault *fault);

#endif
