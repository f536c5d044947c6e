#pragma once
// Times of a clock that is put back in autumn and on in spring, as instants. The hour that it shows twice is told by
// the order of the times: the first that fits and is after the time before. The hour that it leaves out never was.
#include <optional>
#include <string>

#include "engine/units/instant.hpp"

namespace date {
class time_zone;
}

namespace floatwright {

class ZoneClock {
 public:
  // Empty: the zone is not in the system's database.
  [[nodiscard]] static std::optional<ZoneClock> of(const std::string& zone);

  struct Shown {
    std::optional<Instant> instant;  // none: the clock never showed this
    bool twice = false;
  };
  [[nodiscard]] Shown instant_of(Instant local);

 private:
  explicit ZoneClock(const date::time_zone* zone) : zone_(zone) {}
  const date::time_zone* zone_;
  std::optional<Instant> before_;
};

}  // namespace floatwright
