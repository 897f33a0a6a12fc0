// One value of a job or a stack alone, from JSON and as JSON: a zone, a sheet, a coating, a film.
// It stands there as it does in a file, so that a file and a constructor of another language take the same.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "levigate/description.hpp"
#include "levigate/film/film.hpp"

namespace levigate::inline v0 {

/// A key that the object of a value may have.
struct ValueKey {
  std::string_view name;
  const Kind* kind = nullptr;  ///< of what it holds
  bool needed = false;         ///< no object is without it
  bool named = false;          ///< the name of a profile stands for its value
};

/// Keys of the objects of a type, in their order.
std::vector<ValueKey> value_keys(const Description& description);

/// Reads a value of a job or a stack from its JSON text: an object, or the name of a profile. A zone is taken as sprayed: orange
/// peel that is not told is the usual one.
///
/// @param text         the JSON text, UTF-8
/// @param description  of the type of `value`
/// @param value        as it is made; takes what the text says
/// Throws:    as job_from_json
/// Source:    data/schema/job.schema.json, data/schema/stack.schema.json
void value_from_json(std::string_view text, const Description& description, void* value);

/// JSON text of the object of a value, of a profile too: value_from_json() reads it back equal.
std::string value_to_json(const Description& description, const void* value);

/// A film from JSON text in any of its forms: mean and spread, a gauge's readings, or the coats of one round.
///
/// Throws:    as job_from_json; BadInput for coats of several rounds, of which a zone holds those below
Film film_from_json(std::string_view text);

/// Keys of the objects of a film, of all its forms.
std::vector<ValueKey> film_keys();

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/value.hpp"
#endif
