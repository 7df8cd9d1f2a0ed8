/*
 * paths.c - names of files and folders.
 */
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "log/disk/log_private.h"

char *folder_of(const char *path)
{
	const char *slash = strrchr(path, '/');
	if (slash == NULL)
		return strdup(".");
	return strndup(path, slash == path ? 1 : (size_t)(slash - path));
}

bool folder_sync(const char *path_inside, struct fault *fault)
{
	char *folder = folder_of(path_inside);
	if (folder == NULL)
		return system_fault(path_inside, "find its folder", ENOMEM, fault);
	int fd = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
	/* some file systems cannot sync a folder: nothing better can be done there */
	bool ok = fd >= 0 && (fsync(fd) == 0 || errno == EINVAL);
	if (!ok)
		(void)system_fault(folder, "write the folder to the disk", errno, fault);
	if (fd >= 0)
		(void)close(fd);
	free(folder);
	return ok;
}

char *joined(const char *first, const char *second, const char *third)
{
	size_t size = strlen(first) + strlen(second) + strlen(third) + 1;
	char *whole = malloc(size);
	if (whole != NULL)
		(void)snprintf(whole, size, "%s%s%s", first, second, third);
	return whole;
}
