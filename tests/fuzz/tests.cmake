# Each NAME.cpp here defines LLVMFuzzerTestOneInput; files in corpus/NAME are where it starts from. Seed and number of
# runs are fixed, so that a failure comes back. The engine sees every branch of the compiled library.
# Clang brings a fuzzing engine, and what instruments the library for it the runtime of a sanitizer.
if(NOT CMAKE_CXX_COMPILER_ID STREQUAL "Clang" OR NOT CMAKE_CXX_FLAGS MATCHES "-fsanitize=[a-z,-]*address"
    OR LEVIGATE_COMPILED_AT)
  return()
endif()
target_compile_options(levigate_compiled PRIVATE -fsanitize=fuzzer-no-link)
file(GLOB sources CONFIGURE_DEPENDS fuzz/*.cpp)
foreach(source IN LISTS sources)
  cmake_path(GET source STEM name)
  add_executable(fuzz_${name} ${source})
  target_link_libraries(fuzz_${name} PRIVATE levigate::compiled)
  target_compile_options(fuzz_${name} PRIVATE -fsanitize=fuzzer)
  target_link_options(fuzz_${name} PRIVATE -fsanitize=fuzzer)
  file(GLOB corpus CONFIGURE_DEPENDS fuzz/corpus/${name}/*)
  list(JOIN corpus "," corpus)
  list(TRANSFORM corpus PREPEND "-seed_inputs=")  # nothing where there is no corpus
  add_test(NAME fuzz.${name} COMMAND fuzz_${name}
    -seed=1 -runs=5000 -max_len=4096 ${corpus}
    -artifact_prefix=${CMAKE_CURRENT_BINARY_DIR}/${name}-)
  set_tests_properties(fuzz.${name} PROPERTIES LABELS fuzz TIMEOUT 300)
endforeach()
