#include "kitchen/file/upkeep.h"

#include <poll.h>
#include <stdlib.h>

#include "kitchen/board/board_private.h"
#include "kitchen/board/clock.h"
#include "kitchen/file/backups.h"
#include "kitchen/file/keeper.h"
#include "log/file/file.h"

#define FELT_MS 400 /* our choice: a wait that a person asks about */

struct upkeep {
	struct kitchen *kitchen;
	const char *program;
	struct keeper keeper;
	int64_t check_at_ms; /* not before */
	int64_t began_ms;    /* the job that runs */
	int64_t limit_ms;
	uint64_t reads; /* the board when its copy was begun */
};

bool upkeep_open(struct kitchen *kitchen, const char *program, struct upkeep **out, struct fault *fault)
{
	struct upkeep *upkeep = calloc(1, sizeof(*upkeep));

	*out = upkeep;
	if (upkeep == NULL)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory to look after the log.");
	upkeep->kitchen = kitchen;
	upkeep->program = program;
	upkeep->limit_ms = UPKEEP_LIMIT_MS;
	keeper_init(&upkeep->keeper);
	return true;
}

/* What a keeper leaves that was ended in the middle. */
static void stop(struct upkeep *upkeep)
{
	if (!upkeep_runs(upkeep))
		return;
	keeper_stop(&upkeep->keeper);
	log_clear_parts(upkeep->kitchen->log);
}

void upkeep_close(struct upkeep *upkeep)
{
	if (upkeep == NULL)
		return;
	stop(upkeep);
	free(upkeep);
}

bool upkeep_runs(const struct upkeep *upkeep)
{
	return upkeep->keeper.pid != 0;
}

pid_t upkeep_pid(const struct upkeep *upkeep)
{
	return upkeep->keeper.pid;
}

int upkeep_fd(const struct upkeep *upkeep)
{
	return upkeep->keeper.news;
}

/* --- how it went ------------------------------------------------------------------------ */

static bool check_ended(struct upkeep *upkeep, int64_t awake_ms, struct fault *fault)
{
	struct fault why = *fault;

	if (why.kind == FAULT_NONE && log_checked(upkeep->kitchen->log, NULL, &why))
		return true;
	if (why.kind == FAULT_DAMAGED) {
		(void)log_checked(upkeep->kitchen->log, why.sentence, NULL);
		*fault = why;
		return false;
	}
	upkeep->check_at_ms = awake_ms + UPKEEP_RETRY_MS;
	return fault_set(fault, why.kind, "%s Actions are still recorded, and the log is checked again in 10 min.",
	                 why.sentence);
}

static bool job_ended(struct upkeep *upkeep, int64_t awake_ms, struct fault *fault)
{
	if (upkeep->keeper.job == KEEPER_CHECK)
		return check_ended(upkeep, awake_ms, fault);
	log_backed_up_elsewhere(upkeep->kitchen->log);
	kitchen_backup_ended(upkeep->kitchen, awake_ms, fault->kind == FAULT_NONE, upkeep->reads);
	return fault->kind == FAULT_NONE;
}

static bool takes_too_long(struct upkeep *upkeep, struct fault *fault)
{
	int64_t minutes = upkeep->limit_ms / 60000;
	bool check = upkeep->keeper.job == KEEPER_CHECK;

	stop(upkeep);
	upkeep->limit_ms *= 2;
	return fault_set(fault, FAULT_IO, "The %s of the log did not finish in %lld min. Check its disk.",
	                 check ? "check" : "backup", (long long)minutes);
}

bool upkeep_look(struct upkeep *upkeep, int64_t awake_ms, struct fault *fault)
{
	struct fault why = { .kind = FAULT_NONE };

	if (!upkeep_runs(upkeep))
		return true;
	switch (keeper_look(&upkeep->keeper, &why)) {
	case KEEPER_RUNS:
		if (awake_ms - upkeep->began_ms < upkeep->limit_ms)
			return true;
		(void)takes_too_long(upkeep, &why);
		break;
	case KEEPER_DIED: log_clear_parts(upkeep->kitchen->log); break;
	case KEEPER_DONE: break;
	}
	if (job_ended(upkeep, awake_ms, &why))
		return true;
	*fault = why;
	return false;
}

