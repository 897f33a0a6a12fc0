// Where the work is compiled: in each file that includes it, or once in a library.
#pragma once

#ifdef LEVIGATE_COMPILED  // set by the CMake target levigate::compiled
#define LEVIGATE_WORK
#else
#define LEVIGATE_WORK inline
#endif
