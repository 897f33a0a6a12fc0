# Target headers_alone: each header compiles with nothing of the library before it, and so takes in all that it needs.
# LEVIGATE_COMPILED keeps out the work that a light header brings in, which could hide a missing include;
# that it comes in a good order is checked by test_headers.py, as are includes of the standard library: what others
# wrote is read once here, which is half of the time.
set(flags -std=c++20 -DLEVIGATE_COMPILED)
get_directory_property(options COMPILE_OPTIONS)
get_target_property(fmt fmt::fmt-header-only INTERFACE_COMPILE_DEFINITIONS)
list(TRANSFORM fmt PREPEND -D)
list(APPEND flags ${options} ${fmt})
set(scratch ${CMAKE_CURRENT_BINARY_DIR}/headers)
file(MAKE_DIRECTORY ${scratch})

set(by_others "")
foreach(header IN ITEMS algorithm array charconv chrono cmath cstdint filesystem fstream functional limits map mutex
    numeric optional random set span sstream string string_view thread tuple variant vector
    nlohmann/json.hpp fmt/format.h)
  string(APPEND by_others "#include <${header}>\n")
endforeach()
file(CONFIGURE OUTPUT ${scratch}/by_others.hpp CONTENT "${by_others}" @ONLY)
add_custom_command(OUTPUT ${scratch}/by_others.hpp.gch DEPENDS ${scratch}/by_others.hpp
  COMMAND ${CMAKE_CXX_COMPILER} ${flags} -x c++-header ${scratch}/by_others.hpp -o ${scratch}/by_others.hpp.gch
  COMMENT "Compiling what others wrote" VERBATIM)
set(stamps "")
foreach(target levigate io text)
  get_target_property(headers levigate::${target} HEADER_SET)
  foreach(header IN LISTS headers)
    string(REGEX REPLACE ".*/include/" "" name ${header})
    string(REPLACE "/" "." stamp ${name})
    string(PREPEND stamp headers/)
    add_custom_command(OUTPUT ${stamp} DEPFILE ${stamp}.d DEPENDS ${header} ${scratch}/by_others.hpp.gch
      COMMAND ${CMAKE_CXX_COMPILER} ${flags} -fsyntax-only -I${PROJECT_SOURCE_DIR}/lib/include
        -include ${scratch}/by_others.hpp -include ${name} -MD -MF ${stamp}.d -MT ${stamp} -x c++ /dev/null
      COMMAND ${CMAKE_COMMAND} -E touch ${stamp}
      COMMENT "Compiling ${name} alone" VERBATIM)
    list(APPEND stamps ${stamp})
  endforeach()
endforeach()
add_custom_target(headers_alone DEPENDS ${stamps})
