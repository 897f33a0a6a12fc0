// Every accuracy that a header states, enforced: the bound is read from the comment, and the function is compared with
// long double arithmetic over its whole domain. A statement that no test here or elsewhere enforces fails.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <functional>
#include <limits>
#include <map>
#include <numbers>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/detail/chi_square.hpp"
#include "levigate/detail/student.hpp"
#include "levigate/levigate.hpp"
#include "levigate/recover/work/visible.hpp"
#include "levigate/risk/work/draw.hpp"
#include "levigate/surface/inspection_table.hpp"
#include "levigate/surface/scratch_width.hpp"
#include "levigate/surface/work/stray.hpp"

namespace accuracy_test {
namespace {

using namespace levigate;
using real = long double;

static_assert(std::numeric_limits<real>::digits >= 64, "the comparison needs a wider type");

constexpr real pi = std::numbers::pi_v<real>;
constexpr double infinity = std::numeric_limits<double>::infinity();

// ---- what the headers state

/// Text of each "Accuracy:" in the comment of a function, by the function's name.
std::map<std::string, std::string> stated_accuracies() {
  const auto include = std::filesystem::path(LEVIGATE_DATA_DIR) / ".." / "lib" / "include";
  std::map<std::string, std::string> result;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(include)) {
    if (entry.path().extension() != ".hpp") continue;
    std::ifstream file(entry.path());
    std::string line, text;
    bool inside = false;
    while (std::getline(file, line)) {
      constexpr std::string_view opening = "/// Accuracy:", more = "///  ";
      const std::size_t slashes = line.find("///");
      if (const std::size_t at = line.find(opening); at != std::string::npos) {
        text = line.substr(at + opening.size());
        inside = true;
      } else if (inside && line.find(more) != std::string::npos) {
        text += line.substr(slashes + more.size());
      } else if (slashes != std::string::npos) {
        inside = false;
      } else if (const std::size_t bracket = line.find('(');
                 bracket != std::string::npos && !text.empty()) {
        const std::size_t name = line.find_last_of(" *&", bracket) + 1;
        const std::string function = line.substr(name, bracket - name);
        EXPECT_TRUE(result.emplace(function, text).second) << function;
        text.clear();
      }
    }
  }
  return result;
}

/// The first number of a statement, as 4 in "4 ulp" and 1e-12 in "1e-12 relative".
double first_number(const std::string& text) {
  const std::size_t digit = text.find_first_of("0123456789");
  if (digit == std::string::npos) {
    ADD_FAILURE() << "no number in: " << text;
    return 0.0;
  }
  return std::stod(text.substr(digit));
}

double bound_of(const std::string& function) {
  static const auto stated = stated_accuracies();
  const auto found = stated.find(function);
  EXPECT_NE(found, stated.end()) << "no header states an accuracy of " << function;
  return found == stated.end() ? 0.0 : first_number(found->second);
}

// ---- comparing

class Random {
 public:
  double uniform(double low = 0, double high = 1) {
    return low + (high - low) * (static_cast<double>(engine_() >> 11) + 0.5) * 0x1p-53;
  }
  double log_uniform(double low, double high) { return low * std::pow(high / low, uniform()); }

 private:
  std::mt19937_64 engine_{8128};
};

double relative(double ours, real exact) {
  return static_cast<double>(std::abs(real{ours} - exact) / std::abs(exact));
}

/// In units of the last place, which this project takes as 2^-52 of the value.
double ulps(double ours, real exact) { return relative(ours, exact) / 0x1p-52; }

double absolute(double ours, real exact) { return static_cast<double>(std::abs(ours - exact)); }

/// Largest error of a number of states, each drawn and measured by `error`.
double worst(int states, const std::function<double(Random&)>& error) {
  Random random;
  double largest = 0;
  for (int i = 0; i < states; ++i) {
    const double here = error(random);
    EXPECT_FALSE(std::isnan(here));
    largest = std::max(largest, here);
  }
  return largest;
}

constexpr int many = 20000;

real wide_tail(real x) { return std::erfc(x / std::numbers::sqrt2_v<real>) / 2; }

/// The chance of a hit under which at least `hits` of `cases` hit with the chance `tail`: the whole sum, by bisection.
real wide_chance(std::int64_t hits, std::int64_t cases, real tail) {
  real low = 0, high = 1;
  for (int step = 0; step < 90; ++step) {
    const real p = (low + high) / 2;
    real sum = 0, log_ways = 0;  // of the term at hand
    for (std::int64_t k = cases; k >= hits; --k) {
      sum += std::exp(log_ways + static_cast<real>(k) * std::log(p) +
                      static_cast<real>(cases - k) * std::log1p(-p));
      log_ways += std::log(static_cast<real>(k)) - std::log(static_cast<real>(cases - k + 1));
    }
    (sum < tail ? low : high) = p;
  }
  return (low + high) / 2;
}

/// By bisection, for tails up to 1/2.
real wide_quantile(real tail) {
  real low = 0, high = 38;
  for (int i = 0; i < 80; ++i) {
    const real middle = (low + high) / 2;
    (wide_tail(middle) > tail ? low : high) = middle;
  }
  return low;
}

real wide_reflectance(double index, double angle_deg) {
  const real i = angle_deg * (pi / 180), c = std::cos(i), s = std::sin(i), n = index;
  const real w = std::sqrt((n - s) * (n + s));
  const real r_s = (c - w) / (c + w), r_p = (n * n * c - w) / (n * n * c + w);
  return (r_s * r_s + r_p * r_p) / 2;
}

real wide_spread(const Grade& grade) {
  const real z_coarse = 1.8807936081512509389L;
  const std::map<double, real> z_fine{
      {95, 1.6448536269514727148L}, {94, 1.5547735945968537246L}, {75, 0.6744897501960817432L}};
  const auto log_ratio = [](real a, real b) { return std::log(a / b); };
  const real coarse = log_ratio(*grade.coarse_limit_um, grade.median_um) / z_coarse;
  if (!grade.fine_limit_um) return coarse;
  const real fine =
      log_ratio(grade.median_um, *grade.fine_limit_um) / z_fine.at(*grade.fine_percent);
  return (coarse + fine) / 2;
}

/// Largest error over the grades that have limits.
double worst_grade(const std::function<double(const Grade&)>& error) {
  double largest = 0;
  for (const System system : all_systems) {
    for (const Grade& grade : grades(system)) {
      if (grade.coarse_limit_um) largest = std::max(largest, error(grade));
    }
  }
  return largest;
}

// ---- contact, solved anew in long double

/// The balance of forces by bisection and tanh-sinh quadrature.
class WideContact {
 public:
  explicit WideContact(const ContactInput& in)
      : spread_(in.size_um * std::hypot(real{in.tip_spread}, real{in.log_spread} / 2)) {
    const real tangent = std::tan(in.flank_deg * (pi / 180));
    cone_ = pi * in.hardness_mpa / (2 * tangent * tangent);
    spring_ = real{in.modulus_mpa} * in.size_um;
    tips_ = in.packing / (real{in.size_um} * in.size_um);
    const real pressure = real{in.pressure_kpa} / 1000;
    real high = 8, low = -1;  // of the plane, in units of the spread
    while (load(low) < pressure) low *= 2;
    for (int i = 0; i < 90; ++i) {
      const real middle = (low + high) / 2;
      (load(middle) < pressure ? high : low) = middle;
    }
    plane_ = (low + high) / 2;
  }

