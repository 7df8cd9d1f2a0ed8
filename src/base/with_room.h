/*
 * with_room.h - an array that grows by doubling.
 */
#ifndef STILLROOM_BASE_WITH_ROOM_H
#define STILLROOM_BASE_WITH_ROOM_H

#include <stddef.h>

#include "base/fault.h"

/* Room for one more row of `size` bytes after `count`, in an array of `*room` rows (0 and NULL at
 * first): its new place, the caller's to free().  NULL with FAULT_MEMORY ("... for the labels");
 * the old one is still good then. */
void *with_room(void *rows, size_t count, size_t *room, size_t size, const char *what, struct fault *fault);

#endif
