/* A pane that nothing lets grow: what damp presses it with, at what rise of temperature it buckles, how far it bows past that, and how
 * far a hand pushes it in: `heated_pane FILE` with examples/panels/heated-pane.toml. Exit status 2 for bad input. */
#include "coaming.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

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

/* What the load cases of the document are about. */
enum { SUN, DAMP, HAND };

/* Solves one load case and tells what it asked for. */
static uint32_t tell(CoamingPanel *panel, size_t load_case, CoamingFault *fault) {
  CoamingSolution *solution = NULL;
  CoamingSummary summary;
  CoamingBucklingMode way;
  CoamingCriticalTemperature layer;
  uint32_t status = coaming_panel_solve(panel, load_case, NULL, NULL, &solution, fault);
  if (status == COAMING_OK) status = coaming_solution_summary(solution, &summary, fault);
  if (status == COAMING_OK && load_case == DAMP) {
    /* Growth is a load in the plane: the frame presses back. */
    printf("damp presses with %.3f N/mm\n", -summary.largest_membrane_force_n_per_m * 1e-3);
    for (size_t i = 0; i < summary.buckling_modes; ++i) {
      if (coaming_solution_buckling_mode(solution, i, &way, fault) == COAMING_OK) {
        printf("damp times %.3f makes it buckle\n", way.factor);
      }
    }
  } else if (status == COAMING_OK) {
    for (size_t i = 0; i < summary.critical_temperatures; ++i) {
      if (coaming_solution_critical_temperature(solution, i, &layer, fault) == COAMING_OK) {
        printf("a rise of %.3f K makes it buckle\n", layer.rise_k);
      }
    }
    /* Linear theory knows no bow past that; these load cases ask for the stretching that it brings. */
    printf("%s moves it by %.3f mm\n", load_case == SUN ? "sun" : "hand", fabs(summary.largest_deflection_m) * 1e3);
  }
  coaming_solution_free(solution);
  return status;
}

int main(int count, char **words) {
  char *document = count > 1 && coaming_abi_matches() ? text_of(words[1]) : NULL;
  if (!document) {
    fprintf(stderr, "give the file of the pane\n");
    return 2;
  }
  CoamingFault fault;
  CoamingPanel *panel = NULL;
  uint32_t status = coaming_panel_new(document, &panel, &fault);
  free(document);
  for (size_t load_case = SUN; load_case <= HAND && status == COAMING_OK; ++load_case) {
    status = tell(panel, load_case, &fault);
  }
  coaming_panel_free(panel);
  if (status == COAMING_OK) return 0;
  fprintf(stderr, "%s: %s\n%s\n", words[1], fault.message, coaming_error_cure(status));
  return 2;
}
