# The golden plan at the two ends of optimisation, never sanitized; the last flag wins over that of the build.
foreach(level O0 O3)
  add_executable(golden_plan_${level} golden/golden_plan.cpp)
  target_link_libraries(golden_plan_${level} PRIVATE levigate::levigate levigate::io)
  target_compile_options(golden_plan_${level} PRIVATE -${level} -fno-sanitize=all)
  target_link_options(golden_plan_${level} PRIVATE -fno-sanitize=all)
  add_test(NAME golden.plan_${level} COMMAND golden_plan_${level} ${PROJECT_SOURCE_DIR}/data)
  set_tests_properties(golden.plan_${level} PROPERTIES LABELS golden)
endforeach()
