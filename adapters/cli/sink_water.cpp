#include "adapters/cli/sink_water.hpp"

#include <fmt/format.h>

#include <charconv>

#include "adapters/in/files/nearest.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/words/amounts.hpp"
#include "engine/river/names.hpp"
#include "engine/tackle/names.hpp"
#include "engine/water/bed_profile.hpp"

namespace floatwright {
namespace {

constexpr Allowed<Length> kDepths{metres(0.1), metres(30.0)};
constexpr Allowed<Speed> kSpeeds{Speed{}, metres_per_second(4.0)};
constexpr WordTable<Mending, 3> kMendingWords{
    {{Mending::Tight, "tight"}, {Mending::OneMend, "one mend"}, {Mending::MendAndFeed, "mend and feed"}}};

Failure usage(const std::string& what) { return {what, kExitUsage}; }

// "tight_line" and "tight line" are one.
std::string plain(std::string text) {
  for (char& c : text)
    if (c == '_' || c == '-') c = ' ';
  return text;
}

template <class E, std::size_t N>
Result<E> meaning(std::string_view option, const std::string& typed, const WordTable<E, N>& table) {
  std::vector<std::string> known;
  for (const auto& [value, word] : table) {
    if (plain(std::string(word)) == plain(typed)) return value;
    known.push_back(plain(std::string(word)));
  }
  return tl::unexpected(usage(fmt::format("{}: found \"{}\"; give one of {}; the nearest is \"{}\"", option,
                                          printable(typed), fmt::join(known, ", "), nearest_word(typed, known))));
}

// A number or a fraction: "0.2", "1/6".
std::optional<double> share_in(std::string_view text) {
  const auto number = [](std::string_view part) -> std::optional<double> {
    double value = 0.0;
    const auto [end, error] = std::from_chars(part.data(), part.data() + part.size(), value, std::chars_format::fixed);
    return error == std::errc{} && end == part.data() + part.size() ? std::optional(value) : std::nullopt;
  };
  const auto slash = text.find('/');
  if (slash == std::string_view::npos) return number(text);
  const auto over = number(text.substr(0, slash)), under = number(text.substr(slash + 1));
  return over && under && *under > 0.0 ? std::optional(*over / *under) : std::nullopt;
}

// Of water over that bed, where no law is typed.
Result<Profile> profile_in(const std::string& text, Bed bed, Length depth) {
  if (text.empty()) return bed_profile(bed, depth);
  const Profile profile;
  if (text == "uniform") return Profile{Profile::Law::Uniform, profile.exponent, {}};
  if (text.starts_with("power ")) {
    const auto power = share_in(std::string_view(text).substr(6));
    if (power && *power >= 0.01 && *power <= 1.0) return Profile{Profile::Law::Power, *power, {}};
  } else if (text.starts_with("log ")) {
    const auto rough =
        length_in({"--profile", "log 5 cm"}, std::string_view(text).substr(4), {metres(1e-4), metres(10.0)});
    if (!rough) return tl::unexpected(rough.error());
    if (*rough < depth) return Profile{Profile::Law::Log, profile.exponent, *rough};
    return tl::unexpected(
        usage("--profile: a bed as rough as the water is deep has no log profile; write its roughness, about 3.5 times "
              "its larger stones, such as \"log 5 cm\"; or leave it out and give --bed"));
  }
  return tl::unexpected(
      usage(fmt::format("--profile: found \"{}\"; give \"power 1/6\" (1/7 smooth to 1/3 cobble), \"log 5 cm\" (roughness "
                        "of the bed, 3.5 times its larger stones) or uniform",
                        printable(text))));
}

Result<SurfaceSpeed> speed_of_water(const SinkOptions& options, const Profile& profile, Length depth) {
  if (options.speed.empty() == options.mean.empty())
    return tl::unexpected(usage(options.speed.empty()
                                    ? "how fast is the water? Give --speed \"3 ft/s\" as seen at the surface, or "
                                      "--mean for the mean of the depth"
                                    : "--speed is the surface's and --mean the mean of the depth: give one of them"));
  const bool mean = options.speed.empty();
  const auto typed = speed_in({mean ? "--mean" : "--speed", "3 ft/s"}, mean ? options.mean : options.speed, kSpeeds);
  if (!typed) return tl::unexpected(typed.error());
  if (mean) return surface_speed(mean_metres_per_second(typed->si()), profile, depth);
  return surface_metres_per_second(typed->si());
}

Result<Technique> with_strip(const SinkOptions& options, Technique technique) {
  const bool strips = technique.method == Method::Strip || options.still;
  if (!strips && !options.count.empty())
    return tl::unexpected(usage("--count is for --method strip and --still: it is counted before the first pull"));
  if (!strips && !options.strip.empty())
    return tl::unexpected(usage("--strip is the speed of a retrieve: it goes with --method strip and --still"));
  technique.strip = metres_per_second(0.3);
  if (!options.strip.empty()) {
    const auto strip =
        speed_in({"--strip", "1 ft/s"}, options.strip, {metres_per_second(0.02), metres_per_second(3.0)});
    if (!strip) return tl::unexpected(strip.error());
    technique.strip = *strip;
  }
  if (!options.count.empty()) {
    const auto count = duration_in({"--count", "6 s"}, options.count, {Duration{}, minutes(5.0)});
    if (!count) return tl::unexpected(count.error());
    technique.count = *count;
  }
  return technique;
}

}  // namespace

Result<KnownWater> water_asked_for(const SinkOptions& options) {
  KnownWater water;
  const bool of_a_lake = options.still && !options.lake.empty();  // whose depth is in river.json
  if (options.depth.empty() && !of_a_lake)
    return tl::unexpected(usage("how deep is the water? Give --depth, such as --depth \"5 ft\""));
  if (!options.depth.empty()) {
    const auto depth = length_in({"--depth", "5 ft"}, options.depth, kDepths);
    if (!depth) return tl::unexpected(depth.error());
    water.depth = *depth;
  }
  if (!options.temperature.empty()) {
    const auto warmth = temperature_in({"--temperature", "50 F"}, options.temperature, {celsius(0.0), celsius(30.0)});
    if (!warmth) return tl::unexpected(warmth.error());
    water.temperature = *warmth;
  }
  if (options.still) return water;
  if (!options.bed.empty()) {
    const auto bed = meaning("--bed", options.bed, kBedWords);
    if (!bed) return tl::unexpected(bed.error());
    water.bed = *bed;
  }
  const auto profile = profile_in(options.profile, water.bed, water.depth);
  if (!profile) return tl::unexpected(profile.error());
  water.profile = *profile;
  const auto speed = speed_of_water(options, water.profile, water.depth);
  if (!speed) return tl::unexpected(speed.error());
  water.surface_speed = water.boat_lane = *speed;
  if (!options.thread.empty()) {
    const auto thread = speed_in({"--thread", "4 ft/s"}, options.thread, kSpeeds);
    if (!thread) return tl::unexpected(thread.error());
    water.boat_lane = surface_metres_per_second(thread->si());
  }
  return water;
}

Result<Technique> technique_asked_for(const SinkOptions& options) {
  Technique technique;
  if (!options.method.empty()) {  // else the swing
    const auto method = meaning("--method", options.method, kMethodWords);
    if (!method) return tl::unexpected(method.error());
    technique.method = *method;
  }
  technique.platform = Platform::Anchored;
  if (!options.platform.empty()) {
    const auto platform = meaning("--platform", options.platform, kPlatformWords);
    if (!platform) return tl::unexpected(platform.error());
    technique.platform = *platform;
  }
  if (!options.technique.empty()) {
    const auto mending = meaning("--technique", options.technique, kMendingWords);
    if (!mending) return tl::unexpected(mending.error());
    if (technique.method != Method::Swing)
      return tl::unexpected(usage("--technique is how a swing is mended: it goes with --method swing"));
    technique.mending = *mending;
  }
  return with_strip(options, technique);
}

}  // namespace floatwright
