/* Calls that no program should make: each is refused with a status and a fault, and nothing else is touched. And a
 * batch that crosses blocks and threads. */
#include "coaming.h"

#include <math.h>
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

/* The first bend of the U-channel in FAA-H-8083-31A, ch. 4. */
static const CoamingBendAllowance bend = {
    .bend_angle_rad = 1.5707963267948966,
    .inside_radius_m = 0.004064,
    .thickness_m = 0.001016,
    .k_factor = 0.4467,
    .leg_reference = COAMING_LEG_REFERENCE_TO_VIRTUAL_SHARP,
};

static const char *const bend_text =
    "{\"bend_angle\": \"90 deg\", \"inside_radius\": \"0.16 in\", \"thickness\": \"0.04 in\", \"k_factor\": 0.4467, "
    "\"leg_reference\": \"to_virtual_sharp\"}";

static CoamingFault fault;

static int is_refused(uint32_t status, uint32_t code, const char *field) {
  int is = status == code && fault.code == code && strcmp(fault.field, field) == 0 && strlen(fault.message) > 0;
  if (!is) fprintf(stderr, "status %u, field `%s`: %s\n", (unsigned)status, fault.field, fault.message);
  memset(&fault, 0, sizeof fault);
  return is;
}

static void nulls(void) {
  CoamingBendAllowanceOutcome outcome;
  HOLD(is_refused(coaming_bend_allowance(NULL, &outcome, &fault), COAMING_ERROR_WRONG_TYPE, "input"));
  HOLD(is_refused(coaming_bend_allowance(&bend, NULL, &fault), COAMING_ERROR_WRONG_TYPE, "outcome"));
  HOLD(coaming_bend_allowance(NULL, NULL, NULL) == COAMING_ERROR_WRONG_TYPE);
  HOLD(coaming_bend_allowance(&bend, &outcome, NULL) == COAMING_OK);
}

static void values(void) {
  CoamingBendAllowanceOutcome outcome, before;
  const double wrong[] = {NAN, INFINITY, -INFINITY, 0.0, -0.0, -1.0};
  memset(&outcome, 0x5a, sizeof outcome);
  memcpy(&before, &outcome, sizeof outcome);
  for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; ++i) {
    CoamingBendAllowance input = bend;
    input.thickness_m = wrong[i];
    uint32_t status = coaming_bend_allowance(&input, &outcome, &fault);
    HOLD(isnan(wrong[i]) ? isnan(fault.value) : fault.value == wrong[i]);
    HOLD(fault.index == -1);
    HOLD(is_refused(status, COAMING_ERROR_IMPOSSIBLE, "thickness"));
  }
  CoamingBendAllowance input = bend;
  input.leg_reference = 3;
  HOLD(is_refused(coaming_bend_allowance(&input, &outcome, &fault), COAMING_ERROR_NOT_AN_OPTION, "leg_reference"));
  input.leg_reference = UINT32_MAX;
  HOLD(is_refused(coaming_bend_allowance(&input, &outcome, &fault), COAMING_ERROR_NOT_AN_OPTION, "leg_reference"));
  input = bend;
  input.inside_radius_m = 1.7e308;
  input.thickness_m = 1.7e308;
  HOLD(coaming_bend_allowance(&input, &outcome, &fault) == COAMING_ERROR_NOT_FINITE);
  /* Nothing was written by any of them. */
  HOLD(memcmp(&outcome, &before, sizeof outcome) == 0);
}

