# levigate_needs(NAME...): finds nlohmann_json or fmt, or else brings the release that is pinned here. What is installed is
# preferred, and so is a target of a larger build. An archive that is not the pinned one stops the configuration.
include(FetchContent)

set(levigate_need_nlohmann_json
  VERSION 3.11 TARGET nlohmann_json::nlohmann_json
  URL https://github.com/nlohmann/json/releases/download/v3.11.3/json.tar.xz
  SHA256 d6c65aca6b1ed68e7a182f4757257b107ae403032760ed6ef121c9d55e81757d)
set(levigate_need_fmt
  VERSION 9 TARGET fmt::fmt-header-only
  URL https://github.com/fmtlib/fmt/releases/download/9.1.0/fmt-9.1.0.zip
  SHA256 cceb4cb9366e18a5742128cb3524ce5f50e88b476f1e54737a47ffdf4df4c996)

function(levigate_needs)
  foreach(name IN LISTS ARGN)
    cmake_parse_arguments(need "" "VERSION;TARGET;URL;SHA256" "" ${levigate_need_${name}})
    if(TARGET ${need_TARGET})
      continue()
    endif()
    # Any version from this one on will do, whatever the package says of its own compatibility.
    find_package(${name} QUIET GLOBAL)
    if(${name}_FOUND AND NOT ${name}_VERSION VERSION_LESS need_VERSION)
      continue()
    endif()
    message(STATUS "levigate: ${name} ${need_VERSION} is not installed; bringing ${need_URL}")
    FetchContent_Declare(${name} URL ${need_URL} URL_HASH SHA256=${need_SHA256}
      DOWNLOAD_EXTRACT_TIMESTAMP OFF EXCLUDE_FROM_ALL SYSTEM)
    FetchContent_MakeAvailable(${name})
  endforeach()
endfunction()
