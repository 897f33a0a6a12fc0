// A sheet in a file: paper, or with a tool of its own, or a compound, which stands for size, backing and area.
#pragma once

#include <optional>
#include <string_view>
#include <variant>

#include "levigate/describe.hpp"
#include "levigate/io/work/file_keys.hpp"
#include "levigate/io/work/form.hpp"
#include "levigate/io/work/node.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/wheel/compound.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Key of a sheet that is a compound.
struct SheetCompound {
  std::optional<Polish> compound;
};

/// Keys of a sheet that is its own tool.
struct SheetTool {
  std::optional<Block> block;
  std::optional<Wheel> wheel;
  std::optional<Machine> machine;
};

/// A bar or bottle of compound has no area: it stands for so much sheet where its entry gives none.
inline constexpr double compound_side_mm = 1000.0;

}  // namespace detail

template <std::same_as<detail::SheetCompound> Value>
inline constexpr auto described<Value> = describe<Value>(
    "SheetCompound", "Key of a sheet.",
    member<&Value::compound>("compound", "where it is one, bar or liquid; gives its size"));

template <std::same_as<detail::SheetTool> Value>
inline constexpr auto described<Value> = describe<Value>(
    "SheetTool", "Keys of a sheet.",
    member<&Value::block>("block", "where it is its own tool, in place of the zone's block"),
    member<&Value::wheel>("wheel", "where its tool is a buffing wheel, in place of block"),
    member<&Value::machine>("machine", "where its tool is a hand-held machine, in place of block"));

namespace detail {

inline void take_compound(const Node& node, const SheetCompound& keys, Sheet& sheet) {
  if (!keys.compound) return;
  sheet.kind = *keys.compound;
  sheet.width_mm = sheet.height_mm = compound_side_mm;
  if (!node.has("backing"))
    sheet.backing = node.at("compound").placed([&] { return buff_of(*keys.compound); });
  if (sheet.size_um)
    node.at("size_um").fail(node.spelt("size_um") + " does not go with compound, which has one");
}

inline SheetCompound compound_keys(const Sheet& sheet) {
  const Polish* polish = polish_of(sheet);
  return {polish ? std::optional(*polish) : std::nullopt};
}

inline void take_tool(const Node& node, const SheetTool& keys, Sheet& sheet) {
  if (keys.block && keys.wheel)
    node.at("wheel").fail("wheel does not go with block: one of them is wanted");
  if (keys.machine && (keys.block || keys.wheel))
    node.at("machine").fail("machine does not go with block or wheel: one of them is wanted");
  if (!keys.block && !keys.wheel && !keys.machine) return;
  const Tool tool = keys.block   ? Tool(*keys.block)
                    : keys.wheel ? Tool(*keys.wheel)
                                 : Tool(*keys.machine);
  if (Polish* polish = std::get_if<Polish>(&sheet.kind)) {
    polish->tool = tool;
  } else {
    sheet.kind = Pad{tool};
  }
}

inline SheetTool tool_keys(const Sheet& sheet) {
  SheetTool keys;
  const Tool* tool = tool_of(sheet);
  if (!tool) return keys;
  if (const Block* block = as_block(*tool)) keys.block = *block;
  if (const Wheel* wheel = as_wheel(*tool)) keys.wheel = *wheel;
  if (const Machine* machine = as_machine(*tool)) keys.machine = *machine;
  return keys;
}

inline bool told_by_compound(const Node* node, std::string_view member) {
  const bool told = member == "backing" || member == "width_mm" || member == "height_mm";
  return told && (!node || node->has("compound"));
}

inline bool hides_size(const void* sheet, std::string_view member) {
  return member == "size_um" && polish_of(as<Sheet>(sheet));
}

inline FileForm sheet_form() {
  return {.of = &description_of<Sheet>(), .may = told_by_compound, .hides = hides_size};
}

}  // namespace detail

}  // namespace levigate
