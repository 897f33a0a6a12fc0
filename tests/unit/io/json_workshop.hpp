// The demo files as text, ways to spoil them, and what an error must say.
#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>

#include "levigate/io/json.hpp"

namespace json_workshop {

using namespace levigate;

inline std::string demo_text(const std::string& name) {
  return read_file(LEVIGATE_DATA_DIR "/demo/" + name);
}

/// The text with `from`, which it must hold, replaced where it first stands.
inline std::string with(std::string text, std::string_view from, std::string_view to) {
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  return at == std::string::npos ? text : text.replace(at, from.size(), to);
}

inline std::string job_with(std::string_view from, std::string_view to) {
  return with(demo_text("job.json"), from, to);
}
inline std::string stack_with(std::string_view from, std::string_view to) {
  return with(demo_text("stack.json"), from, to);
}

/// Line of the text in which `part` first stands, from 1.
inline int line_with(std::string_view text, std::string_view part) {
  const std::size_t at = text.find(part);
  EXPECT_NE(at, std::string::npos) << part;
  return 1 + static_cast<int>(std::count(
                 text.begin(),
                 text.begin() + static_cast<std::ptrdiff_t>(std::min(at, text.size())), '\n'));
}

/// ", line 3 of spoilt.json", or for a fault of syntax ", line 3, column 11 of spoilt.json".
inline auto names_line(int line) {
  return testing::ContainsRegex(", line " + std::to_string(line) +
                                "(, column [0-9]+)? of spoilt.json");
}

/// Reading must fail with an error of class Failure whose message holds all of `parts` and the line.
template <typename Failure, typename Read>
Failure expect_fails(Read read, const std::string& text, int line,
                     std::initializer_list<std::string> parts) {
  try {
    read(text, "spoilt.json");
  } catch (const Failure& error) {
    for (const std::string& part : parts) EXPECT_THAT(error.what(), testing::HasSubstr(part));
    EXPECT_THAT(error.what(), names_line(line));
    return error;
  } catch (const std::exception& error) {
    ADD_FAILURE() << "another error: " << error.what();
    return Failure("");
  }
  ADD_FAILURE() << "nothing was thrown";
  return Failure("");
}

/// The same for BadInput, which also carries pointer and line.
template <typename Read>
void expect_bad(Read read, const std::string& text, const std::string& pointer, int line,
                std::initializer_list<std::string> parts) {
  const BadInput error = expect_fails<BadInput>(read, text, line, parts);
  EXPECT_EQ(error.pointer(), pointer);
  EXPECT_EQ(error.line(), line);
}

}  // namespace json_workshop
