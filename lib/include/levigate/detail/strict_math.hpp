// Refuses compilers flags under which the promises of this library (NaN rules, exact decisions, the same answer on every machine) cannot hold.
// Included by every header that makes such a promise.
#pragma once

#if defined(__FAST_MATH__) || (defined(__FINITE_MATH_ONLY__) && __FINITE_MATH_ONLY__)
#error "levigate needs IEEE arithmetic: build without -ffast-math and -ffinite-math-only"
#endif
