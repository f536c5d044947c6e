#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <array>

#include "adapters/in/archive/connection.hpp"
#include "adapters/in/archive/row.hpp"
#include "engine/readings/names.hpp"

namespace floatwright {
namespace {

std::string damaged(const std::string& found) {
  return fmt::format(
      "damaged: {}; when `floatwright fetch` meets the damage it keeps the file under another name and "
      "begins a new one with what can be read of it",
      found);
}

// What SQLite itself finds: pages, indices, types, keys.
void structure(SQLite::Database& database, std::vector<std::string>& told) {
  SQLite::Statement pages(database, "PRAGMA integrity_check");
  while (pages.executeStep()) {
    const std::string found = pages.getColumn(0).getString();
    if (found != "ok") told.push_back(damaged(found));
  }
}

struct Rule {
  std::string broken_by;  // counts the rows that break it
  const char* sentence;   // {}: how many
};

std::vector<Rule> rules() {
  std::string known;
  for (const auto& [variable, word] : kVariableWords) known += fmt::format("{}'{}'", known.empty() ? "" : ", ", word);
  return {
      {"SELECT count(*) FROM readings WHERE series NOT IN (SELECT id FROM series)",
       "readings that belong to no series: {}"},
      {"SELECT count(*) FROM revisions WHERE series NOT IN (SELECT id FROM series)",
       "revisions that belong to no series: {}"},
      {"SELECT count(*) FROM unknown_codes WHERE series NOT IN (SELECT id FROM series)",
       "codes of services that belong to no series: {}"},
      {fmt::format("SELECT count(*) FROM readings WHERE marks NOT BETWEEN 0 AND {}", kAllMarks),
       "readings with marks that are not known here: {}"},
      {fmt::format("SELECT count(*) FROM revisions WHERE marks NOT BETWEEN 0 AND {}", kAllMarks),
       "revisions with marks that are not known here: {}"},
      {"SELECT count(*) FROM readings WHERE abs(si) > 1.7976931348623157e308",
       "readings that are no finite numbers: {}"},
      {fmt::format("SELECT count(*) FROM series WHERE variable NOT IN ({})", known),
       "series of a quantity that is not known here, passed over: {}"},
      {"SELECT count(*) FROM asked WHERE span_from > span_to", "spans asked that end before they begin: {}"},
  };
}

}  // namespace

Result<std::vector<std::string>> Archive::integrity() const {
  std::vector<std::string> told;
  const std::string file = connection_->file.string();
  try {
    SQLite::Database& database = connection_->opened();
    SQLite::Transaction one_moment(database);
    structure(database, told);
    for (const Rule& rule : rules()) {
      const auto count = database.execAndGet(rule.broken_by).getInt64();
      if (count > 0) told.push_back(fmt::format(fmt::runtime(rule.sentence), count));
    }
  } catch (const SQLite::Exception& error) {
    if (!is_damage(error)) return tl::unexpected(archive_failure(connection_->file, "check the archive", error));
    told.push_back(damaged(error.what()));
  }
  for (std::string& sentence : told) sentence = fmt::format("{}: {}.", file, sentence);
  return told;
}

}  // namespace floatwright
