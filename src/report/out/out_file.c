#include "report/out/out_file.h"

#include "kitchen/board/board.h"
#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static bool io_fault(const char *path, const char *what, struct fault *fault)
{
	/* NOLINTNEXTLINE(concurrency-mt-unsafe): one thread */
	return fault_set(fault, FAULT_IO, "%s cannot be %s: %s", path, what, strerror(errno));
}

static bool is_there(const char *path)
{
	struct stat status;

	return lstat(path, &status) == 0;
}

static bool taken(const char *path, struct fault *fault)
{
	return fault_set(fault, FAULT_REFUSED, "%s already exists and was not changed; --yes replaces it", path);
}

bool out_is_free(const char *path, struct fault *fault)
{
	return !is_there(path) || taken(path, fault);
}

/* mkstemp makes files for their owner alone; these are for everybody the umask lets. */
static mode_t usual_mode(void)
{
	mode_t mask = umask(0);

	(void)umask(mask);
	return 0666 & ~mask;
}

bool out_open(struct out_file *out, const char *path, bool replace, struct fault *fault)
{
	int fd;
	int length;

	*out = (struct out_file){ .replace = replace };
	if ((size_t)snprintf(out->path, sizeof(out->path), "%s", path) >= sizeof(out->path))
		return fault_set(fault, FAULT_IO, "the path of the file is too long");
	if (!replace && !out_is_free(path, fault))
		return false;
	length = snprintf(out->temporary, sizeof(out->temporary), "%s.XXXXXX", path);
	if (length < 0 || (size_t)length >= sizeof(out->temporary))
		return fault_set(fault, FAULT_IO, "the path of the file is too long");
	fd = mkstemp(out->temporary);
	if (fd < 0)
		return io_fault(path, "made", fault);
	(void)fchmod(fd, usual_mode());
	out->stream = fdopen(fd, "we");
	if (out->stream != NULL)
		return true;
	(void)io_fault(path, "made", fault);
	(void)close(fd);
	(void)unlink(out->temporary);
	return false;
}

/* link() never replaces; where a file system knows no second names, rename() must do. */
static bool put_in_place(const struct out_file *out, struct fault *fault)
{
	if (!out->replace) {
		if (link(out->temporary, out->path) == 0) {
			(void)unlink(out->temporary);
			return true;
		}
		if (errno == EEXIST || is_there(out->path))
			return taken(out->path, fault);
	}
	return rename(out->temporary, out->path) == 0 || io_fault(out->path, "put in place", fault);
}

bool out_close(struct out_file *out, struct fault *fault)
{
	bool whole;
	int error;

	errno = 0;
	whole = fflush(out->stream) == 0 && ferror(out->stream) == 0 && fsync(fileno(out->stream)) == 0;
	error = errno;
	if (fclose(out->stream) != 0 && whole) {
		error = errno;
		whole = false;
	}
	out->stream = NULL;
	errno = error != 0 ? error : EIO;
	if (!whole)
		(void)io_fault(out->path, "written in full", fault);
	if (whole && put_in_place(out, fault))
		return true;
	(void)unlink(out->temporary);
	return false;
}

void out_abandon(struct out_file *out)
{
	if (out->stream == NULL)
		return;
	(void)fclose(out->stream);
	(void)unlink(out->temporary);
	out->stream = NULL;
}

bool out_folder(const char *path, struct fault *fault)
{
	struct stat status;

	if (mkdir(path, 0777) == 0)
		return true;
	if (errno == EEXIST && stat(path, &status) == 0 && S_ISDIR(status.st_mode))
		return true;
	return io_fault(path, "made a folder", fault);
}
