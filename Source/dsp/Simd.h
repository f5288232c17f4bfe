#pragma once

// Inner loops are built twice, the second time for wider registers, and the processor's own is taken when the program
// starts. Both add in the same order and neither fuses multiplications, so their answers are the same to the last bit.
#if defined(__x86_64__) && defined(__gnu_linux__) && ! defined(__SANITIZE_THREAD__) && ! defined(__SANITIZE_ADDRESS__)
#define COLDIRON_SIMD __attribute__ ((target_clones ("avx2", "default")))
#else
#define COLDIRON_SIMD
#endif
