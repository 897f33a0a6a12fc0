# Target headers_alone: each header that users include compiles with nothing of the library before it, and so takes in all
# that it needs. Those in work/ are for the library, and take four times as long.
# LEVIGATE_COMPILED keeps out the work that a light header brings in, which could hide a missing include;
# that it comes in a good order is checked by test_headers.py, as are includes of the standard library: that is read
# once here, which is half of the time.
set(flags -std=c++20 -DLEVIGATE_COMPILED)
get_directory_property(options COMPILE_OPTIONS)
get_target_property(fmt fmt::fmt-header-only INTERFACE_COMPILE_DEFINITIONS)
list(TRANSFORM fmt PREPEND -D)
list(APPEND flags ${options} ${fmt})
set(scratch ${CMAKE_CURRENT_BINARY_DIR}/headers)
file(MAKE_DIRECTORY ${scratch})

set(standard "")
foreach(header IN ITEMS algorithm array charconv chrono cmath cstdint filesystem fstream functional limits map mutex
    numeric optional random set span sstream string string_view thread tuple variant vector)
  string(APPEND standard "#include <${header}>\n")
endforeach()
file(CONFIGURE OUTPUT ${scratch}/standard.hpp CONTENT "${standard}" @ONLY)
add_custom_command(OUTPUT ${scratch}/standard.hpp.gch DEPENDS ${scratch}/standard.hpp
  COMMAND ${CMAKE_CXX_COMPILER} ${flags} -x c++-header ${scratch}/standard.hpp -o ${scratch}/standard.hpp.gch
  COMMENT "Compiling the standard headers" VERBATIM)
set(stamps "")
foreach(target levigate io text)
  get_target_property(headers levigate::${target} HEADER_SET)
  foreach(header IN LISTS headers)
    string(REGEX REPLACE ".*/include/" "" name ${header})
    if(name MATCHES "[/]work[/]")
      continue()
    endif()
    string(REPLACE "/" "." stamp ${name})
    string(PREPEND stamp headers/)
    add_custom_command(OUTPUT ${stamp} DEPFILE ${stamp}.d DEPENDS ${header} ${scratch}/standard.hpp.gch
      COMMAND ${CMAKE_CXX_COMPILER} ${flags} -fsyntax-only -I${PROJECT_SOURCE_DIR}/lib/include
        -include ${scratch}/standard.hpp -include ${name} -MD -MF ${stamp}.d -MT ${stamp} -x c++ /dev/null
      COMMAND ${CMAKE_COMMAND} -E touch ${stamp}
      COMMENT "Compiling ${name} alone" VERBATIM)
    list(APPEND stamps ${stamp})
  endforeach()
endforeach()
add_custom_target(headers_alone DEPENDS ${stamps})
