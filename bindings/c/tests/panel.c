/* The panel solver behind its handles: a plate against the handbook, a lid with modes and opening, progress, stopping,
 * and calls that no program should make. */
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

static CoamingFault fault;

static int is_refused(uint32_t status, uint32_t code, const char *field) {
  int is = status == code && fault.code == code && strcmp(fault.field, field) == 0 && strlen(fault.message) > 0;
  if (!is) fprintf(stderr, "status %u, field `%s`: %s\n", (unsigned)status, fault.field, fault.message);
  memset(&fault, 0, sizeof fault);
  return is;
}

static int is_done(uint32_t status) {
  if (status != COAMING_OK) fprintf(stderr, "status %u: %s\n", (unsigned)status, fault.message);
  return status == COAMING_OK;
}

/* A square of 1 m on a knife edge all round. */
static const char *const plate =
    "version = 1\n"
    "title = \"plate\"\n"
    "outline.rectangle = { width = \"1 m\", height = \"1 m\" }\n"
    "[[layers]]\n"
    "name = \"sheet\"\n"
    "thickness = \"5 mm\"\n"
    "density = \"2700 kg/m^3\"\n"
    "material.isotropic = { youngs_modulus = \"70 GPa\", poissons_ratio = 0.3 }\n"
    "[[line_supports]]\n"
    "line.edge = {}\n"
    "deflection = \"fixed\"\n"
    "slope = \"free\"\n"
    "[[load_cases]]\n"
    "name = \"wind\"\n"
    "pressures = [{ pressure = \"100 Pa\" }]\n";

/* A square lid of 0.4 m that its corner latches draw onto a gasket, with a stop in the middle. */
static const char *const lid =
    "{\"version\": 1, \"title\": \"lid\", \"outline\": {\"rectangle\": {\"width\": \"0.4 m\", \"height\": \"0.4 m\"}},"
    "\"layers\": [{\"name\": \"sheet\", \"thickness\": \"4 mm\", \"density\": \"2700 kg/m^3\","
    "\"material\": {\"isotropic\": {\"youngs_modulus\": \"70 GPa\", \"poissons_ratio\": 0.3}}}],"
    "\"gaskets\": [{\"line\": {\"rectangle\": {\"width\": \"0.36 m\", \"height\": \"0.36 m\"}},"
    "\"law\": {\"linear\": {\"stiffness\": \"0.1 MPa\"}}, \"free_height\": \"10 mm\", \"closed_gap\": \"7 mm\"}],"
    "\"stops\": [{\"at\": {\"x\": \"0 m\", \"y\": \"0 m\"}, \"deflection\": \"-5 mm\", \"stiffness\": \"1 kN/mm\"}],"
    "\"latches\": ["
    "{\"name\": \"a\", \"at\": {\"x\": \"-0.19 m\", \"y\": \"-0.19 m\"}, \"action\": {\"height\": {\"deflection\": \"0 mm\"}}},"
    "{\"name\": \"b\", \"at\": {\"x\": \"0.19 m\", \"y\": \"-0.19 m\"}, \"action\": {\"height\": {\"deflection\": \"0 mm\"}}},"
    "{\"name\": \"c\", \"at\": {\"x\": \"0.19 m\", \"y\": \"0.19 m\"}, \"action\": {\"height\": {\"deflection\": \"0 mm\"}}},"
    "{\"name\": \"d\", \"at\": {\"x\": \"-0.19 m\", \"y\": \"0.19 m\"}, \"action\": {\"height\": {\"deflection\": \"0 mm\"}}}],"
    "\"load_cases\": [{\"name\": \"closed\", \"modes\": 2, \"opening\": true}]}";

static CoamingPanel *panel_of(const char *document) {
  CoamingPanel *panel = NULL;
  if (!is_done(coaming_panel_new(document, &panel, &fault)) || !panel) abort();
  return panel;
}

