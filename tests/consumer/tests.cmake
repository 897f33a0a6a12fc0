# The library as its users meet it: installed and found, added as a subdirectory, and refused under
# compiler flags that would break its promises.
set(here ${CMAKE_CURRENT_LIST_DIR})
set(scratch ${CMAKE_CURRENT_BINARY_DIR}/consumer)

add_test(NAME consumer.install COMMAND
  ${CMAKE_COMMAND} --install ${PROJECT_BINARY_DIR} --component levigate --prefix ${scratch}/prefix)
set_tests_properties(consumer.install PROPERTIES FIXTURES_SETUP install_tree LABELS consumer)

# levigate_consumer(NAME FOLDER ARGUMENT...): configures the project in FOLDER with these arguments,
# builds and runs it.
function(levigate_consumer name folder)
  add_test(NAME consumer.${name} COMMAND ${CMAKE_CTEST_COMMAND}
    --build-and-test ${folder} ${scratch}/${name} --build-generator ${CMAKE_GENERATOR}
    --build-options -DCMAKE_CXX_COMPILER=${CMAKE_CXX_COMPILER} ${ARGN}
    --test-command ${CMAKE_CTEST_COMMAND} --output-on-failure)
  set_tests_properties(consumer.${name} PROPERTIES LABELS consumer)
endfunction()

# Both ways to get it, both ways to use it, in the language of the library and in the next one.
foreach(standard 20 23)
  foreach(folder . compiled)
    string(REPLACE "." headers use ${folder})
    set(arguments ${here}/${folder} -DCMAKE_CXX_STANDARD=${standard}
      -DLEVIGATE_DEMO=${PROJECT_SOURCE_DIR}/data/demo)
    set(name ${use}_cxx${standard})
    levigate_consumer(find_package_${name} ${arguments} -DCMAKE_PREFIX_PATH=${scratch}/prefix)
    set_tests_properties(consumer.find_package_${name} PROPERTIES FIXTURES_REQUIRED install_tree)
    levigate_consumer(subdirectory_${name} ${arguments} -DLEVIGATE_CHECKOUT=${PROJECT_SOURCE_DIR})
  endforeach()
endforeach()

# levigate_refused(NAME FLAG): core.cpp compiles, and with this flag it stops at our #error.
set(compile ${CMAKE_CXX_COMPILER} -std=c++20 -O2 -fsyntax-only
  -I${PROJECT_SOURCE_DIR}/lib/include ${here}/core.cpp)
add_test(NAME consumer.plain_flags_accepted COMMAND ${compile})
set_tests_properties(consumer.plain_flags_accepted PROPERTIES LABELS consumer)
function(levigate_refused name flag)
  add_test(NAME consumer.${name}_refused COMMAND ${compile} ${flag})
  set_tests_properties(consumer.${name}_refused PROPERTIES LABELS consumer
    PASS_REGULAR_EXPRESSION "error: .*levigate needs IEEE arithmetic")
endfunction()
levigate_refused(fast_math -ffast-math)
levigate_refused(finite_math -ffinite-math-only)
