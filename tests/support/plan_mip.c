#include "support/plan_mip.h"

#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

/* Stations that are alike in all that matters. */
struct class
{
	enum plan_station_kind kind;
	bool on_burner;
	int like; /* a station of the class */
	int count;
};

#define ROW_TERMS_MAX 2000

/* factor times the variable name_first_second_t. */
struct term {
	int factor;
	char name;
	int first;
	int second;
	int t;
};

struct mip {
	FILE *out;
	const struct plan_input *in;
	int slot_s;
	int slots;
	int class_count;
	struct class classes[PLAN_STATIONS_MAX];
	int term_count; /* of the row being written */
	struct term terms[ROW_TERMS_MAX];
};

/* The spans of a piece of work in slots, with what they need. */
struct piece {
	int count;
	int length[5];
	int people[5];
	bool heat[5];
	bool filler[5];
	bool watched[5];
	bool last_waits;
};

static int slots_of(const struct mip *mip, int seconds)
{
	return seconds / mip->slot_s;
}

static void add_span(const struct mip *mip, struct piece *piece, const struct plan_span *span, const char *needs)
{
	int i = piece->count++;

	piece->length[i] = slots_of(mip, span->length_s);
	piece->people[i] = span->people;
	piece->heat[i] = strchr(needs, 'h') != NULL;
	piece->filler[i] = strchr(needs, 'f') != NULL;
	piece->watched[i] = strchr(needs, 'w') != NULL || span->people > 0;
}

static struct piece run_piece(const struct mip *mip, const struct plan_run *run)
{
	struct piece piece = { .last_waits = true };

	add_span(mip, &piece, &run->set_up, "h");
	add_span(mip, &piece, &run->run, "h");
	add_span(mip, &piece, &run->drain, "");
	return piece;
}

static struct piece batch_piece(const struct mip *mip, const struct plan_batch *batch)
{
	struct piece piece = { 0 };

	add_span(mip, &piece, &batch->to_boil, "hw");
	add_span(mip, &piece, &batch->boil, "hw");
	add_span(mip, &piece, &batch->off, "w");
	add_span(mip, &piece, &batch->fill, "fw");
	add_span(mip, &piece, &batch->rinse, "w");
	return piece;
}

static struct piece load_piece(const struct mip *mip, const struct plan_process *process)
{
	struct piece piece = { .last_waits = true };

	add_span(mip, &piece, &process->load, "hw");
	add_span(mip, &piece, &process->come_up, "hw");
	add_span(mip, &piece, &process->hold, "h");
	add_span(mip, &piece, &process->rest, "");
	add_span(mip, &piece, &process->unload, "");
	return piece;
}

static int rigid_spans(const struct piece *piece)
{
	return piece->last_waits ? piece->count - 1 : piece->count;
}

static int rigid_slots(const struct piece *piece)
{
	int sum = 0;

	for (int i = 0; i < rigid_spans(piece); i++)
		sum += piece->length[i];
	return sum;
}

/* --- which starts a break allows ------------------------------------------------------------ */

static bool overlaps_break(const struct mip *mip, int start, int length)
{
	for (int i = 0; i < mip->in->break_count; i++)
		if (length > 0 && start < slots_of(mip, mip->in->breaks[i].end_s) &&
		    start + length > slots_of(mip, mip->in->breaks[i].start_s))
			return true;
	return false;
}

static bool may_start(const struct mip *mip, const struct piece *piece, int start)
{
	int at = start;

	for (int i = 0; i < rigid_spans(piece); i++) {
		if (piece->watched[i] && overlaps_break(mip, at, piece->length[i]))
			return false;
		at += piece->length[i];
	}
	return start >= slots_of(mip, mip->in->start_s) && at <= mip->slots;
}

static bool may_end(const struct mip *mip, const struct piece *piece, int start)
{
	int last = piece->count - 1;

	if (piece->people[last] > 0 && overlaps_break(mip, start, piece->length[last]))
		return false;
	return start + piece->length[last] <= mip->slots;
}

/* --- terms and rows ---------------------------------------------------------------------------------- */

