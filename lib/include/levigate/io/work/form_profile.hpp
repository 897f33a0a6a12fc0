// What profiles hold, in files: by its name, or by its numbers.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/detail/profile.hpp"
#include "levigate/film/gauge.hpp"
#include "levigate/film/gauge_table.hpp"
#include "levigate/io/work/form.hpp"
#include "levigate/io/work/node.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/backing_table.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/block_table.hpp"
#include "levigate/stack/machine.hpp"
#include "levigate/stack/machine_table.hpp"
#include "levigate/stack/wheel.hpp"
#include "levigate/surface/coating.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/wheel/compound.hpp"
#include "levigate/wheel/compound_table.hpp"
#include "levigate/wheel/wheel.hpp"
#include "levigate/wheel/wheel_table.hpp"

namespace levigate::inline v0::detail {

template <const auto& table>
std::vector<std::string_view> names_in() {
  std::vector<std::string_view> names;
  for (const auto& row : table) {
    names.push_back(row.name);
    names.insert(names.end(), row.also.begin(), row.also.end());
  }
  return names;
}

template <typename Value, Value (*named)(std::string_view)>
void take_profile(std::string_view name, void* value) {
  as<Value>(value) = named(name);
}

/// The name of a value, where the profile of that name has just these numbers; else nothing.
template <typename Value, const auto& table, Value (*named)(std::string_view)>
std::string_view profile_of(const void* at) {
  const Value& value = as<Value>(at);
  return has_profile(table, value.name) && named(value.name) == value ? value.name
                                                                      : std::string_view();
}

/// The form of a type of which there are profiles.
template <typename Value, const auto& table, Value (*named)(std::string_view)>
FileForm profile_form() {
  return {
      .of = &description_of<Value>(), .names = names_in<table>, .take = take_profile<Value, named>};
}

template <typename Value, const auto& table, Value (*named)(std::string_view)>
FileForm written_profile_form() {
  FileForm form = profile_form<Value, table, named>();
  form.name_of = profile_of<Value, table, named>;
  return form;
}

/// What an object that leaves out parts of a coating has of them: those of the profile of its name.
inline Coating parts_of_profile(std::string_view name) {
  if (!has_profile(coating_table, name)) return {};
  Coating coating = coating_named(name);
  coating.two_part.reset();
  return coating;
}

inline FileForm coating_form() {
  FileForm form = written_profile_form<Coating, coating_table, coating_named>();
  form.begin = [](const Node& node, void* value) {
    if (const auto name = node.find("name"); name && name->is_text())
      as<Coating>(value) = parts_of_profile(name->text());
  };
  form.hides = [](const void* value, std::string_view name) {
    const Coating left_out = parts_of_profile(as<Coating>(value).name);
    const Member& member = *description_of<Coating>().find(name);
    const auto none = [&](const void* at) { return member.kind->size(member.in(at)) == 0; };
    return member.none == null_text && none(value) && none(&left_out);
  };
  return form;
}

/// The tool of a compound is told beside it.
inline FileForm compound_form() {
  FileForm form = profile_form<Polish, compound_table, polish_named>();
  form.name_of = [](const void* value) -> std::string_view {
    Polish polish = as<Polish>(value);
    polish.tool.reset();
    const std::string_view name = profile_of<Polish, compound_table, polish_named>(&polish);
    return name.empty() ? name : std::string_view(as<Polish>(value).name);
  };
  return form;
}

inline std::vector<FileForm> profile_forms() {
  return {coating_form(),
          written_profile_form<Block, block_table, block_named>(),
          written_profile_form<Backing, backing_table, backing_named>(),
          written_profile_form<Wheel, wheel_table, wheel_named>(),
          written_profile_form<Machine, machine_table, machine_named>(),
          compound_form(),
          profile_form<Gauge, gauge_table, gauge_named>()};
}

}  // namespace levigate::inline v0::detail
