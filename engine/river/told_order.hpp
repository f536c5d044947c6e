#pragma once
// Lists of river.json whose order says nothing, in the order in which they are told: gauges, accesses, hazards and closures
// as the river passes them, a gauge on a tributary where that joins and one of no place last; hatches by the hour; the
// waters of a reach or of a note by their share of the fishing, the most first. In the end by name, or by kind and depth, so
// that two copies of a river in another order are one.
#include "engine/river/river.hpp"

namespace floatwright {

// Places in the lists are no JSON pointers any more: for after the checks (river_problems).
void put_in_told_order(River& river);

}  // namespace floatwright
