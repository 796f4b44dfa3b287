/* Reviews a cover, or prints its order sheet: `review FILE [review|order_sheet [OUTPUT [UNITS]]]`, as text in shop units
 * unless others are named. `review --schema cover` prints the schema of its document. Exit status 2 for bad input. */
#include "coaming.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* The text of a file, ended by a zero; NULL where it cannot be read. */
static char *text_of(const char *name) {
  FILE *file = fopen(name, "rb");
  if (!file) return NULL;
  size_t length = 0, room = 1 << 16;
  char *text = malloc(room);
  while (text) {
    length += fread(text + length, 1, room - length - 1, file);
    if (length < room - 1) break;
    char *larger = realloc(text, room *= 2);
    if (!larger) free(text);
    text = larger;
  }
  if (text) text[length] = '\0';
  fclose(file);
  return text;
}

/* Prints what a document may hold. */
static int schema(const char *of) {
  char *text = NULL;
  CoamingFault fault;
  if (coaming_schema(of, &text, &fault) != COAMING_OK) {
    fprintf(stderr, "%s\n", fault.message);
    return 2;
  }
  fputs(text, stdout);
  coaming_text_free(text);
  return 0;
}

int main(int count, char **words) {
  if (count < 2 || !coaming_abi_matches()) {
    fprintf(stderr, "give the file of a cover\n");
    return 2;
  }
  if (count > 2 && strcmp(words[1], "--schema") == 0) return schema(words[2]);
  char *document = text_of(words[1]);
  if (!document) {
    fprintf(stderr, "%s cannot be read\n", words[1]);
    return 2;
  }
  const int sheet = count > 2 && strcmp(words[2], "order_sheet") == 0;
  char *text = NULL;
  CoamingFault fault;
  const char *const output = count > 3 ? words[3] : "text";
  const char *const units = count > 4 ? words[4] : "shop";
  const uint32_t status = sheet ? coaming_order_sheet(document, output, units, &text, &fault)
                                : coaming_review(document, output, units, &text, &fault);
  free(document);
  if (status != COAMING_OK) {
    fprintf(stderr, "%s: %s\n%s\n", words[1], fault.message, coaming_error_cure(status));
    return 2;
  }
  fputs(text, stdout);
  coaming_text_free(text);
  return 0;
}
