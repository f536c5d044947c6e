#include "adapters/out/readings/words.hpp"

#include <date/date.h>

namespace floatwright {
namespace {

std::string mark_word(Mark mark) {
  switch (mark) {
    case Mark::Provisional:
      return "provisional";
    case Mark::Approved:
      return "approved";
    case Mark::Revised:
      return "revised";
    case Mark::Estimated:
      return "estimated";
    case Mark::Ice:
      return "ice";
    case Mark::Equipment:
      return "equipment";
    case Mark::Backwater:
      return "backwater";
    case Mark::Discontinued:
      return "discontinued";
    case Mark::Unavailable:
      return "unavailable";
    case Mark::Stale:
      return "stale";
    case Mark::SuspectSpike:
      return "suspect_spike";
    case Mark::Unknown:
      return "unknown";
  }
  return "unknown";
}

}  // namespace

std::string quantity_word(Variable variable) {
  switch (variable) {
    case Variable::Flow:
      return "discharge";
    case Variable::GaugeHeight:
      return "stage";
    case Variable::WaterTemperature:
      return "water_temperature";
    case Variable::Clarity:
      return "turbidity";
  }
  return "";
}

std::string unit_word(Variable variable) {
  switch (variable) {
    case Variable::Flow:
      return "m3/s";
    case Variable::GaugeHeight:
      return "m";
    case Variable::WaterTemperature:
      return "degC";
    case Variable::Clarity:
      return "FNU";
  }
  return "";
}

std::vector<std::string> mark_words(const Marks& marks, bool daily) {
  std::vector<std::string> out;
  for (const Mark mark : marks) out.push_back(mark_word(mark));
  if (daily) out.emplace_back("daily");
  return out;
}

std::string time_word(Instant time) { return date::format("%FT%TZ", time); }

}  // namespace floatwright
