# find_package(levigate [COMPONENTS io text]): each component brings the package that it needs.
include(CMakeFindDependencyMacro)

foreach(component IN LISTS levigate_FIND_COMPONENTS)
  if(component STREQUAL "io")
    find_dependency(nlohmann_json 3.11)
    set(levigate_io_FOUND TRUE)
  elseif(component STREQUAL "text")
    find_dependency(fmt 9)
    set(levigate_text_FOUND TRUE)
  endif()
endforeach()

include(${CMAKE_CURRENT_LIST_DIR}/levigate-targets.cmake)

