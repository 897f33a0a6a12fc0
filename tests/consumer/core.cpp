// A user who includes the umbrella first and alone, and must get no third-party header with it.
#include <levigate/levigate.hpp>

#ifdef INCLUDE_NLOHMANN_JSON_HPP_
#error "levigate.hpp brings nlohmann/json in"
#endif
#if defined(FMT_VERSION) || defined(FMT_CORE_H_)
#error "levigate.hpp brings fmt in"
#endif

double rate_seen_from_another_file();

int main() {
  const double rate_um_per_m = levigate::removal_rate_um_per_m(0.02, 18.3, 1.7, 150.0);
  return rate_um_per_m > 0.0 && rate_um_per_m == rate_seen_from_another_file() ? 0 : 1;
}
