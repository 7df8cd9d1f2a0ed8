/*
 * out_commands.h - the commands that take things out of the log and into it.
 *
 * Each opens the log by itself and writes what it says on standard output.
 */
#ifndef STILLROOM_REPORT_EXCHANGE_OUT_COMMANDS_H
#define STILLROOM_REPORT_EXCHANGE_OUT_COMMANDS_H

#include <stdbool.h>

#include "base/fault.h"
#include "engine/label/label_sheet.h"
#include "kitchen/file/open_day.h"
#include "report/cli/arguments.h"

/* `sheet` and `format` come from the configuration; options outrank them. */
bool labels_command(const struct arguments *arguments, const char *log_path, const struct label_sheet *sheet,
                    enum label_format format, struct fault *fault);
/* `log_path` is not used for --schema and may be NULL then. */
bool export_command(const struct arguments *arguments, const char *log_path, struct fault *fault);
bool import_command(const struct arguments *arguments, const char *log_path, struct fault *fault);

#endif
