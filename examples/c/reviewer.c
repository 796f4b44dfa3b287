/* Reviews a cover, changes it, and reviews it again without solving anew what the change does not touch: `reviewer FILE OLD NEW` prints
 * the first lines of the reviews before and after OLD is replaced by NEW. Exit status 2 for bad input. */
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

/* The text with its first `old` replaced; to be freed. */
static char *changed(const char *text, const char *old, const char *new) {
  const char *at = strstr(text, old);
  char *made = malloc(strlen(text) + strlen(new) + 1);
  if (!made) return NULL;
  if (!at) return strcpy(made, text);
  memcpy(made, text, (size_t)(at - text));
  strcpy(made + (at - text), new);
  strcat(made, at + strlen(old));
  return made;
}

/* Prints the title, and how many checks have which verdict. */
static void heading(const char *review) {
  const char *end = strchr(review, '\n');
  if (end) end = strchr(end + 1, '\n');
  printf("%.*s\n", end ? (int)(end - review) : (int)strlen(review), review);
}

int main(int count, char **words) {
  if (count != 4 || !coaming_abi_matches()) {
    fprintf(stderr, "give the file of a cover, a piece of it, and what replaces that\n");
    return 2;
  }
  char *documents[2] = {text_of(words[1]), NULL};
  if (documents[0]) documents[1] = changed(documents[0], words[2], words[3]);
  if (!documents[1]) {
    fprintf(stderr, "%s cannot be read\n", words[1]);
    return 2;
  }
  CoamingFault fault;
  CoamingReviewer *reviewer = NULL;
  uint32_t status = coaming_reviewer_new(&reviewer, &fault);
  for (int i = 0; i < 2 && status == COAMING_OK; ++i) {
    char *review = NULL;
    status = coaming_reviewer_review(reviewer, documents[i], "text", "shop", &review, &fault);
    if (status == COAMING_OK) heading(review);
    coaming_text_free(review);
  }
  coaming_reviewer_free(reviewer);
  free(documents[0]), free(documents[1]);
  if (status == COAMING_OK) return 0;
  fprintf(stderr, "%s: %s\n%s\n", words[1], fault.message, coaming_error_cure(status));
  return 2;
}
