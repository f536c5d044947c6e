#include "adapters/in/files/boats_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "adapters/in/files/calendar_text.hpp"
#include "adapters/in/files/nearest.hpp"
#include "adapters/in/files/people_and_methods.hpp"
#include "adapters/in/text/printable.hpp"
#include "engine/river/graph.hpp"

namespace floatwright {
namespace {

constexpr int kMostAnglers = 12, kMostRods = 12;

std::string quoted(const std::string& text) { return fmt::format("\"{}\"", printable(text)); }

std::string clock(Duration time_of_day) {
  const long total = std::lround(in_minutes(time_of_day));
  return fmt::format("{:02}:{:02}", total / 60, total % 60);
}

class BoatsReader {
 public:
  BoatsReader(const River& river, const Settings& settings)
      : river_(river), settings_(settings), graph_(river_graph(river)) {}

  BoatOrder boat(TypedObject& in, std::size_t place) {
    BoatOrder boat;
    boat.name = in.text("name", Need::Optional);
    boat.guide = in.text("guide", Need::Optional);
    if (boat.guide.empty() && boat.name.empty())
      in.tell("", "a boat without \"guide\" and without \"name\"", "one of them", "Add \"guide\".");
    if (boat.name.empty()) boat.name = fmt::format("Boat {}", place + 1);
    boat.phone = in.text("phone", Need::Optional);
    boat.from = access(in, "from");
    boat.to = access(in, "to");
    boat.launch = launch(in);
    boat.anglers = anglers(in);
    boat.methods = read_methods(in, Need::Optional);
    boat.rods_aboard = in.whole_number("rods_aboard", 1, kMostRods, Need::Optional);
    in.finish();
    check_stretch(in, boat);
    return boat;
  }

 private:
  std::optional<std::string> access(TypedObject& in, std::string_view key) {
    const std::string id = in.text(key, Need::Optional);
    if (id.empty()) return std::nullopt;
    std::vector<std::string> known;
    for (const Access& access : river_.accesses) known.push_back(access.id);
    if (std::find(known.begin(), known.end(), id) != known.end()) return id;
    in.tell(key, quoted(id), "the id of an access in river.json: " + either_of(known),
            fmt::format("The nearest id is {}.", quoted(nearest_word(id, known))));
    return std::nullopt;
  }

  std::optional<Duration> launch(TypedObject& in) {
    const auto time = read_time_of_day(in, "launch", Need::Optional);
    if (!time || (*time >= settings_.earliest_launch && *time < settings_.latest_off)) return time;
    in.tell("launch", quoted(clock(*time)),
            fmt::format("{} to before {}, the hours of settings.json", clock(settings_.earliest_launch),
                        clock(settings_.latest_off)),
            "Launch within them, or change \"hours\" there.");
    return std::nullopt;
  }

  // A number: so many people who cast as far as the least able of the settings' and wade if all of those do.
  std::vector<Angler> anglers(TypedObject& in) {
    const LocatedJson* typed = in.find("anglers");
    if (typed == nullptr) return {};
    if (typed->kind == JsonKind::List) return read_people(in, "anglers", Need::Optional);
    if (typed->kind != JsonKind::Number) {
      in.tell("anglers", describe(*typed), "how many, or a list of people",
              "Write 2, or [ { \"name\": \"guest\", \"cast_ft\": 40, \"wades\": false } ].");
      return {};
    }
    const int count = in.whole_number("anglers", 1, kMostAnglers, Need::Optional).value_or(0);
    Angler any;
    const auto& people = settings_.preferences.anglers;
    const auto shorter = [](const Angler& a, const Angler& b) { return a.cast < b.cast; };
    if (!people.empty()) any.cast = std::min_element(people.begin(), people.end(), shorter)->cast;
    any.wades = !people.empty() && std::all_of(people.begin(), people.end(), [](const Angler& a) { return a.wades; });
    return std::vector<Angler>(static_cast<std::size_t>(count), any);
  }

  void check_stretch(TypedObject& in, const BoatOrder& boat) const {
    if (!boat.from && !boat.to) return;
    const auto fits = [](const std::optional<std::string>& asked, const Access& a) { return !asked || *asked == a.id; };
    for (const Access& from : river_.accesses)
      for (const Access& to : river_.accesses)
        if (fits(boat.from, from) && fits(boat.to, to) && !graph_.between(from.place, to.place).empty()) return;
    const std::string found = boat.from && boat.to ? fmt::format("{}, which is not downstream of {}", quoted(*boat.to),
                                                                 quoted(*boat.from))
                              : boat.from          ? quoted(*boat.from) + ", with no access downstream"
                                                   : quoted(*boat.to) + ", with no access upstream";
    in.tell(boat.to ? "to" : "from", found, "a put-in and a take-out downstream of it",
            "Look at the miles in river.json; two ids turned round are the usual cause.");
  }

  const River& river_;
  const Settings& settings_;
  RiverGraph graph_;
};

// The name, and who cannot be in two boats.
void check_against_earlier(TypedObject& in, const std::vector<BoatOrder>& earlier, const BoatOrder& boat) {
  for (std::size_t i = 0; i < earlier.size(); ++i) {
    if (earlier[i].name == boat.name)
      in.tell("name", fmt::format("{}, which /boats/{} is called too", quoted(boat.name), i), "a name of its own",
              "Give each boat its own \"name\".");
    if (!boat.guide.empty() && earlier[i].guide == boat.guide)
      in.tell("guide", fmt::format("{}, who has /boats/{} too", quoted(boat.guide), i), "one boat a guide",
              "See whether that is meant.", true);
  }
}

}  // namespace

Boats read_boats(const LocatedJson& root, FileReading& reading, const River& river, const Settings& settings) {
  Boats read;
  auto in = versioned_root(root, reading);
  if (!in) return read;
  read.day = read_date(*in, "date", Need::Required).value_or(std::chrono::year_month_day{});
  BoatsReader reader(river, settings);
  for (TypedObject& item : in->objects("boats", Need::Required)) {
    BoatOrder boat = reader.boat(item, read.boats.size());
    check_against_earlier(item, read.boats, boat);
    read.boats.push_back(std::move(boat));
  }
  if (const LocatedJson* list = in->find("boats"); list != nullptr && list->kind == JsonKind::List && list->items.empty())
    in->tell("boats", "no boat", "at least one", "Write { \"guide\": \"Wren\" }, or plan without --boats.");
  in->finish();
  return read;
}

}  // namespace floatwright
