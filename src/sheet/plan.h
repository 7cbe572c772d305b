#pragma once
// A plan: everything that `plan` answers, put together once and written three ways (terminal.h, report.h, json.h).
#include <optional>
#include <string>
#include <vector>

#include "proof/prove.h"
#include "proof/rounding.h"
#include "proof/search.h"
#include "settings/derive.h"
#include "settings/on_card.h"
#include "settings/operating_map.h"
#include "settings/outlook.h"
#include "sheet/curves.h"
#include "site/read.h"

namespace wellproof {

/// The worst run of a scenario, with what was recorded of it.
struct WorstRun {
  std::string scenario;
  Trace trace;
};

/// The drive whose card was given: what is entered, and what rounding to its steps costs.
struct PlanDrive {
  std::string file;  // of the card
  Card card;
  OnCard entered;
  std::vector<RoundingLoss> losses;
};

struct Plan {
  SiteRead site;
  Derived derived;
  WellOutlook outlook;
  OperatingMap map;
  HeadCurves curves;
  Proof proof;
  std::vector<WorstRun> worst_runs;    // only for the report
  std::optional<SearchResult> search;  // where settings were searched for: what it gained; its proof is the one above
  std::optional<PlanDrive> drive{};    // where a card was given
  Logic logic;                         // of the drive: tells where the guards act
  UnitSystem units = UnitSystem::us;
};

/// One run, judged: what `run` answers (run_sheet.h, json.h).
struct JudgedRun {
  std::string site_name;
  std::string scenario;  // as on the command line
  std::string title;
  std::string says;
  std::uint64_t seed = 0;
  std::uint32_t draw = 0;
  std::vector<Criterion> criteria;
  std::vector<Verdict> verdicts;  // of each criterion
  Trace trace;
  UnitSystem units = UnitSystem::us;

  /// Computed to its end and within every limit.
  bool passed() const;
};

}  // namespace wellproof
