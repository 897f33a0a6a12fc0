// One input that a sequence hangs on: its band and source, and how to set it to another value.
#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/detail/profile.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/work/median_band.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/sourced.hpp"
#include "levigate/stack/step_rule.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The table's number where the value in use is the table's, else one given by the user.
template <typename Row, std::size_t count>
Sourced traced(const Row (&table)[count], std::string_view name, const TableField<Row>& column,
               double in_use) {
  for (const Row& row : table) {
    const Sourced* number = row.name == name ? column.number(row) : nullptr;
    if (number && number->value == in_use) return *number;
  }
  return given(in_use);
}

/// Whether a row of that name lacks a number that is zero in use: what it is of does not have it, and nobody gave it.
template <typename Row, std::size_t count>
bool lacked(const Row (&table)[count], std::string_view name, const TableField<Row>& column,
            double in_use) {
  return in_use == 0.0 && has_profile(table, name) &&
         !column.number(profile_named(table, name, "profile"));
}

/// Whether a description says of every number in a table what input it is.
template <typename Value, typename Row, std::size_t columns>
constexpr bool says_inputs(const TableField<Row> (&fields)[columns]) {
  for (const TableField<Row>& field : fields) {
    for (const Member& member : described<Value>.members) {
      if (member.name == field.quantity && member.input == Input::unsaid) return false;
    }
  }
  return true;
}

/// One input together with how to set it to another value everywhere it stands.
struct Knob {
  std::string subject;
  std::string quantity;
  Input kind = Input::believed;
  Sourced input;
  std::function<void(Setup&, double)> set;
};

/// Positions of the values that a test holds for. They stay right when the values are changed, as a comparison would not.
template <typename Value, typename Test>
std::vector<std::size_t> positions(const std::vector<Value>& values, Test test) {
  std::vector<std::size_t> result;
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (test(values[i])) result.push_back(i);
  }
  return result;
}

/// Adds an input for each column of a table that is a number of a value, in the order of the table. `all` gives where the value
/// stands in a setup, each place of it.
template <typename Value, typename Row, std::size_t rows, std::size_t columns, typename All>
void add_knobs(std::vector<Knob>& result, const std::string& subject, const Value& value,
               const Row (&table)[rows], std::string_view name,
               const TableField<Row> (&fields)[columns], All all) {
  for (const TableField<Row>& field : fields) {
    const Member* member = description_of<Value>().find(field.quantity);
    const bool of_step =
        std::is_same_v<Value, Rules> && description_of<StepRule>().find(field.quantity);
    if (!member || of_step) continue;
    const double in_use = member->kind->number(member->in(&value));
    if (lacked(table, name, field, in_use)) continue;
    result.push_back({subject, std::string(field.quantity), member->input,
                      traced(table, name, field, in_use),
                      [member, all](Setup& setup, double number) {
                        for (Value* one : all(setup))
                          member->kind->set_number(member->in_mutable(one), number);
                      }});
  }
}

}  // namespace detail

}  // namespace levigate
