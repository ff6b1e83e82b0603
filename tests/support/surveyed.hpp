#pragma once
#include "engine/explore/explored.hpp"
#include "engine/explore/switching.hpp"
#include "engine/tables/routes.hpp"

namespace leat::drawn {

// A design with everything that can become of its signals and its water, found out step by step as
// the judge does, so that one step is asked about at a time.
class Surveyed {
 public:
  explicit Surveyed(model::Design, bool follows_history = true);
  Surveyed(Surveyed const&) = delete;

  model::Design const design;
  model::Circuit const settled;
  logic::Machine const machine;
  logic::Truth const truth;
  explore::States const states;
  explore::Histories const histories;
  explore::Combinations const combinations;
  explore::Explored const explored;

  // The routes in every water, as the body alone takes them.
  tables::RouteTable by_water() const;
  tables::RouteTable by_situation() const;
  // How long they take in every water.
  std::vector<explore::Clearing> trips() const;
  explore::Switchings switchings() const { return explore::switchings(explored); }

 private:
  template <class Visit>
  void for_each_travel(Visit visit) const;
};

}  // namespace leat::drawn
