// How described values stand in a file: walks both ways, and what is special about types that are more than the object of their members.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/error.hpp"
#include "levigate/io/work/locate.hpp"

namespace levigate::inline v0::detail {

class Node;
class DescribedReader;
struct Style;

/// As Member::infinite and Member::none: JSON's null stands for an infinite number, or for none.
inline constexpr std::string_view null_text = "null";

/// What is special about a type in files of what one gives. What does not apply is null.
struct FileForm {
  const Description* of = nullptr;

  /// Names that stand for whole values, as those of profiles.
  std::vector<std::string_view> (*names)() = nullptr;
  /// Sets the value of a name. Throws: BadInput where there is none
  void (*take)(std::string_view name, void* value) = nullptr;
  /// The name that stands for a value; empty: its members are written
  std::string_view (*name_of)(const void* value) = nullptr;

  bool one_key = false;                       ///< an object has just one of the keys
  std::vector<std::string_view> beside_it{};  ///< but for these, which may stand beside it
  /// What an object starts from, before its members are read
  void (*begin)(const Node& node, void* value) = nullptr;
  /// Whether an object may leave out a member that no description lets it; of none: whether any may
  bool (*may)(const Node* node, std::string_view member) = nullptr;
  /// What is to be done once all members are read, before a rule is asked
  void (*settle)(DescribedReader& reader, const Node& node, void* value) = nullptr;
  /// Whether writing leaves a member out
  bool (*hides)(const void* value, std::string_view member) = nullptr;

  /// An array of the members' values, and what it is, for messages
  std::string_view pair{};
  /// Objects of these descriptions stand for it: see read
  std::vector<const Description*> (*shapes)() = nullptr;
  /// Reads in place of all that. Throws any Error for what it cannot read.
  void (*read)(DescribedReader& reader, const Node& node, void* value,
               const std::string& named) = nullptr;
};

/// Keys of an object that are no members of its type.
struct FileKeys {
  const Description* of;                  ///< the type whose objects have them
  const Description* keys;                ///< members of this are the keys
  std::string_view after;                 ///< member that they follow
  std::vector<std::string_view> instead;  ///< members that objects do not have
  /// Reads them into the value whose object it is
  void (*read)(DescribedReader& reader, const Node& node, void* value, const std::string& named);
  /// Adds them to its object; null: they are not written
  void (*write)(OrderedJson& json, const void* value, const Style& style);
};

/// A number that is most likely of another unit than that of its name.
struct UnitQuestion {
  Fault fault;            ///< what stands there, and that it is asked about
  bool possible = false;  ///< it is in its range
  std::string if_not;     ///< ". Is the unit um? If not, write ...": how to say another one
  std::string if_so;      ///< and how to say that it is meant as it stands
};

/// All that is special in one kind of file.
struct FileForms {
  std::span<const FileForm> types;
  std::span<const FileKeys> keys;
  /// The question about a number of a member that is most likely of another unit; null: nothing is asked
  std::optional<UnitQuestion> (*asks)(const Description& description, const Member& member,
                                      const void* at) = nullptr;

  /// The form of a type, or null.
  const FileForm* of(const Description& description) const {
    for (const FileForm& form : types) {
      if (form.of == &description) return &form;
    }
    return nullptr;
  }

  /// Keys that follow a member; before the first, those that follow nothing.
  std::vector<const FileKeys*> after(const Description& description,
                                     std::string_view member) const {
    std::vector<const FileKeys*> found;
    for (const FileKeys& one : keys) {
      if (one.of == &description && one.after == member) found.push_back(&one);
    }
    return found;
  }

  /// Whether objects have a member under its own name.
  bool holds(const Description& description, const Member& member) const {
    if (!member.held) return false;
    for (const FileKeys& one : keys) {
      if (one.of != &description) continue;
      for (const std::string_view name : one.instead) {
        if (name == member.name) return false;
      }
    }
    return true;
  }
};

inline const FileForms& no_forms() {
  static const FileForms none;
  return none;
}

/// How values stand in a file.
struct Style {
  bool full =
      false;  ///< every key is there, null for none; else keys that say nothing are left out
  const FileForms& (*forms)() = no_forms;

  static const Style whole;   ///< a result
  static const Style sparse;  ///< what one gives
};

inline constexpr Style Style::whole{.full = true};
inline constexpr Style Style::sparse{.full = false};

/// A value in its form or as the object of its members.
OrderedJson json_of(const Description& description, const void* value, const Style& style);

/// Adds the members of a value to an object.
void add_members(OrderedJson& json, const Description& description, const void* value,
                 const Style& style);

/// Text with two blanks a level. Bytes that are not UTF-8 are replaced, as JSON cannot hold them.
std::string json_text(const OrderedJson& json);

/// A whole file: its format, then the members of the value.
OrderedJson file_json(std::string_view format, const Description& description, const void* value,
                      const Style& style);

template <Described Value>
std::string file_text(std::string_view format, const Value& value, const Style& style) {
  return json_text(file_json(format, description_of<Value>(), &value, style));
}

/// Reads a file that file_text() wrote, or somebody by hand, into a value as it is made.
///
/// Throws: what is wrong with it, all at once, each with pointer and line: see throw_faults()
void read_file_text(std::string_view text, std::string_view file, std::string_view format,
                    const Description& description, void* value, const Style& style,
                    int first_line);

template <Described Value>
Value value_of_file(std::string_view text, std::string_view file, std::string_view format,
                    const Style& style, int first_line = 1) {
  Value value;
  read_file_text(text, file, format, description_of<Value>(), &value, style, first_line);
  return value;
}

}  // namespace levigate::inline v0::detail
