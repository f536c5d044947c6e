#pragma once
// The American fly line standard's code on a line: taper, number, function, such as WF-6-F or DT-5-F/S. Hyphens and
// blanks between them may be left out. Source: AFTMA 1961.
#include <optional>
#include <string>
#include <string_view>

#include "engine/tackle/tackle.hpp"

namespace floatwright {

enum class Taper { Level, DoubleTaper, WeightForward, SingleTaper, ShootingHead };
enum class LineFunction { Floating, Sinking, Intermediate, FloatingWithSinkingTip };

struct LineCode {
  Taper taper = Taper::WeightForward;
  int number = 0;  // 1 to 15
  LineFunction function = LineFunction::Floating;
  friend bool operator==(const LineCode&, const LineCode&) = default;
};

// Empty where it does not read: L, DT, WF, ST or SH; 1 to 15; F, S, I, F/S or F/T.
[[nodiscard]] std::optional<LineCode> read_line_code(std::string_view code);

}  // namespace floatwright
