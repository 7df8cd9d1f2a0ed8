/*
 * apart.h - another program is started apart from this one: with the default signals,
 * none blocked, and a process group of its own, so that no key of the terminal ends it.
 */
#ifndef STILLROOM_KITCHEN_FILE_APART_H
#define STILLROOM_KITCHEN_FILE_APART_H

#include <spawn.h>
#include <sys/types.h>

/* argv[0] is looked for as the shell does; `files` says what its first files are. 0 and the
 * process, whose end the caller collects, or an errno value. */
int start_apart(char *const argv[], char *const environment[], const posix_spawn_file_actions_t *files, pid_t *pid);

#endif