  real active_share() const { return wide_tail(plane_) - wide_tail(8); }
  real active_per_mm2() const { return 1e6L * tips_ * active_share(); }
  real mean_depth_um() const {
    return over_heights(plane_, [](real depth) { return depth; }) / active_share();
  }

  real depth_um(double q) const {
    real low = plane_, high = 8;
    for (int i = 0; i < 90; ++i) {
      const real middle = (low + high) / 2;
      // What lies between the plane and middle, from the tails that do not cancel.
      const real between = plane_ > 0 ? wide_tail(plane_) - wide_tail(middle)
                                      : wide_tail(-middle) - wide_tail(-plane_);
      const bool deeper = q > 0.5
                              ? wide_tail(middle) - wide_tail(8) > (1 - real{q}) * active_share()
                              : between < real{q} * active_share();
      (deeper ? low : high) = middle;
    }
    return depth((low - plane_) * spread_);
  }

  real exceedance(real depth_um) const {
    const real height = plane_ + (depth_um + (cone_ / spring_) * depth_um * depth_um) / spread_;
    return (wide_tail(height) - wide_tail(8)) / active_share();
  }

 private:
  real depth(real gap) const {
    return std::isinf(spring_) ? gap : 2 * gap / (1 + std::sqrt(1 + 4 * cone_ * gap / spring_));
  }

  template <typename F>
  real over_heights(real plane, F f) const {
    const real low = std::max<real>(plane, -12), half = (8 - low) / 2;
    constexpr real step = 1.0L / 32;
    real sum = 0;
    for (int i = -112; i <= 112; ++i) {
      const real u = pi / 2 * std::sinh(i * step);
      const real from_low = half * std::exp(u) / std::cosh(u);
      const real weight = half * std::cosh(i * step) / (std::cosh(u) * std::cosh(u));
      const real x = low + from_low;
      sum += weight * f(depth((low - plane + from_low) * spread_)) * std::exp(-x * x / 2);
    }
    return sum * step * pi / 2 / std::sqrt(2 * pi);
  }

  real load(real plane) const {
    return tips_ * cone_ * over_heights(plane, [](real depth) { return depth * depth; });
  }

