# Target headers_alone: each header compiles with nothing before it, and so takes in all that it needs.
# LEVIGATE_COMPILED keeps out the work that a light header brings in, which could hide a missing include;
# that it comes in a good order is checked by test_headers.py.
set(flags -std=c++20 -fsyntax-only -DLEVIGATE_COMPILED -I${PROJECT_SOURCE_DIR}/lib/include)
get_directory_property(options COMPILE_OPTIONS)
get_target_property(fmt fmt::fmt-header-only INTERFACE_COMPILE_DEFINITIONS)
list(TRANSFORM fmt PREPEND -D)
file(MAKE_DIRECTORY ${CMAKE_CURRENT_BINARY_DIR}/headers)
set(stamps "")
foreach(target levigate io text)
  get_target_property(headers levigate::${target} HEADER_SET)
  foreach(header IN LISTS headers)
    string(REGEX REPLACE ".*/include/" "" name ${header})
    string(REPLACE "/" "." stamp ${name})
    string(PREPEND stamp headers/)
    add_custom_command(OUTPUT ${stamp} DEPFILE ${stamp}.d DEPENDS ${header}
      COMMAND ${CMAKE_CXX_COMPILER} ${flags} ${options} ${fmt} -include ${name}
        -MD -MF ${stamp}.d -MT ${stamp} -x c++ /dev/null
      COMMAND ${CMAKE_COMMAND} -E touch ${stamp}
      COMMENT "Compiling ${name} alone" VERBATIM)
    list(APPEND stamps ${stamp})
  endforeach()
endforeach()
add_custom_target(headers_alone DEPENDS ${stamps})
