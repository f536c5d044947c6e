#include "engine/sinking/chain.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace floatwright {

template <class Real>
Chain<Real>::Chain(const ChainLine& line, std::span<const Triple<double>> joints, double velocity,
                   std::span<const TabledWater* const> waters, double boat, bool has_bed)
    : line_(line),
      waters_(waters.begin(), waters.end()),
      density_(waters.front()->properties.density.si()),
      viscosity_(waters.front()->properties.viscosity.si()),
      boat_(static_cast<Scalar>(boat)),
      has_bed_(has_bed) {
  while (waters_.size() < Real::size()) waters_.push_back(waters_.back());
  depth_ = Real([this](auto lane) { return static_cast<Scalar>(waters_[lane]->depth.si()); });
  const Real zero(Scalar{0});
  for (std::size_t i = 0; i < joints.size(); ++i) {
    const bool is_rod = i + 1 == joints.size();
    const auto real = [](double x) { return Real(static_cast<Scalar>(x)); };
    joints_.push_back({{real(joints[i].along), real(joints[i].down), real(joints[i].across)},
                       {real(is_rod ? 0.0 : velocity), zero, zero},
                       zero,
                       zero});
  }
  tension_.assign(line_.pieces.size(), zero);
  fly_drag_ = {zero, zero};
  lump_again(0);
}

// Half of each piece that meets at a joint, and the fly at the first.
template <class Real>
typename Chain<Real>::Lump Chain<Real>::lump(std::size_t joint) const {
  double mass = 0, displaced = 0, weight = 0, length = 0, area = 0;  // kg, kg, N, m, m2
  for (std::size_t i = joint > 0 ? joint - 1 : 0; i <= joint && i < line_.pieces.size(); ++i) {
    const ChainPiece& piece = line_.pieces[i];
    const double half = 0.5 * piece.length;
    mass += half * piece.mass;
    displaced += half * piece.displaced;
    weight += half * piece.weight;
    length += half;
    area += half * piece.diameter;
  }
  if (joint == 0) {
    mass += line_.fly.mass;
    displaced += line_.fly.displaced;
    weight += line_.fly.weight;
  }
  const auto scalar = [](double x) { return static_cast<Scalar>(x); };
  return {scalar(mass),
          scalar(displaced),
          scalar(weight),
          scalar(0.5 * density_ * area),
          scalar(0.5 * density_ * line_.tangential_drag * std::numbers::pi * area),
          scalar(area / length / viscosity_)};
}

template <class Real>
void Chain<Real>::lump_again(std::size_t from) {
  lumps_.resize(line_.pieces.size());
  for (std::size_t i = from; i < lumps_.size(); ++i) lumps_[i] = lump(i);
}

template <class Real>
double Chain<Real>::out() const {
  double length = 0.0;
  for (const ChainPiece& piece : line_.pieces) length += piece.length;
  return length;
}

template <class Real>
void Chain<Real>::let_out(double length) {
  line_.pieces.back().length += length;
  while (line_.pieces.back().length > 1.5 * line_.pieces.back().most) cut_the_uppermost();
  lump_again(lumps_.size() > 2 ? lumps_.size() - 2 : 0);
}

// The outer part gets a whole length, the inner one what is left; the new joint lies between its neighbours.
template <class Real>
void Chain<Real>::cut_the_uppermost() {
  ChainPiece inner = line_.pieces.back();
  ChainPiece& outer = line_.pieces.back();
  const Real share(static_cast<Scalar>(outer.most / outer.length));
  inner.length -= outer.most;
  outer.length = outer.most;
  line_.pieces.push_back(inner);
  const Joint rod = joints_.back();
  const Joint& below = joints_[joints_.size() - 2];
  Joint between = below;
  between.at = below.at + share * (rod.at - below.at);
  between.velocity = below.velocity + share * (rod.velocity - below.velocity);
  joints_.back() = between;
  joints_.push_back(rod);
  tension_.push_back(tension_.back());
  lumps_.push_back({});
}

// Pieces come in one by one; a short remainder joins the next one down.
template <class Real>
void Chain<Real>::take_in(double length, double least) {
  constexpr double kShort = 0.35;  // of a piece's length: below it the remainder joins the next
  length = std::min(length, out() - least);
  if (length <= 0.0) return;
  auto& pieces = line_.pieces;
  const auto too_short = [&] {
    return pieces.size() > 1 && pieces.back().length - length < kShort * pieces[pieces.size() - 2].most;
  };
  while (too_short()) {
    const double rest = pieces.back().length;
    pieces.pop_back();
    pieces.back().length += rest;
    joints_[joints_.size() - 2] = joints_.back();
    joints_.pop_back();
    tension_.pop_back();
  }
  pieces.back().length -= length;
  lumps_.resize(pieces.size());
  lump_again(lumps_.size() > 2 ? lumps_.size() - 2 : 0);
}

template <class Real>
Real Chain<Real>::stream(const Real& depth) const {
  return Real([&](auto lane) {
    const double d = static_cast<double>(static_cast<Scalar>(depth[lane]));
    return static_cast<Scalar>(waters_[lane]->stream.at(metres(d)).si()) - boat_;
  });
}

// Lifted out of the water against the weight of what it no longer displaces.
template <class Real>
Real Chain<Real>::buoyancy_lost(Scalar displaced, const Real& depth) const {
  const Scalar skin = static_cast<Scalar>(kSkin), g = static_cast<Scalar>(kStandardGravity);
  const Real out = std::experimental::max(-depth, Real(Scalar{0}));            // m
  const Real partly = std::experimental::min(out, Real(skin));                 // m
  return displaced * g * (Scalar(0.5) / skin * partly * partly + out - partly);
}

template <class Real>
Real Chain<Real>::energy() const {
  Real sum(Scalar{0});
  for (std::size_t i = 0; i < lumps_.size(); ++i) {
    const Joint& joint = joints_[i];
    const Place t = tangent(i, joints_[i > 0 ? i - 1 : 0].at);
    const Real along = dot(joint.velocity, t);
    const Real square = dot(joint.velocity, joint.velocity) - along * along;
    sum += Scalar(0.5) * (lumps_[i].mass * along * along + (lumps_[i].mass + lumps_[i].displaced) * square) -
           lumps_[i].weight * joint.at.down + buoyancy_lost(lumps_[i].displaced, joint.at.down);
  }
  return sum;
}

template class Chain<Alone>;
template class Chain<Abreast>;

}  // namespace floatwright
