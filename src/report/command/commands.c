/*
 * commands.c - see commands.h.
 */
#include "report/command/commands.h"

/* clang-format off */
#define THOSE_OF(name) &(name##_commands),
const struct commands *const commands[] = { EACH_COMMANDS(THOSE_OF) NULL };
/* clang-format on */
