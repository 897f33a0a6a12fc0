# The library as its users meet it: installed and found, added as a subdirectory, and refused under
# compiler flags that would break its promises.
set(here ${CMAKE_CURRENT_LIST_DIR})
set(scratch ${CMAKE_CURRENT_BINARY_DIR}/consumer)

# WAY.TARGET.STANDARD. Of two builds each may take some: each compiler then meets both uses and both languages. The
# compiled library as part of a larger build is what the Python module does.
set(LEVIGATE_CONSUMERS find_package.headers.20 subdirectory.headers.23 find_package.compiled.23
  CACHE STRING "Uses of the library that are tested")

# Where the library was built before, it is installed from there.
set(built ${PROJECT_BINARY_DIR})
if(LEVIGATE_COMPILED_AT)
  cmake_path(GET LEVIGATE_COMPILED_AT PARENT_PATH built)
endif()
if(LEVIGATE_CONSUMERS MATCHES find_package)
  add_test(NAME consumer.install COMMAND
    ${CMAKE_COMMAND} --install ${built} --component levigate --prefix ${scratch}/prefix)
  set_tests_properties(consumer.install PROPERTIES FIXTURES_SETUP install_tree LABELS consumer)
endif()

# levigate_consumer(NAME FOLDER ARGUMENT...): configures the project in FOLDER with these arguments,
# builds and runs it.
function(levigate_consumer name folder)
  add_test(NAME consumer.${name} COMMAND ${CMAKE_CTEST_COMMAND}
    --build-and-test ${folder} ${scratch}/${name} --build-generator ${CMAKE_GENERATOR}
    --build-options -DCMAKE_CXX_COMPILER=${CMAKE_CXX_COMPILER} ${ARGN}
    --test-command ${CMAKE_CTEST_COMMAND} --output-on-failure)
  set_tests_properties(consumer.${name} PROPERTIES LABELS consumer)
endfunction()

# What is installed was built with the flags of this build, as sanitizers, so its user links with them.
foreach(use IN LISTS LEVIGATE_CONSUMERS)
  string(REPLACE "." ";" use ${use})
  list(GET use 0 way)
  list(GET use 1 target)
  list(GET use 2 standard)
  set(name ${way}_${target}_cxx${standard})
  set(arguments -DCMAKE_CXX_STANDARD=${standard} -DLEVIGATE_DEMO=${PROJECT_SOURCE_DIR}/data/demo)
  if(way STREQUAL "find_package")
    list(APPEND arguments -DCMAKE_PREFIX_PATH=${scratch}/prefix)
  else()
    list(APPEND arguments -DLEVIGATE_CHECKOUT=${PROJECT_SOURCE_DIR})
  endif()
  set(folder ${here})
  if(target STREQUAL "compiled")
    set(folder ${here}/compiled)
    list(APPEND arguments "-DCMAKE_CXX_FLAGS=${CMAKE_CXX_FLAGS}")
  endif()
  levigate_consumer(${name} ${folder} ${arguments})
  if(way STREQUAL "find_package")
    set_tests_properties(consumer.${name} PROPERTIES FIXTURES_REQUIRED install_tree)
  endif()
endforeach()

# levigate_refused(NAME FLAG): core.cpp compiles, and with this flag it stops at our #error, which names
# the flag. Without the work, for time.
set(compile ${CMAKE_CXX_COMPILER} -std=c++20 -O2 -fsyntax-only -Wfatal-errors -DLEVIGATE_COMPILED
  -I${PROJECT_SOURCE_DIR}/lib/include ${here}/core.cpp)
add_test(NAME consumer.plain_flags_accepted COMMAND ${compile})
set_tests_properties(consumer.plain_flags_accepted PROPERTIES LABELS consumer)
function(levigate_refused name flag)
  add_test(NAME consumer.${name}_refused COMMAND ${compile} ${flag})
  set_tests_properties(consumer.${name}_refused PROPERTIES LABELS consumer
    PASS_REGULAR_EXPRESSION "error: .*levigate [a-zA-Z ]+: build with.* ${flag}")
endfunction()
levigate_refused(fast_math -ffast-math)
levigate_refused(finite_math -ffinite-math-only)
levigate_refused(no_exceptions -fno-exceptions)
