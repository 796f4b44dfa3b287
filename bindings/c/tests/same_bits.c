/* The same bits: every case as a call, as a batch of one row and of several, and as text, compared with the bits that
 * Rust gave. The table is made by `cargo xtask test`. */
#include "coaming.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define COUNT(array) (sizeof(array) / sizeof((array)[0]))
#define NO_PLACE UINT32_MAX
#define ALWAYS SIZE_MAX

enum { MOST_MEMBERS = 256, ROWS = 5, STRIDE = 3 };

/* A member of a struct: where it stands, its place in a batch, and the member that tells whether it is there. */
typedef struct {
  const char *name;
  size_t offset, size;
  uint32_t place;
  size_t has;
} Member;

/* A case of a calculation: the code 0, or the code and the field of the refusal. */
typedef struct {
  const char *title;
  uint32_t code;
  const char *field;
} Expected;

typedef struct {
  const char *name;
  uint32_t (*call)(const void *, void *, CoamingFault *);
  uint32_t (*batch)(const void *, const CoamingBatch *, uint64_t *, CoamingFault *);
  size_t cases;
  const Expected *expected;
  const void *inputs;
  size_t input_size;
  const Member *input_members;
  size_t input_count;
  const void *outcomes;
  size_t outcome_size;
  const Member *outcome_members;
  size_t outcome_count;
} Calculation;

/* A text call: the text that comes back, or NULL with the code and the field of the refusal. */
typedef struct {
  const char *name, *input, *text;
  uint32_t code;
  const char *field;
} TextCase;

#include "same_bits_table.h"

static unsigned long passed, failed;

static void hold(int holds, const char *what, const char *name, const char *title) {
  if (holds) {
    ++passed;
  } else {
    ++failed;
    fprintf(stderr, "%s: %s: %s\n", name, what, title);
  }
}

static int refused_as(uint32_t status, const CoamingFault *fault, uint32_t code, const char *field) {
  /* The fault holds 63 bytes of the field. */
  return status == code && fault->code == code && strncmp(fault->field, field, 63) == 0;
}

static int is_there(const Member *member, const unsigned char *record) {
  return member->has == ALWAYS || record[member->has] != 0;
}

static double number_of(const Member *member, const unsigned char *record) {
  double number;
  memcpy(&number, record + member->offset, sizeof number);
  return number;
}

static int same_number(double one, double other) { return memcmp(&one, &other, sizeof one) == 0; }

/* One case as a call: every member to the bit, or the refusal with the outcome untouched. */
static void check_call(const Calculation *of, size_t nth, const unsigned char *input, const unsigned char *outcome) {
  const Expected *expected = &of->expected[nth];
  unsigned char *found = malloc(of->outcome_size), *before = malloc(of->outcome_size);
  CoamingFault fault;
  if (!found || !before) abort();
  memset(found, 0xa5, of->outcome_size);
  memset(before, 0xa5, of->outcome_size);
  uint32_t status = of->call(input, found, &fault);
  if (expected->code != 0) {
    int untouched = memcmp(found, before, of->outcome_size) == 0;
    hold(untouched && refused_as(status, &fault, expected->code, expected->field), "call", of->name, expected->title);
  } else {
    int same = status == COAMING_OK;
    for (size_t i = 0; same && i < of->outcome_count; ++i) {
      const Member *member = &of->outcome_members[i];
      same = memcmp(found + member->offset, outcome + member->offset, member->size) == 0;
      if (!same) fprintf(stderr, "%s.%s differs\n", of->name, member->name);
    }
    hold(same, "call", of->name, expected->title);
  }
  free(found);
  free(before);
}

/* The same case as a batch: every number comes from a column, and the template holds another one. Inputs are read with
 * a stride of 3, outcomes are written backwards. */
