// Numbers of a file that are most likely of another unit than their name says: they are asked about, and not taken.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/detail/text.hpp"
#include "levigate/error.hpp"
#include "levigate/film/film.hpp"
#include "levigate/film/rounds.hpp"
#include "levigate/io/work/form_film.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/source.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/told_unit.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Between these a number is taken as it stands. Beyond them it is asked about where it lies between them in another unit.
struct Likely {
  double low, high;
};

inline constexpr Likely likely_area_cm2{5, 1e5};
inline constexpr Likely likely_film_um{8, 600};
inline constexpr Likely likely_coat_um{3, 500};
inline constexpr Likely likely_wet_um{15, 1000};
inline constexpr Likely likely_sd_um{0.5, 200};
inline constexpr Likely likely_peel_um{3, 500};
inline constexpr Likely likely_wave_mm{0.5, 50};
inline constexpr Likely likely_sheet_mm{25, 2000};

inline constexpr Source likely_source{
    Basis::assumption,
    "chosen here: one works no zone below 5 cm2 with a block, and no piece has one above 10 m2; a "
    "film that one levels has 8 um or more, "
    "a coat 3 um dry and 15 um wet; film differs by 0.5 um or more from "
    "spot to spot; orange peel to be "
    "levelled has 3 um or more, its waves 0.5 mm or more; a sheet is 25 mm wide or more"};

/// What is likely of one member.
struct LikelyMember {
  const Description* of;
  std::string_view member;
  Likely likely;
};

inline const std::vector<LikelyMember>& likely_members() {
  static const std::vector<LikelyMember> all{
      {&description_of<Zone>(), "area_cm2", likely_area_cm2},
      {&description_of<Zone>(), "below_um", likely_coat_um},
      {&description_of<Zone>(), "peel_um", likely_peel_um},
      {&description_of<Zone>(), "peel_wavelength_mm", likely_wave_mm},
      {&description_of<Film>(), "mean_um", likely_film_um},
      {&description_of<Film>(), "sd_um", likely_sd_um},
      {&description_of<FilmOfMean>(), "mean_um", likely_film_um},
      {&description_of<FilmOfMean>(), "sd_um", likely_sd_um},
      {&description_of<FilmOfReadings>(), "readings_um", likely_film_um},
      {&description_of<FilmOfEqualCoats>(), "dry_um_per_coat", likely_coat_um},
      {&description_of<FilmOfEqualCoats>(), "sd_um", likely_sd_um},
      {&description_of<FilmOfCoats>(), "sd_um", likely_sd_um},
      {&description_of<FilmOfCoatsRead>(), "readings_um", likely_film_um},
      {&description_of<Coat>(), "dry_um", likely_coat_um},
      {&description_of<Coat>(), "wet_um", likely_wet_um},
      {&description_of<HeightReadings>(), "over_um", likely_film_um},
      {&description_of<HeightReadings>(), "beside_um", likely_film_um},
      {&description_of<Sheet>(), "width_mm", likely_sheet_mm},
      {&description_of<Sheet>(), "height_mm", likely_sheet_mm}};
  return all;
}

/// What is likely of a member; null where nothing is held against any number.
inline const Likely* likely_of(const Description& description, std::string_view member) {
  for (const LikelyMember& one : likely_members()) {
    if (one.of == &description && one.member == member) return &one.likely;
  }
  return nullptr;
}

/// The units in which a number would be likely, where it is not as it stands. Those written out in full are no other units.
inline std::vector<const ToldUnit*> meant_units(const Likely& likely, std::string_view name,
                                                double number) {
  std::vector<const ToldUnit*> meant;
  const ToldUnit* own = name_parts(name).unit;
  if (!own || (number >= likely.low && number <= likely.high)) return meant;
  for (const ToldUnit& other : told_units) {
    if (!stands_for(other, *own) || other.unit == own->unit) continue;
    const double there = in_unit(number, other, *own);
    const bool again = !meant.empty() && meant.back()->unit == other.unit;
    if (there >= likely.low && there <= likely.high && !again) meant.push_back(&other);
  }
  return meant;
}

/// The numbers of a member: one, none or a list.
inline std::vector<double> numbers_in(const Kind& kind, const void* at) {
  if (kind.form == Form::number) return {kind.number(at)};
  std::vector<double> numbers;
  if (kind.form != Form::maybe && kind.form != Form::list) return numbers;
  for (std::size_t i = 0; i < kind.size(at); ++i) {
    for (const double one : numbers_in(*kind.of, kind.item(at, i))) numbers.push_back(one);
  }
  return numbers;
}

/// "area_cm2 = 0.54 cm2 is unlikely", and how to say it right.
inline UnitQuestion unit_question(const Member& member, double number,
                                  const std::vector<const ToldUnit*>& meant) {
  const bool list = member.kind->form == Form::list;
  const std::string told = number_text(number);
  const auto written = [&](const std::string& name) {
    return "\"" + name + "\": " + (list ? "[" + told + ", ...]" : told);
  };
  std::vector<std::string> ways;
  for (const ToldUnit* unit : meant)
    ways.push_back(written(name_in(name_parts(member.name), *unit)));
  UnitQuestion question;
  question.fault.message = std::string(member.name) + (list ? " holds " : " = ") + told + " " +
                           std::string(member.unit) + " is unlikely";
  question.fault.quantity = member.name;
  question.fault.value = number;
  question.fault.unit = member.unit;
  question.possible = number >= member.low && number <= member.high;
  question.if_not =
      ". Is the unit " + std::string(member.unit) + "? If not, write " + list_text(ways, " or ");
  question.if_so = ". If it is, write " + written(name_in_full(member.name));
  return question;
}

/// The question about the first number of a member that is most likely of another unit; none where there is no such number.
inline std::optional<UnitQuestion> ask_unit(const Description& description, const Member& member,
                                            const void* at) {
  const Likely* likely = likely_of(description, member.name);
  if (!likely) return std::nullopt;
  for (const double number : numbers_in(*member.kind, at)) {
    const std::vector<const ToldUnit*> meant = meant_units(*likely, member.name, number);
    if (!meant.empty()) return unit_question(member, number, meant);
  }
  return std::nullopt;
}

}  // namespace detail

}  // namespace levigate
