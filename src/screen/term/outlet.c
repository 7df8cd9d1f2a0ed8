/*
 * outlet.c - see outlet.h.
 */
#include "screen/term/outlet.h"

#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <unistd.h>

#include "kitchen/board/board.h"
#include "kitchen/board/clock.h"
#include "screen/term/wake.h"

#define NAME_BYTES 256
#define PIECE_BYTES 256 /* where the descriptor blocks: what a terminal with room takes (our guess) */

struct outlet {
	int terminal; /* the caller's */
	int memory;
	int out;     /* to the terminal */
	bool blocks; /* `out` does: no description of our own was to be had */
	FILE *file;
	char *waiting;
	size_t room;
	size_t begin; /* sent up to here */
	size_t end;
};

/* ---- Opening ---- */

/* A file without a name. */
static int open_memory(void)
{
	char name[64];

	(void)snprintf(name, sizeof(name), "/stillroom-screen-%ld", (long)getpid());
	int fd = shm_open(name, O_RDWR | O_CREAT | O_EXCL, 0600);
	if (fd >= 0) {
		(void)shm_unlink(name);
		return fd;
	}
	FILE *file = tmpfile();
	if (!file)
		return -1;
	fd = fcntl(fileno(file), F_DUPFD_CLOEXEC, 3);
	(void)fclose(file);
	return fd;
}

/* O_NONBLOCK belongs to the description, which the shell and our own input share: it is
 * set on one of our own. */
static bool open_out(struct outlet *outlet)
{
	char name[NAME_BYTES];

	outlet->out = -1;
	if (ttyname_r(outlet->terminal, name, sizeof(name)) == 0)
		outlet->out = open(name, O_WRONLY | O_NOCTTY | O_NONBLOCK | O_CLOEXEC);
	if (outlet->out < 0)
		outlet->out = open("/dev/tty", O_WRONLY | O_NOCTTY | O_NONBLOCK | O_CLOEXEC);
	if (outlet->out >= 0)
		return true;
	outlet->blocks = true;
	outlet->out = fcntl(outlet->terminal, F_DUPFD_CLOEXEC, 3);
	return outlet->out >= 0;
}

static bool open_file(struct outlet *outlet)
{
	int fd = fcntl(outlet->terminal, F_DUPFD_CLOEXEC, 3);

	outlet->file = fd < 0 ? NULL : fdopen(fd, "w");
	if (!outlet->file && fd >= 0)
		close(fd);
	return outlet->file != NULL;
}

bool outlet_open(int fd, struct outlet **out, struct fault *fault)
{
	struct outlet *outlet = calloc(1, sizeof(*outlet));

	if (!outlet)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory for the screen.");
	outlet->terminal = fd;
	outlet->out = -1;
	outlet->memory = open_memory();
	if (outlet->memory < 0 || !open_out(outlet) || !open_file(outlet)) {
		int error = errno;
		outlet_close(outlet);
		return fault_set(fault, FAULT_IO, "The screen cannot be set up: %s.", strerror(error));
	}
	*out = outlet;
	return true;
}

void outlet_close(struct outlet *outlet)
{
	if (!outlet)
		return;
	if (outlet->file)
		(void)fclose(outlet->file);
	if (outlet->out >= 0)
		close(outlet->out);
	if (outlet->memory >= 0)
		close(outlet->memory);
	free(outlet->waiting);
	free(outlet);
}

FILE *outlet_file(struct outlet *outlet)
{
	return outlet->file;
}

/* ---- Taking in ---- */

void outlet_catch(struct outlet *outlet)
{
	(void)dup2(outlet->memory, fileno(outlet->file));
}

/* Room for `more` bytes behind what waits. */
static bool make_room(struct outlet *outlet, size_t more)
{
	memmove(outlet->waiting, outlet->waiting + outlet->begin, outlet->end - outlet->begin);
	outlet->end -= outlet->begin;
	outlet->begin = 0;
	if (outlet->room - outlet->end >= more)
		return true;
	char *grown = realloc(outlet->waiting, outlet->end + more);
	if (!grown)
		return false;
	outlet->waiting = grown;
	outlet->room = outlet->end + more;
	return true;
}

void outlet_release(struct outlet *outlet)
{
	off_t bytes = lseek(outlet->memory, 0, SEEK_CUR);

	(void)dup2(outlet->terminal, fileno(outlet->file));
	(void)fcntl(fileno(outlet->file), F_SETFD, FD_CLOEXEC);
	if (bytes <= 0)
		return;
	/* without memory a part of a frame is missing: the next whole one mends it */
	if (outlet->waiting == NULL)
		outlet->waiting = malloc(1);
	if (outlet->waiting != NULL && make_room(outlet, (size_t)bytes)) {
		ssize_t got = pread(outlet->memory, outlet->waiting + outlet->end, (size_t)bytes, 0);
		outlet->end += got > 0 ? (size_t)got : 0;
	}
	(void)lseek(outlet->memory, 0, SEEK_SET); /* what stands behind that is written over */
}

/* ---- Sending ---- */

static bool has_room(const struct outlet *outlet)
{
	struct pollfd fd = { .fd = outlet->out, .events = POLLOUT };

	return !outlet->blocks || (poll(&fd, 1, 0) > 0 && (fd.revents & POLLOUT));
}

bool outlet_send(struct outlet *outlet)
{
	while (outlet_waits(outlet) && has_room(outlet)) {
		size_t bytes = outlet->end - outlet->begin;
		if (outlet->blocks && bytes > PIECE_BYTES)
			bytes = PIECE_BYTES;
		ssize_t sent = write(outlet->out, outlet->waiting + outlet->begin, bytes);
		if (sent > 0)
			outlet->begin += (size_t)sent;
		else if (sent < 0 && errno == EINTR)
			continue;
		else if (sent < 0 && (errno == EAGAIN || errno == EWOULDBLOCK))
			return false;
		else
			outlet->begin = outlet->end; /* nobody is there: its loss is noticed at the input */
	}
	return !outlet_waits(outlet);
}

void outlet_send_within(struct outlet *outlet, int ms)
{
	struct pollfd fd = { .fd = outlet->out, .events = POLLOUT };
	int64_t end = clock_awake_ms() + ms;

	while (!outlet_send(outlet)) {
		int64_t left = end - clock_awake_ms();
		if (left <= 0)
			return;
		(void)poll(&fd, 1, (int)left);
	}
}

int outlet_fd(const struct outlet *outlet)
{
	return outlet->out;
}

bool outlet_waits(const struct outlet *outlet)
{
	return outlet->begin < outlet->end;
}