static void texts(void) {
  char untouched, *text = &untouched;
  const char *const name = "bend_allowance";
  HOLD(is_refused(coaming_panel(NULL, "text", "shop", &text, &fault), COAMING_ERROR_WRONG_TYPE, "document"));
  HOLD(is_refused(coaming_panel("{}", NULL, "shop", &text, &fault), COAMING_ERROR_WRONG_TYPE, "output"));
  HOLD(is_refused(coaming_panel("{}", "text", NULL, &text, &fault), COAMING_ERROR_WRONG_TYPE, "units"));
  HOLD(is_refused(coaming_panel("{}", "text", "shop", NULL, &fault), COAMING_ERROR_WRONG_TYPE, "answer"));
  HOLD(coaming_panel("{}", "text", "shop", &text, &fault) == COAMING_ERROR_MISSING);
  HOLD(coaming_panel("{", "text", "shop", &text, NULL) == COAMING_ERROR_UNREADABLE);
  HOLD(is_refused(coaming_schema(NULL, &text, &fault), COAMING_ERROR_WRONG_TYPE, "of"));
  HOLD(is_refused(coaming_schema("cover", NULL, &fault), COAMING_ERROR_WRONG_TYPE, "schema"));
  HOLD(is_refused(coaming_schema("lid", &text, &fault), COAMING_ERROR_NOT_AN_OPTION, "of"));
  HOLD(is_refused(coaming_calculate(NULL, bend_text, &text, &fault), COAMING_ERROR_WRONG_TYPE, "name"));
  HOLD(is_refused(coaming_calculate(name, NULL, &text, &fault), COAMING_ERROR_WRONG_TYPE, "input"));
  HOLD(is_refused(coaming_calculate(name, bend_text, NULL, &fault), COAMING_ERROR_WRONG_TYPE, "outcome"));
  HOLD(is_refused(coaming_calculate("bend", bend_text, &text, &fault), COAMING_ERROR_UNKNOWN_CALCULATION, ""));
  HOLD(is_refused(coaming_calculate("\xff", bend_text, &text, &fault), COAMING_ERROR_UNREADABLE, ""));
  HOLD(is_refused(coaming_calculate(name, "{\"\xc3\"}", &text, &fault), COAMING_ERROR_UNREADABLE, ""));
  HOLD(is_refused(coaming_calculate(name, "", &text, &fault), COAMING_ERROR_UNREADABLE, ""));
  HOLD(is_refused(coaming_calculate(name, "{", &text, &fault), COAMING_ERROR_UNREADABLE, ""));
  HOLD(is_refused(coaming_calculate(name, "{\"angle\": 1}", &text, &fault), COAMING_ERROR_UNKNOWN_KEY, "angle"));
  /* 64 brackets are deep, a million are no reason to fall over. */
  size_t deep = 1000000;
  char *brackets = malloc(deep + 1);
  if (!brackets) abort();
  memset(brackets, '[', deep);
  brackets[deep] = 0;
  HOLD(coaming_calculate(name, brackets, &text, &fault) != COAMING_OK);
  HOLD(is_refused(coaming_calculate(brackets, bend_text, &text, &fault), COAMING_ERROR_UNKNOWN_CALCULATION, ""));
  free(brackets);
  HOLD(text == &untouched);
  HOLD(coaming_calculate(name, bend_text, &text, NULL) == COAMING_OK && strstr(text, "\"bend_allowance\"") != NULL);
  coaming_text_free(text);
  coaming_text_free(NULL);
}

/* A cover of one sheet, of which nearly nothing is known. */
static const char *const cover =
    "{\"version\": 1, \"title\": \"Lid\", \"opening\": {\"outline\": {\"rectangle\": {\"width\": \"500 mm\", \"height\": \"360 mm\"}}},"
    "\"layers\": [{\"name\": \"lid\", \"role\": \"skin\", \"thickness\": \"2.5 mm\","
    "\"outline\": {\"rectangle\": {\"width\": \"580 mm\", \"height\": \"440 mm\"}}}]}";

