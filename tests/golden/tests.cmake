# The golden plan by the compiled library of each build: never optimised under the sanitizers, optimised as far as it goes
# in the Python module. The two are made by different compilers.
add_executable(golden_plan golden/golden_plan.cpp)
target_link_libraries(golden_plan PRIVATE levigate::compiled)
add_test(NAME golden.plan COMMAND golden_plan ${PROJECT_SOURCE_DIR}/data)
set_tests_properties(golden.plan PROPERTIES LABELS golden)
