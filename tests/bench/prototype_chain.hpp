#pragma once
// A lumped chain as one writes it first: vectors of nodes, the drag law and the profile with their powers at every node
// of every step, tensions by a tridiagonal solve with slack pieces left out. The engine's chain is timed beside it. No
// feed.
#include <vector>

#include "engine/sinking/cast_case.hpp"
#include "engine/sinking/triple.hpp"

namespace floatwright {

class PrototypeChain {
 public:
  // Pieces no longer than these, m.
  PrototypeChain(const CastCase& in, double body, double sinking, double leader);
  void step(double dt);
  [[nodiscard]] double fly_depth() const { return at_.front().down; }
  [[nodiscard]] double bearing() const;
  [[nodiscard]] std::size_t pieces() const { return pieces_.size(); }

 private:
  using Vec = Triple<double>;
  struct Piece {
    double length, diameter, mass, displaced;  // m, m, kg/m, kg/m
  };
  struct Node {
    Vec tangent;
    double square, along;  // kg, mass and the step's drag against motion square to the line and along it
  };
  void fall(double dt);
  void tighten(double dt);
  [[nodiscard]] std::vector<double> tensions(const std::vector<Vec>& way, const std::vector<double>& over,
                                             double dt) const;
  [[nodiscard]] Vec moved(const Node& node, const Vec& pull) const;  // by a unit of time's pull

  CastCase in_;
  double rho_, nu_;  // kg/m3, m2/s
  std::vector<Piece> pieces_;
  std::vector<Vec> at_, velocity_, wanted_;
  std::vector<Node> nodes_;
};

}  // namespace floatwright
