// The film of a zone in a file: its mean and spread, a gauge's readings, or coats. And heights from readings.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/film/agreement.hpp"
#include "levigate/film/film.hpp"
#include "levigate/film/gauge.hpp"
#include "levigate/film/rounds.hpp"
#include "levigate/film/work/above.hpp"
#include "levigate/io/work/file_keys.hpp"
#include "levigate/io/work/form.hpp"
#include "levigate/io/work/node.hpp"
#include "levigate/io/work/read_described.hpp"
#include "levigate/surface/defect.hpp"
#include "levigate/text/sentences.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The film of the last round, and what lies below it.
struct LaidFilm {
  Film film;
  double below_um = 0;
};

struct FilmOfMean {
  double mean_um = 0;
  std::optional<double> sd_um;
  std::optional<double> mean_se_um;
  double sd_se_um = 0;
  std::size_t readings = 0;
  std::optional<FilmHow> how;
  std::optional<double> dry_um_per_coat;
  bool usual_spread = false;
};

struct FilmOfReadings {
  std::vector<double> readings_um;
  std::optional<Gauge> gauge;
};

struct FilmOfEqualCoats {
  int coats = 0;
  double dry_um_per_coat = 0;
  std::optional<double> sd_um;
  std::optional<FilmHow> how;
  std::optional<double> mean_se_um;
};

struct FilmOfCoats {
  std::vector<Coat> coats;
  double recoat_window_h = 0;
  std::optional<double> sd_um;
  std::optional<FilmHow> how;
  std::optional<double> mean_se_um;
};

struct FilmOfCoatsRead {
  std::vector<Coat> coats;
  double recoat_window_h = 0;
  std::vector<double> readings_um;
  std::optional<Gauge> gauge;
};

struct HeightReadings {
  double over_um = 0;
  double beside_um = 0;
  std::optional<Gauge> gauge;
};

/// Keys of a defect.
struct DefectReadings {
  std::optional<HeightReadings> readings;
};

inline constexpr Within any_film_um{0, 2e4};
inline constexpr Within any_window_h{0, 1e6};
inline constexpr std::string_view example_coats =
    R"([{"dry_um": 30}, {"dry_um": 30, "applied_h": 1}, {"dry_um": 30, "applied_h": 2}])";
inline constexpr std::string_view about_gauge = "its accuracy; none: exact";
inline constexpr std::string_view about_window =
    "longest wait in which a coat fuses with the one before";

}  // namespace detail

template <std::same_as<detail::LaidFilm> Value>
inline constexpr auto described<Value> =
    describe<Value>("LaidFilm",
                    "Dry film of the last round of coats in a zone, in one of its forms. Without "
                    "sd_um its spread is the usual one.",
                    member<&Value::film>("film", "of the last round").flat(),
                    member<&Value::below_um>("below_um", "film of the rounds below").unwritten());

template <std::same_as<detail::FilmOfMean> Value>
inline constexpr auto described<Value> = describe<Value>(
    "FilmOfMean", "Mean and spread.", detail::member_as<&Value::mean_um, Film>("mean_um"),
    detail::member_as<&Value::sd_um, Film>("sd_um"),
    detail::member_as<&Value::mean_se_um, Film>("mean_se_um"),
    detail::member_as<&Value::sd_se_um, Film>("sd_se_um").optional(),
    detail::member_as<&Value::readings, Film>("readings").optional(),
    member<&Value::how>("how",
                        "how mean_um was got; none: stated if mean_se_um is given, else coats "
                        "counted"),
    detail::member_as<&Value::dry_um_per_coat, Film>("dry_um_per_coat"),
    detail::member_as<&Value::usual_spread, Film>("usual_spread").optional());

template <std::same_as<detail::FilmOfReadings> Value>
inline constexpr auto described<Value> = describe<Value>(
    "FilmOfReadings", "A gauge's readings.",
    member<&Value::readings_um>("readings_um", detail::any_film_um,
                                "at independent spots; one tells no spread, which is then usual")
        .such_as("[88, 97, 92]"),
    member<&Value::gauge>("gauge", detail::about_gauge));

