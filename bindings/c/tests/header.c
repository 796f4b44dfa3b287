/* The header stands alone in C and in C++, and goes with the library. */
#include "coaming.h"

#include <stdio.h>
#include <string.h>

int main(void) {
  if (!coaming_abi_matches() || strlen(coaming_version()) == 0) {
    fprintf(stderr, "header and library do not go together\n");
    return 1;
  }
  return 0;
}