/* What the solver told. */
typedef struct {
  unsigned calls, meshes;
  uint32_t triangles, stop_after;
  CoamingPanel *panel;
} Told;

static uint32_t hear(const CoamingProgress *progress, void *user) {
  Told *told = user;
  ++told->calls;
  if (progress->step == 0) ++told->meshes;
  told->triangles = progress->triangles;
  return told->stop_after != 0 && told->calls >= told->stop_after;
}

/* Solving the panel that is being solved is refused, and the solve goes on. */
static uint32_t solve_again(const CoamingProgress *progress, void *user) {
  Told *told = user;
  CoamingSolution *none = NULL;
  if (progress->mesh == 0 && progress->step == 0) {
    HOLD(is_refused(coaming_panel_solve(told->panel, 0, NULL, NULL, &none, &fault), COAMING_ERROR_INCONSISTENT, "panel"));
    HOLD(none == NULL);
  }
  return 0;
}

/* All values of one kind; the caller frees them. */
static double *values_of(const CoamingSolution *solution, uint32_t which, size_t index, size_t expected) {
  size_t count = 0, again = 0;
  HOLD(is_done(coaming_solution_values(solution, which, index, NULL, 0, &count, &fault)));
  HOLD(count == expected);
  double *values = malloc((count + 1) * sizeof *values);
  if (!values) abort();
  values[count] = 12345.0;
  HOLD(is_done(coaming_solution_values(solution, which, index, values, count, &again, &fault)));
  HOLD(again == count && values[count] == 12345.0);
  int finite = 1;
  for (size_t i = 0; i < count; ++i) finite = finite && isfinite(values[i]);
  HOLD(finite);
  return values;
}

/* Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, table 8, simply supported square: 0.00406 q a^4 / D in the middle,
 * moment 0.0479 q a^2. Pressed in, the deflection is negative, and so are the moments. */