/* Every variable counts what has begun up to and including a slot, and so never falls:
 *   p_b_c_t  batch b in a pot of class c (0 or 1)     r_r_c_t, d_r_c_t  run r, its drain
 *   l_c_f_t  loads of family f in class c             u_c_f_t  their unloadings
 *   n_b_c_t  jars of batch b in loads of class c
 *   y_0_0_t  is 1 when something ends at slot t or later */

/* Like terms are one: readers refuse a variable that comes twice in a row. */
static void term(struct mip *mip, int factor, char name, int first, int second, int t)
{
	struct term new = { factor, name, first, second, t > mip->slots ? mip->slots : t };

	if (t < 0 || factor == 0)
		return;
	for (int i = 0; i < mip->term_count; i++) {
		struct term *old = &mip->terms[i];

		if (old->name == name && old->first == first && old->second == second && old->t == new.t) {
			old->factor += factor;
			return;
		}
	}
	if (mip->term_count == ROW_TERMS_MAX)
		abort();
	mip->terms[mip->term_count++] = new;
}

/* What begins in the slots after `t - length` up to `t`. */
static void began(struct mip *mip, int factor, char name, int first, int second, int t, int length)
{
	term(mip, factor, name, first, second, t);
	term(mip, -factor, name, first, second, t - length);
}

static void ends_at(struct mip *mip, int factor, int t)
{
	term(mip, factor, 'y', 0, 0, t);
}

static void write_terms(struct mip *mip)
{
	for (int i = 0; i < mip->term_count; i++) {
		const struct term *of = &mip->terms[i];

		if (of->factor != 0)
			(void)fprintf(mip->out, " %+d %c_%d_%d_%d\n", of->factor, of->name, of->first, of->second,
			              of->t);
	}
	mip->term_count = 0;
}

/* A row without terms is none. */
static void end_row(struct mip *mip, const char *relation, int right)
{
	bool any = false;

	for (int i = 0; i < mip->term_count; i++)
		any |= mip->terms[i].factor != 0;
	write_terms(mip);
	if (any)
		(void)fprintf(mip->out, " %s %d\n", relation, right);
}

static bool is_kind(const struct mip *mip, int c, enum plan_station_kind kind)
{
	return mip->classes[c].kind == kind;
}

static const struct plan_process *process_in(const struct mip *mip, int c, int family)
{
	return &mip->in->families[family].at[mip->classes[c].like];
}

static int room_in(const struct mip *mip, int c, int family)
{
	if (!is_kind(mip, c, PLAN_CANNER) || !process_in(mip, c, family)->possible)
		return 0;
	return mip->in->stations[mip->classes[c].like].jars[mip->in->families[family].jar];
}

/* A count never falls, and rises only where a start is allowed. */
static void write_count(struct mip *mip, char name, int first, int second, const struct piece *piece, int ready)
{
	bool last = name == 'd' || name == 'u';

	for (int t = 0; t <= mip->slots; t++) {
		bool may = last ? may_end(mip, piece, t) : may_start(mip, piece, t);

		began(mip, 1, name, first, second, t, 1);
		end_row(mip, may && t >= ready ? ">=" : "=", 0);
	}
}

/* --- rules 1 to 5 -------------------------------------------------------------------------------------- */

static void write_run(struct mip *mip, int r)
{
	struct piece piece = run_piece(mip, &mip->in->runs[r]);

	for (int c = 0; c < mip->class_count; c++) {
		if (!is_kind(mip, c, PLAN_JUICER))
			continue;
		write_count(mip, 'r', r, c, &piece, slots_of(mip, mip->in->runs[r].ready_s));
		write_count(mip, 'd', r, c, &piece, 0);
		for (int t = 0; t <= mip->slots; t++) { /* no drain before the run is over */
			term(mip, 1, 'd', r, c, t);
			term(mip, -1, 'r', r, c, t - rigid_slots(&piece));
			end_row(mip, "<=", 0);
		}
	}
	for (int c = 0; c < mip->class_count; c++)
		if (is_kind(mip, c, PLAN_JUICER))
			term(mip, 1, 'd', r, c, mip->slots);
	end_row(mip, "=", 1);
}

static void jars_loaded(struct mip *mip, int b, int t)
{
	for (int c = 0; c < mip->class_count; c++)
		if (room_in(mip, c, mip->in->batches[b].family) > 0)
			term(mip, 1, 'n', b, c, t);
}

