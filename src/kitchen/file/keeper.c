#include "kitchen/file/keeper.h"

#include <assert.h>
#include <errno.h>
#include <fcntl.h>
#include <inttypes.h>
#include <poll.h>
#include <signal.h>
#include <spawn.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/time.h>
#include <sys/wait.h>
#include <unistd.h>
#ifdef __linux__
#include <sys/prctl.h>
#endif

#include "kitchen/file/apart.h"
#include "log/file/file.h"

extern char **environ;

#define NICE 10              /* our choice: the board comes first */
#define LOOK_EVERY_US 100000 /* how soon it notices that the board has gone */
#define NEWS_MARK 0x4b657072
#define WALL_CHARS 24

static const char *const job_words[] = { [KEEPER_CHECK] = "check", [KEEPER_BACKUP] = "backup" };
static_assert(sizeof(job_words) / sizeof(job_words[0]) == KEEPER_JOB_COUNT, "a word for every job");

/* Both ends are the same program: it needs no form. One write of it is whole (POSIX, write():
 * no more than PIPE_BUF bytes). */
struct news {
	uint32_t mark;
	enum keeper_job job;
	enum fault_kind kind;
	char sentence[FAULT_SENTENCE_MAX];
};
static_assert(sizeof(struct news) <= 512, "512 is the least that PIPE_BUF can be");

/* The command line: program, KEEPER_WORD, and these. */
enum { AT_WORD = 1, AT_JOB, AT_PATH, AT_WALL, WORD_COUNT };

/* --- starting ------------------------------------------------------------------------ */

void keeper_init(struct keeper *keeper)
{
	*keeper = (struct keeper){ .news = -1, .life = -1 };
}

static void close_end(int *fd)
{
	if (*fd >= 0)
		(void)close(*fd);
	*fd = -1;
}

/* Nobody else who is started meanwhile gets an end of it. */
static bool make_pipe(int ends[2])
{
	if (pipe(ends) != 0) {
		ends[0] = ends[1] = -1;
		return false;
	}
	return fcntl(ends[0], F_SETFD, FD_CLOEXEC) == 0 && fcntl(ends[1], F_SETFD, FD_CLOEXEC) == 0;
}

