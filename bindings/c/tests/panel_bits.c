/* The same bits for a panel: `panel_bits DOCUMENT LIST`, where the list has the numbers that Rust gave. The list is made by
 * `cargo xtask test`. */
#include "coaming.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MOST_CASES = 16 };

static unsigned long passed, failed;
static CoamingPanel *panel;
static CoamingSolution *solutions[MOST_CASES];
static CoamingFault fault;

static void hold(int holds, const char *line) {
  if (holds) {
    ++passed;
  } else {
    ++failed;
    fprintf(stderr, "differs: %s (%s)\n", line, fault.message);
  }
}

/* The text of a file, ended by a zero. */
static char *text_of(const char *name) {
  FILE *file = fopen(name, "rb");
  long length = -1;
  if (file && fseek(file, 0, SEEK_END) == 0) length = ftell(file);
  char *text = length < 0 ? NULL : malloc((size_t)length + 1);
  if (!text || fseek(file, 0, SEEK_SET) != 0 || fread(text, 1, (size_t)length, file) != (size_t)length) {
    fprintf(stderr, "%s cannot be read\n", name);
    exit(2);
  }
  text[length] = '\0';
  fclose(file);
  return text;
}

static int same(double one, double other) { return memcmp(&one, &other, sizeof one) == 0; }

/* Solved when it is first asked for. */
static const CoamingSolution *solution_of(size_t load_case) {
  if (load_case >= MOST_CASES) abort();
  if (!solutions[load_case] &&
      coaming_panel_solve(panel, load_case, NULL, NULL, &solutions[load_case], &fault) != COAMING_OK) {
    fprintf(stderr, "load case %lu: %s\n", (unsigned long)load_case, fault.message);
    exit(1);
  }
  return solutions[load_case];
}

/* The numbers that follow a line, compared with those of the solution; gives where the list goes on. */
static char *check_values(char *at, const char *line, size_t load_case, unsigned which, size_t index, size_t count) {
  size_t found = 0;
  double *values = malloc((count + 1) * sizeof *values);
  if (!values) abort();
  int holds = coaming_solution_values(solution_of(load_case), which, index, values, count, &found, &fault) == COAMING_OK &&
              found == count;
  for (size_t i = 0; i < count; ++i) {
    double expected = strtod(at, &at);
    holds = holds && same(values[i], expected);
  }
  hold(holds, line);
  free(values);
  return at + strspn(at, "\n");
}

int main(int words, char **word) {
  if (words != 3) return 2;
  char *document = text_of(word[1]), *list = text_of(word[2]), *at = list;
  if (coaming_panel_new(document, &panel, &fault) != COAMING_OK) {
    fprintf(stderr, "%s: %s\n", word[1], fault.message);
    return 1;
  }
  while (*at) {
    char line[256];
    unsigned long load_case, index, count;
    unsigned which;
    double first, second;
    size_t length = strcspn(at, "\n");
    if (length >= sizeof line) abort();
    memcpy(line, at, length);
    line[length] = '\0';
    at += length + (at[length] == '\n');
    if (sscanf(line, "values %lu %u %lu %lu", &load_case, &which, &index, &count) == 4) {
      at = check_values(at, line, load_case, which, index, count);
    } else if (sscanf(line, "latch %lu %lu %lf %lf", &load_case, &index, &first, &second) == 4) {
      CoamingLatchState latch;
      hold(coaming_solution_latch(solution_of(load_case), index, &latch, &fault) == COAMING_OK &&
               same(latch.pull_n, first) && same(latch.deflection_m, second),
           line);
    } else if (sscanf(line, "mode %lu %lu %lf %lf", &load_case, &index, &first, &second) == 4) {
      CoamingMode mode;
      hold(coaming_solution_mode(solution_of(load_case), index, &mode, &fault) == COAMING_OK &&
               same(mode.frequency_hz, first) && same(mode.error, second),
           line);
    } else if (sscanf(line, "buckling %lu %lu %lf %lf", &load_case, &index, &first, &second) == 4) {
      CoamingBucklingMode mode;
      hold(coaming_solution_buckling_mode(solution_of(load_case), index, &mode, &fault) == COAMING_OK &&
               same(mode.factor, first) && same(mode.error, second),
           line);
    } else if (sscanf(line, "critical %lu %lu %lf %lf", &load_case, &index, &first, &second) == 4) {
      CoamingCriticalTemperature temperature;
      hold(coaming_solution_critical_temperature(solution_of(load_case), index, &temperature, &fault) == COAMING_OK &&
               same(temperature.rise_k, first) && same(temperature.gradient_k, second),
           line);
    } else if (sscanf(line, "support %lu %lu %lf %lf", &load_case, &index, &first, &second) == 4) {
      CoamingReaction reaction;
      hold(coaming_solution_line_reaction(solution_of(load_case), index, &reaction, &fault) == COAMING_OK &&
               same(reaction.in_plane_x_n, first) && same(reaction.in_plane_y_n, second),
           line);
    } else {
      fprintf(stderr, "not understood: %s\n", line);
      return 2;
    }
  }
  for (size_t i = 0; i < MOST_CASES; ++i) coaming_solution_free(solutions[i]);
  coaming_panel_free(panel);
  free(document);
  free(list);
  printf("%lu passed, %lu failed\n", passed, failed);
  return failed == 0 && passed > 0 ? 0 : 1;
}
