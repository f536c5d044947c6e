#pragma once
// What `sink` answers, ready to be printed in any of its forms.
#include "adapters/cli/sink_options.hpp"
#include "adapters/out/figure/drawing.hpp"
#include "adapters/out/text/print_text.hpp"

namespace floatwright {

struct SinkAnswer {
  Page page;
  std::string json;
  Sketches sketches{};
  // Of one rig whose line has a shape: as a picture that stands alone, and under the page's own words.
  std::optional<Drawing> picture{}, page_picture{};
  std::string picture_words{};
};

// One rig in one water; failure 64 where it cannot be fished so, 65 where it has no answer.
[[nodiscard]] Result<SinkAnswer> rig_answer(const SinkScene& scene);
// Rigs side by side, deepest seconds first; of a line whose fly was not named its best.
[[nodiscard]] Result<SinkAnswer> rigs_answer(const SinkScene& scene, bool flies_named);
[[nodiscard]] Result<SinkAnswer> still_answer(const SinkScene& scene);
// The exact case of a file; its problems are told on standard error.
[[nodiscard]] Result<SinkAnswer> case_answer(const std::string& file);

}  // namespace floatwright
