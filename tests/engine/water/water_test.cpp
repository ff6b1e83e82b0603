#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"
#include <iostream>
using namespace leat;
using namespace leat::drawn;
TEST_CASE("play") {
  auto d = draw({{"XXXXXXXXXXXX"}, {"w..........."}, {"............"}});
  for (auto& l : water_levels(settled(d))) { for (auto& r : l) std::cout << r << "\n"; std::cout << "\n"; }
  d = draw({{"XXXXXXXXXXXX"}, {"s..........."}, {"w..........."},{"............"}});
  for (auto& l : water_levels(settled(d))) { for (auto& r : l) std::cout << r << "\n"; std::cout << "\n"; }
  d = draw({{"XXXXXXXXXXXX","XXXXXXXXXXXX"}, {"wiX.......AX","w..........X"}, {"....X.......","............"}});
  auto j = judge(d);
  for (auto& f : j.findings) std::cout << row_of(f.kind).name << " " << f.cells.size() << "\n";
}
