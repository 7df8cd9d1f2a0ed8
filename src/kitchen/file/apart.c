/* apart.c - see apart.h. */
#include "kitchen/file/apart.h"

#include <signal.h>

static int set_attributes(posix_spawnattr_t *attributes)
{
	sigset_t all;
	sigset_t none;
	int error;

	(void)sigfillset(&all);
	(void)sigdelset(&all, SIGKILL);
	(void)sigdelset(&all, SIGSTOP);
	(void)sigemptyset(&none);
	error = posix_spawnattr_setsigdefault(attributes, &all);
	if (error == 0)
		error = posix_spawnattr_setsigmask(attributes, &none);
	if (error == 0)
		error = posix_spawnattr_setpgroup(attributes, 0);
	return error != 0 ? error
	                  : posix_spawnattr_setflags(attributes, POSIX_SPAWN_SETSIGDEF | POSIX_SPAWN_SETSIGMASK |
	                                                             POSIX_SPAWN_SETPGROUP);
}

int start_apart(char *const argv[], char *const environment[], const posix_spawn_file_actions_t *files, pid_t *pid)
{
	posix_spawnattr_t attributes;
	int error = posix_spawnattr_init(&attributes);

	if (error != 0)
		return error;
	error = set_attributes(&attributes);
	if (error == 0)
		error = posix_spawnp(pid, argv[0], files, &attributes, argv, environment);
	(void)posix_spawnattr_destroy(&attributes);
	return error;
}
