/*
 * backup_command.h - copies of the log: made, listed, put back.
 */
#ifndef STILLROOM_REPORT_HOUSE_BACKUP_COMMAND_H
#define STILLROOM_REPORT_HOUSE_BACKUP_COMMAND_H

#include <stdbool.h>

#include "base/fault.h"
#include "report/out/answer.h"

bool backup_command(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);
/* Without --yes it lists the backups and, at a terminal, asks which. */
bool restore_command(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);

#endif
