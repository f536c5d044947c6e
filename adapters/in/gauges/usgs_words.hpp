#pragma once
// The words that both USGS services use: parameter codes, qualifiers, statistics, station numbers.
// Qualifier meanings as the service explains them in its own answers (P, A, e, Ice, Eqp, Dis, ***) or in its published
// code list (Ssn, Pr, Rat, Nd, Fld, --); R, Bkw and Mnt, and the upper-case words of the newer service other than
// ESTIMATED and DISCONTINUED, are from memory. The list is open: a code that is not in it is Mark::Unknown.
#include <array>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "adapters/in/files/unit_spelling.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

// 00060 discharge, 00065 gage height, 00010 water temperature, 63680 turbidity (FNU), 00076 turbidity (NTU).
inline constexpr std::array<const char*, 5> kUsgsParameters{"00060", "00065", "00010", "63680", "00076"};
[[nodiscard]] std::optional<Variable> variable_of(std::string_view parameter);
// The unit that the code of such a parameter stands for, whether it is written beside it or not.
[[nodiscard]] std::string_view usual_unit(std::string_view parameter);
// What a reader should know of a parameter's numbers; empty: nothing.
[[nodiscard]] std::string remark_on(std::string_view parameter);

// The codes of one row, split at blanks and signs ("P Eqp", "A:e", "['ESTIMATED']").
[[nodiscard]] std::vector<std::string> codes_in(std::string_view text);
[[nodiscard]] std::optional<Mark> mark_of(std::string_view code);
// Adds the codes' marks; those that are not known become Mark::Unknown and are kept in `unknown`.
void add_marks(std::string_view text, Marks& marks, std::set<std::string>& unknown);

// False: a daily statistic (00001 maximum, 00002 minimum, 00003 mean, ...).
[[nodiscard]] bool is_instantaneous(std::string_view statistic);

// "usgs:01541000" of agency USGS; other agencies keep their own, "usgs:MN040-05427718". And back: "USGS-01541000".
[[nodiscard]] std::string station_key(std::string_view agency, std::string_view number);
[[nodiscard]] std::string station_of_location(std::string_view location);
[[nodiscard]] std::string monitoring_location(std::string_view station_without_prefix);

}  // namespace floatwright
