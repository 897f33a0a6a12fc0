# levigate_needs(NAME...): finds nlohmann_json or fmt, or else brings the release that is pinned here. What is installed is
# preferred, and so is a target of a larger build. An archive that is not the pinned one stops the configuration.
include(FetchContent)

function(levigate_needs)
  set(levigate_need_nlohmann_json
    VERSION 3.11 TARGET nlohmann_json::nlohmann_json
    URL https://github.com/nlohmann/json/releases/download/v3.11.3/json.tar.xz
    SHA256 d6c65aca6b1ed68e7a182f4757257b107ae403032760ed6ef121c9d55e81757d)
  set(levigate_need_fmt
    VERSION 9 TARGET fmt::fmt-header-only
    URL https://github.com/fmtlib/fmt/releases/download/9.1.0/fmt-9.1.0.zip
    SHA256 cceb4cb9366e18a5742128cb3524ce5f50e88b476f1e54737a47ffdf4df4c996)

  foreach(name IN LISTS ARGN)
    cmake_parse_arguments(need "" "VERSION;TARGET;URL;SHA256" "" ${levigate_need_${name}})
    if(TARGET ${need_TARGET})
      continue()
    endif()
    # With its version, so that an older one leaves no targets behind that those of the pinned one would meet.
    find_package(${name} ${need_VERSION} QUIET)
    if(${name}_FOUND)
      # The larger build links it too. All its targets are passed on: its own find_package refuses a part of them.
      get_property(imported DIRECTORY PROPERTY IMPORTED_TARGETS)
      list(FILTER imported INCLUDE REGEX "^${name}(::|$)")
      set_target_properties(${imported} PROPERTIES IMPORTED_GLOBAL TRUE)
      continue()
    endif()
    message(STATUS "levigate: ${name} ${need_VERSION} is not installed; bringing ${need_URL}")
    # An older CMake does not know these words. 3.25 takes SYSTEM for a part of the hash where it comes after it.
    set(quietly)
    if(NOT CMAKE_VERSION VERSION_LESS 3.25)
      list(APPEND quietly SYSTEM)
    endif()
    if(NOT CMAKE_VERSION VERSION_LESS 3.28)
      list(APPEND quietly EXCLUDE_FROM_ALL)
    endif()
    FetchContent_Declare(${name} ${quietly} URL ${need_URL} URL_HASH SHA256=${need_SHA256})
    FetchContent_MakeAvailable(${name})
  endforeach()
endfunction()
