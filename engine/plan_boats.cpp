#include "engine/plan_boats.hpp"

#include <algorithm>
#include <list>
#include <numeric>

#include "engine/choice/rod_pool.hpp"
#include "engine/tackle/precedence.hpp"
#include "engine/trip/compare.hpp"
#include "engine/trip/gauges_ahead.hpp"

namespace floatwright {
namespace {

void set_stretch(const BoatOrder& boat, Settings& settings) {
  if (boat.from || boat.to) {
    settings.from = boat.from;
    settings.to = boat.to;
  }
  if (!boat.from || !boat.to) return;  // a stretch that is named may have any length
  settings.least_stretch.reset();
  settings.most_stretch.reset();
}

DayInputs inputs_of(const BoatOrder& boat, const DayInputs& day) {
  DayInputs in = day;
  Settings& settings = in.settings;
  if (boat.guide != settings.who || !boat.phone.empty()) settings.phone = boat.phone;
  settings.who = boat.guide;
  settings.boat = settings.boat_of_several = boat.name;
  set_stretch(boat, settings);
  settings.launch = boat.launch;
  if (!boat.anglers.empty()) settings.preferences.anglers = boat.anglers;
  if (!boat.methods.empty()) settings.preferences.methods = boat.methods;
  if (boat.rods_aboard) settings.preferences.rods_aboard = *boat.rods_aboard;
  return in;
}

// Whose waters are scored alike.
bool fish_alike(const Preferences& a, const Preferences& b) {
  const auto cast_alike = [](const Angler& x, const Angler& y) { return x.cast == y.cast && x.wades == y.wades; };
  return a.methods == b.methods && a.platforms == b.platforms &&
         std::equal(a.anglers.begin(), a.anglers.end(), b.anglers.begin(), b.anglers.end(), cast_alike);
}

// One book for all who fish alike, kept with the day it reads in.
class Library {
 public:
  Library(const std::vector<BoatDay>& boats, const WaterOfDay& water) {
    for (const BoatDay& boat : boats) {
      const Preferences& preferences = boat.in.settings.preferences;
      auto shelf = std::find_if(shelves_.begin(), shelves_.end(), [&](const Shelf& s) {
        return fish_alike(s.day.settings.preferences, preferences);
      });
      if (shelf == shelves_.end()) shelf = shelves_.emplace(shelves_.end(), river_day(boat.in, water));
      of_boat_.push_back(&shelf->book);
    }
  }
  [[nodiscard]] WaterBook& of(std::size_t boat) { return *of_boat_[boat]; }

 private:
  struct Shelf {
    explicit Shelf(const RiverDay& its_day) : day(its_day), book(day) {}
    RiverDay day;
    WaterBook book;
  };
  std::list<Shelf> shelves_;  // stays where it is
  std::vector<WaterBook*> of_boat_;
};

// What a boat would do with all the rods to choose from; no stretch where none can be floated.
struct Wish {
  std::optional<Stretch> stretch;
  PoolBoat rods;
};

std::optional<Stretch> wished_stretch(const RiverDay& day, WaterBook& book) {
  if (day.settings.from && day.settings.to) {  // nothing to compare
    std::vector<Stretch> named = stretches(day);
    return named.empty() ? std::nullopt : std::optional(std::move(named.front()));
  }
  std::vector<ComparedStretch> all = compared(day, book);
  return all.empty() ? std::nullopt : std::optional(std::move(all.front().stretch));
}

Wish wish_of(const DayInputs& in, const WaterOfDay& water, WaterBook& book) {
  const RiverDay day = river_day(in, water);
  Wish wish{wished_stretch(day, book), {{}, in.settings.preferences}};
  if (wish.stretch) wish.rods.waters = waters_fished(day, book, *wish.stretch);
  return wish;
}

// Each boat may have what it was given, and no other rod. One without a rod has nothing to compare stretches by: it keeps
// the one it wished for.
void give(const RodNumbers& given, const Wish& wish, DayInputs& in) {
  for (std::size_t rod = 0; rod < in.tackle.rods.size(); ++rod)
    if (!std::ranges::binary_search(given, rod)) in.settings.preferences.rods_elsewhere.insert(rod);
  if (!given.empty() || !wish.stretch) return;
  in.settings.from = in.river.accesses[wish.stretch->put_in].id;
  in.settings.to = in.river.accesses[wish.stretch->take_out].id;
}

// Which of boats that would make as much of a rod gets it: by name, so that their order in a list means nothing.
std::vector<std::size_t> first_served(const std::vector<BoatDay>& days) {
  std::vector<std::size_t> order(days.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::sort(order, {}, [&](std::size_t boat) { return by_name(days[boat].in.settings.boat); });
  return order;
}

void share_rods(const std::vector<Wish>& wishes, std::vector<BoatDay>& days) {
  const std::vector<std::size_t> order = first_served(days);
  std::vector<PoolBoat> pool;
  for (const std::size_t boat : order) pool.push_back(wishes[boat].rods);
  const DayInputs& any = days.front().in;
  const std::vector<RodNumbers> given = rods_of_boats(pool, any.tackle, any.judgement);
  for (std::size_t i = 0; i < order.size(); ++i) give(given[i], wishes[order[i]], days[order[i]].in);
}

}  // namespace

TablesNeeded tables_needed(const DayInputs& day, const std::vector<BoatOrder>& boats) {
  TablesNeeded needed;
  if (boats.empty()) add_tables_needed(needed, day);
  for (const BoatOrder& boat : boats) add_tables_needed(needed, inputs_of(boat, day));
  return needed;
}

std::vector<BoatDay> plan_boats(const DayInputs& day, const std::vector<BoatOrder>& boats, const DoEach& do_each) {
  std::vector<BoatDay> days;
  for (const BoatOrder& boat : boats) days.push_back({inputs_of(boat, day), {}});
  const WaterOfDay water = water_of_day(day);
  Library library(days, water);
  if (days.size() > 1 && why_no_day(day.river, day.records, day.day, day.now).empty()) {
    std::vector<Wish> wishes(days.size());
    do_each(days.size(), [&](std::size_t i) { wishes[i] = wish_of(days[i].in, water, library.of(i)); });
    share_rods(wishes, days);
  }
  do_each(days.size(), [&](std::size_t i) { days[i].plan = planned_day(days[i].in, water, library.of(i)); });
  return days;
}

}  // namespace floatwright
