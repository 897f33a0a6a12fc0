// The work behind io/descriptions.hpp: defines what it declares.
#pragma once

#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/io/descriptions.hpp"

#include "levigate/bench/spraying.hpp"
#include "levigate/describe.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/io/work/form.hpp"
#include "levigate/io/work/forms.hpp"
#include "levigate/io/work/said.hpp"
#include "levigate/io/work/write_described.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/recover/way_back.hpp"
#include "levigate/risk/buying.hpp"
#include "levigate/risk/calibration.hpp"
#include "levigate/risk/comparison.hpp"
#include "levigate/risk/simulation.hpp"
#include "levigate/risk/together.hpp"
#include "levigate/risk/when_done.hpp"
#include "levigate/stack/stack.hpp"
#include "levigate/told_unit.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Takes down descriptions, each once, and those that their members hold.
class DescriptionDump {
 public:
  OrderedJson types = OrderedJson::object();

  void add(const Description& description) {
    const std::string name(description.name);
    if (types.contains(name)) return;
    types[name] = OrderedJson{{"about", description.about}};
    OrderedJson members = OrderedJson::array();
    add_members(members, description);
    types[name]["members"] = std::move(members);
    const FileForm* form = as_given.forms().of(description);
    if (!form) return;
    OrderedJson more = OrderedJson::object();  // aside: shapes add types, which moves those here
    add_form(more, *form);
    types[name].update(more);
  }

 private:
  void add_members(OrderedJson& members, const Description& description) {
    const FileForms& forms = as_given.forms();
    add_keys(members, description, "");
    for (const Member& member : description.members) {
      if (!member.held) continue;
      members.push_back(json_of_member(member, description));
      if (!forms.holds(description, member)) members.back()["given"] = false;
      add_keys(members, description, member.name);
      for (const SaidKey& one : said_keys()) {
        if (one.of != &description || one.after != member.name) continue;
        OrderedJson kind{{"form", "text"}};
        if (one.list) kind = {{"form", "list"}, {"of", kind}};
        members.push_back({{"name", one.key}, {"about", one.about}, {"kind", kind}});
      }
    }
  }

  /// Keys that only a file of what one gives has.
  void add_keys(OrderedJson& members, const Description& description, std::string_view after) {
    for (const FileKeys* keys : as_given.forms().after(description, after)) {
      for (const Member& key : keys->keys->members) {
        members.push_back(json_of_member(key, *keys->keys));
        members.back()["given"] = true;
      }
    }
  }

  void add_form(OrderedJson& type, const FileForm& form) {
    if (form.names) type["names"] = form.names();
    if (form.one_key) type["one_key"] = true;
    if (!form.beside_it.empty()) type["beside_it"] = form.beside_it;
    if (!form.pair.empty()) type["pair"] = true;
    if (!form.shapes) return;
    type["shapes"] = OrderedJson::array();
    for (const Description* shape : form.shapes()) {
      type["shapes"].push_back(shape->name);
      add(*shape);
    }
  }

  OrderedJson json_of_member(const Member& member, const Description& owner) {
    OrderedJson json{{"name", member.name}, {"about", member.about}};
    if (std::isfinite(member.low)) json["low"] = member.low;
    if (std::isfinite(member.high)) json["high"] = member.high;
    const std::string_view texts[][2] = {
        {"unit", member.unit}, {"infinite", member.infinite}, {"none", member.none}};
    for (const auto& [key, text] : texts) {
      if (!text.empty()) json[std::string(key)] = text;
    }
    const FileForm* form = as_given.forms().of(owner);
    const bool by_form = form && form->may && form->may(nullptr, member.name);
    const struct {
      const char* key;
      bool is;
    } flags[] = {{"may", member.may},       {"may_by_form", by_form}, {"filled", member.filled},
                 {"spread", member.spread}, {"lean", member.lean},    {"rare", member.rare}};
    for (const auto& [key, is] : flags) {
      if (is) json[key] = true;
    }
    json["kind"] = json_of_kind(*member.kind);
    const Kind* one = member.kind;
    while (one->form == Form::maybe || one->form == Form::list) one = one->of;
    const std::vector<std::string_view> endings = other_endings(member.name);
    if (one->form == Form::number && !endings.empty()) {
      json["ending"] = name_parts(member.name).unit->ending;
      json["other_endings"] = endings;
    }
    if (!member.example.empty()) json["example"] = OrderedJson::parse(member.example);
    const bool plain = member.kind->form <= Form::choice;
    if ((member.may || by_form) && plain && owner.made)
      json["made"] = json_of(*member.kind, &member, member.in(owner.made()), as_given);
    return json;
  }

  OrderedJson json_of_kind(const Kind& kind) {
    static constexpr const char* names[] = {"number", "whole", "truth", "text",  "choice",
                                            "value",  "maybe", "list",  "either"};
    OrderedJson json{{"form", names[static_cast<std::size_t>(kind.form)]}};
    for (const Kind* one : kind.kinds) {
      json["of"].push_back(one->described().name);
      add(one->described());
    }
    if (kind.natural) json["natural"] = true;
    if (kind.of) json["of"] = json_of_kind(*kind.of);
    if (kind.form == Form::value) {
      json["of"] = kind.described().name;
      add(kind.described());
    }
    if (kind.form != Form::choice) return json;
    json["choices"] = OrderedJson::array();
    for (std::size_t i = 0; i < kind.size(nullptr); ++i) json["choices"].push_back(kind.choice(i));
    return json;
  }
};

}  // namespace detail

LEVIGATE_WORK std::string descriptions_json() {
  const struct {
    std::string_view format;
    const Description& of;
    const detail::Style& style;
  } formats[] = {{plan_format, description_of<Plan>(), detail::Style::whole},
                 {simulation_format, description_of<Simulation>(), detail::Style::whole},
                 {calibration_format, description_of<Calibration>(), detail::Style::whole},
                 {together_format, description_of<Together>(), detail::Style::whole},
                 {buy_format, description_of<Buying>(), detail::Style::whole},
                 {comparison_format, description_of<Comparison>(), detail::Style::whole},
                 {when_done_format, description_of<WhenDone>(), detail::Style::whole},
                 {spray_format, description_of<Spraying>(), detail::Style::whole},
                 {way_back_format, description_of<WayBack>(), detail::Style::whole},
                 {shop_format, description_of<Shop>(), detail::Style::sparse},
                 {journal_format, description_of<Entry>(), detail::Style::sparse},
                 {job_format, description_of<Job>(), detail::as_given},
                 {stack_format, description_of<Stack>(), detail::as_given}};
  detail::DescriptionDump dump;
  detail::OrderedJson json;
  for (const auto& [format, of, style] : formats) {
    dump.add(of);
    json[std::string(format)] = {{"of", of.name}, {"whole", style.full}};
  }
  return detail::json_text({{"formats", json}, {"types", dump.types}});
}

}  // namespace levigate
