// The version of the library, and the inline namespace that keeps two versions apart in one program.
#pragma once

namespace levigate::inline v0 {

inline constexpr int version_major = 0;
inline constexpr int version_minor = 1;
inline constexpr int version_patch = 0;
inline constexpr const char* version_string = "0.1.0";

}  // namespace levigate
