/*
 * out_file.h - a file that is there whole or not at all.
 *
 * Written under a temporary name beside its place and put there when it is complete;
 * what stood there before is replaced only when that was asked for.
 */
#ifndef STILLROOM_REPORT_OUT_OUT_FILE_H
#define STILLROOM_REPORT_OUT_OUT_FILE_H

#include <stdbool.h>
#include <stdio.h>

#include "base/fault.h"

#define OUT_PATH_BYTES 4096

struct out_file {
	FILE *stream;
	char path[OUT_PATH_BYTES];
	char temporary[OUT_PATH_BYTES + 16];
	bool replace;
};

/* FAULT_REFUSED: something has that name and `replace` is false.  FAULT_IO. */
bool out_open(struct out_file *out, const char *path, bool replace, struct fault *fault);
/* Put it in its place, on the disk.  After a fault nothing is left of it. */
bool out_close(struct out_file *out, struct fault *fault);
/* Forget it. */
void out_abandon(struct out_file *out);

/* FAULT_REFUSED: something has that name. */
bool out_is_free(const char *path, struct fault *fault);

/* Make a folder unless it is there.  FAULT_IO. */
bool out_folder(const char *path, struct fault *fault);

#endif