static void check_batch(const Calculation *of, size_t nth, const unsigned char *input, const unsigned char *outcome,
                        size_t rows) {
  static double given[MOST_MEMBERS][ROWS * STRIDE], found[MOST_MEMBERS][ROWS];
  CoamingColumn columns[MOST_MEMBERS];
  CoamingWanted wanted[MOST_MEMBERS];
  const Member *wanted_members[MOST_MEMBERS];
  const Expected *expected = &of->expected[nth];
  unsigned char *template_input = malloc(of->input_size);
  uint64_t caveats = 0, expected_caveats = 0;
  size_t column_count = 0, wanted_count = 0;
  CoamingFault fault;
  if (!template_input || of->input_count > MOST_MEMBERS || of->outcome_count > MOST_MEMBERS) abort();
  memcpy(template_input, input, of->input_size);
  for (size_t i = 0; i < of->input_count; ++i) {
    const Member *member = &of->input_members[i];
    const double other = 0.125;
    if (member->place == NO_PLACE || !is_there(member, input)) continue;
    for (size_t row = 0; row < rows; ++row) given[i][row * STRIDE] = number_of(member, input);
    memcpy(template_input + member->offset, &other, sizeof other);
    if (member->has != ALWAYS) template_input[member->has] = 0;
    columns[column_count].place = member->place;
    columns[column_count].values = given[i];
    columns[column_count++].stride = STRIDE;
  }
  for (size_t i = 0; i < of->outcome_count; ++i) {
    const Member *member = &of->outcome_members[i];
    if (strcmp(member->name, "caveats") == 0) memcpy(&expected_caveats, outcome + member->offset, member->size);
    if (member->place == NO_PLACE) continue;
    wanted_members[wanted_count] = member;
    wanted[wanted_count].place = member->place;
    wanted[wanted_count].values = &found[i][rows - 1];
    wanted[wanted_count++].stride = -1;
  }
  if (column_count + wanted_count > 0) {
    const CoamingBatch batch = {rows, columns, column_count, wanted, wanted_count};
    uint32_t status = of->batch(template_input, &batch, &caveats, &fault);
    if (expected->code != 0) {
      int refused = refused_as(status, &fault, expected->code, expected->field);
      /* A template that cannot be read is refused before the first row. */
      hold(refused && (fault.index == 0 || fault.index == -1), "batch", of->name, expected->title);
    } else {
      int same = status == COAMING_OK && caveats == expected_caveats;
      for (size_t i = 0; same && i < wanted_count; ++i) {
        const Member *member = wanted_members[i];
        for (size_t row = 0; same && row < rows; ++row) {
          double value = wanted[i].values[-(ptrdiff_t)row];
          same = is_there(member, outcome) ? same_number(value, number_of(member, outcome)) : isnan(value);
        }
      }
      hold(same, rows == 1 ? "batch of one row" : "batch", of->name, expected->title);
    }
  }
  free(template_input);
}

static void check_text(const TextCase *of) {
  char *text = NULL;
  CoamingFault fault;
  uint32_t status = coaming_calculate(of->name, of->input, &text, &fault);
  if (of->text == NULL) {
    hold(text == NULL && refused_as(status, &fault, of->code, of->field), "text", of->name, of->input);
  } else {
    hold(status == COAMING_OK && text && strcmp(text, of->text) == 0, "text", of->name, of->input);
  }
  coaming_text_free(text);
}

int main(void) {
  for (size_t i = 0; i < COUNT(calculations); ++i) {
    const Calculation *of = &calculations[i];
    for (size_t nth = 0; nth < of->cases; ++nth) {
      const unsigned char *input = (const unsigned char *)of->inputs + nth * of->input_size;
      const unsigned char *outcome = (const unsigned char *)of->outcomes + nth * of->outcome_size;
      check_call(of, nth, input, outcome);
      check_batch(of, nth, input, outcome, 1);
      check_batch(of, nth, input, outcome, ROWS);
    }
  }
  for (size_t i = 0; i < COUNT(texts); ++i) check_text(&texts[i]);
  printf("%lu passed, %lu failed\n", passed, failed);
  return failed == 0 && passed > 0 ? 0 : 1;
}
