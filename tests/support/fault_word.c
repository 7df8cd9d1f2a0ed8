#include "support/fault_word.h"

const char *fault_word(enum fault_kind kind)
{
	switch (kind) {
	case FAULT_NONE: return "none";
	case FAULT_MISUSE: return "misuse";
	case FAULT_REFUSED: return "refused";
	case FAULT_STOPPED: return "stopped";
	case FAULT_CONFIRM: return "confirm";
	case FAULT_STALE: return "stale";
	case FAULT_NOT_OURS: return "not_ours";
	case FAULT_NEWER: return "newer";
	case FAULT_OLDER: return "older";
	case FAULT_READ_ONLY: return "read_only";
	case FAULT_DISK_FULL: return "disk_full";
	case FAULT_DAMAGED: return "damaged";
	case FAULT_BUSY: return "busy";
	case FAULT_MISSING: return "missing";
	case FAULT_CONFLICT: return "conflict";
	case FAULT_IO: return "io";
	case FAULT_UNSAFE: return "unsafe";
	case FAULT_MEMORY: return "memory";
	}
	return "?";
}
