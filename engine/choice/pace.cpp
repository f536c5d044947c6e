#include "engine/choice/pace.hpp"

namespace floatwright {

Speed easy_speed(const Measured<Temperature>& temperature, const PaceJudgement& judgement) {
  const double warmth = in_celsius(temperature ? *temperature : celsius(10.0));
  return metres_per_second(judgement.swim_m_s * read(judgement.swim_by_temperature, warmth));
}

}  // namespace floatwright
