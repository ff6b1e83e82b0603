#pragma once
#include <deque>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "lang/syntax/expression.hpp"

// A design file as a tree: what was written, in the order in which it was written, and nothing concluded.
// Every node has the span it was read from.
namespace leat::syntax {

// ---- number NAME = NUMBER ---- in a file, a junction or a works; what is placed can be given another with `where`
struct NumberDeclaration {
  Word name;
  NumberExpression value;
  Span span;
};

// ---- for NAME in FIRST..LAST { entries } ---- repeats entries of a block: those from `begin` up to before `end` in the
// block's list. Outer loops come before the inner ones, and of two side by side the earlier first.
struct Loop {
  Word variable;
  NumberExpression first, last;
  std::size_t begin = 0, end = 0;
  std::size_t never_begin = 0, never_end = 0;  // in a signals block the same of its `nevers`
  Span span;   // of the head
  Span whole;  // of head and braces
};

// ---- include "file.leat" ----
struct IncludeDeclaration {
  Text file;
  Span span;
};

// ---- signals { ... } ----
enum class SignalKind { lever, button, plate, wire, latch, toggle, clock };

//  lever NAME | button NAME for DURATION | plate NAME | wire NAME = EXPRESSION | wire NAME = EXPRESSION after DURATION
//  latch NAME on EXPRESSION off EXPRESSION | toggle NAME on EXPRESSION | clock NAME every DURATION;
//  `starts on` / `starts off` may follow all but wires
struct SignalDeclaration {
  SignalKind kind = SignalKind::lever;
  Word name;
  std::optional<Expression> on;   // a wire's definition; what sets a latch, flips a toggle
  std::optional<Expression> off;  // what resets a latch
  std::optional<Duration> duration;
  std::optional<Word> starts;     // "on" or "off"
  Span span;
};

//  never EXPRESSION     the builder promises that these combinations do not come about
struct NeverDeclaration {
  Expression condition;
  Span span;
};

// ---- materials { ... } ----
//  NAME TRAIT, TRAIT ...    traits: `passes water`, `passes bodies`, `carries`, `bears sources`, `shows slope`, `is source`
struct MaterialDeclaration {
  Word name;
  std::vector<Word> traits;  // each trait's words joined by one blank
  Span span;
};

// ---- marks { ... } ----
//  GLYPH MATERIAL | GLYPH MATERIAL when EXPRESSION else MATERIAL
//  GLYPH inlet NAME | GLYPH outlet NAME | GLYPH plate NAME, each may go on with `in` and a material as above
struct MaterialChoice {
  Word material;                      // the one while powered, if switched
  std::optional<Expression> control;
  std::optional<Word> otherwise;
  Span span;
};

enum class MarkRole { none, inlet, outlet, plate };

struct MarkDeclaration {
  Word glyph;
  MarkRole role = MarkRole::none;
  Word role_name;                        // of the inlet, outlet or plate
  std::optional<MaterialChoice> choice;  // none: the role's own material (open, open, plate)
  Span span;
};

// ---- junction NAME "title" { outside open  level 0 { |rows| } ... } ----
struct Row {
  std::string text;  // between the bars, as written
  Span span;         // of that text, bars not included
};

struct LevelDeclaration {
  NumberExpression lowest;
  std::optional<NumberExpression> highest;  // `level 2..6`: the same drawing on each
  std::vector<Row> rows;          // first row northernmost
  Span span;                      // of `level N`
};

struct JunctionDeclaration {
  Word name;
  std::optional<Text> title;
  std::optional<Word> outside;  // "open" or "rock"
  std::vector<NumberDeclaration> numbers;
  std::vector<LevelDeclaration> levels;
  Span span;
};

// ---- works NAME "title" { outside open  ... } ----
//  place DESIGN as NAME at X Y Z turned left mirrored where NUMBER = NUMBER, ... with SIGNAL = EXPRESSION, ...
//  X, Y and Z are each a number, a name or an expression in parentheses; what follows `at X Y Z` comes in any order, each once
struct NumberSetting {
  Word name;
  NumberExpression value;
  Span span;
};

struct SignalSetting {
  Word name;
  Expression value;
  Span span;
};

struct PlaceDeclaration {
  Word design;  // a junction or works
  Word name;
  NumberExpression x, y, z;
  std::optional<Word> turned;    // "left", "right" or "about"
  std::optional<Word> mirrored;  // west and east change places, before the turn
  std::vector<NumberSetting> numbers;
  std::vector<SignalSetting> signals;
  Span span;
};

//  join OUTLET -> INLET taking DURATION
struct JoinDeclaration {
  Word outlet, inlet;  // `first.kiln`, `second.millhouse`
  std::optional<Duration> duration;
  Span span;
};

//  inlet NAME = PLACE.INLET | outlet NAME = PLACE.OUTLET      a name of its own for a port of the works
struct PortDeclaration {
  bool is_outlet = false;
  Word name, port;
  Span span;
};

using WorksItem = std::variant<NumberDeclaration, PlaceDeclaration, JoinDeclaration, PortDeclaration>;

struct WorksDeclaration {
  Word name;
  std::optional<Text> title;
  std::optional<Word> outside;  // "open" or "rock"
  std::deque<WorksItem> items;  // large, so they stay where they are read
  std::vector<Loop> loops;      // over `items`
  Span span;
};

// ---- body NAME { footprint 1  height 2  floats | sinks  breath 300 ticks  safe_fall 3 } ----
struct BodyProperty {
  Word name;
  std::optional<Number> value;  // none for `floats` and `sinks`
  Span span;
};

struct BodyDeclaration {
  Word name;
  std::vector<BodyProperty> properties;
  Span span;
};

// ---- practice { longest_drop 4 ... } ----
struct PracticeSetting {
  Word name;
  Number value;
  Span span;
};

// ---- accept NAME at JUNCTION X Y Z when EXPRESSION because "reason" ----
struct PlaceReference {
  std::optional<Word> junction;
  Number x, y, z;
  Span span;
};

struct AcceptDeclaration {
  Word finding;
  std::optional<PlaceReference> place;
  std::optional<Expression> condition;
  Text reason;
  Span span;
};

// ---- expect "title" of JUNCTION { clauses } ----
//  [BODY from] INLET reaches OUTLET | [BODY from] INLET reaches nothing | ... may reach OUTLET | ... never reaches OUTLET
//  [SUBJECT] never trapped | spilled | split | doubtful | lost      SUBJECT: a body, an inlet, or BODY from INLET
//  [SUBJECT] clear within DURATION
//  [BODY from] INLET deals OUTLET, nothing, OUTLET every DURATION | ... every DURATION for 4 rounds
//  findings none | findings none above SEVERITY
//  finds NAME | finds NAME at JUNCTION X Y Z
//  each clause but `deals` and those of findings may end in `when EXPRESSION` or `otherwise`, or begin with `after EVENT, EVENT:`;
//  `deals` may only begin so. What does not go together is read all the same, for the checks to say so.
enum class ClauseKind { reaches, may_reach, never_reaches, never_state, clears, deals, findings_none, finds };

struct Clause {
  ClauseKind kind = ClauseKind::reaches;
  std::vector<Word> events;     // before `:`
  std::optional<Word> body;     // before `from`
  std::optional<Word> subject;  // the inlet; for never_state and clears a body or an inlet
  Word object;                  // outlet, `nothing`, state, severity or finding
  std::vector<Word> dealt;      // outlets and `nothing`, one for each body of a round
  std::optional<Duration> duration;
  std::optional<Number> rounds;
  std::optional<PlaceReference> place;
  std::optional<Expression> condition;
  bool is_otherwise = false;    // no earlier clause of this block with the same body, subject applies
  Span span;
};

struct ExpectDeclaration {
  std::optional<Text> title;
  std::optional<Word> junction;  // or works
  std::vector<Clause> clauses;
  std::vector<Loop> loops;       // over `clauses`
  Span span;
};

// ---- expect table [BODY from] INLET of JUNCTION { signal signal | route  newline  0 - | kiln ... } ----
struct TableRow {
  std::vector<Word> settings;  // "0", "1" or "-", one per heading
  std::vector<Word> outlets;   // what it reaches: one word, several joined by commas, or `nothing`
  Span span;
};

struct TableDeclaration {
  std::optional<Word> body;
  Word inlet;
  std::optional<Word> junction;
  std::vector<Word> headings;
  std::vector<TableRow> rows;
  Span span;
};

struct SignalsDeclaration {
  std::vector<SignalDeclaration> signals;
  std::vector<NeverDeclaration> nevers;
  std::vector<Loop> loops;  // over `signals` and `nevers`
  Span span;
};
struct MaterialsDeclaration { std::vector<MaterialDeclaration> materials; Span span; };
struct MarksDeclaration { std::vector<MarkDeclaration> marks; Span span; };
struct PracticeDeclaration { std::vector<PracticeSetting> settings; Span span; };

using Declaration =
    std::variant<IncludeDeclaration, NumberDeclaration, SignalsDeclaration, MaterialsDeclaration, MarksDeclaration,
                 JunctionDeclaration, WorksDeclaration, BodyDeclaration, PracticeDeclaration, AcceptDeclaration,
                 ExpectDeclaration, TableDeclaration>;

struct Comment {
  Span span;  // from `#` to the line's end
};

struct Document {
  Number edition;
  std::vector<Declaration> declarations;
  std::vector<Comment> comments;  // ascending
};

}  // namespace leat::syntax
