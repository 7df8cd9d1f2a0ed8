#include "report/out_commands.h"
bool export_command(const struct arguments *arguments, const char *log_path, struct fault *fault)
{ (void)arguments; (void)log_path; return fault_set(fault, FAULT_IO, "soon"); }
bool import_command(const struct arguments *arguments, const char *log_path, struct fault *fault)
{ (void)arguments; (void)log_path; return fault_set(fault, FAULT_IO, "soon"); }
