/* One calculation from C, called once: nanoseconds for each call, the median of some runs. */
#define _POSIX_C_SOURCE 199309L
#include "coaming.h"

#include <stdio.h>
#include <stdlib.h>
#include <time.h>

enum { RUNS = 15, CALLS = 100000 };

static double seconds(void) {
  struct timespec now;
  clock_gettime(CLOCK_MONOTONIC, &now);
  return (double)now.tv_sec + (double)now.tv_nsec * 1e-9;
}

static int ascending(const void *left, const void *right) {
  const double a = *(const double *)left, b = *(const double *)right;
  return (a > b) - (a < b);
}

int main(void) {
  CoamingBendAllowance bend = {
      .bend_angle_rad = 1.5707963267948966,
      .inside_radius_m = 0.0016,
      .thickness_m = 0.0016,
      .k_factor = 0.43,
      .leg_reference = COAMING_LEG_REFERENCE_TO_VIRTUAL_SHARP,
  };
  CoamingBendAllowanceOutcome outcome;
  double times[RUNS];
  volatile double sink = 0;
  for (int run = -1; run < RUNS; ++run) {
    const double start = seconds();
    for (int call = 0; call < CALLS; ++call) {
      if (coaming_bend_allowance(&bend, &outcome, NULL) != COAMING_OK) return 1;
      sink = outcome.bend_allowance_m;
    }
    if (run >= 0) times[run] = (seconds() - start) / CALLS * 1e9;
  }
  (void)sink;
  qsort(times, RUNS, sizeof times[0], ascending);
  printf("%-58s %9.2f ns  (%.2f to %.2f)\n", "bend_allowance, one call from C", times[RUNS / 2], times[0], times[RUNS - 1]);
  return 0;
}