static void a_plate(void) {
  CoamingPanel *panel = panel_of(plate);
  CoamingSolution *solution = NULL;
  CoamingSummary summary;
  CoamingReaction reaction;
  CoamingLayerStresses stresses;
  Told told = {0, 0, 0, 0, NULL};
  size_t cases = 0;
  HOLD(is_done(coaming_panel_load_cases(panel, &cases, &fault)) && cases == 1);
  HOLD(is_done(coaming_panel_solve(panel, 0, hear, &told, &solution, &fault)));
  HOLD(is_done(coaming_solution_summary(solution, &summary, &fault)));
  HOLD(told.meshes >= 2 && told.calls > told.meshes && told.triangles == summary.triangles);
  const double stiffness = 70e9 * 0.005 * 0.005 * 0.005 / (12.0 * (1.0 - 0.3 * 0.3));
  const double printed = -0.00406 * 100.0 / stiffness;
  HOLD(fabs(summary.largest_deflection_m / printed - 1.0) < 0.005);
  HOLD(fabs(summary.largest_deflection_x_m) < 1e-9 && fabs(summary.largest_deflection_y_m) < 1e-9);
  HOLD(fabs(summary.largest_moment_n / (-0.0479 * 100.0) - 1.0) < 0.02 && summary.has_error_moment == 1);
  HOLD(summary.error_met == 1 && summary.has_error_deflection == 1 && summary.has_opening_travel == 0);
  HOLD(summary.balance_force < 1e-8 && summary.balance_moment < 1e-8);
  HOLD(summary.line_reactions == 1 && summary.stresses == 1 && summary.latches + summary.gaskets + summary.modes == 0);
  HOLD(is_done(coaming_solution_line_reaction(solution, 0, &reaction, &fault)) && fabs(reaction.force_n - 100.0) < 1e-6);
  HOLD(is_done(coaming_solution_stresses(solution, 0, &stresses, &fault)) && strcmp(stresses.name, "sheet") == 0);
  HOLD(fabs(stresses.inner_pa / (6.0 * 0.0479 * 100.0 / (0.005 * 0.005)) - 1.0) < 0.02 && stresses.outer_pa < 0.0);

  /* The deflection by vertex has the summary's at its place; triangles index vertices. */
  double *x = values_of(solution, COAMING_VALUES_X, 0, summary.vertices);
  double *y = values_of(solution, COAMING_VALUES_Y, 0, summary.vertices);
  double *deflection = values_of(solution, COAMING_VALUES_DEFLECTION, 0, summary.vertices);
  double *slope = values_of(solution, COAMING_VALUES_SLOPE_X, 0, summary.vertices);
  double *moment = values_of(solution, COAMING_VALUES_MOMENT_XX, 0, summary.triangles);
  double *inner = values_of(solution, COAMING_VALUES_INNER_LARGER, 0, stresses.triangles);
  size_t lowest = 0, count = 0, inside = 0;
  for (size_t i = 1; i < summary.vertices; ++i) {
    if (deflection[i] < deflection[lowest]) lowest = i;
  }
  HOLD(deflection[lowest] == summary.largest_deflection_m);
  HOLD(x[lowest] == summary.largest_deflection_x_m && y[lowest] == summary.largest_deflection_y_m);
  HOLD(fabs(slope[lowest]) < 1e-6);
  double least = 0.0;
  for (size_t i = 0; i < summary.triangles; ++i) least = moment[i] < least ? moment[i] : least;
  HOLD(fabs(least / (-0.0479 * 100.0) - 1.0) < 0.02);
  uint32_t *triangles = malloc(3 * summary.triangles * sizeof *triangles);
  if (!triangles) abort();
  HOLD(is_done(coaming_solution_indices(solution, COAMING_INDICES_TRIANGLES, 0, triangles, 3 * summary.triangles,
                                        &count, &fault)));
  for (size_t i = 0; i < count; ++i) inside += triangles[i] < summary.vertices;
  HOLD(count == 3 * summary.triangles && inside == count);

  /* The load turned round turns the deflection round, to the bit, and the first solution stays. */
  CoamingSolution *outward = NULL;
  HOLD(is_done(coaming_panel_solve_load(panel, "{\"name\": \"out\", \"pressures\": [{\"pressure\": \"-100 Pa\"}]}", NULL,
                                        NULL, &outward, &fault)));
  coaming_panel_free(panel);
  double *other = values_of(outward, COAMING_VALUES_DEFLECTION, 0, summary.vertices);
  double *still = values_of(solution, COAMING_VALUES_DEFLECTION, 0, summary.vertices);
  size_t same = 0;
  for (size_t i = 0; i < summary.vertices; ++i) same += other[i] == -deflection[i];
  HOLD(same == summary.vertices && memcmp(still, deflection, summary.vertices * sizeof *still) == 0);
  char *words = NULL;
  HOLD(is_done(coaming_solution_text(outward, "text", "shop", &words, &fault)));
  HOLD(words && strstr(words, "Load case out") && strstr(words, "certificate") && strstr(words, "Cautions"));
  coaming_text_free(words);
  coaming_solution_free(outward);
  coaming_solution_free(solution);
  free(x), free(y), free(deflection), free(slope), free(moment), free(inner), free(triangles), free(other), free(still);
}