static void in_pots(struct mip *mip, int factor, int b, int t)
{
	for (int c = 0; c < mip->class_count; c++)
		if (is_kind(mip, c, PLAN_POT))
			term(mip, factor, 'p', b, c, t);
}

static void write_juice_first(struct mip *mip, int b)
{
	const struct plan_batch *batch = &mip->in->batches[b];

	for (int r = batch->first_run; r < batch->first_run + batch->run_count; r++) {
		int drain = slots_of(mip, mip->in->runs[r].drain.length_s);

		for (int t = 0; t <= mip->slots; t++) {
			in_pots(mip, 1, b, t);
			for (int c = 0; c < mip->class_count; c++)
				if (is_kind(mip, c, PLAN_JUICER))
					term(mip, -1, 'd', r, c, t - drain);
			end_row(mip, "<=", 0);
		}
	}
}

static void write_batch(struct mip *mip, int b)
{
	const struct plan_batch *batch = &mip->in->batches[b];
	struct piece piece = batch_piece(mip, batch);
	int filled = rigid_slots(&piece) - piece.length[4];

	for (int c = 0; c < mip->class_count; c++) {
		if (is_kind(mip, c, PLAN_POT))
			write_count(mip, 'p', b, c, &piece, slots_of(mip, batch->ready_s));
		if (room_in(mip, c, batch->family) > 0) {
			struct piece load = load_piece(mip, process_in(mip, c, batch->family));

			write_count(mip, 'n', b, c, &load, 0);
		}
	}
	in_pots(mip, 1, b, mip->slots);
	end_row(mip, "=", 1);
	jars_loaded(mip, b, mip->slots);
	end_row(mip, "=", batch->jars);
	for (int t = 0; t <= mip->slots; t++) {
		jars_loaded(mip, b, t); /* none before it is filled */
		in_pots(mip, -batch->jars, b, t - filled);
		end_row(mip, "<=", 0);
		if (batch->wait_limit_s == PLAN_NO_LIMIT)
			continue;
		jars_loaded(mip, b, t); /* all when the limit is over */
		in_pots(mip, -batch->jars, b, t - filled - slots_of(mip, batch->wait_limit_s));
		end_row(mip, ">=", 0);
	}
	write_juice_first(mip, b);
}

static void write_loads(struct mip *mip, int c, int f)
{
	struct piece piece = load_piece(mip, process_in(mip, c, f));

	write_count(mip, 'l', c, f, &piece, 0);
	write_count(mip, 'u', c, f, &piece, 0);
	term(mip, 1, 'l', c, f, mip->slots);
	term(mip, -1, 'u', c, f, mip->slots);
	end_row(mip, "=", 0);
	for (int t = 0; t <= mip->slots; t++) {
		term(mip, 1, 'u', c, f, t); /* no unloading before the rest is over */
		term(mip, -1, 'l', c, f, t - rigid_slots(&piece));
		end_row(mip, "<=", 0);
		for (int b = 0; b < mip->in->batch_count; b++) /* the jars fit */
			if (mip->in->batches[b].family == f)
				began(mip, 1, 'n', b, c, t, 1);
		began(mip, -room_in(mip, c, f), 'l', c, f, t, 1);
		end_row(mip, "<=", 0);
	}
}

/* Rule 5: what has begun and not ended is no more than there are stations. */
static void write_class_use(struct mip *mip, int c, int t)
{
	const struct plan_input *in = mip->in;

	for (int r = 0; is_kind(mip, c, PLAN_JUICER) && r < in->run_count; r++) {
		term(mip, 1, 'r', r, c, t);
		term(mip, -1, 'd', r, c, t - slots_of(mip, in->runs[r].drain.length_s));
	}
	for (int b = 0; is_kind(mip, c, PLAN_POT) && b < in->batch_count; b++) {
		struct piece piece = batch_piece(mip, &in->batches[b]);

		began(mip, 1, 'p', b, c, t, rigid_slots(&piece));
	}
	for (int f = 0; f < in->family_count; f++) {
		if (room_in(mip, c, f) == 0)
			continue;
		term(mip, 1, 'l', c, f, t);
		term(mip, -1, 'u', c, f, t - slots_of(mip, process_in(mip, c, f)->unload.length_s));
	}
	end_row(mip, "<=", mip->classes[c].count);
}

