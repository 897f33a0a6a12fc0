// What a file says that it is: its format, asked for before anything else is read, and its name in messages.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/error.hpp"
#include "levigate/io/work/example.hpp"
#include "levigate/io/work/node.hpp"

namespace levigate::inline v0::detail {

/// Where a value stands, for messages; at the root, what a file of it is called.
inline std::string place_of(const Description& description, const std::string& pointer) {
  if (!pointer.empty()) return pointer;
  std::string name = "the " + std::string(description.name);
  if (name[4] >= 'A' && name[4] <= 'Z') name[4] = static_cast<char>(name[4] - 'A' + 'a');
  return name;
}

/// "job" of "levigate.job/1".
inline std::string_view kind_of_format(std::string_view format) {
  format.remove_prefix(std::min(format.size(), format.find('.') + 1));
  return format.substr(0, format.find('/'));
}

/// Throws: BadInput where this is no object, or one of another format. One that has no format is told, and read on.
inline void require_format(const Node& root, std::string_view wanted, std::vector<Fault>& faults) {
  const std::string tag = "\"format\": \"" + std::string(wanted) + "\"";
  root.require_object("an object of format '" + std::string(wanted) + "'");
  const auto format = root.find("format");
  if (format && format->is_text()) {
    const std::string given = format->text();
    if (given == wanted) return;
    const bool ours = given.starts_with("levigate.");
    const bool other = ours && kind_of_format(given) != kind_of_format(wanted);
    format->fail((other ? "this is a file of a " + shown(std::string(kind_of_format(given))) +
                              ", and a " + std::string(kind_of_format(wanted)) + " is wanted: "
                        : "") +
                 "format is '" + shown(given) + "', wanted '" + std::string(wanted) + "'");
  }
  try {
    root.fail("format is missing or no text, wanted '" + std::string(wanted) + "'");
  } catch (const Error& error) {
    faults.push_back(error.fault());
    show_example(faults.back(), tag);
  }
}

}  // namespace levigate::inline v0::detail