static int set_files(posix_spawn_file_actions_t *files, int life, int news)
{
	int error = posix_spawn_file_actions_adddup2(files, life, STDIN_FILENO);

	if (error == 0)
		error = posix_spawn_file_actions_adddup2(files, news, STDOUT_FILENO);
	return error != 0 ? error : posix_spawn_file_actions_addopen(files, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
}

/* 0 or an errno value.  In a group of its own: a key of the terminal ends the board, and the
 * board its keeper. */
static int spawn(char *const argv[], int life, int news, pid_t *pid)
{
	posix_spawn_file_actions_t files;
	int error = posix_spawn_file_actions_init(&files);

	if (error != 0)
		return error;
	error = set_files(&files, life, news);
	if (error == 0)
		error = start_apart(argv, environ, &files, pid);
	(void)posix_spawn_file_actions_destroy(&files);
	return error;
}

static void free_words(char *words[WORD_COUNT + 1])
{
	for (int i = 0; i < WORD_COUNT; i++)
		free(words[i]);
}

static bool copy_words(char *words[WORD_COUNT + 1], const char *program, enum keeper_job job, const char *path,
                       int64_t wall_ms)
{
	char wall[WALL_CHARS];
	const char *const from[WORD_COUNT] = { program, KEEPER_WORD, job_words[job], path, wall };
	bool whole = true;

	(void)snprintf(wall, sizeof(wall), "%" PRId64, wall_ms);
	for (int i = 0; i < WORD_COUNT; i++) {
		words[i] = strdup(from[i]);
		whole = whole && words[i] != NULL;
	}
	words[WORD_COUNT] = NULL;
	return whole;
}

static bool cannot_start(enum keeper_job job, int error, struct fault *fault)
{
	return fault_set(fault, error == ENOMEM ? FAULT_MEMORY : FAULT_IO, "The %s of the log cannot be started: %s.",
	                 job_words[job], strerror(error)); /* NOLINT(concurrency-mt-unsafe): one thread */
}

bool keeper_start(struct keeper *keeper, const char *program, enum keeper_job job, const char *path, int64_t wall_ms,
                  struct fault *fault)
{
	char *words[WORD_COUNT + 1];
	int life[2] = { -1, -1 };
	int news[2] = { -1, -1 };
	int error = 0;

	assert(keeper->pid == 0);
	keeper_init(keeper);
	if (!copy_words(words, program, job, path, wall_ms))
		error = ENOMEM;
	else if (!make_pipe(life) || !make_pipe(news) || fcntl(news[0], F_SETFL, O_NONBLOCK) != 0)
		error = errno;
	if (error == 0)
		error = spawn(words, life[0], news[1], &keeper->pid);
	free_words(words);
	close_end(&life[0]);
	close_end(&news[1]);
	if (error != 0) {
		keeper->pid = 0;
		close_end(&life[1]);
		close_end(&news[0]);
		return cannot_start(job, error, fault);
	}
	keeper->job = job;
	keeper->life = life[1];
	keeper->news = news[0];
	return true;
}

/* --- looking ------------------------------------------------------------------------- */

/* The exit status; -1: nobody can tell. */
static int collect(struct keeper *keeper)
{
	int status = -1;
	pid_t got;

	do
		got = waitpid(keeper->pid, &status, 0);
	while (got < 0 && errno == EINTR);
	close_end(&keeper->news);
	close_end(&keeper->life);
	keeper->pid = 0;
	return got > 0 ? status : -1;
}

static enum keeper_end died(const struct keeper *keeper, int status, struct fault *fault)
{
	const char *job = job_words[keeper->job];

	if (status != -1 && WIFSIGNALED(status))
		(void)fault_set(fault, FAULT_IO, "The %s of the log was stopped from outside (signal %d).", job,
		                WTERMSIG(status));
	else
		(void)fault_set(fault, FAULT_IO, "The %s of the log ended without an answer.", job);
	return KEEPER_DIED;
}

enum keeper_end keeper_look(struct keeper *keeper, struct fault *fault)
{
	struct news news = { 0 };
	ssize_t got;
	int status;

	do
		got = read(keeper->news, &news, sizeof(news));
	while (got < 0 && errno == EINTR);
	if (got < 0 && (errno == EAGAIN || errno == EWOULDBLOCK))
		return KEEPER_RUNS;
	status = collect(keeper);
	if (got != (ssize_t)sizeof(news) || news.mark != NEWS_MARK || news.job != keeper->job)
		return died(keeper, status, fault);
	news.sentence[sizeof(news.sentence) - 1] = '\0';
	*fault = (struct fault){ .kind = FAULT_NONE };
	if (news.kind != FAULT_NONE)
		(void)fault_set(fault, news.kind, "%s", news.sentence);
	return KEEPER_DONE;
}

void keeper_stop(struct keeper *keeper)
{
	if (keeper->pid == 0)
		return;
	(void)kill(keeper->pid, SIGKILL); /* it only reads the log; half a copy is cleared away later */
	(void)collect(keeper);
}

/* --- the keeper itself ------------------------------------------------------------------ */

static bool board_has_gone(void)
{
	struct pollfd life = { .fd = STDIN_FILENO, .events = POLLIN };

	return poll(&life, 1, 0) > 0 && (life.revents & (POLLHUP | POLLERR | POLLNVAL)) != 0;
}

/* Only what a handler may call. */
static void look_for_board(int signal)
{
	int error = errno;

	(void)signal;
	if (board_has_gone())
		_exit(EXIT_FAILURE);
	errno = error;
}

/* No keeper outlives its board: on Linux the system sees to it, elsewhere it looks. */
static void end_with_board(void)
{
	struct sigaction look = { .sa_handler = look_for_board, .sa_flags = SA_RESTART };
	struct itimerval every = { .it_interval = { .tv_usec = LOOK_EVERY_US },
		                   .it_value = { .tv_usec = LOOK_EVERY_US } };

#ifdef __linux__
	(void)prctl(PR_SET_PDEATHSIG, SIGKILL);
#endif
	(void)sigemptyset(&look.sa_mask);
	if (board_has_gone() || sigaction(SIGALRM, &look, NULL) != 0 || setitimer(ITIMER_REAL, &every, NULL) != 0)
		_exit(EXIT_FAILURE);
}

static bool do_job(enum keeper_job job, const char *path, int64_t wall_ms, struct fault *fault)
{
	struct log *log;
	bool done;

	if (!log_open(path, LOG_LOOK, &log, fault))
		return false;
	done = job == KEEPER_CHECK ? log_check(log, fault) : log_backup(log, wall_ms, NULL, fault);
	log_close(log);
	return done;
}

static bool job_named(const char *word, enum keeper_job *job)
{
	for (int i = 0; i < KEEPER_JOB_COUNT; i++) {
		if (strcmp(word, job_words[i]) != 0)
			continue;
		*job = (enum keeper_job)i;
		return true;
	}
	return false;
}

bool keeper_asked(int argc, char *const argv[])
{
	enum keeper_job job;

	return argc == WORD_COUNT && strcmp(argv[AT_WORD], KEEPER_WORD) == 0 && job_named(argv[AT_JOB], &job);
}

int keeper_main(char *const argv[])
{
	struct news news = { .mark = NEWS_MARK, .kind = FAULT_NONE };
	struct fault fault = { .kind = FAULT_NONE };

	if (!job_named(argv[AT_JOB], &news.job))
		return EXIT_FAILURE;
	end_with_board();
	errno = 0;
	if (nice(NICE) == -1 && errno != 0)
		errno = 0; /* then it goes as fast as the board */
	if (!do_job(news.job, argv[AT_PATH], strtoll(argv[AT_WALL], NULL, 10), &fault)) {
		news.kind = fault.kind;
		(void)snprintf(news.sentence, sizeof(news.sentence), "%s", fault.sentence);
	}
	return write(STDOUT_FILENO, &news, sizeof(news)) == (ssize_t)sizeof(news) ? EXIT_SUCCESS : EXIT_FAILURE;
}
