/* A reviewer: `reviewer FILE` with the file of a cover. Its second review of an unchanged cover is that of coaming_review(), what is
 * refused is refused as there, and it can be used on. */
#include "coaming.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static unsigned long passed, failed;

#define HOLD(condition)                                              \
  do {                                                               \
    if (condition) {                                                 \
      ++passed;                                                      \
    } else {                                                         \
      ++failed;                                                      \
      fprintf(stderr, "%s:%d: %s\n", __FILE__, __LINE__, #condition); \
    }                                                                \
  } while (0)

static CoamingFault fault;

/* The text of a file, ended by a zero. */
static char *text_of(const char *name) {
  FILE *file = fopen(name, "rb");
  const size_t room = 1 << 20;
  char *text = malloc(room);
  if (!file || !text) abort();
  text[fread(text, 1, room - 1, file)] = 0;
  fclose(file);
  return text;
}

/* The text with its one `old` replaced. */
static char *changed(const char *text, const char *old, const char *new) {
  const char *at = strstr(text, old);
  char *made = malloc(strlen(text) + strlen(new) + 1);
  if (!at || !made) abort();
  sprintf(made, "%.*s%s%s", (int)(at - text), text, new, at + strlen(old));
  return made;
}

/* What a call gave: its text, or NULL and the fault. */
static char *given(uint32_t status, char *text) {
  if (status == COAMING_OK) return text;
  HOLD(text == NULL && fault.code == status);
  return NULL;
}

static char *reviewed(CoamingReviewer *reviewer, const char *document) {
  char *text = NULL;
  const uint32_t status = coaming_reviewer_review(reviewer, document, "json", "shop", &text, &fault);
  return given(status, text);
}

static char *afresh(const char *document) {
  char *text = NULL;
  const uint32_t status = coaming_review(document, "json", "shop", &text, &fault);
  return given(status, text);
}

/* Both are there and the same. */
static void same(char *one, char *other) {
  HOLD(one && other && strcmp(one, other) == 0);
  coaming_text_free(one), coaming_text_free(other);
}

/* The reviewer refuses a document in the words of a fresh review. */
static void refused(CoamingReviewer *reviewer, const char *document) {
  memset(&fault, 0, sizeof fault);
  HOLD(afresh(document) == NULL);
  const CoamingFault due = fault;
  memset(&fault, 0, sizeof fault);
  HOLD(reviewed(reviewer, document) == NULL);
  HOLD(fault.code == due.code && strcmp(fault.field, due.field) == 0 && strcmp(fault.message, due.message) == 0);
}

int main(int count, char **words) {
  if (count != 2) return 2;
  char *document = text_of(words[1]), *sheet = NULL, *fresh = NULL;
  CoamingReviewer *reviewer = NULL;
  HOLD(coaming_reviewer_new(&reviewer, &fault) == COAMING_OK && reviewer);
  same(reviewed(reviewer, document), afresh(document));

  refused(reviewer, "");
  refused(reviewer, "{");
  refused(reviewer, "\xff");
  char *wrong = changed(document, "thickness = \"2.5 mm\"", "thickness = 2.5");
  refused(reviewer, wrong);
  free(wrong);
  wrong = changed(document, "title =", "titel =");
  refused(reviewer, wrong);
  free(wrong);
  /* Seen only when the checks are known. */
  wrong = changed(document, "check = \"dew\"", "check = \"dwe\"");
  refused(reviewer, wrong);
  free(wrong);

  same(reviewed(reviewer, document), afresh(document));
  HOLD(coaming_reviewer_order_sheet(reviewer, document, "json", "shop", &sheet, &fault) == COAMING_OK);
  HOLD(coaming_order_sheet(document, "json", "shop", &fresh, &fault) == COAMING_OK);
  same(sheet, fresh);
  coaming_reviewer_free(reviewer);
  free(document);
  printf("%lu passed, %lu failed\n", passed, failed);
  return failed == 0 && passed > 0 ? 0 : 1;
}