/* By symmetry the four latches share the gasket's force; each travels about the 3 mm of compression until it is free. */
static void a_lid(void) {
  CoamingPanel *panel = panel_of(lid);
  CoamingSolution *solution = NULL;
  CoamingSummary summary;
  CoamingGasketState gasket;
  CoamingLatchState latch;
  CoamingMode first, second;
  double push = -1.0, pulls = 0.0;
  HOLD(is_done(coaming_panel_solve(panel, 0, NULL, NULL, &solution, &fault)));
  HOLD(is_done(coaming_solution_summary(solution, &summary, &fault)));
  HOLD(summary.latches == 4 && summary.gaskets == 1 && summary.stops == 1 && summary.modes == 2);
  HOLD(is_done(coaming_solution_gasket(solution, 0, &gasket, &fault)) && gasket.beyond_law == 0);
  /* The latches draw the lid to 3 mm of compression; between them it bows outward. */
  HOLD(gasket.smallest_m > 0.0 && gasket.smallest_m < gasket.largest_m && gasket.largest_m < 0.003);
  HOLD(gasket.open_length_m == 0.0);
  HOLD(is_done(coaming_solution_stop(solution, 0, &push, &fault)) && push == 0.0);
  for (size_t i = 0; i < 4; ++i) {
    HOLD(is_done(coaming_solution_latch(solution, i, &latch, &fault)) && latch.name[0] == 'a' + (char)i);
    HOLD(latch.has_opening_travel == 1 && latch.opening_travel_m > 0.0025 && latch.opening_travel_m < 0.0035);
    HOLD(fabs(latch.pull_n / (gasket.force_n / 4.0) - 1.0) < 0.01);
    pulls += latch.pull_n;
  }
  HOLD(fabs(pulls / gasket.force_n - 1.0) < 1e-8);
  HOLD(summary.has_opening_travel == 1 && summary.opening_travel_m >= latch.opening_travel_m);
  HOLD(is_done(coaming_solution_mode(solution, 0, &first, &fault)));
  HOLD(is_done(coaming_solution_mode(solution, 1, &second, &fault)));
  HOLD(first.has_error == 1 && first.error_met == 1 && first.error < 0.005);
  HOLD(first.frequency_hz > 0.0 && first.frequency_hz <= second.frequency_hz);
  double *compression = values_of(solution, COAMING_VALUES_GASKET_COMPRESSION, 0, gasket.samples);
  double *along = values_of(solution, COAMING_VALUES_GASKET_ALONG, 0, gasket.samples);
  double *shape = values_of(solution, COAMING_VALUES_MODE_SHAPE, 1, summary.mode_vertices);
  double *mode_x = values_of(solution, COAMING_VALUES_MODE_X, 0, summary.mode_vertices);
  HOLD(gasket.samples > 4 && fabs(along[gasket.samples - 1] - 4 * 0.36) < 1e-3);
  free(compression), free(along), free(shape), free(mode_x);

  /* A missing latch pulls nothing; the others pull more. */
  CoamingSolution *missing = NULL;
  CoamingLatchState slack;
  HOLD(is_done(coaming_panel_solve_load(panel, "name = \"one missing\"\nmissing_latches = [\"a\"]", NULL, NULL, &missing,
                                        &fault)));
  HOLD(is_done(coaming_solution_latch(missing, 0, &slack, &fault)) && slack.pull_n == 0.0 && slack.deflection_m > 0.0);
  HOLD(slack.has_opening_travel == 0);
  coaming_solution_free(missing);
  coaming_solution_free(solution);
  coaming_panel_free(panel);
}

static void stopping(void) {
  CoamingPanel *panel = panel_of(plate);
  CoamingSolution *solution = NULL;
  for (uint32_t after = 1; after < 5; ++after) {
    Told told = {0, 0, 0, after, NULL};
    HOLD(is_refused(coaming_panel_solve(panel, 0, hear, &told, &solution, &fault), COAMING_ERROR_CANCELLED, ""));
    HOLD(told.calls == after && solution == NULL);
  }
  Told told = {0, 0, 0, 0, panel};
  HOLD(is_done(coaming_panel_solve(panel, 0, solve_again, &told, &solution, &fault)) && solution != NULL);
  coaming_solution_free(solution);
  coaming_panel_free(panel);
}

