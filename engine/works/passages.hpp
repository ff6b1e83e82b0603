#pragma once
#include <memory>
#include <vector>

#include "engine/works/prospects.hpp"
#include "engine/works/reached.hpp"

namespace leat::works {

// What becomes of one body that enters the plant by one inlet, whichever islands it comes through.
struct Passage {
  struct End {
    model::OutletId outlet = 0;
    Function condition = logic::Diagram::never;
  };
  model::InletId inlet = 0;
  model::ProfileId profile = 0;
  std::vector<End> ends;  // the outlets of the plant that can ever be reached, ascending
  // When some place on its way has no way out; it can leave the drawing; it hangs on unsure moves;
  // it does not get in, here or further on.
  Function trapped = logic::Diagram::never, spilled = logic::Diagram::never,
           unsure = logic::Diagram::never, barred = logic::Diagram::never;
  // When it comes into an island that could not be solved: then nothing else is sure.
  Function unknown = logic::Diagram::never;
  Function parting = logic::Diagram::always;  // outside of this it has one end at most

  Function reaching(model::OutletId) const;
};

// The passages from every entrance, for every profile, each found when it is first asked for: what
// is claimed of a few entrances, or is shown by the first ones, costs no more than these. What can
// be asked of all entrances at once is a prospect.
//
// Idea: the condition under which a body arrives at an inlet is the union, over the ways that lead
// there, of arriving at their inlet and the way being open. Inlets are taken in the order of the
// joins, so that without a cycle of joins each is taken once; in a cycle conditions only grow,
// until nothing is new. Cost: two operations of the diagram for each way that can be come by, from
// each entrance that is asked for.
class Passages {
 public:
  // Those of no plant.
  Passages();
  // The conditions must outlive it.
  Passages(Network, Conditions&);
  ~Passages();
  Passages(Passages&&) noexcept;
  Passages& operator=(Passages&&) noexcept;

  // By entrance, then profile.
  std::size_t size() const { return starts_.size(); }
  model::InletId inlet(std::size_t passage) const { return starts_[passage].inlet; }
  model::ProfileId profile(std::size_t passage) const { return starts_[passage].profile; }
  // What is found grows the diagram: whether that has run out is to be asked after it.
  Passage const& operator[](std::size_t passage) const;
  Function of(Prospect, std::size_t passage) const;
  Function from(Prospect, model::InletId, model::ProfileId) const;
  // When who comes to an inlet gets in at none of its cells.
  Function barred_at(model::InletId, model::ProfileId) const;
  // Whether joins lead from some inlet back to it.
  bool has_cycles() const;
  // What bodies are seen to reach, of so many variables of the diagram. They must outlive it.
  Reached reached(std::size_t variables, Function reachable) const;
  // The variables that are seen to matter (see trials.hpp).
  std::vector<bool> variables_that_matter(Reached&, std::size_t variables,
                                          Function reachable) const;
  // What bodies of all profiles from all entrances together come to, joined outlets among it; or
  // those of one profile.
  std::vector<Passage::End> everything_reached() const;
  std::vector<Passage::End> everything_reached(model::ProfileId) const;
  // The same of those that come to one inlet.
  std::vector<Passage::End> everything_reached_from(model::InletId, model::ProfileId) const;
  // The outlets to which some way leads from an inlet, in whatever combination, for some body or
  // for this one; ascending.
  std::vector<model::OutletId> outlets_from(model::InletId) const;
  std::vector<model::OutletId> outlets_from(model::InletId, model::ProfileId) const;

  // All of them, one after the other.
  class Iterator {
   public:
    Iterator(Passages const& of, std::size_t at) : of_(&of), at_(at) {}
    Passage const& operator*() const { return (*of_)[at_]; }
    Iterator& operator++() {
      ++at_;
      return *this;
    }
    bool operator!=(Iterator const& other) const { return at_ != other.at_; }

   private:
    Passages const* of_;
    std::size_t at_;
  };
  Iterator begin() const { return {*this, 0}; }
  Iterator end() const { return {*this, size()}; }

 private:
  struct Start {
    model::InletId inlet = 0;
    model::ProfileId profile = 0;
  };
  class Search;
  std::vector<model::InletId> entrances() const;

  std::vector<Start> starts_;
  std::unique_ptr<Search> search_;
};

}  // namespace leat::works
