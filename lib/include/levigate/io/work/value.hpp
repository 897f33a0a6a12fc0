// The work behind io/value.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/io/value.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/film/film.hpp"
#include "levigate/io/work/document.hpp"
#include "levigate/io/work/form.hpp"
#include "levigate/io/work/form_film.hpp"
#include "levigate/io/work/form_job.hpp"
#include "levigate/io/work/forms.hpp"
#include "levigate/io/work/node.hpp"
#include "levigate/io/work/read_described.hpp"
#include "levigate/io/work/write_described.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Whether names stand for the values of a kind.
inline bool has_names(const Kind& kind) {
  if (kind.form == Form::maybe || kind.form == Form::list) return has_names(*kind.of);
  if (kind.form != Form::value) return false;
  const FileForm* form = given_forms().of(kind.described());
  return form && form->names;
}

inline void add_value_keys(const Description& description, std::vector<ValueKey>& keys) {
  const FileForms& forms = given_forms();
  const FileForm* form = forms.of(description);
  const auto add_after = [&](std::string_view member) {
    for (const FileKeys* more : forms.after(description, member)) add_value_keys(*more->keys, keys);
  };
  add_after("");
  for (const Member& member : description.members) {
    if (!forms.holds(description, member)) continue;
    if (!member.spread) {
      const bool by_form = form && form->may && form->may(nullptr, member.name);
      const bool maybe = member.may || by_form || member.kind->form == Form::maybe;
      keys.push_back({member.name, member.kind, !maybe, has_names(*member.kind)});
    } else if (member.kind->form == Form::value) {
      add_value_keys(member.kind->described(), keys);
    } else {
      for (const Kind* kind : member.kind->kinds) {
        const std::size_t first = keys.size();
        add_value_keys(kind->described(), keys);
        for (std::size_t i = first; i < keys.size(); ++i) keys[i].needed = false;  // one of several
      }
    }
    add_after(member.name);
  }
}

inline void read_value(std::string_view text, const Description& description, void* value) {
  const Document document(text, "", 0, true);
  std::vector<Fault> faults;
  const Node root(document);
  DescribedReader reader(as_given, faults);
  reader.value(description, root, value, "");
  // No job says what a zone alone starts with. Taken as sprayed, its peel counts until a job says otherwise.
  if (&description == &description_of<Zone>() && faults.empty())
    reader.attempt([&] { settle_peel(reader, root, as<Zone>(value)); });
  throw_faults(std::move(faults));
}

}  // namespace detail

LEVIGATE_WORK std::vector<ValueKey> value_keys(const Description& description) {
  std::vector<ValueKey> keys;
  detail::add_value_keys(description, keys);
  return keys;
}

LEVIGATE_WORK void value_from_json(std::string_view text, const Description& description,
                                   void* value) {
  detail::read_value(text, description, value);
}

LEVIGATE_WORK std::string value_to_json(const Description& description, const void* value) {
  detail::OrderedJson json = detail::OrderedJson::object();
  detail::add_members(json, description, value, detail::as_given);
  return detail::json_text(json);
}

LEVIGATE_WORK Film film_from_json(std::string_view text) {
  detail::LaidFilm laid;
  detail::read_value(text, description_of<detail::LaidFilm>(), &laid);
  if (laid.below_um > 0.0)
    throw BadInput("coats of several rounds tell two films: give them as the film of a zone");
  return laid.film;
}

LEVIGATE_WORK std::vector<ValueKey> film_keys() {
  std::vector<ValueKey> keys;
  for (const Description* shape : detail::film_shapes()) {
    for (ValueKey key : value_keys(*shape)) {
      key.needed = false;  // of another form
      const auto same = [&](const ValueKey& other) { return other.name == key.name; };
      if (std::none_of(keys.begin(), keys.end(), same)) keys.push_back(key);
    }
  }
  return keys;
}

}  // namespace levigate
