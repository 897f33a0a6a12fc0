// A value from a row of its profile table: members and columns that bear one name.
#pragma once

#include <cstddef>
#include <string>

#include "levigate/describe.hpp"
#include "levigate/sourced.hpp"

namespace levigate::inline v0::detail {

/// The value with the name of the row, and with each number of it that bears a member's name.
template <typename Value, typename Row, std::size_t columns>
Value filled(const Row& row, const TableField<Row> (&table)[columns]) {
  const Description& description = description_of<Value>();
  Value value{};
  value.name = std::string(row.name);
  for (const TableField<Row>& column : table) {
    const Member* member = description.find(column.quantity);
    const Sourced* number = column.number(row);
    if (member && number) member->kind->set_number(member->in_mutable(&value), number->value);
  }
  return value;
}

}  // namespace levigate::inline v0::detail