/* --- starting --------------------------------------------------------------------------- */

static bool start_job(struct upkeep *upkeep, enum keeper_job job, int64_t awake_ms, struct fault *fault)
{
	struct kitchen *kitchen = upkeep->kitchen;
	struct fault why = { .kind = FAULT_NONE };

	upkeep->began_ms = awake_ms;
	upkeep->reads = kitchen->reads;
	if (job == KEEPER_BACKUP)
		kitchen_backup_begun(kitchen);
	if (keeper_start(&upkeep->keeper, upkeep->program, job, log_path(kitchen->log), kitchen_now(kitchen).wall_ms,
	                 &why))
		return true;
	upkeep->keeper.job = job;
	(void)job_ended(upkeep, awake_ms, &why);
	*fault = why;
	return false;
}

bool upkeep_start(struct upkeep *upkeep, int64_t awake_ms, struct fault *fault)
{
	const struct log *log = upkeep->kitchen->log;

	if (upkeep_runs(upkeep) || log_is_damaged(log))
		return true;
	if (log_is_unchecked(log) && awake_ms >= upkeep->check_at_ms)
		return start_job(upkeep, KEEPER_CHECK, awake_ms, fault);
	if (kitchen_backup_due(upkeep->kitchen, awake_ms))
		return start_job(upkeep, KEEPER_BACKUP, awake_ms, fault);
	return true;
}

/* --- leaving ---------------------------------------------------------------------------- */

/* Until the job that runs has ended. */
static bool wait_out(struct upkeep *upkeep, void (*tell)(const char *), struct fault *fault)
{
	int wait_ms = FELT_MS;
	bool well = true;

	upkeep->began_ms = clock_awake_ms();
	while (upkeep_runs(upkeep)) {
		struct pollfd news = { .fd = upkeep_fd(upkeep), .events = POLLIN };

		if (poll(&news, 1, wait_ms) == 0 && wait_ms == FELT_MS) {
			tell(upkeep->keeper.job == KEEPER_CHECK ? "The log is being checked before it is closed ..."
			                                        : "A backup of the log is being made ...");
			wait_ms = 10 * FELT_MS;
		}
		well = upkeep_look(upkeep, clock_awake_ms(), fault);
	}
	return well;
}

/* In a keeper, so that it can be said what is waited for; in this process where there can
 * be none. */
static bool finish_check(struct upkeep *upkeep, void (*tell)(const char *), struct fault *fault)
{
	struct log *log = upkeep->kitchen->log;

	if (!log_is_unchecked(log) || !log_has_wal(log))
		return true;
	if (start_job(upkeep, KEEPER_CHECK, clock_awake_ms(), fault) && wait_out(upkeep, tell, fault))
		return true;
	if (log_is_damaged(log))
		return false;
	*fault = (struct fault){ .kind = FAULT_NONE };
	(void)log_check(log, fault);
	return check_ended(upkeep, clock_awake_ms(), fault);
}

static bool finish_backup(struct upkeep *upkeep, void (*tell)(const char *), struct fault *fault)
{
	struct kitchen *kitchen = upkeep->kitchen;

	if (log_is_backed_up(kitchen->log))
		return true;
	if (start_job(upkeep, KEEPER_BACKUP, clock_awake_ms(), fault) && wait_out(upkeep, tell, fault))
		return true;
	*fault = (struct fault){ .kind = FAULT_NONE };
	return kitchen_backup(kitchen, clock_awake_ms(), fault);
}

bool upkeep_finish(struct upkeep *upkeep, void (*tell)(const char *sentence), struct fault *fault)
{
	struct fault ignored = { .kind = FAULT_NONE };
	struct log *log = upkeep->kitchen->log;

	if (upkeep->keeper.job == KEEPER_CHECK && !log_has_wal(log))
		stop(upkeep);                   /* nothing is moved into the file: the next opening checks it */
	(void)wait_out(upkeep, tell, &ignored); /* what failed is tried once more */
	if (log_is_damaged(log))
		return log_is_safe(log, fault); /* it is not, and says why */
	return finish_check(upkeep, tell, fault) && finish_backup(upkeep, tell, fault);
}