static void hostile(void) {
  CoamingPanel *panel = NULL;
  CoamingSolution *solution = NULL;
  size_t count = 77;
  HOLD(is_refused(coaming_panel_new(NULL, &panel, &fault), COAMING_ERROR_WRONG_TYPE, "document"));
  HOLD(is_refused(coaming_panel_new(plate, NULL, &fault), COAMING_ERROR_WRONG_TYPE, "panel"));
  HOLD(is_refused(coaming_panel_new("\xff", &panel, &fault), COAMING_ERROR_UNREADABLE, ""));
  HOLD(is_refused(coaming_panel_new("", &panel, &fault), COAMING_ERROR_UNREADABLE, ""));
  HOLD(is_refused(coaming_panel_new("{}", &panel, &fault), COAMING_ERROR_MISSING, "version"));
  HOLD(coaming_panel_new("{", &panel, NULL) == COAMING_ERROR_UNREADABLE);
  HOLD(panel == NULL);
  /* After an error there is no panel, and what is asked of none is refused. */
  HOLD(is_refused(coaming_panel_solve(panel, 0, NULL, NULL, &solution, &fault), COAMING_ERROR_WRONG_TYPE, "panel"));
  HOLD(is_refused(coaming_panel_solve_load(panel, "name = \"a\"", NULL, NULL, &solution, &fault), COAMING_ERROR_WRONG_TYPE,
                  "panel"));
  HOLD(is_refused(coaming_panel_load_cases(panel, &count, &fault), COAMING_ERROR_WRONG_TYPE, "panel"));
  coaming_panel_free(NULL);
  coaming_solution_free(NULL);

  panel = panel_of(plate);
  HOLD(is_refused(coaming_panel_load_cases(panel, NULL, &fault), COAMING_ERROR_WRONG_TYPE, "count"));
  HOLD(is_refused(coaming_panel_solve(panel, 0, NULL, NULL, NULL, &fault), COAMING_ERROR_WRONG_TYPE, "solution"));
  HOLD(is_refused(coaming_panel_solve(panel, 1, NULL, NULL, &solution, &fault), COAMING_ERROR_IMPOSSIBLE, "load_case"));
  HOLD(is_refused(coaming_panel_solve(panel, SIZE_MAX, NULL, NULL, &solution, &fault), COAMING_ERROR_IMPOSSIBLE,
                  "load_case"));
#define LOAD(text, code, field) \
  HOLD(is_refused(coaming_panel_solve_load(panel, text, NULL, NULL, &solution, &fault), COAMING_ERROR_##code, field))
  LOAD(NULL, WRONG_TYPE, "load");
  LOAD("\xc3", UNREADABLE, "");
  LOAD("{}", MISSING, "name");
  LOAD("name = \"a\"\npresures = []", UNKNOWN_KEY, "presures");
  LOAD("name = \"a\"\nmissing_latches = [\"a\"]", NOT_AN_OPTION, "load.missing_latches[0]");
  LOAD("name = \"a\"\nmodes = 0", IMPOSSIBLE, "modes");
#undef LOAD
  /* A place is no field: it stands in the message. */
  HOLD(coaming_panel_solve_load(panel, "name = \"a\"\npoint_forces = [{ at = { x = \"2 m\", y = \"0 m\" }, force = \"1 N\" }]",
                                NULL, NULL, &solution, &fault) == COAMING_ERROR_GEOMETRY);
  HOLD(strstr(fault.message, "load.point_forces[0] at (2000 mm, 0 mm)") != NULL);
  HOLD(solution == NULL);
  HOLD(is_done(coaming_panel_solve(panel, 0, NULL, NULL, &solution, &fault)));

  CoamingSummary summary;
  CoamingLatchState latch;
  CoamingGasketState gasket;
  CoamingReaction reaction;
  CoamingLayerStresses stresses;
  CoamingMode mode;
  double push, one[3] = {7, 7, 7};
  uint32_t three[3] = {7, 7, 7};
  char untouched, *text = &untouched;
  HOLD(is_refused(coaming_solution_summary(NULL, &summary, &fault), COAMING_ERROR_WRONG_TYPE, "solution"));
  HOLD(is_refused(coaming_solution_summary(solution, NULL, &fault), COAMING_ERROR_WRONG_TYPE, "summary"));
  HOLD(coaming_solution_summary(NULL, NULL, NULL) == COAMING_ERROR_WRONG_TYPE);
  HOLD(is_done(coaming_solution_summary(solution, &summary, NULL)));
#define INDEX(call) HOLD(is_refused(call, COAMING_ERROR_IMPOSSIBLE, "index"))
  INDEX(coaming_solution_latch(solution, 0, &latch, &fault));
  INDEX(coaming_solution_gasket(solution, 0, &gasket, &fault));
  INDEX(coaming_solution_line_reaction(solution, 1, &reaction, &fault));
  INDEX(coaming_solution_point_reaction(solution, 0, &reaction, &fault));
  INDEX(coaming_solution_stop(solution, 0, &push, &fault));
  INDEX(coaming_solution_stresses(solution, SIZE_MAX, &stresses, &fault));
  INDEX(coaming_solution_mode(solution, 0, &mode, &fault));
  INDEX(coaming_solution_values(solution, COAMING_VALUES_GASKET_FORCE, 0, one, 3, &count, &fault));
  INDEX(coaming_solution_values(solution, COAMING_VALUES_OUTER_SMALLER, 9, one, 3, &count, &fault));
  INDEX(coaming_solution_indices(solution, COAMING_INDICES_LAYER_TRIANGLES, 1, three, 3, &count, &fault));
#undef INDEX
  HOLD(is_refused(coaming_solution_latch(NULL, 0, &latch, &fault), COAMING_ERROR_WRONG_TYPE, "solution"));
  HOLD(is_refused(coaming_solution_stresses(solution, 0, NULL, &fault), COAMING_ERROR_WRONG_TYPE, "stresses"));
#define VALUES(which, values, room, count, code, field) \
  HOLD(is_refused(coaming_solution_values(solution, which, 0, values, room, count, &fault), COAMING_ERROR_##code, field))
  VALUES(COAMING_VALUES_X, one, 3, NULL, WRONG_TYPE, "count");
  VALUES(COAMING_VALUES_X, NULL, 3, &count, WRONG_TYPE, "values");
  VALUES(COAMING_VALUES_X, one, 3, &count, TOO_LARGE, "values");
  VALUES(COAMING_VALUES_X, one, 0, &count, TOO_LARGE, "values");
  VALUES(COAMING_VALUES_MODE_SHAPE, one, 3, &count, MISSING, "modes");
  VALUES(99, one, 3, &count, NOT_AN_OPTION, "which");
  VALUES(UINT32_MAX, one, 3, &count, NOT_AN_OPTION, "which");
#undef VALUES
  HOLD(is_refused(coaming_solution_values(NULL, 0, 0, one, 3, &count, &fault), COAMING_ERROR_WRONG_TYPE, "solution"));
  HOLD(is_refused(coaming_solution_indices(solution, COAMING_INDICES_TRIANGLES, 0, three, 3, &count, &fault),
                  COAMING_ERROR_TOO_LARGE, "values"));
  HOLD(is_refused(coaming_solution_indices(solution, COAMING_INDICES_BUCKLING_TRIANGLES, 0, three, 3, &count, &fault),
                  COAMING_ERROR_MISSING, "buckling"));
  HOLD(is_refused(coaming_solution_indices(solution, 99, 0, three, 3, &count, &fault), COAMING_ERROR_NOT_AN_OPTION, "which"));
  HOLD(count == 77 && one[0] == 7 && three[0] == 7);
  HOLD(is_refused(coaming_solution_text(NULL, "text", "shop", &text, &fault), COAMING_ERROR_WRONG_TYPE, "solution"));
  HOLD(is_refused(coaming_solution_text(solution, NULL, "shop", &text, &fault), COAMING_ERROR_WRONG_TYPE, "output"));
  HOLD(is_refused(coaming_solution_text(solution, "markdown", "shop", &text, &fault), COAMING_ERROR_NOT_AN_OPTION,
                  "output"));
  HOLD(is_refused(coaming_solution_text(solution, "text", "metric", &text, &fault), COAMING_ERROR_NOT_AN_OPTION, "units"));
  HOLD(is_refused(coaming_solution_text(solution, "text", "shop", NULL, &fault), COAMING_ERROR_WRONG_TYPE, "answer"));
  HOLD(text == &untouched);
  coaming_solution_free(solution);
  coaming_panel_free(panel);
}

/* Shapes and laws that cannot be: `from` in the lid's document replaced by `to`. */
static void shapes(void) {
  static const struct {
    const char *from, *to;
    uint32_t code;
    const char *says;
  } cases[] = {
      {"{\"rectangle\": {\"width\": \"0.4 m\", \"height\": \"0.4 m\"}}",
       "{\"polygon\": {\"points\": [{\"x\": \"0 mm\", \"y\": \"0 mm\"}, {\"x\": \"100 mm\", \"y\": \"100 mm\"},"
       " {\"x\": \"100 mm\", \"y\": \"0 mm\"}, {\"x\": \"0 mm\", \"y\": \"100 mm\"}]}}",
       COAMING_ERROR_GEOMETRY, "outline at (50 mm, 50 mm): crosses itself"},
      {"\"layers\":", "\"holes\": [{\"circle\": {\"diameter\": \"10 mm\", \"centre\": {\"x\": \"1 m\", \"y\": \"0 m\"}}}], \"layers\":",
       COAMING_ERROR_GEOMETRY, "holes[0] at"},
      {"\"thickness\": \"4 mm\"", "\"thickness\": \"0 mm\"", COAMING_ERROR_IMPOSSIBLE, "greater than 0 mm"},
      {"\"x\": \"-0.19 m\"", "\"x\": \"-0.29 m\"", COAMING_ERROR_GEOMETRY, "latches[0] at (-290 mm, -190 mm)"},
      {"{\"linear\": {\"stiffness\": \"0.1 MPa\"}}",
       "{\"measured\": {\"points\": [{\"compression\": \"0 mm\", \"force\": \"0 N/mm\"},"
       " {\"compression\": \"2 mm\", \"force\": \"1 N/mm\"}, {\"compression\": \"4 mm\", \"force\": \"0.5 N/mm\"}]}}",
       COAMING_ERROR_INCONSISTENT, "the force falls at a compression of 4 mm"},
  };
  for (size_t i = 0; i < sizeof cases / sizeof cases[0]; ++i) {
    const char *at = strstr(lid, cases[i].from);
    char *document = malloc(strlen(lid) + strlen(cases[i].to) + 1);
    CoamingPanel *panel = NULL;
    if (!at || !document) abort();
    sprintf(document, "%.*s%s%s", (int)(at - lid), lid, cases[i].to, at + strlen(cases[i].from));
    HOLD(coaming_panel_new(document, &panel, &fault) == cases[i].code && panel == NULL);
    HOLD(strstr(fault.message, cases[i].says) != NULL);
    if (!strstr(fault.message, cases[i].says)) fprintf(stderr, "%s\n", fault.message);
    free(document);
  }
  /* Nothing that holds: found when it is solved, and the motion is named. */
  char *document = malloc(strlen(plate) + 1);
  CoamingSolution *solution = NULL;
  if (!document) abort();
  strcpy(document, plate);
  memcpy(strstr(document, "\"fixed\""), "\"free\" ", 7);
  CoamingPanel *panel = panel_of(document);
  HOLD(coaming_panel_solve(panel, 0, NULL, NULL, &solution, &fault) == COAMING_ERROR_SINGULAR && solution == NULL);
  HOLD(strstr(fault.message, "moves freely along its normal") != NULL);
  coaming_panel_free(panel);
  free(document);
}

int main(void) {
  a_plate();
  a_lid();
  stopping();
  hostile();
  shapes();
  printf("%lu passed, %lu failed\n", passed, failed);
  return failed == 0 && passed > 0 ? 0 : 1;
}
