#include "engine/choice/judgement_keys.hpp"

#include <fmt/format.h>

#include "engine/choice/key_list.hpp"

namespace floatwright {
namespace {

Problem problem(std::string pointer, double found, std::string allowed, std::string mend) {
  Problem result;
  result.pointer = std::move(pointer);
  result.found = fmt::format("{}", found);
  result.allowed = std::move(allowed);
  result.mend = std::move(mend);
  return result;
}

// Two numbers of which the second must be the larger, where both are within their own limits.
void must_rise(Problems& problems, double before, const std::string& pointer, double found) {
  if (found > before) return;
  problems.push_back(
      problem(pointer, found, fmt::format("a number over {}", before), "Let the numbers rise from the one before."));
}

template <std::size_t N>
void must_rise(Problems& problems, const std::string& pointer, const char* unit, const Table<N>& table) {
  for (std::size_t i = 1; i < N; ++i) {
    must_rise(problems, table[i - 1].at, fmt::format("{}/{}/at_{}", pointer, i, unit), table[i].at);
  }
}

void tables_must_rise(Problems& problems, const std::string& pointer, const MethodSuits& method) {
  must_rise(problems, pointer + "/by_temperature", "c", method.by_temperature);
  must_rise(problems, pointer + "/by_clarity", "fnu", method.by_clarity);
}

void all_must_rise(Problems& problems, const Judgement& judgement) {
  must_rise(problems, "/zone/reach_by_temperature", "c", judgement.zone.reach_by_temperature);
  must_rise(problems, "/zone/speed_by_temperature", "c", judgement.zone.speed_by_temperature);
  must_rise(problems, "/zone/reach_by_clarity", "fnu", judgement.zone.reach_by_clarity);
  must_rise(problems, "/pace/swim_by_temperature", "c", judgement.pace.swim_by_temperature);
  tables_must_rise(problems, "/suits/swing", judgement.suits.swing);
  tables_must_rise(problems, "/suits/strip", judgement.suits.strip);
  tables_must_rise(problems, "/suits/indicator", judgement.suits.indicator);
  tables_must_rise(problems, "/suits/tight_line", judgement.suits.tight_line);
  tables_must_rise(problems, "/suits/dry", judgement.suits.dry);
  must_rise(problems, judgement.zone.leaves_from, "/zone/gone_at", judgement.zone.gone_at);
  must_rise(problems, judgement.suits.cold_full_c, "/suits/cold_from_c", judgement.suits.cold_from_c);
}

}  // namespace

void KeyList::section(std::string pointer) { section_ = std::move(pointer); }

void KeyList::number(const char* name, double& value, const char* sentence, double least, double most) {
  keys_.push_back({section_ + "/" + name, &value, sentence, least, most});
}

void KeyList::list(const char* name, std::span<double> values, const char* sentence, double least, double most) {
  for (std::size_t i = 0; i < values.size(); ++i) {
    keys_.push_back({fmt::format("{}/{}/{}", section_, name, i), &values[i], sentence, least, most});
  }
}

void KeyList::table(const char* name, std::span<TablePoint> points, const char* unit, const char* sentence,
                    double most_at) {
  for (std::size_t i = 0; i < points.size(); ++i) {
    const std::string point = fmt::format("{}/{}/{}", section_, name, i);
    keys_.push_back({fmt::format("{}/at_{}", point, unit), &points[i].at, sentence, -5.0, most_at});
    keys_.push_back({point + "/share", &points[i].share, sentence, 0.0, 2.0});
  }
}

std::vector<JudgementKey> judgement_keys(Judgement& judgement) {
  KeyList keys;
  add_keys_of_fishing(keys, judgement);
  add_keys_of_choosing(keys, judgement);
  return keys.take();
}

Problems judgement_problems(const Judgement& judgement) {
  Problems problems;
  Judgement copy = judgement;
  for (const JudgementKey& key : judgement_keys(copy)) {
    if (*key.value >= key.least && *key.value <= key.most) continue;  // not a number is out of any limits
    problems.push_back(problem(key.pointer, *key.value, fmt::format("{} to {}", key.least, key.most),
                               "Give a number within these limits, or leave the key out."));
  }
  all_must_rise(problems, judgement);
  return problems;
}

}  // namespace floatwright
