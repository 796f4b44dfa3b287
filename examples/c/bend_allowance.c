/* The first bend of the U-channel in FAA-H-8083-31A, ch. 4: what does the bend take, and what comes off the legs?
 *
 *   cc -std=c99 -I bindings/c/include examples/c/bend_allowance.c -L FOLDER -lcoaming -o bend_allowance
 *
 * with the folder that holds libcoaming.so and libcoaming.so.0.1; `cargo build --release -p coaming-c` builds the first,
 * the second is a link to it. */
#include "coaming.h"

#include <math.h>
#include <stdio.h>

static const double INCH = 0.0254;

int main(void) {
  if (!coaming_abi_matches()) {
    fprintf(stderr, "coaming.h does not go with libcoaming %s\n", coaming_version());
    return 1;
  }

  const CoamingBendAllowance bend = {
      .bend_angle_rad = 3.141592653589793 / 2, /* 90 deg */
      .inside_radius_m = 0.16 * INCH,
      .thickness_m = 0.04 * INCH,
      .k_factor = 0.4467,
      .leg_reference = COAMING_LEG_REFERENCE_TO_VIRTUAL_SHARP,
  };
  CoamingBendAllowanceOutcome outcome;
  CoamingFault fault;
  if (coaming_bend_allowance(&bend, &outcome, &fault) != COAMING_OK) {
    fprintf(stderr, "%s\n%s\n", fault.message, coaming_error_cure(fault.code));
    return 1;
  }

  printf("bend allowance %.4f in\n", outcome.bend_allowance_m / INCH);
  printf("bend deduction %.4f in\n", outcome.bend_deduction_m / INCH);
  if (outcome.has_setback) printf("setback        %.4f in\n", outcome.setback_m / INCH);
  for (uint32_t bit = 0; bit < 64; ++bit) {
    if (coaming_has_caveat(outcome.caveats, bit)) printf("%s\n", coaming_caveat_text(bit));
  }

  /* Step 2 of the handbook prints a setback of 0.2 in. */
  return outcome.has_setback && fabs(outcome.setback_m / INCH - 0.2) < 0.0005 ? 0 : 1;
}
