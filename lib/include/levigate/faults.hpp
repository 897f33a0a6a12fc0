// What speaks against a value: every member outside its range, and every rule that does not hold. From its description.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/error.hpp"

namespace levigate::inline v0 {

/// All faults of a value and of the values inside it, in the order of their members.
///
/// @param description  of the type of the value
/// @param value        the value
/// @param where        the place in messages: a JSON pointer, or any name
/// @return             one fault a member outside its range, one a rule that does not hold; empty where all is well
/// Throws:    nothing but what memory asks for
/// NaN:       outside every range
/// Source:    -
std::vector<Fault> faults_of(const Description& description, const void* value,
                             std::string_view where);

/// Throws these faults: the class of its code for one, BadInput for several. None: returns.
void throw_faults(std::vector<Fault> faults);

/// Throws: OutOfRange, BadInput where a value or a value inside it has faults; see faults_of().
template <Described Value>
void validate(const Value& value, std::string_view where = "") {
  throw_faults(faults_of(description_of<Value>(), &value, where));
}

/// Whether two members of one kind are the same; NaN equals nothing.
bool same(const Kind& kind, const void* a, const void* b);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/detail/work/faults.hpp"
#endif
