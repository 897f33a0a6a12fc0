// From the root of the checkout: the plan for the walnut clock case, from C. Prints it as JSON, or what is wrong.
#include <stdio.h>
#include <stdlib.h>

#include "levigate/c/levigate.h"

// The text of a file; NULL where it cannot be read.
static char* text_of(const char* name) {
  FILE* file = fopen(name, "rb");
  char* text = NULL;
  size_t held = 0, got = 0;
  if (!file) return NULL;
  do {
    char* grown = realloc(text, held + 4097);
    if (!grown) break;
    text = grown;
    got = fread(text + held, 1, 4096, file);
    held += got;
    text[held] = '\0';
  } while (got > 0);
  fclose(file);
  return text;
}

int main(void) {
  char* job = text_of("data/demo/job.json");
  char* stack = text_of("data/demo/stack.json");
  char* answer = NULL;
  const int status = levigate_plan(job, stack, &answer);
  if (answer) fputs(answer, status == levigate_ok ? stdout : stderr);
  levigate_free(answer);
  free(stack);
  free(job);
  return status == levigate_ok ? EXIT_SUCCESS : EXIT_FAILURE;
}