  real spread_, cone_ = 0, spring_ = 0, tips_ = 0, plane_ = 0;
};

ContactInput any_contact(Random& random) {
  ContactInput in{.size_um = random.log_uniform(0.01, 1e4),
                  .log_spread = random.uniform(),
                  .tip_spread = random.log_uniform(1e-3, 1),
                  .modulus_mpa = random.log_uniform(0.01, 1e6),
                  .pressure_kpa = random.log_uniform(0.01, 1e3),
                  .hardness_mpa = random.log_uniform(1, 1e5),
                  .flank_deg = random.log_uniform(1, 80),
                  .packing = random.log_uniform(0.01, 1)};
  if (random.uniform() < 0.1) in.modulus_mpa = infinity;
  if (random.uniform() < 0.4) in.log_spread = 0;
  return in;
}

struct ContactErrors {
  double densities = 0, depth = 0, exceedance = 0;
};

/// Largest relative errors over random contacts.
const ContactErrors& contact_errors() {
  static const ContactErrors largest = [] {
    ContactErrors errors;
    Random random;
    for (int i = 0; i < 150; ++i) {
      ContactInput in = any_contact(random);
      if (i % 10 == 0) {  // the softest backing: the plane lies far below all tips
        in.modulus_mpa = 0.01;
        in.pressure_kpa = 1000;
        in.tip_spread = 1e-3;
        in.log_spread = 0;
      }
      const WideContact exact(in);
      const Contact c = contact(in);
      errors.densities =
          std::max({errors.densities, relative(c.active_per_mm2(), exact.active_per_mm2()),
                    relative(c.mean_depth_um(), exact.mean_depth_um())});
      for (const double q : {1e-6, 1e-3, 0.1, 0.5, 0.9, 0.99, 0.999, 1 - 1e-6, 1 - 1e-9}) {
        const double depth_um = c.depth_um(q);
        if (q <= 1 - 1e-6) {
          errors.depth = std::max(errors.depth, relative(depth_um, exact.depth_um(q)));
        }
        const real share = exact.exceedance(depth_um);
        if (share * exact.active_share() < 1e-12L) continue;
        errors.exceedance = std::max(errors.exceedance, relative(c.exceedance(depth_um), share));
      }
    }
    return errors;
  }();
  return largest;
}

// ---- one measurement for every statement

/// Mean of |a + b e^(i phi)| over phi: the girth of an ellipse over 2 pi, by the means of arithmetic and geometry.
real wide_mean_of_two(real a, real b) {
  real m = a + b, g = std::abs(a - b), sum = m * m, weight = 0.5L;
  while (true) {
    const real square = m * m - g * g;
    sum -= weight * square;
    weight *= 2;
    const real next = (m + g) / 2;
    g = std::sqrt(m * g);
    m = next;
    if (std::abs(m - g) <= 1e-19L * m || g == 0) break;
    if (weight > 1e6L) break;
  }
  return sum / m;
}

/// The mean of it over a disc of rim speed b, by Simpson's rule on pieces that shrink towards where both speeds are alike.
real wide_pad_speed(real a, real b) {
  const auto at = [&](real r) { return 2 * r * wide_mean_of_two(a, b * r); };
  const real alike = std::clamp(a / b, real{0}, real{1});
  real sum = 0;
  for (const real end : {real{0}, real{1}}) {
    real far = end;
    for (int piece = 0; piece < 40 && far != alike; ++piece) {
      const real near = piece == 39 ? alike : alike + (far - alike) / 2;
      constexpr int parts = 100;
      const real step = (near - far) / parts;
      for (int i = 0; i < parts; ++i) {
        const real from = far + i * step;
        sum += std::abs(step) / 6 * (at(from) + 4 * at(from + step / 2) + at(from + step));
      }
      far = near;
    }
  }
  return sum;
}

WheelHeatInput any_wheel(Random& random) {
  return {.effusivity = random.log_uniform(1, 1e5),
          .friction = random.log_uniform(1e-3, 10),
          .pressure_kpa = random.log_uniform(0.01, 1e3),
          .speed_m_s = random.log_uniform(1e-3, 1e3),
          .share = random.log_uniform(1e-3, 1)};
}

real wide_flux(const WheelHeatInput& in) {
  return real{in.share} * in.friction * 1000 * in.pressure_kpa * in.speed_m_s;
}

/// A function, and the largest error found, in the unit of its statement.
struct Measurement {
  const char* function;
  std::function<double()> largest_error;
};

/// Chance of fewer than `count` events of a Poisson law: a chi-square number of 2 count degrees of freedom exceeds twice the mean.
real poisson_below(int count, real mean) {
  real sum = 0;
  for (int k = 0; k < count; ++k)
    sum += std::exp(k * std::log(mean) - mean - std::lgamma(real(k) + 1));
  return sum;
}

const std::vector<Measurement> measurements{
    {"normal_tail",  // in multiples of 1 + x^2 / 4, as the statement is 4 + x^2 ulp
     [] {
       return worst(many, [](Random& random) {
         const double x = random.uniform(-9, 37);
         return relative(detail::normal_tail(x), wide_tail(x)) / 0x1p-52 / (1 + x * x / 4);
       });
     }},
    {"normal_quantile",
     [] {
       return worst(many, [](Random& random) {
         const bool upper = random.uniform() < 0.1;  // 1 - tail is exact where tail exceeds 1/2
         const double tail =
             upper ? 1 - random.log_uniform(1e-16, 0.5) : random.log_uniform(1e-300, 0.5);
         const real exact = upper ? -wide_quantile(1 - tail) : wide_quantile(tail);
         return absolute(detail::normal_quantile(tail), exact) / 0x1p-52 /
                std::max(1.0, static_cast<double>(std::abs(exact)));
       });
     }},
    {"film_from_readings",
     [] {
       return worst(300, [](Random& random) {
         std::vector<double> readings(static_cast<std::size_t>(random.log_uniform(2, 2000)));
         for (double& reading : readings) reading = random.uniform(40, 160);
         if (readings[0] == readings.back()) readings[0] += 1;
         real sum = 0, squares = 0;
         for (const double reading : readings) sum += reading;
         const auto count = static_cast<real>(readings.size());
         for (const double r : readings) squares += (r - sum / count) * (r - sum / count);
         const real sd = std::sqrt(squares / (count - 1));
         const Film film = film_from_readings(readings);
         return std::max({relative(film.mean_um, sum / count), relative(film.sd_um, sd),
                          relative(film.mean_se_um, sd / std::sqrt(count)),
                          relative(film.sd_se_um, sd / std::sqrt(2 * (count - 1)))});
       });
     }},
    {"film_from_coats",
     [] {
       return worst(many, [](Random& random) {
         const int coats = static_cast<int>(random.log_uniform(1, 1000));
         const double dry_um = random.log_uniform(0.001, 2e4 / coats > 2000 ? 2000 : 2e4 / coats);
         const Film film = film_from_coats(coats, dry_um, 3);
         const real mean = real{dry_um} * coats;
         return std::max(ulps(film.mean_um, mean),
                         ulps(film.mean_se_um, real{0.15} * mean / std::sqrt(real{3})));
       });
     }},
    {"spot_sd_um",
     [] {
       return worst(many, [](Random& random) {
         const Film film{.mean_um = 100,
                         .sd_um = random.log_uniform(0.01, 100),
                         .mean_se_um = random.log_uniform(0.01, 100),
                         .sd_se_um = random.log_uniform(0.01, 100)};
         const real squares = real{film.sd_um} * film.sd_um +
                              real{film.mean_se_um} * film.mean_se_um +
                              real{film.sd_se_um} * film.sd_se_um;
         return ulps(spot_sd_um(film), std::sqrt(squares));
       });
     }},
    {"dry_film_um",
     [] {
       return worst(many, [](Random& random) {
         const double wet = random.log_uniform(0.1, 2e4), solids = random.log_uniform(1e-3, 1),
                      thinner = random.log_uniform(1e-3, 10);
         return ulps(dry_film_um(wet, solids, thinner), real{wet} * solids / (1 + real{thinner}));
       });
     }},
    {"wet_film_um",
     [] {
       return worst(many, [](Random& random) {
         const double dry = random.log_uniform(0.1, 2e4), solids = random.log_uniform(1e-3, 1),
                      thinner = random.log_uniform(1e-3, 10);
         return ulps(wet_film_um(dry, solids, thinner), real{dry} * (1 + real{thinner}) / solids);
       });
     }},
    {"edge_share",
     [] {
       return worst(many, [](Random& random) {
         const double radius = random.log_uniform(1e-3, 1e3);
         const EdgeProfile& p = edge_table[0];
         const real missing = 1 - real{p.sharp_share.value};
         const real scale =
             p.eased_radius_mm.value / (missing / (1 - real{p.eased_share.value}) - 1);
         return ulps(edge_share(radius), 1 - missing / (1 + radius / scale));
       });
     }},
    {"uncertainty_um",
     [] {
       return worst(many, [](Random& random) {
         const Gauge gauge{random.log_uniform(0.01, 100), random.log_uniform(1e-3, 1)};
         const double mean = random.log_uniform(1, 2e4);
         const real exact = (gauge.fixed_um + real{gauge.share} * mean) / std::sqrt(real{3});
         return ulps(uncertainty_um(gauge, mean), exact);
       });
     }},
    {"film_from_gauge",
     [] {
       return worst(many, [](Random& random) {
         const Gauge gauge{random.log_uniform(0.01, 100), random.log_uniform(1e-3, 1)};
         const std::vector<double> readings{random.uniform(50, 90), random.uniform(50, 90),
                                            random.uniform(50, 90)};
         real mean = 0, square = 0;
         for (const double r : readings) mean += real{r} / 3;
         for (const double r : readings) square += (r - mean) * (r - mean) / 2;
         const real u = (gauge.fixed_um + gauge.share * mean) / std::sqrt(real{3});
         return relative(film_from_gauge(readings, gauge).mean_se_um,
                         std::sqrt(square / 3 + u * u));
       });
     }},
    {"film_from_reading",
     [] {
       return worst(many, [](Random& random) {
         const Gauge gauge{random.log_uniform(0.01, 100), random.log_uniform(1e-3, 1)};
         const double reading = random.uniform(50, 90), sd = random.log_uniform(0.1, 20),
                      sd_se = random.log_uniform(0.1, 20);
         const real u = (gauge.fixed_um + real{gauge.share} * reading) / std::sqrt(real{3});
         return relative(film_from_reading(reading, sd, sd_se, gauge).mean_se_um,
                         std::sqrt(real{sd} * sd + real{sd_se} * sd_se + u * u));
       });
     }},
    {"agrees",
     [] {
       return worst(many, [](Random& random) {
         const Film coats{random.uniform(50, 90), 5, random.log_uniform(0.1, 10)};
         const Film readings{random.uniform(50, 90), 5, random.log_uniform(0.1, 10)};
         const real exact = std::hypot(real{coats.mean_se_um}, real{readings.mean_se_um});
         return ulps(agrees(coats, readings).uncertainty_um, exact);
       });
     }},
    {"hardness_at",
     [] {
       return worst(many, [](Random& random) {
         const double first = random.log_uniform(1, 10), last = first * random.log_uniform(2, 1000);
         const double soft = random.log_uniform(10, 100), hard = soft * random.uniform(1, 4);
         const double age =
             std::clamp(first * std::pow(last / first, random.uniform()), first, last);
         const real part = std::log(real{age} / first) / std::log(real{last} / first);
         const Cure cure{last, 0, {{first, soft}, {last, hard}}};
         return ulps(hardness_at(cure, age).hardness_mpa, soft + part * (real{hard} - soft));
       });
     }},
    {"height_from_readings_um",
     [] {
       return worst(many, [](Random& random) {
         const double beside = random.uniform(0, 200), over = beside + random.log_uniform(1, 500);
         return ulps(height_from_readings_um(over, beside, 0), real{over} - beside);
       });
     }},
    {"volume_above_mm3",
     [] {
       return worst(many, [](Random& random) {
         const double width = random.log_uniform(0.1, 20), height = random.log_uniform(1, 1000);
         const Defect run{DefectKind::run, height, width, width * random.uniform(1, 20)};
         const double z = height * random.uniform();
         const real left = (height - real{z}) / height;
         const real exact =
             real{2} / 3 * left * std::sqrt(left) * height / 1000 * width * run.length_mm;
         return ulps(volume_above_mm3(run, z), exact);
       });
     }},
    {"rounds",
     [] {
       return worst(many, [](Random& random) {
         const Coat coat{.wet_um = random.log_uniform(1, 500),
                         .volume_solids = random.uniform(0.1, 1),
                         .thinner = random.log_uniform(1e-3, 10),
                         .shrink = random.uniform(0, 0.3)};
         const real exact = coat.wet_um * real{coat.volume_solids} / (1 + real{coat.thinner}) *
                            (1 - real{coat.shrink});
         return ulps(rounds(std::vector{coat}, 24).front().dry_um, exact);
       });
     }},
    {"depth_budget_um",
     [] {
       return worst(many, [](Random& random) {
         BudgetInput in{.mean_um = random.log_uniform(1, 2e4),
                        .sd_um = 0,
                        .removed_cv = random.uniform(0, 1),
                        .reserve_um = 0,
                        .spots = random.log_uniform(1, 1e9),
                        .cut_through_limit = random.log_uniform(1e-100, 1)};
         in.sd_um = in.mean_um * random.log_uniform(1e-4, 0.5);
         in.reserve_um = in.mean_um * random.uniform(0, 0.9);
         const double depth_um = depth_budget_um(in);
         const double spread_um = std::hypot(in.sd_um, in.removed_cv * depth_um);
         if (depth_um == 0 || depth_um > 1e9 || spread_um < 1e-4 * in.mean_um) return 0.0;
         const double chance = cut_through({.depth_um = depth_um,
                                            .mean_um = in.mean_um,
                                            .sd_um = in.sd_um,
                                            .removed_cv = in.removed_cv,
                                            .reserve_um = in.reserve_um,
                                            .spots = in.spots});
         return relative(chance, in.cut_through_limit);
       });
     }},
    {"cut_through",
     [] {
       return worst(many, [](Random& random) {
         CutThroughInput in{.depth_um = 0,
                            .mean_um = random.log_uniform(1, 2e4),
                            .sd_um = 0,
                            .removed_cv = random.uniform(0, 1),
                            .reserve_um = 0,
                            .spots = random.log_uniform(1, 1e9)};
         in.sd_um = in.mean_um * random.log_uniform(1e-4, 0.5);
         in.reserve_um = in.mean_um * random.uniform(0, 0.9);
         in.depth_um = in.mean_um * random.uniform(0, 1.5);
         const real removed = real{in.removed_cv} * in.depth_um;
         const real left = real{in.mean_um} - in.reserve_um - in.depth_um;
         const real spot =
             wide_tail(left / std::sqrt(real{in.sd_um} * in.sd_um + removed * removed));
         const real chance = -std::expm1(in.spots * std::log1p(-spot));
         return chance < 1e-300L ? 0.0 : relative(cut_through(in), chance);
       });
     }},
    {"temperature_rise_k",
     [] {
       return worst(many, [](Random& random) {
         const WheelHeatInput in = any_wheel(random);
         const double dwell_s = random.log_uniform(1e-6, 1e6);
         return ulps(temperature_rise_k(in, dwell_s),
                     2 * wide_flux(in) * std::sqrt(dwell_s / pi) / in.effusivity);
       });
     }},
    {"dwell_limit_s",
     [] {
       return worst(many, [](Random& random) {
         const WheelHeatInput in = any_wheel(random);
         const double rise_k = random.log_uniform(0.01, 1e4);
         const real ratio = real{in.effusivity} * rise_k / (2 * wide_flux(in));
         return ulps(dwell_limit_s(in, rise_k), pi * ratio * ratio);
       });
     }},
    {"surface_speed_m_s",
     [] {
       return worst(many, [](Random& random) {
         const double diameter_mm = random.log_uniform(1, 1e4), rpm = random.log_uniform(1, 1e6);
         return ulps(surface_speed_m_s(diameter_mm, rpm), pi * diameter_mm * rpm / 60000);
       });
     }},
    {"pad_speed_m_s",
     [] {
       return worst(60, [](Random& random) {
         const double pad_mm = random.log_uniform(10, 1e3), orbit_mm = random.log_uniform(0.1, 100),
                      rpm = random.log_uniform(10, 1e4);
         const double alike = orbit_mm * rpm / pad_mm;  // turns at which the rim is as fast
         const double pad_rpm =
             alike * (random.uniform() < 0.2 ? 1.0 : random.log_uniform(0.01, 9));
         return relative(
             pad_speed_m_s(pad_mm, pad_rpm, orbit_mm, rpm),
             wide_pad_speed(pi * orbit_mm * rpm / 60e3L, pi * pad_mm * pad_rpm / 60e3L));
       });
     }},
    {"size_effect_with",
     [] {
       return worst(many, [](Random& random) {
         const double size_um = random.log_uniform(0.01, 1e4), exponent = random.uniform(0, 2),
                      saturation_um = random.log_uniform(1, 1e4);
         return ulps(size_effect_with(size_um, exponent, saturation_um),
                     std::min(1.0L, std::pow(real{size_um} / saturation_um, real{exponent})));
       });
     }},
    {"specular_phase",
     [] {
       return worst(many, [](Random& random) {
         const double angle_deg = random.uniform(0, 60), rq_um = random.log_uniform(1e-4, 1e3);
         return ulps(specular_phase(angle_deg, rq_um),
                     4 * pi * rq_um * std::cos(angle_deg * pi / 180) / 0.55L);
       });
     }},
    {"wear_coefficient",
     [] {
       return worst(many, [](Random& random) {
         const double share = random.log_uniform(1e-3, 1), flank_deg = random.uniform(1, 80);
         return ulps(wear_coefficient(share, flank_deg),
                     2 / pi * share * std::tan(flank_deg * pi / 180));
       });
     }},
    {"overcut_of",
     [] {
       return worst(many, [](Random& random) {
         Rules rules;
         rules.short_share = random.log_uniform(1e-9, 0.5);
         const real z = detail::normal_quantile(rules.short_share);
         rules.removed_cv = random.uniform(0, static_cast<double>(std::min(0.5L / z, 1.0L)));
         return relative(overcut_of(rules), 1 / (1 - z * rules.removed_cv));
       });
     }},
    {"removal_rate_um_per_m",
     [] {
       return worst(many, [](Random& random) {
         const double wear = random.log_uniform(1e-6, 1), size_um = random.log_uniform(0.01, 1e4),
                      kpa = random.log_uniform(0.01, 1e3), mpa = random.log_uniform(1, 1e5);
         const real effect = std::min(1.0L, std::sqrt(real{size_um} / 100));
         return ulps(removal_rate_um_per_m(wear, size_um, kpa, mpa),
                     wear * effect * kpa * 1000 / mpa);
       });
     }},
    {"clogging_share",
     [] {
       return worst(many, [](Random& random) {
         const double every_m = random.log_uniform(1e-9, 1e9),
                      fade_m = random.log_uniform(1e-6, 1e9), floor = random.uniform();
         const real x = real{every_m} / fade_m;
         return ulps(clogging_share(every_m, fade_m, floor),
                     floor - (1 - real{floor}) * std::expm1(-x) / x);
       });
     }},
    {"critical_amplitude_um",
     [] {
       return worst(many, [](Random& random) {
         const double mm = random.log_uniform(0.01, 1e3), mpa = random.log_uniform(1e-3, 1e6),
                      kpa = random.log_uniform(0.01, 1e3);
         return ulps(critical_amplitude_um(mm, mpa, kpa), real{mm} * kpa / (pi * mpa));
       });
     }},
    {"levelling_removal_um",
     [] {
       return worst(many, [](Random& random) {
         const double residual = random.log_uniform(1e-3, 1e3);
         const double above = random.uniform() < 0.3 ? random.log_uniform(1e-9, 1e-1)
                                                     : random.log_uniform(1e-1, 1e3);
         const LevellingInput in{.peel_um = std::min(1e4, residual * (1 + above)),
                                 .wavelength_mm = random.log_uniform(0.01, 1e3),
                                 .modulus_mpa = random.log_uniform(1e-3, 1e6),
                                 .pressure_kpa = random.log_uniform(0.01, 1e3),
                                 .residual_um = residual};
         const real critical = real{in.wavelength_mm} * in.pressure_kpa / (pi * in.modulus_mpa);
         const real start = real{in.peel_um} / 2, end = real{in.residual_um} / 2;
         real removed = std::max<real>(0, start - std::max(critical, end));
         if (critical > end) {
           const real from = std::min(start, critical);
           removed += critical * std::log1p((from - end) / end);
         }
         return relative(levelling_removal_um(in), removed);
       });
     }},
    {"fresnel_reflectance",
     [] {
       return worst(many, [](Random& random) {
         const double index = random.uniform(1, 4), angle_deg = random.uniform(0, 89.999);
         return absolute(fresnel_reflectance(index, angle_deg), wide_reflectance(index, angle_deg));
       });
     }},
    {"gloss_gu",
     [] {
       return worst(many, [](Random& random) {
         const double index = random.uniform(1, 4), rq_um = random.log_uniform(1e-4, 1e3),
                      angle_deg = random.uniform() < 0.2 ? 90 - random.log_uniform(1e-3, 1)
                                                         : random.uniform(0, 89);
         const real phase = 4 * pi * rq_um * std::cos(angle_deg * (pi / 180)) / 0.55L;
         const real gloss = 100 * wide_reflectance(index, angle_deg) /
                            wide_reflectance(1.567, angle_deg) * std::exp(-phase * phase);
         return gloss < 1e-3L ? 0.0 : relative(gloss_gu(index, angle_deg, rq_um), gloss);
       });
     }},
    {"spread",
     [] {
       return worst_grade([](const Grade& g) { return ulps(log_spread(g), wide_spread(g)); });
     }},
    {"coarse_tail_um",
     [] {
       return worst_grade([](Grade g) {
         g.coarse_limit_um.reset();
         if (!g.fine_limit_um) return 0.0;
         const double s = log_spread(g);
         return ulps(coarse_tail_um(g), g.median_um * std::exp(1.8807936081512509389L * s));
       });
     }},
    {"drawn",
     [] {
       return worst(many, [](Random& random) {
         const double value = random.log_uniform(1e-3, 1e4);
         const Sourced input{
             value, value / random.log_uniform(1, 1e3), value * random.log_uniform(1, 1e3), {}};
         const real uniform = random.uniform();
         const real end = uniform > 0.5L ? input.high : input.low;
         return relative(drawn(input, static_cast<double>(uniform)),
                         value * std::pow(end / value, std::abs(2 * uniform - 1)));
       });
     }},
    {"exact_share",
     [] {
       return worst(60, [](Random& random) {
         const auto cases = static_cast<std::int64_t>(random.log_uniform(1, 3000));
         const auto hits =
             static_cast<std::int64_t>(random.uniform() * static_cast<double>(cases + 1));
         const Share share = exact_share(hits, cases, 0.9);
         double error = 0;
         if (hits > 0) error = relative(share.low, wide_chance(hits, cases, 0.05L));
         if (hits == cases) return error;
         return std::max(error, relative(1 - share.high, wide_chance(cases - hits, cases, 0.05L)));
       });
     }},
    {"patch_width_mm",
     [] {
       return worst(many, [](Random& random) {
         const double depth = random.log_uniform(1e-3, 1e4), slope = random.log_uniform(1e-3, 10);
         const double face = random.log_uniform(1, 1e3);
         return ulps(patch_width_mm(depth, slope, face),
                     std::max<real>(2 * real{face}, std::acos(real{-1}) * depth / slope));
       });
     }},
    {"hollow_area_cm2",
     [] {
       return worst(many, [](Random& random) {
         const double width = random.log_uniform(0.1, 1e5);
         return ulps(hollow_area_cm2(width), (pi / 8 - 1 / (2 * pi)) * width * width / 100);
       });
     }},
    {"depth_of_width_um",
     [] {
       return worst(many, [](Random& r) {
         const double width = r.log_uniform(1e-3, 1e4), flank = r.uniform(1, 80);
         return ulps(depth_of_width_um(width, flank),
                     width / real{2} * std::tan(flank * (pi / 180)));
       });
     }},
    {"width_of_depth_um",
     [] {
       return worst(many, [](Random& r) {
         const double depth = r.log_uniform(1e-3, 1e4), flank = r.uniform(1, 80);
         return ulps(width_of_depth_um(depth, flank), 2 * depth / std::tan(flank * (pi / 180)));
       });
     }},
    {"stray_exceedance",
     [] {
       return worst(many, [](Random& r) {
         const StrayInput in{.size_um = r.log_uniform(0.1, 500),
                             .plane_height_um = r.uniform(-5, 50),
                             .modulus_mpa = r.log_uniform(0.05, 1e4),
                             .hardness_mpa = r.log_uniform(10, 1e4),
                             .flank_deg = r.uniform(5, 60),
                             .force_n = r.log_uniform(0.1, 100)};
         const double depth = r.log_uniform(1e-3, 100);
         const real tangent = std::tan(in.flank_deg * (pi / 180));
         const real cone = pi * in.hardness_mpa / (2 * tangent * tangent);
         real exact = 0;
         if (depth <= 1000 * std::sqrt(in.force_n / cone)) {
           const real rigid = real{in.size_um} + in.plane_height_um + depth;
           const real give = cone * depth * depth / in.modulus_mpa;
           const real ratio =
               (rigid + std::sqrt(rigid * rigid + 4 * give)) / (2 * real{in.size_um});
           exact = std::clamp<real>(1 - std::log(ratio) / std::log(real{in.size_ratio}), 0, 1);
         }
         return absolute(stray_exceedance(in, depth), exact);
       });
     }},
    {"lamp_width_um",
     [] {
       return worst(many, [](Random& random) {
         const double shows = random.log_uniform(0.1, 1e4);
         const InspectionProfile& eye = inspection_table[0];
         return ulps(lamp_width_um(shows),
                     std::max<real>(eye.lamp_um.value, real{eye.lamp_ratio.value} * shows));
       });
     }},
    {"student_tail",
     [] {
       // The finite sum for an even number of degrees of freedom, Abramowitz & Stegun 26.7.4.
       return worst(100, [](Random& random) {
         const auto half = static_cast<int>(random.log_uniform(1, 5e3));
         const double df = 2.0 * half, t = random.log_uniform(1e-2, 3);
         const real cos2 = df / (df + real{t} * t);
         real term = 1, sum = 0;
         for (int i = 1; i <= half; ++i) {
           sum += term;
           term *= cos2 * (2 * i - 1) / (2 * i);
         }
         return relative(detail::student_tail(t, df), (1 - std::sqrt(1 - cos2) * sum) / 2);
       });
     }},
    {"chi_square_tails",
     [] {
       return worst(many, [](Random& random) {
         const int half = static_cast<int>(random.log_uniform(1, 5000));
         const double x = 2 * half * random.log_uniform(0.3, 3);
         const real above = poisson_below(half, real{x} / 2);
         const detail::ChiSquareTails tails = detail::chi_square_tails(x, 2 * half);
         if (above < 1e-250L || above > 1 - 1e-4L) return 0.0;
         return std::max(relative(tails.above, above), relative(tails.below, 1 - above));
       });
     }},
    {"chi_square_quantile",
     [] {
       return worst(300, [](Random& random) {
         const int half = static_cast<int>(random.log_uniform(1, 500));
         const double below = random.uniform(0.001, 0.999);
         const real x = detail::chi_square_quantile(below, 2 * half), y = x / 2;
         const real slope = std::exp((half - 1) * std::log(y) - y - std::lgamma(real(half))) / 2;
         return static_cast<double>(std::abs(1 - poisson_below(half, y) - real{below}) /
                                    (slope * x));
       });
     }},
    {"contact", [] { return contact_errors().densities; }},
    {"depth_um", [] { return contact_errors().depth; }},
    {"exceedance", [] { return contact_errors().exceedance; }},
};

TEST(Accuracy, IsWhatTheHeadersState) {
  for (const Measurement& measurement : measurements) {
    const std::string function = measurement.function;
    double bound = bound_of(function);
    if (function == "contact") bound = 1e-11;  // the first number is that of the load
    const double error = measurement.largest_error();
    EXPECT_LE(error, bound) << function;
  }
}

/// Statements enforced elsewhere, or that are no number.
const std::map<std::string, std::string> elsewhere{
    {"size_overlap", "data/reference/high_precision.json, bindings/tests/test_independent.py"},
    {"extrapolated_size", "bindings/tests/test_independent.py"},
    {"nearest", "decisions, not numbers: tests/unit/grade/convert_test.cpp"},
    {"nearest_into", "decisions, not numbers: tests/unit/grade/nearest_test.cpp"},
    {"ratio_within", "decisions, not numbers: tests/unit/stack/check_test.cpp"},
    {"ra_um", "a law fitted to a simulation: tests/property"},
    {"rq_um", "a law fitted to a simulation: tests/property"},
    {"meter_reading_gu", "simulated profiles: tests/property/meter_simulation_test.cpp"},
    {"mean_reading_gu", "that of meter_reading_gu"},
    {"grooves_per_um2", "that of contact: tests/unit/surface/scratch_test.cpp"},
    {"reliances", "differences of plans: tests/unit"},
    {"buy", "that of plan: tests/unit/risk/buy_test.cpp"},
    {"compare", "pairs of simulations: tests/unit/risk/compare_test.cpp"},
    {"calibrate", "quantiles of simulations: tests/unit/risk/calibrate_test.cpp"},
    {"when_done", "quantiles of simulations: tests/unit/risk/when_done_test.cpp"},
    {"gauged_removal", "tests/unit/journal/patch_test.cpp"},
    {"weighed_removal", "tests/unit/journal/patch_test.cpp"},
    {"levelled_removal", "tests/unit/journal/patch_test.cpp"},
    {"bridge", "decisions, not numbers: tests/unit/grade/bridge_test.cpp"},
    {"sized_grade", "the user's number itself: tests/unit/grade/label_reading_test.cpp"},
    {"sizes_um", "the printed number itself: double_entry_test.cpp"},
    {"scratch_depth_um", "that of depth_um"},
    {"how_much_to_spray", "drawn films: tests/property/spray_simulation_test.cpp"},
    {"plan", "sums of integers: tests/property/plan_oracle_test.cpp"},
    {"evaluate", "that of plan"},
    {"edge_film", "that of edge_share"},
    {"cure_state", "that of contact"},
    {"film_of_last_round", "the number of rounds itself: tests/unit/film/rounds_test.cpp"},
    {"witness_depth", "decisions: tests/unit/film/rounds_test.cpp"},
    {"strokes_within", "whole numbers: tests/unit/film/edge_test.cpp"},
    {"sanded_flat", "stepped blocks and faces: tests/unit/surface/defect_test.cpp"},
    {"take_down", "that of sanded_flat"},
    {"best_legs", "every list of legs: tests/property/leg_policy_oracle_test.cpp"},
    {"best_policy", "every policy: tests/property/policy_oracle_test.cpp"},
    {"diagnose", "simulated marks: bindings/tests/test_recover.py"},
    {"present", "that of plan: tests/unit/recover/present_test.cpp"},
    {"go_back", "that of best_policy and diagnose"},
    {"drawn_peel_um", "that of the normal quantile: tests/unit/risk/simulate_test.cpp"},
    {"drawn_film", "that of the normal quantile: tests/unit/risk/simulate_test.cpp"},
    {"thinnest_um", "that of the normal quantile: tests/unit/risk/simulate_test.cpp"},
    {"interval_of", "values themselves: tests/unit/risk/simulate_test.cpp"},
    {"sum_of", "dense regression: bindings/tests/test_learn.py"},
    {"in_unit", "factors by definition: tests/unit/told_unit_test.cpp"},
    {"updated", "dense regression: bindings/tests/test_learn.py"},
    {"settled", "that of updated: tests/unit/journal/learn_test.cpp"},
    {"surprise", "leaving one out: tests/unit/journal/learn_test.cpp"},
    {"duty_variance", "worked out anew: bindings/tests/test_learn.py"},
    {"machine_variance", "worked out anew: tests/unit/journal/machine_test.cpp"},
    {"coating_variance", "worked out anew: bindings/tests/test_learn.py"},
    {"backing_variance", "worked out anew: bindings/tests/test_learn.py"},
    {"scratch_variance", "worked out anew: bindings/tests/test_learn.py"},
    {"film_variance_um2", "worked out anew: bindings/tests/test_learn.py"},
    {"factors_of", "the medians themselves: tests/unit/journal/learn_test.cpp"},
    {"observe", "that of plan: tests/unit/journal/observe_test.cpp"},
    {"learn", "dense regression: bindings/tests/test_learn.py"},
    {"overcuts_of", "multiples of overcut_of(): tests/unit/plan/rules_test.cpp"},
    {"angle_between_deg", "whole degrees: tests/unit/recover/go_back_test.cpp"},
    {"direction_likelihood", "its sum: tests/unit/recover/go_back_test.cpp"},
    {"poisson_at_least", "closed forms: tests/unit/recover/go_back_test.cpp"},
    {"need_quantile_um", "decisions: bindings/tests/test_recover.py"},
    {"plan_together", "decisions and counts: tests/unit/risk/together_test.cpp"},
    {"simulate", "decisions and intervals: tests/unit, bindings/tests/test_simulate.py"},
};

TEST(Accuracy, EveryStatementIsEnforced) {
  for (const auto& [function, text] : stated_accuracies()) {
    bool measured = false;
    for (const Measurement& m : measurements) measured |= m.function == function;
    EXPECT_TRUE(measured || elsewhere.contains(function)) << function << ": " << text;
  }
}

}  // namespace
}  // namespace accuracy_test