template <std::same_as<detail::FilmOfEqualCoats> Value>
inline constexpr auto described<Value> = describe<Value>(
    "FilmOfEqualCoats", "Equal coats.",
    member<&Value::coats>("coats", Within{1, 1000}, "of the round").such_as("3"),
    member<&Value::dry_um_per_coat>("dry_um_per_coat", Within{0, 2000}, "dry film of a coat")
        .in_unit("um")
        .such_as("28"),
    detail::member_as<&Value::sd_um, Film>("sd_um"),
    member<&Value::how>("how", "how a coat is known; none: coats counted"),
    detail::member_as<&Value::mean_se_um, Film>("mean_se_um"));

template <std::same_as<detail::FilmOfCoats> Value>
inline constexpr auto described<Value> = describe<Value>(
    "FilmOfCoats", "Coats one by one, in rounds.",
    member<&Value::coats>("coats", "in order").not_empty().such_as(detail::example_coats),
    member<&Value::recoat_window_h>("recoat_window_h", detail::any_window_h, detail::about_window)
        .such_as("24"),
    detail::member_as<&Value::sd_um, Film>("sd_um"),
    member<&Value::how>("how", "how the coats are known; none: wet comb, or coats counted if dry"),
    detail::member_as<&Value::mean_se_um, Film>("mean_se_um"));

template <std::same_as<detail::FilmOfCoatsRead> Value>
inline constexpr auto described<Value> = describe<Value>(
    "FilmOfCoatsRead", "Coats one by one, and readings through all rounds that agree with them.",
    member<&Value::coats>("coats", "in order").not_empty().such_as(detail::example_coats),
    member<&Value::recoat_window_h>("recoat_window_h", detail::any_window_h, detail::about_window)
        .such_as("24"),
    member<&Value::readings_um>("readings_um", detail::any_film_um, "at independent spots")
        .such_as("[88, 97, 92]"),
    member<&Value::gauge>("gauge", detail::about_gauge));

template <std::same_as<detail::HeightReadings> Value>
inline constexpr auto described<Value> = describe<Value>(
    "HeightReadings", "A gauge's two readings, which give a height.",
    member<&Value::over_um>("over_um", detail::any_film_um, "on its top").such_as("120"),
    member<&Value::beside_um>("beside_um", detail::any_film_um, "beside it").such_as("90"),
    member<&Value::gauge>("gauge", detail::about_gauge));

template <std::same_as<detail::DefectReadings> Value>
inline constexpr auto described<Value> =
    describe<Value>("DefectReadings", "Keys of a defect.",
                    member<&Value::readings>("readings", "two readings, in place of height_um"));

