// The arrow adapters in -> engine -> adapters out, held over the #include lines: linking alone proves nothing, since a
// packaged header that is not linked still compiles.
#include <gtest/gtest.h>

#include <map>
#include <set>

#include "tests/architecture/source_tree.hpp"

namespace floatwright::testing {
namespace {

// Engine rooms in the order of the data flow: a room may use itself and the rooms before it.
const std::vector<std::string> kRooms{"units",  "statistics", "readings", "river",  "water", "learning", "forecast", "routing", "temperature",
                                      "tackle", "sinking",  "choice", "trip",  "coverage", "plan_day", "wording"};

// Beside the C++ standard library, what each engine room may include of a package. fmt formats text and reaches nothing.
const std::map<std::string, std::set<std::string>> kPackagesOfRoom{
    {"statistics", {"boost/math", "Eigen"}},
    {"river", {"boost/graph"}},
    {"water", {"boost/math", "Eigen"}},
    {"forecast", {"date"}},
    {"routing", {"boost/math"}},
    {"temperature", {"date"}},
    {"sinking", {"boost/math", "experimental"}},
    {"trip", {"date"}},
    {"wording", {"date"}}};
const std::set<std::string> kPackagesOfAll{"fmt/format.h", "fmt/core.h"};

const std::set<std::string> kForbiddenInEngine{"fstream", "iostream", "filesystem", "thread",
                                               "cstdio",  "stdio.h",  "unistd.h"};

std::string room_of(const std::string& path) {
  const auto rest = path.substr(std::string{"engine/"}.size());
  const auto slash = rest.find('/');
  if (slash == std::string::npos) return "plan_day";
  return rest.substr(0, slash);
}

std::size_t place(const std::string& room) {
  return static_cast<std::size_t>(std::ranges::find(kRooms, room) - kRooms.begin());
}

bool is_package(const std::string& include) {
  return include.find('/') != std::string::npos || include.ends_with(".h");
}

bool allowed_package(const std::string& room, const std::string& include) {
  if (kPackagesOfAll.contains(include)) return true;
  const auto row = kPackagesOfRoom.find(room);
  if (row == kPackagesOfRoom.end()) return false;
  return std::ranges::any_of(row->second, [&](const auto& start) { return include.starts_with(start + "/"); });
}

TEST(Includes, OfAnEngineRoomReachOnlyTheRoomsBeforeIt) {
  for (const auto& file : sources_below("engine")) {
    const auto room = room_of(file.path);
    ASSERT_LT(place(room), kRooms.size()) << file.path << ": an engine room that the order does not know";
    for (const auto& include : file.own_includes) {
      ASSERT_TRUE(include.starts_with("engine/")) << file.path << " includes " << include;
      EXPECT_LE(place(room_of(include)), place(room))
          << file.path << " includes " << include << ", a room after its own";
    }
  }
}

TEST(Includes, OfTheEngineNeverReachTheWorld) {
  for (const auto& file : sources_below("engine")) {
    for (const auto& include : file.system_includes) {
      EXPECT_FALSE(kForbiddenInEngine.contains(include)) << file.path << " includes <" << include << ">";
      if (is_package(include)) {
        EXPECT_TRUE(allowed_package(room_of(file.path), include)) << file.path << " includes <" << include << ">";
      }
    }
    const bool prints = std::ranges::any_of(file.lines, [](const auto& line) { return line.find("fmt::print") != std::string::npos; });
    EXPECT_FALSE(prints) << file.path << " prints";
  }
}

TEST(Includes, OfBoostGraphStandInOneFile) {
  std::set<std::string> users;
  for (const auto& folder : {"engine", "adapters"}) {
    for (const auto& file : sources_below(folder)) {
      for (const auto& include : file.system_includes) {
        if (include.starts_with("boost/graph/")) users.insert(file.path);
      }
    }
  }
  EXPECT_EQ(users, std::set<std::string>{"engine/river/graph.cpp"});
}

TEST(Includes, OfAdaptersKeepInAndOutApart) {
  for (const auto& file : sources_below("adapters/in")) {
    for (const auto& include : file.own_includes) {
      const bool out = include.starts_with("adapters/out/") && !include.starts_with("adapters/out/files/");
      EXPECT_FALSE(out || include.starts_with("adapters/cli/")) << file.path << " includes " << include;
    }
  }
  for (const auto& file : sources_below("adapters/out")) {
    for (const auto& include : file.own_includes) {
      EXPECT_FALSE(include.starts_with("adapters/in/") || include.starts_with("adapters/cli/"))
          << file.path << " includes " << include;
    }
  }
}

TEST(Includes, OfSqliteStandInTheArchiveOnly) {
  for (const auto& folder : {"engine", "adapters"}) {
    for (const auto& file : sources_below(folder)) {
      for (const auto& include : file.system_includes) {
        const bool sqlite = include.starts_with("SQLiteCpp/") || include == "sqlite3.h";
        EXPECT_TRUE(!sqlite || file.path.starts_with("adapters/in/archive/")) << file.path << " includes <" << include << ">";
      }
    }
  }
}

TEST(Includes, OfTheArchiveReachReadingsAndNothingElse) {
  for (const auto& file : sources_below("adapters/in/archive")) {
    for (const auto& include : file.own_includes) {
      const bool allowed = include.starts_with("engine/readings/") || include.starts_with("engine/units/") ||
                           include.starts_with("adapters/in/archive/") || include == "adapters/result.hpp";
      EXPECT_TRUE(allowed) << file.path << " includes " << include;
    }
  }
}

// All rooms share one namespace: two types of one name would make two destructors of one name, of which the linker keeps
// one ([basic.def.odr] of the C++ standard), and the other type's values would go through it.
TEST(Headers, NameEachTypeOnce) {
  static const std::regex definition{R"(^(?:struct|class|enum class|enum) (\w+)(?: final)?(?: : [^;]*)? \{)"};
  std::map<std::string, std::string> homes;
  for (const auto& folder : {"engine", "adapters"}) {
    for (const auto& file : sources_below(folder)) {
      if (!file.path.ends_with(".hpp")) continue;
      for (const auto& line : file.lines) {
        std::smatch type;
        if (!std::regex_search(line, type, definition)) continue;
        const auto [home, is_new] = homes.try_emplace(type[1], file.path);
        EXPECT_TRUE(is_new) << type[1] << " stands in " << file.path << " and in " << home->second;
      }
    }
  }
  EXPECT_GT(homes.size(), 100u);
}

// That is how a header with a source is known to compile alone; those without one are compiled by the build.
TEST(Includes, OfASourceBeginWithItsOwnHeader) {
  const std::filesystem::path root{FLOATWRIGHT_SOURCE_DIR};
  for (const auto& folder : {"engine", "adapters"}) {
    for (const auto& file : sources_below(folder)) {
      if (!file.path.ends_with(".cpp")) continue;
      const std::string header = file.path.substr(0, file.path.size() - 3) + "hpp";
      if (!std::filesystem::exists(root / header)) continue;
      const auto first = std::ranges::find_if(file.lines, [](const auto& line) { return line.starts_with("#include"); });
      ASSERT_NE(first, file.lines.end()) << file.path;
      EXPECT_EQ(*first, "#include \"" + header + "\"") << file.path;
    }
  }
}

TEST(Includes, OfHeavyHeadersStandInSourceFilesOnly) {
  const std::set<std::string> heavy{"nlohmann/json.hpp", "CLI/CLI.hpp", "curl/curl.h", "SQLiteCpp/SQLiteCpp.h"};
  for (const auto& folder : {"engine", "adapters"}) {
    for (const auto& file : sources_below(folder)) {
      if (!file.path.ends_with(".hpp")) continue;
      for (const auto& include : file.system_includes) {
        EXPECT_FALSE(heavy.contains(include) || include.starts_with("boost/graph/"))
            << file.path << " includes <" << include << ">";
      }
    }
  }
}

}  // namespace
}  // namespace floatwright::testing
