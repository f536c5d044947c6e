#pragma once
// Collects the rows of judgement_keys() section by section.
#include <span>
#include <string>
#include <vector>

#include "engine/choice/judgement_keys.hpp"

namespace floatwright {

class KeyList {
 public:
  // What follows lies under this pointer, "/zone/shelter".
  void section(std::string pointer);
  void number(const char* name, double& value, const char* sentence, double least, double most);
  void list(const char* name, std::span<double> values, const char* sentence, double least, double most);
  // `unit` is of the table's `at`, which is at most `most_at`.
  void table(const char* name, std::span<TablePoint> points, const char* unit, const char* sentence, double most_at);

  [[nodiscard]] std::vector<JudgementKey> take() { return std::move(keys_); }

 private:
  std::string section_;
  std::vector<JudgementKey> keys_;
};

// Zone, pace, times, snag, mends, scatter, boat: what a cast is worth.
void add_keys_of_fishing(KeyList& keys, Judgement& judgement);
// Techniques, choice, flow, changes, bands, suits: what is made of it.
void add_keys_of_choosing(KeyList& keys, Judgement& judgement);

}  // namespace floatwright