/* --- rules 6 to 8 ---------------------------------------------------------------------------------------- */

enum shared { PEOPLE, BURNERS, FILLERS };

static int need_of(const struct piece *piece, int span, enum shared what)
{
	switch (what) {
	case PEOPLE: return piece->people[span];
	case BURNERS: return piece->heat[span];
	case FILLERS: return piece->filler[span];
	}
	return 0;
}

/* What a piece of work takes in slot t; `last` is the name of its last span, if that
 * may come later. */
static void takes(struct mip *mip, const struct piece *piece, char name, char last, int first, int second, int t,
                  enum shared what)
{
	int offset = 0;

	for (int i = 0; i < rigid_spans(piece); i++) {
		began(mip, need_of(piece, i, what), name, first, second, t - offset, piece->length[i]);
		offset += piece->length[i];
	}
	if (piece->last_waits)
		began(mip, need_of(piece, piece->count - 1, what), last, first, second, t,
		      piece->length[piece->count - 1]);
}

static void class_takes(struct mip *mip, int c, int t, enum shared what)
{
	const struct plan_input *in = mip->in;
	struct piece piece;

	for (int b = 0; is_kind(mip, c, PLAN_POT) && b < in->batch_count; b++) {
		piece = batch_piece(mip, &in->batches[b]);
		takes(mip, &piece, 'p', 'p', b, c, t, what);
	}
	for (int r = 0; is_kind(mip, c, PLAN_JUICER) && r < in->run_count; r++) {
		piece = run_piece(mip, &in->runs[r]);
		takes(mip, &piece, 'r', 'd', r, c, t, what);
	}
	for (int f = 0; f < in->family_count; f++) {
		if (room_in(mip, c, f) == 0)
			continue;
		piece = load_piece(mip, process_in(mip, c, f));
		takes(mip, &piece, 'l', 'u', c, f, t, what);
	}
}

static void write_shared(struct mip *mip, int t, enum shared what, int there)
{
	for (int c = 0; c < mip->class_count; c++)
		if (what != BURNERS || mip->classes[c].on_burner)
			class_takes(mip, c, t, what);
	end_row(mip, "<=", there);
}

/* --- the end --------------------------------------------------------------------------------------------- */

/* What begins so late that it ends at slot t or later makes y_0_0_t 1. */
static void write_end(struct mip *mip, int t)
{
	const struct plan_input *in = mip->in;

	for (int b = 0; b < in->batch_count; b++) {
		struct piece piece = batch_piece(mip, &in->batches[b]);

		in_pots(mip, 1, b, mip->slots);
		in_pots(mip, -1, b, t - rigid_slots(&piece) - 1);
		ends_at(mip, -1, t);
		end_row(mip, "<=", 0);
	}
	for (int c = 0; c < mip->class_count; c++) {
		for (int r = 0; is_kind(mip, c, PLAN_JUICER) && r < in->run_count; r++) {
			int drain = slots_of(mip, in->runs[r].drain.length_s);

			term(mip, 1, 'd', r, c, mip->slots);
			term(mip, -1, 'd', r, c, t - drain - 1);
			ends_at(mip, -1, t);
			end_row(mip, "<=", 0);
		}
		for (int f = 0; f < in->family_count; f++) {
			if (room_in(mip, c, f) == 0)
				continue;
			began(mip, 1, 'u', c, f, t - slots_of(mip, process_in(mip, c, f)->unload.length_s), 1);
			ends_at(mip, -mip->classes[c].count, t);
			end_row(mip, "<=", 0);
		}
	}
}

/* The same of the jars of each batch: implied, and a help to the solver. */
static void write_jars_end(struct mip *mip, int b, int t)
{
	int family = mip->in->batches[b].family;

	for (int c = 0; c < mip->class_count; c++) {
		struct piece piece;

		if (room_in(mip, c, family) == 0)
			continue;
		piece = load_piece(mip, process_in(mip, c, family));
		term(mip, 1, 'n', b, c, mip->slots);
		term(mip, -1, 'n', b, c, t - rigid_slots(&piece) - piece.length[4] - 1);
	}
	ends_at(mip, -mip->in->batches[b].jars, t);
	end_row(mip, "<=", 0);
}