namespace detail {

/// Gives a film the error of the way that it was got, where none is given. Throws: BadInput for a way that tells no error
inline void take_way(Film& film, std::optional<FilmHow> how, FilmHow otherwise,
                     std::optional<double> mean_se_um, const Node& node) {
  film.how = how.value_or(mean_se_um ? FilmHow::stated : otherwise);
  if (mean_se_um) {
    film.mean_se_um = *mean_se_um;
  } else if (tells_error(film.how)) {
    film.mean_se_um = uncertainty_of_way_um(film.how, film.mean_um);
  } else {
    node.at("how").fail("how '" + std::string(to_string(film.how)) + "' needs mean_se_um" +
                        (film.how == FilmHow::gauge ? ", or readings_um in place of mean_um" : ""));
  }
}

/// The spread that was told of a film, else the usual one.
inline void take_spread(Film& film, std::optional<double> sd_um) {
  film.sd_um = sd_um.value_or(usual_sd_um(film.mean_um));
  film.usual_spread = film.usual_spread || !sd_um;
}

inline LaidFilm laid(const FilmOfMean& told, const Node& node) {
  Film film{.mean_um = told.mean_um,
            .sd_se_um = told.sd_se_um,
            .readings = told.readings,
            .dry_um_per_coat = told.dry_um_per_coat,
            .usual_spread = told.usual_spread};
  take_spread(film, told.sd_um);
  take_way(film, told.how, FilmHow::coats_counted, told.mean_se_um, node);
  return {film};
}

inline LaidFilm laid(const FilmOfReadings& told, const Node&) {
  const Gauge gauge = told.gauge.value_or(Gauge{});
  if (told.readings_um.size() != 1) return {film_from_gauge(told.readings_um, gauge)};
  const double reading_um = told.readings_um.front();
  Film film = film_from_reading(reading_um, usual_sd_um(reading_um), 0.0, gauge);
  film.usual_spread = true;
  return {film};
}

inline LaidFilm laid(const FilmOfEqualCoats& told, const Node& node) {
  Film film = film_from_coats(told.coats, told.dry_um_per_coat, 0.0);
  take_spread(film, told.sd_um);
  take_way(film, told.how, FilmHow::coats_counted, told.mean_se_um, node);
  return {film};
}

inline double below_last_um(const std::vector<Round>& all) {
  double below_um = 0;
  for (std::size_t i = 0; i + 1 < all.size(); ++i) below_um += all[i].dry_um;
  return below_um;
}

inline LaidFilm laid(const FilmOfCoats& told, const Node& node) {
  const std::vector<Round> all = rounds(told.coats, told.recoat_window_h);
  Film film = film_of_last_round(all, 0.0);
  take_spread(film, told.sd_um);
  const bool dry = std::any_of(told.coats.end() - all.back().coats, told.coats.end(),
                               [](const Coat& coat) { return coat.dry_um.has_value(); });
  take_way(film, told.how, dry ? FilmHow::coats_counted : FilmHow::wet_comb, told.mean_se_um, node);
  return {film, below_last_um(all)};
}

/// Readings see every round: they must agree with the sum, and where they do they stand above it.
inline LaidFilm laid(const FilmOfCoatsRead& told, const Node& node) {
  const std::vector<Round> all = rounds(told.coats, told.recoat_window_h);
  const double below_um = below_last_um(all);
  const Film read = film_from_gauge(told.readings_um, told.gauge.value_or(Gauge{}));
  const double total_um = below_um + all.back().dry_um;
  const Agreement agreement = agrees({total_um, 0, uncertainty_of_coats_um(total_um)}, read);
  if (agreement.contradicts) node.at("readings_um").fail("readings_um: " + sentence(agreement));
  Film film = above(read, below_um);
  film.mean_um = std::max(0.0, film.mean_um);
  film.dry_um_per_coat = film.mean_um / all.back().coats;
  return {film, below_um};
}

inline std::vector<const Description*> film_shapes() {
  return {&description_of<FilmOfMean>(), &description_of<FilmOfReadings>(),
          &description_of<FilmOfEqualCoats>(), &description_of<FilmOfCoats>(),
          &description_of<FilmOfCoatsRead>()};
}

/// Keys of all shapes, each once.
inline std::vector<std::string_view> film_file_keys(const DescribedReader& reader) {
  std::vector<std::string_view> keys, all;
  for (const Description* shape : film_shapes()) reader.add_keys(*shape, all);
  for (const std::string_view key : all) {
    if (std::find(keys.begin(), keys.end(), key) == keys.end()) keys.push_back(key);
  }
  return keys;
}

/// A film of one shape. Keys of the others do not go with it.
inline bool read_shape(DescribedReader& reader, const Description& shape, const Node& node,
                       void* at, const std::string& named) {
  std::vector<std::string_view> own;
  reader.add_keys(shape, own);
  const std::vector<std::string_view> all = film_file_keys(reader);
  std::vector<std::string> others;
  for (const std::string_view key : all) {
    if (node.has(key) && std::find(own.begin(), own.end(), key) == own.end())
      others.push_back(node.spelt(key));
  }
  const bool sound = others.empty() || reader.attempt([&] {
    node.fail_at(others.front(), list_text(others) + (others.size() > 1 ? " do" : " does") +
                                     " not go with " + node.spelt(own.front()) +
                                     ": a film is told in one way. It takes mean_um with sd_um, or "
                                     "readings_um, or coats with dry_um_per_coat and sd_um, or an "
                                     "array of coats with recoat_window_h");
  });
  return reader.object(shape, node, at, named, all) && sound;
}

template <typename Shape>
void read_laid(DescribedReader& reader, const Node& node, void* film, const std::string& named) {
  Shape shape{};
  if (read_shape(reader, description_of<Shape>(), node, &shape, named)) {
    as<LaidFilm>(film) = node.placed([&] { return laid(shape, node); });
  } else {
    reader.unmade();
  }
}

/// Throws: BadInput for a film of no form, or for a key that may have meant one
[[noreturn]] inline void tell_no_form(DescribedReader& reader, const Node& node) {
  const std::vector<std::string_view> keys = film_file_keys(reader);
  for (const std::string& key : node.unknown_keys(keys)) node.fail_unknown(key, keys);
  node.fail("film is missing one of mean_um, readings_um and coats");
}

inline void read_film(DescribedReader& reader, const Node& node, void* film,
                      const std::string& named) {
  node.require_object("an object");
  const bool readings = node.has("readings_um"), coats = node.has("coats");
  if (coats && node.at("coats").is_array()) {
    const auto read = readings ? read_laid<FilmOfCoatsRead> : read_laid<FilmOfCoats>;
    return read(reader, node, film, named);
  }
  if (readings) return read_laid<FilmOfReadings>(reader, node, film, named);
  if (coats) return read_laid<FilmOfEqualCoats>(reader, node, film, named);
  if (!node.has("mean_um")) tell_no_form(reader, node);
  read_laid<FilmOfMean>(reader, node, film, named);
}

inline FileForm film_form() {
  return {.of = &description_of<LaidFilm>(), .shapes = film_shapes, .read = read_film};
}

inline bool of_wet_film(std::string_view member) {
  return member == "wet_um" || member == "volume_solids" || member == "thinner";
}

inline bool may_lack_wet_film(const Node* node, std::string_view member) {
  return of_wet_film(member) && (!node || node->has("dry_um"));
}

inline void settle_coat(DescribedReader& reader, const Node& node, void*) {
  if (!node.has("dry_um")) return;
  for (const Member& member : description_of<Coat>().members) {
    if (!of_wet_film(member.name) || !node.has(member.name)) continue;
    reader.attempt(
        [&] { node.at(member.name).fail(node.spelt(member.name) + " does not go with dry_um"); });
  }
}

inline FileForm coat_form() {
  return {.of = &description_of<Coat>(), .may = may_lack_wet_film, .settle = settle_coat};
}

/// The difference of two readings is uncertain by what the gauge adds to each by its share; an offset that both have cancels.
inline void take_height(const Node& node, const DefectReadings& keys, Defect& defect) {
  if (!keys.readings) return;
  const auto& [over_um, beside_um, gauge] = *keys.readings;
  const double share = gauge ? gauge->share : 0.0;
  const double uncertainty = uncertainty_um({0.0, share}, std::abs(over_um - beside_um));
  const double over = over_um, beside = beside_um;
  defect.height_um = node.at("readings").placed([&] {
    return height_from_readings_um(over, beside, uncertainty);
  });
}

/// What a job may leave out of a defect; a result has all of it.
inline bool may_lack_of_defect(const Node*, std::string_view member) {
  return member == "height_um" || member == "length_mm" || member == "count";
}

inline void settle_defect(DescribedReader& reader, const Node& node, void* value) {
  Defect& defect = as<Defect>(value);
  if (!node.has("length_mm")) defect.length_mm = defect.width_mm;
  if (node.has("height_um") == node.has("readings") && !reader.misspelt())
    node.fail("one is wanted of height_um and readings");
}

inline FileForm defect_form() {
  return {.of = &description_of<Defect>(), .may = may_lack_of_defect, .settle = settle_defect};
}

}  // namespace detail

}  // namespace levigate
