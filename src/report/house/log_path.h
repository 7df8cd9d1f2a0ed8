/*
 * log_path.h - which log a command is about.
 */
#ifndef STILLROOM_REPORT_HOUSE_LOG_PATH_H
#define STILLROOM_REPORT_HOUSE_LOG_PATH_H

#include <stdbool.h>
#include <stddef.h>

#include "base/fault.h"

struct arguments;

/* The one that -f names, else the usual one: log.db in the folder of the XDG base directory
 * rules.  FAULT_MISSING: the environment names no folder; FAULT_IO: too long. */
bool log_path_find(const struct arguments *arguments, char *path, size_t size, struct fault *fault);

#endif
