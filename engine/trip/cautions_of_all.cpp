#include "engine/trip/cautions_of_all.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "engine/trip/cautions.hpp"

namespace floatwright {
namespace {

bool is_within(const Caution& c) { return *c.product <= *c.product_limit && *c.depth <= *c.depth_limit; }

bool is_of_the_trip(const Caution& caution) {
  switch (caution.kind) {
    case CautionKind::Wading:
      return is_within(caution);
    case CautionKind::ColdWater:
    case CautionKind::HeatCaution:
    case CautionKind::HeatUnknown:
    case CautionKind::Wind:
    case CautionKind::Dark:
      return true;
    default:
      return false;
  }
}

bool of_the_same(const Caution& a, const Caution& b) {
  if (a.kind == b.kind && is_of_the_trip(a) && is_of_the_trip(b)) return true;
  const auto words = [](const Caution& c) { return std::tie(c.kind, c.where, c.about, c.text); };
  return words(a) == words(b);
}

double beyond_limit(const Caution& c) { return std::abs((*c.flow - *c.flow_limit).si()); }

bool is_worse(const Caution& a, const Caution& b) {
  switch (a.kind) {
    case CautionKind::ColdWater:
      return *a.temperature < *b.temperature;
    case CautionKind::HeatCaution:
    case CautionKind::HeatStop:
      return *a.from < *b.from;
    case CautionKind::Wading:
      return *a.product > *b.product;
    case CautionKind::Wind:
      return *a.speed > *b.speed;
    case CautionKind::BoatLimit:
      return beyond_limit(a) > beyond_limit(b);
    default:
      return false;
  }
}

}  // namespace

std::vector<Caution> cautions_of_all(const std::vector<PlannedStretch>& stretches) {
  std::vector<Caution> all;
  for (const PlannedStretch& stretch : stretches) {
    for (const Caution& caution : stretch.cautions) {
      const auto told = std::ranges::find_if(all, [&](const Caution& other) { return of_the_same(other, caution); });
      if (told == all.end())
        all.push_back(caution);
      else if (is_worse(caution, *told))
        *told = caution;
    }
  }
  const auto is = [](CautionKind kind) { return [kind](const Caution& c) { return c.kind == kind; }; };
  if (std::ranges::any_of(all, is(CautionKind::HeatStop))) std::erase_if(all, is(CautionKind::HeatCaution));
  return sorted(std::move(all));
}

}  // namespace floatwright
