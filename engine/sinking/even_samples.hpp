#pragma once
// Samples of a closed-form drift, even in time, both ends among them.
#include <vector>

#include "engine/sinking/cast_path.hpp"

namespace floatwright {

inline constexpr int kDriftSamples = 33;

template <class SampleAt>
[[nodiscard]] std::vector<CastSample> even_samples(Duration end, const SampleAt& sample_at) {
  std::vector<CastSample> samples;
  samples.reserve(kDriftSamples);
  for (int i = 0; i < kDriftSamples; ++i)
    samples.push_back(sample_at(end * (static_cast<double>(i) / (kDriftSamples - 1))));
  return samples;
}

// How long a run of some length lasts, at most `longest`: still water has an answer too.
[[nodiscard]] inline Duration time_within(Length run, Speed pace, Duration longest) {
  return pace * longest <= run ? longest : run / pace;
}

}  // namespace floatwright
