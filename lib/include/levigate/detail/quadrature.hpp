// Gauss-Legendre quadrature of smooth functions on an interval cut into equal panels.
#pragma once

#include <array>

#include "levigate/version.hpp"

namespace levigate::inline v0::detail {

struct QuadratureNode {
  double abscissa;
  double weight;
};

/// Positive half of the 16-point rule on -1..1, exact for polynomials up to degree 31; computed to
/// 40 digits as the roots of the Legendre polynomial P16.
inline constexpr std::array<QuadratureNode, 8> gauss_legendre_16{{
    {0.095012509837637440185, 0.18945061045506849629},
    {0.28160355077925891323, 0.18260341504492358887},
    {0.45801677765722738634, 0.16915651939500253819},
    {0.61787624440264374845, 0.14959598881657673208},
    {0.7554044083550030339, 0.12462897125553387205},
    {0.86563120238783174388, 0.09515851168249278481},
    {0.94457502307323257608, 0.062253523938647892863},
    {0.9894009349916499326, 0.027152459411754094852},
}};

/// Calls visit(x, weight) for every node of the composite 16-point rule on low..high.
template <typename Visit>
void for_each_node(double low, double high, int panels, Visit visit) {
  const double half = 0.5 * (high - low) / panels;
  for (int panel = 0; panel < panels; ++panel) {
    const double middle = low + (2 * panel + 1) * half;
    for (const auto& node : gauss_legendre_16) {
      visit(middle - half * node.abscissa, half * node.weight);
      visit(middle + half * node.abscissa, half * node.weight);
    }
  }
}

}  // namespace levigate::inline v0::detail
