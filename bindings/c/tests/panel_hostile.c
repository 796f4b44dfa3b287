/* Panels that cannot be: each is refused with the error that Rust gives, in its words as far as a fault has room for them, and a panel
 * that refused a load can still be solved. */
#include "coaming.h"

#include <stdio.h>
#include <string.h>

typedef struct {
  const char *what, *document, *field, *message;
  uint32_t code;
} Refusal;

#include "refusals_table.h"

static unsigned long passed, failed;

static void hold(int condition, const char *what, const CoamingFault *fault) {
  if (condition) {
    ++passed;
  } else {
    ++failed;
    fprintf(stderr, "%s: code %u, field `%s`: %s\n", what, (unsigned)fault->code, fault->field, fault->message);
  }
}

/* As much of a text as an array has room for, cut between two characters of at most four bytes. */
static int is_cut_from(const char *found, size_t room, const char *whole) {
  size_t length = strlen(found);
  return strncmp(found, whole, length) == 0 && (length == strlen(whole) || length + 4 >= room);
}

static int is_due(uint32_t status, const CoamingFault *fault, const Refusal *due) {
  return status == due->code && fault->code == due->code && fault->index == -1 &&
         is_cut_from(fault->field, sizeof fault->field, due->field) &&
         is_cut_from(fault->message, sizeof fault->message, due->message);
}

int main(void) {
  CoamingFault fault;
  for (size_t i = 0; i < sizeof refusals / sizeof refusals[0]; ++i) {
    const Refusal *due = &refusals[i];
    CoamingPanel *panel = NULL;
    CoamingSolution *solution = NULL;
    memset(&fault, 0, sizeof fault);
    uint32_t status = coaming_panel_new(due->document, &panel, &fault);
    const int is_made = status == COAMING_OK;
    if (is_made) status = coaming_panel_solve(panel, 0, NULL, NULL, &solution, &fault);
    hold(is_due(status, &fault, due) && solution == NULL && is_made == (panel != NULL), due->what, &fault);
    /* A panel that was made outlives its refusal: asked again, it gives the same. */
    if (is_made) {
      status = coaming_panel_solve(panel, 0, NULL, NULL, &solution, &fault);
      hold(is_due(status, &fault, due) && solution == NULL, due->what, &fault);
    }
    coaming_panel_free(panel);
    char untouched, *text = &untouched;
    status = coaming_panel(due->document, "text", "shop", &text, &fault);
    hold(is_due(status, &fault, due) && text == &untouched, due->what, &fault);
  }

  /* What is wrong with a load leaves the panel as it was. */
  static const struct {
    const char *load, *field;
    uint32_t code;
  } loads[] = {
      {"name = \"a\"\nbuckling = 0", "buckling", COAMING_ERROR_IMPOSSIBLE},
      {"name = \"a\"\nbuckling = 21", "buckling", COAMING_ERROR_IMPOSSIBLE},
      {"name = \"a\"\ncritical_rise = true", "load.temperatures", COAMING_ERROR_MISSING},
      {"name = \"a\"\ngrowths = [{ layer = \"sheet\", strain = nan }]", "growths[0].strain", COAMING_ERROR_IMPOSSIBLE},
      {"name = \"a\"\ngrowths = [{ layer = \"x\", strain = 0 }]", "load.growths[0].layer", COAMING_ERROR_NOT_AN_OPTION},
      {"name = \"a\"\nedge_forces = [{ edge = {}, layer = \"x\" }]", "load.edge_forces[0].layer",
       COAMING_ERROR_NOT_AN_OPTION},
      {"name = \"a\"\nlarge_deflexion = true", "large_deflexion", COAMING_ERROR_UNKNOWN_KEY},
      {"{\"name\": \"a\", \"large_deflection\": 1}", "large_deflection", COAMING_ERROR_WRONG_TYPE},
  };
  CoamingPanel *panel = NULL;
  CoamingSolution *first = NULL, *none = NULL, *last = NULL;
  CoamingSummary before, after;
  hold(coaming_panel_new(sound, &panel, &fault) == COAMING_OK, "the sound panel", &fault);
  hold(coaming_panel_solve(panel, 0, NULL, NULL, &first, &fault) == COAMING_OK, "the sound panel", &fault);
  for (size_t i = 0; i < sizeof loads / sizeof loads[0]; ++i) {
    const uint32_t status = coaming_panel_solve_load(panel, loads[i].load, NULL, NULL, &none, &fault);
    hold(status == loads[i].code && strcmp(fault.field, loads[i].field) == 0 && none == NULL, loads[i].load, &fault);
  }
  hold(coaming_panel_solve(panel, 0, NULL, NULL, &last, &fault) == COAMING_OK, "the sound panel, again", &fault);
  hold(coaming_solution_summary(first, &before, &fault) == COAMING_OK, "its summary", &fault);
  hold(coaming_solution_summary(last, &after, &fault) == COAMING_OK, "its summary, again", &fault);
  hold(before.largest_deflection_m < 0.0 && before.largest_deflection_m == after.largest_deflection_m, "the same", &fault);
  coaming_solution_free(first);
  coaming_solution_free(last);
  coaming_panel_free(panel);
  printf("%lu passed, %lu failed\n", passed, failed);
  return failed == 0 && passed > 0 ? 0 : 1;
}
