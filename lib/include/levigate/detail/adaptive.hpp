// Adaptive quadrature, for integrands that may be steep somewhere.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>

#include "levigate/version.hpp"

namespace levigate::inline v0::detail {

struct KronrodNode {
  double abscissa;
  double weight;  ///< in the 15-point rule
  double gauss;   ///< in the 7-point rule
};

/// Half of the Gauss-Kronrod rule with 7 and 15 points on -1..1.
/// Source: Piessens et al., QUADPACK, 1983, routine QK15, from memory; exact up to degree 22
inline constexpr std::array<KronrodNode, 8> kronrod_15{{
    {0.0, 0.209482141084727828012999174891714, 0.417959183673469387755102040816327},
    {0.207784955007898467600689403773245, 0.204432940075298892414161999234649, 0.0},
    {0.405845151377397166906606412076961, 0.190350578064785409913256402421014,
     0.381830050505118944950369775488975},
    {0.586087235467691130294144691958385, 0.169004726639267902826583426598550, 0.0},
    {0.741531185599394439863864773280788, 0.140653259715525918745189590510238,
     0.279705391489276667901467771423780},
    {0.864864423359769072789712788640926, 0.104790010322250183839876322541518, 0.0},
    {0.949107912342758524526189684047851, 0.063092092629978553290700663189204,
     0.129484966168869693270611432679082},
    {0.991455371120812639206854697526329, 0.022935322010529224963732008058970, 0.0},
}};

struct Quadrature {
  double value = 0;
  double error = 0;  ///< by how much the two rules differ: far more than the value is off
};

/// The integral over low..high by the 15-point rule.
template <typename Function>
Quadrature kronrod(const Function& f, double low, double high) {
  const double middle = 0.5 * (low + high), half = 0.5 * (high - low);
  double value = 0, gauss = 0;
  for (const KronrodNode& node : kronrod_15) {
    const double off = half * node.abscissa;
    const double sum = off == 0.0 ? f(middle) : f(middle - off) + f(middle + off);
    value += node.weight * sum;
    gauss += node.gauss * sum;
  }
  return {half * value, half * std::abs(value - gauss)};
}

/// The integral over low..high, of which `whole` is the rule, halved until its error is `enough` or 40 times.
template <typename Function>
double halved(const Function& f, double low, double high, const Quadrature& whole, double enough,
              int halvings = 40) {
  if (!(whole.error > enough) || halvings == 0) return whole.value;
  const double middle = 0.5 * (low + high);
  return halved(f, low, middle, kronrod(f, low, middle), enough, halvings - 1) +
         halved(f, middle, high, kronrod(f, middle, high), enough, halvings - 1);
}

/// Integral of a function that is nowhere negative, over low..high in equal panels. Each is halved until its two rules differ by less
/// than `relative` of the whole.
template <std::size_t panels, typename Function>
double integral(const Function& f, double low, double high, double relative) {
  const double width = (high - low) / panels;
  std::array<Quadrature, panels> rough{};
  double whole = 0;
  for (std::size_t i = 0; i < panels; ++i) {
    const double start = low + static_cast<double>(i) * width;
    rough[i] = kronrod(f, start, start + width);
    whole += rough[i].value;
  }
  double sum = 0;
  for (std::size_t i = 0; i < panels; ++i) {
    const double start = low + static_cast<double>(i) * width;
    sum += halved(f, start, start + width, rough[i], relative * whole);
  }
  return sum;
}

}  // namespace levigate::inline v0::detail