static void reviewers(void) {
  char untouched, *text = &untouched, *again = NULL;
  CoamingReviewer *reviewer = NULL;
  HOLD(is_refused(coaming_reviewer_new(NULL, &fault), COAMING_ERROR_WRONG_TYPE, "reviewer"));
  HOLD(is_refused(coaming_reviewer_review(NULL, cover, "text", "shop", &text, &fault), COAMING_ERROR_WRONG_TYPE, "reviewer"));
  HOLD(is_refused(coaming_reviewer_order_sheet(NULL, cover, "text", "shop", &text, &fault), COAMING_ERROR_WRONG_TYPE,
                  "reviewer"));
  coaming_reviewer_free(NULL);
  HOLD(coaming_reviewer_new(&reviewer, NULL) == COAMING_OK && reviewer != NULL);
  HOLD(is_refused(coaming_reviewer_review(reviewer, NULL, "text", "shop", &text, &fault), COAMING_ERROR_WRONG_TYPE, "document"));
  HOLD(is_refused(coaming_reviewer_review(reviewer, cover, NULL, "shop", &text, &fault), COAMING_ERROR_WRONG_TYPE, "output"));
  HOLD(is_refused(coaming_reviewer_review(reviewer, cover, "text", NULL, &text, &fault), COAMING_ERROR_WRONG_TYPE, "units"));
  HOLD(is_refused(coaming_reviewer_review(reviewer, cover, "text", "shop", NULL, &fault), COAMING_ERROR_WRONG_TYPE, "answer"));
  HOLD(is_refused(coaming_reviewer_review(reviewer, cover, "pdf", "shop", &text, &fault), COAMING_ERROR_NOT_AN_OPTION, "output"));
  HOLD(is_refused(coaming_reviewer_review(reviewer, cover, "text", "metric", &text, &fault), COAMING_ERROR_NOT_AN_OPTION, "units"));
  HOLD(is_refused(coaming_reviewer_review(reviewer, "", "text", "shop", &text, &fault), COAMING_ERROR_UNREADABLE, ""));
  HOLD(is_refused(coaming_reviewer_order_sheet(reviewer, "{}", "text", "shop", &text, &fault), COAMING_ERROR_MISSING, "version"));
  HOLD(coaming_reviewer_review(reviewer, "{", "text", "shop", &text, NULL) == COAMING_ERROR_UNREADABLE);
  HOLD(text == &untouched);
  HOLD(coaming_reviewer_review(reviewer, cover, "text", "shop", &text, &fault) == COAMING_OK);
  HOLD(coaming_review(cover, "text", "shop", &again, &fault) == COAMING_OK && strcmp(text, again) == 0);
  coaming_text_free(text), coaming_text_free(again);
  coaming_reviewer_free(reviewer);
}

/* Any number has words, and none of them is NULL. */
static void words(void) {
  size_t worded = 0;
  for (uint32_t number = UINT32_MAX; number != 2000; ++number) {
    worded += strlen(coaming_caveat_text(number)) > 0 && strlen(coaming_caveat_cure(number)) > 0 &&
              strlen(coaming_error_text(number)) > 0 && strlen(coaming_error_cure(number)) > 0;
  }
  HOLD(worded == 2001);
  HOLD(strcmp(coaming_error_text(COAMING_ERROR_IMPOSSIBLE), coaming_error_text(2000)) != 0);
  HOLD(strcmp(coaming_caveat_text(COAMING_CAVEAT_SHARP_BEND), coaming_caveat_text(64)) != 0);
}