static void write_ends(struct mip *mip)
{
	for (int t = 1; t <= mip->slots; t++) {
		if (t < mip->slots) {
			ends_at(mip, 1, t);
			ends_at(mip, -1, t + 1);
			end_row(mip, ">=", 0);
		}
		write_end(mip, t);
		for (int b = 0; b < mip->in->batch_count; b++)
			write_jars_end(mip, b, t);
	}
}

/* --- the file -------------------------------------------------------------------------------------------- */

static bool alike(const struct plan_input *in, int a, int b)
{
	for (int f = 0; f < in->family_count; f++)
		/* NOLINTNEXTLINE(bugprone-suspicious-memory-comparison,cert-exp42-c,cert-flp37-c): zeroed before */
		if (memcmp(&in->families[f].at[a], &in->families[f].at[b], sizeof(in->families[f].at[a])) != 0)
			return false;
	return in->stations[a].kind == in->stations[b].kind && in->stations[a].on_burner == in->stations[b].on_burner &&
	       memcmp(in->stations[a].jars, in->stations[b].jars, sizeof(in->stations[a].jars)) == 0;
}

static void make_classes(struct mip *mip)
{
	for (int i = 0; i < mip->in->station_count; i++) {
		int c = 0;

		while (c < mip->class_count && !alike(mip->in, i, mip->classes[c].like))
			c++;
		if (c == mip->class_count) {
			mip->classes[c] = (struct class){ .kind = mip->in->stations[i].kind,
				                          .on_burner = mip->in->stations[i].on_burner,
				                          .like = i };
			mip->class_count++;
		}
		mip->classes[c].count++;
	}
}

static void name_all(struct mip *mip, char name, int first, int second)
{
	for (int t = 0; t <= mip->slots; t++)
		(void)fprintf(mip->out, " %c_%d_%d_%d\n", name, first, second, t);
}

/* Only whole ones; jars need not be asked for it, because loads are whole. */
static void write_kinds(struct mip *mip)
{
	const struct plan_input *in = mip->in;

	(void)fprintf(mip->out, "Generals\n");
	for (int c = 0; c < mip->class_count; c++) {
		for (int f = 0; f < in->family_count; f++) {
			if (room_in(mip, c, f) == 0)
				continue;
			name_all(mip, 'l', c, f);
			name_all(mip, 'u', c, f);
		}
	}
	(void)fprintf(mip->out, "Binaries\n");
	for (int c = 0; c < mip->class_count; c++) {
		for (int b = 0; is_kind(mip, c, PLAN_POT) && b < in->batch_count; b++)
			name_all(mip, 'p', b, c);
		for (int r = 0; is_kind(mip, c, PLAN_JUICER) && r < in->run_count; r++) {
			name_all(mip, 'r', r, c);
			name_all(mip, 'd', r, c);
		}
	}
	for (int t = 1; t <= mip->slots; t++)
		(void)fprintf(mip->out, " y_0_0_%d\n", t);
	(void)fprintf(mip->out, "End\n");
}

void plan_mip_write(FILE *out, const struct plan_input *in, int slot_s, int slots)
{
	struct mip mip = { .out = out, .in = in, .slot_s = slot_s, .slots = slots };

	make_classes(&mip);
	(void)fprintf(out, "Minimize\n obj:\n");
	for (int t = 1; t <= slots; t++)
		ends_at(&mip, 1, t);
	write_terms(&mip);
	(void)fprintf(out, "Subject To\n");
	for (int r = 0; r < in->run_count; r++)
		write_run(&mip, r);
	for (int b = 0; b < in->batch_count; b++)
		write_batch(&mip, b);
	for (int c = 0; c < mip.class_count; c++)
		for (int f = 0; f < in->family_count; f++)
			if (room_in(&mip, c, f) > 0)
				write_loads(&mip, c, f);
	for (int t = 0; t < slots; t++) {
		for (int c = 0; c < mip.class_count; c++)
			write_class_use(&mip, c, t);
		write_shared(&mip, t, PEOPLE, in->people_count);
		write_shared(&mip, t, BURNERS, in->burners);
		if (in->fillers > 0)
			write_shared(&mip, t, FILLERS, in->fillers);
	}
	write_ends(&mip);
	write_kinds(&mip);
}
