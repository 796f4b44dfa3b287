/* Solves one panel, a lid on its seal, and tells where the seal is compressed least, what each latch pulls and where the lid
 * rings first: `panel FILE`. Exit status 2 for bad input. */
#include "coaming.h"

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

/* Told when a mesh is begun and before every step on it; anything but 0 would stop the work. */
static uint32_t hear(const CoamingProgress *progress, void *user) {
  (void)user;
  const char *work = progress->work == COAMING_WORK_MODES ? "modes" : "equilibrium";
  if (progress->step == 0) fprintf(stderr, "%s: mesh %u of %u triangles\n", work, progress->mesh, progress->triangles);
  return 0;
}

static int refused(const char *name, const CoamingFault *fault) {
  fprintf(stderr, "%s: %s\n%s\n", name, fault->message, coaming_error_cure(fault->code));
  return 2;
}

int main(int count, char **words) {
  if (count < 2 || !coaming_abi_matches()) {
    fprintf(stderr, "give the file of a panel\n");
    return 2;
  }
  char *document = text_of(words[1]);
  if (!document) {
    fprintf(stderr, "%s cannot be read\n", words[1]);
    return 2;
  }
  CoamingFault fault;
  CoamingPanel *panel = NULL;
  CoamingSolution *solution = NULL;
  uint32_t status = coaming_panel_new(document, &panel, &fault);
  free(document);
  if (status == COAMING_OK) status = coaming_panel_solve(panel, 0, hear, NULL, &solution, &fault);
  coaming_panel_free(panel);
  if (status != COAMING_OK) return refused(words[1], &fault);

  CoamingSummary summary;
  CoamingGasketState seal;
  CoamingMode mode;
  CoamingLatchState latch;
  if (coaming_solution_summary(solution, &summary, &fault) != COAMING_OK ||
      coaming_solution_gasket(solution, 0, &seal, &fault) != COAMING_OK ||
      coaming_solution_mode(solution, 0, &mode, &fault) != COAMING_OK) {
    coaming_solution_free(solution);
    return refused(words[1], &fault);
  }
  printf("seal compressed least: %.3f mm at (%.0f mm, %.0f mm), most: %.3f mm\n", seal.smallest_m * 1e3,
         seal.smallest_x_m * 1e3, seal.smallest_y_m * 1e3, seal.largest_m * 1e3);
  for (size_t i = 0; i < summary.latches; ++i) {
    if (coaming_solution_latch(solution, i, &latch, &fault) == COAMING_OK) {
      printf("latch %s pulls %.1f N\n", latch.name, latch.pull_n);
    }
  }
  printf("first mode: %.1f Hz\n", mode.frequency_hz);
  printf("%s\n", summary.error_met ? "the mesh meets the tolerance" : "THE MESH DOES NOT MEET THE TOLERANCE");

  /* The whole of it in words, with the cautions. */
  char *text = NULL;
  status = coaming_solution_text(solution, "text", "shop", &text, &fault);
  coaming_solution_free(solution);
  if (status != COAMING_OK) return refused(words[1], &fault);
  printf("\n%s", text);
  coaming_text_free(text);
  return 0;
}
