/*
 * backup_command.h - copies of the log: made, listed, put back.
 *
 * Each opens the log by itself and writes what it says on standard output.
 */
#ifndef STILLROOM_REPORT_HOUSE_BACKUP_COMMAND_H
#define STILLROOM_REPORT_HOUSE_BACKUP_COMMAND_H

#include <stdbool.h>

#include "base/fault.h"
#include "report/cli/arguments.h"

bool backup_command(const struct arguments *arguments, const char *log_path, struct fault *fault);
/* Without --yes it lists the backups and, at a terminal, asks which. */
bool restore_command(const struct arguments *arguments, const char *log_path, struct fault *fault);

#endif
