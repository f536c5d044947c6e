#include "engine/sinking/chain.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace floatwright {

template <class Real>
Chain<Real>::Chain(const ChainLine& line, std::span<const Triple<double>> joints, std::span<const WaterAndBoat> places,
                   bool has_bed)
    : line_(line),
      drags_(&drag_table()),
      density_(places.front().water->properties.density.si()),
      viscosity_(places.front().water->properties.viscosity.si()),
      has_bed_(has_bed) {
  assert(places.size() <= Real::size());
  const auto place = [&](std::size_t lane) { return places[std::min(lane, places.size() - 1)]; };
  const auto real = [](double x) { return Real(static_cast<Scalar>(x)); };
  for (std::size_t lane = 0; lane < Real::size(); ++lane) streams_.push_back(&place(lane).water->stream);
  per_depth_ = Real([&](auto lane) { return static_cast<Scalar>(place(lane).water->stream.per_depth()); });
  depth_ = Real([&](auto lane) { return static_cast<Scalar>(place(lane).water->depth.si()); });
  boat_ = Real([&](auto lane) { return static_cast<Scalar>(place(lane).boat.si()); });
  const Real zero(0);
  past_ = stream(zero);
  for (const Triple<double>& at : joints)
    joints_.push_back({{real(at.along), real(at.down), real(at.across)}, {past_, zero, zero}, zero, zero});
  joints_.back().velocity.along = zero;
  for (const ChainPiece& piece : line_.pieces) length_.push_back(real(piece.length));
  tension_.assign(length_.size(), zero);
  fly_drag_ = {zero, zero};
  resize();
  lump_again(0);
}

// Room for all that is kept by joint or by piece.
template <class Real>
void Chain<Real>::resize() {
  const std::size_t n = length_.size();
  lumps_.resize(n);
  mobility_.resize(n);
  for (auto* rows : {&by_length_, &tension_, &stretch_, &diagonal_, &coupled_, &taut_, &ratio_, &impulse_, &pulled_})
    rows->resize(n);
  for (auto* places : {&direction_, &moved_low_, &moved_high_}) places->resize(n);
}

// Half of each piece that meets at a joint, and the fly at the first.
template <class Real>
typename Chain<Real>::Lump Chain<Real>::lump(std::size_t joint) const {
  const auto scalar = [](double x) { return static_cast<Scalar>(x); };
  Real mass(0), displaced(0), weight(0), length(0), area(0);  // kg, kg, N, m, m2
  for (std::size_t i = joint > 0 ? joint - 1 : 0; i <= joint && i < length_.size(); ++i) {
    const ChainPiece& piece = line_.pieces[i];
    const Real half = scalar(0.5) * length_[i];
    mass += half * scalar(piece.mass);
    displaced += half * scalar(piece.displaced);
    weight += half * scalar(piece.weight);
    length += half;
    area += half * scalar(piece.diameter);
  }
  const Scalar across_drag = scalar(0.5 * density_);
  const Scalar along_drag = scalar(0.5 * density_ * line_.tangential_drag * std::numbers::pi);
  const Real reynolds = area / length * scalar(1.0 / viscosity_);
  if (joint == 0) {
    mass += scalar(line_.fly.mass);
    displaced += scalar(line_.fly.displaced);
    weight += scalar(line_.fly.weight);
  }
  return {length, mass, displaced, weight, across_drag * area, along_drag * area, reynolds};
}

template <class Real>
void Chain<Real>::lump_again(std::size_t from) {
  for (std::size_t i = from; i < lumps_.size(); ++i) {
    lumps_[i] = lump(i);
    by_length_[i] = Real(1) / length_[i];
  }
}

template <class Real>
Real Chain<Real>::out() const {
  Real sum(0);
  for (const Real& length : length_) sum += length;
  return sum;
}

template <class Real>
void Chain<Real>::let_out(const Real& length) {
  length_.back() += length;
  while (std::experimental::hmax(length_.back()) > static_cast<Scalar>(1.5 * line_.pieces.back().most))
    cut_the_uppermost();
  resize();
  lump_again(lumps_.size() > 2 ? lumps_.size() - 2 : 0);
}

// The outer part gets a whole length in the lane that has fed most; the new joint lies between its neighbours.
template <class Real>
void Chain<Real>::cut_the_uppermost() {
  const Scalar share = static_cast<Scalar>(line_.pieces.back().most) / std::experimental::hmax(length_.back());
  line_.pieces.push_back(line_.pieces.back());
  length_.push_back((Scalar(1) - share) * length_.back());
  length_[length_.size() - 2] *= share;
  tension_.push_back(tension_.back());
  const Joint rod = joints_.back();
  Joint between = joints_[joints_.size() - 2];
  between.at = between.at + Real(share) * (rod.at - between.at);
  between.velocity = between.velocity + Real(share) * (rod.velocity - between.velocity);
  joints_.back() = between;
  joints_.push_back(rod);
}

// Pieces come in one by one; a short remainder joins the next one down.
template <class Real>
void Chain<Real>::take_in(const Real& length) {
  constexpr double kShort = 0.35;  // of a piece's length: below it the remainder joins the next
  length_.back() -= length;
  while (length_.size() > 1 && std::experimental::hmin(length_.back()) <
                                   static_cast<Scalar>(kShort * line_.pieces[length_.size() - 2].most)) {
    length_[length_.size() - 2] += length_.back();
    length_.pop_back();
    line_.pieces.pop_back();
    tension_.pop_back();
    joints_[joints_.size() - 2] = joints_.back();
    joints_.pop_back();
  }
  resize();
  lump_again(lumps_.size() > 2 ? lumps_.size() - 2 : 0);
}

// Lifted out of the water against the weight of what it no longer displaces.
template <class Real>
Real Chain<Real>::buoyancy_lost(const Real& displaced, const Real& depth) const {
  const Scalar skin = static_cast<Scalar>(kSkin), g = static_cast<Scalar>(kStandardGravity);
  const Real out = std::experimental::max(-depth, Real(Scalar{0}));  // m
  const Real partly = std::experimental::min(out, Real(skin));       // m
  return displaced * g * (Scalar(0.5) / skin * partly * partly + out - partly);
}

template <class Real>
Real Chain<Real>::energy() const {
  Real sum(Scalar{0});
  for (std::size_t i = 0; i < lumps_.size(); ++i) {
    const Joint& joint = joints_[i];
    const Place t = tangent(i);
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