static void batches(void) {
  double given[4] = {0.001, 0.002, 0.003, 0.004}, found[4] = {7, 7, 7, 7};
  uint64_t caveats = 99;
  CoamingColumn column = {COAMING_PLACE_BEND_ALLOWANCE_THICKNESS, given, 1};
  CoamingWanted wanted = {COAMING_PLACE_BEND_ALLOWANCE_OUTCOME_BEND_ALLOWANCE, found, 1};
  CoamingBatch batch = {4, &column, 1, &wanted, 1};
  HOLD(is_refused(coaming_bend_allowance_batch(NULL, &batch, &caveats, &fault), COAMING_ERROR_WRONG_TYPE, "input"));
  HOLD(is_refused(coaming_bend_allowance_batch(&bend, NULL, &caveats, &fault), COAMING_ERROR_WRONG_TYPE, "batch"));

#define REFUSED(code, field) \
  HOLD(is_refused(coaming_bend_allowance_batch(&bend, &batch, &caveats, &fault), COAMING_ERROR_##code, field))
  batch.columns = NULL;
  REFUSED(WRONG_TYPE, "columns");
  batch.columns = &column;
  batch.wanted = NULL;
  REFUSED(WRONG_TYPE, "wanted");
  batch.wanted = &wanted;
  column.values = NULL;
  REFUSED(WRONG_TYPE, "columns[0].values");
  column.values = given;
  wanted.values = NULL;
  REFUSED(WRONG_TYPE, "wanted[0].values");
  wanted.values = found;
  wanted.stride = 0;
  REFUSED(INCONSISTENT, "wanted[0].stride");
  wanted.stride = 1;
  column.stride = INT64_MIN;
  REFUSED(TOO_LARGE, "columns[0].stride");
  column.stride = 1;
  batch.rows = SIZE_MAX;
  REFUSED(TOO_LARGE, "columns[0].stride");
  batch.rows = 4;
  batch.column_count = SIZE_MAX;
  REFUSED(TOO_LARGE, "columns");
  batch.column_count = 0;
  batch.wanted_count = 0;
  REFUSED(INCONSISTENT, "columns, wanted");
  batch.column_count = 1;
  batch.wanted_count = 1;
  column.place = 4; /* a choice is no number */
  REFUSED(WRONG_TYPE, "input column 4");
  column.place = UINT32_MAX;
  REFUSED(WRONG_TYPE, "input column 4294967295");
  column.place = COAMING_PLACE_BEND_ALLOWANCE_THICKNESS;
  CoamingColumn twice[2] = {column, column};
  batch.columns = twice;
  batch.column_count = 2;
  REFUSED(REPEATED, "columns[1].place");
  batch.columns = &column;
  batch.column_count = 1;
  HOLD(caveats == 99 && found[0] == 7 && found[3] == 7);
#undef REFUSED

  batch.rows = 0;
  HOLD(coaming_bend_allowance_batch(&bend, &batch, &caveats, &fault) == COAMING_OK && caveats == 0);
  HOLD(found[0] == 7);
  batch.rows = 4;
  HOLD(coaming_bend_allowance_batch(&bend, &batch, NULL, NULL) == COAMING_OK);
  /* By the formula, from the inside radius and K of `bend`: (pi/2) (r + K t). */
  for (int row = 0; row < 4; ++row) {
    HOLD(fabs(found[row] - 1.5707963267948966 * (0.004064 + 0.4467 * given[row])) < 1e-15);
  }
  /* In place: the outcome into the very array of the input. */
  wanted.values = given;
  HOLD(coaming_bend_allowance_batch(&bend, &batch, NULL, NULL) == COAMING_OK);
  HOLD(memcmp(given, found, sizeof found) == 0);
}

/* More rows than two blocks, on every core: each has the bits of its own call, and of two that fail the lower is
 * reported. */
static void long_batch(void) {
  const size_t rows = 300001;
  double *given = malloc(rows * sizeof *given), *found = malloc(rows * sizeof *found);
  const CoamingColumn column = {COAMING_PLACE_BEND_ALLOWANCE_K_FACTOR, given, 1};
  const CoamingWanted wanted = {COAMING_PLACE_BEND_ALLOWANCE_OUTCOME_BEND_DEDUCTION, found, 1};
  const CoamingBatch batch = {rows, &column, 1, &wanted, 1};
  uint64_t caveats = 0;
  if (!given || !found) abort();
  for (size_t row = 0; row < rows; ++row) given[row] = 0.25 + 0.25 * (double)row / (double)rows;
  given[250000] = 0.6;
  HOLD(coaming_bend_allowance_batch(&bend, &batch, &caveats, &fault) == COAMING_OK);
  HOLD(coaming_has_caveat(caveats, COAMING_CAVEAT_OUTSIDE_TESTED));
  HOLD(!coaming_has_caveat(caveats, COAMING_CAVEAT_SHARP_BEND) && !coaming_has_caveat(caveats, 64));
  size_t same = 0;
  for (size_t row = 0; row < rows; ++row) {
    CoamingBendAllowance input = bend;
    CoamingBendAllowanceOutcome outcome;
    input.k_factor = given[row];
    same += coaming_bend_allowance(&input, &outcome, NULL) == COAMING_OK &&
            memcmp(&outcome.bend_deduction_m, &found[row], sizeof found[row]) == 0;
  }
  HOLD(same == rows);
  given[299999] = NAN;
  given[200000] = -1.0;
  uint32_t status = coaming_bend_allowance_batch(&bend, &batch, &caveats, &fault);
  HOLD(fault.index == 200000 && fault.value == -1.0);
  HOLD(is_refused(status, COAMING_ERROR_IMPOSSIBLE, "k_factor"));
  free(given);
  free(found);
}

int main(void) {
  nulls();
  values();
  texts();
  reviewers();
  words();
  batches();
  long_batch();
  printf("%lu passed, %lu failed\n", passed, failed);
  return failed == 0 && passed > 0 ? 0 : 1;
}
