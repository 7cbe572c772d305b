#include "fit/pumping_rates.h"

#include <algorithm>
#include <cstddef>

#include "quantity/quantity.h"

namespace wellproof {
namespace {

constexpr double most_flow_m3_s = 10;

std::string trimmed(std::string const& text) {
  auto const begin = text.find_first_not_of(' ');
  return begin == std::string::npos ? "" : text.substr(begin, text.find_last_not_of(' ') - begin + 1);
}

struct Item {
  std::string flow;
  std::string from;
  bool has_from = false;
};

std::vector<Item> items_of(std::vector<std::string> const& rates) {
  std::vector<Item> items;
  for (auto const& rate : rates) {
    for (std::size_t begin = 0; begin <= rate.size();) {
      std::size_t const end = std::min(rate.find(',', begin), rate.size());
      std::string const piece = rate.substr(begin, end - begin);
      auto const at = piece.find('@');
      bool const has_from = at != std::string::npos;
      items.push_back({trimmed(piece.substr(0, at)), has_from ? trimmed(piece.substr(at + 1)) : "", has_from});
      begin = end + 1;
    }
  }
  return items;
}

/// What stands behind the number: "gpm" of "35 gpm".
std::string unit_in(std::string const& flow) {
  auto const at = flow.find_first_not_of("0123456789.+- ");
  return at == std::string::npos ? "" : flow.substr(at);
}

}  // namespace

std::vector<RateStep> read_rates(std::vector<std::string> const& rates, std::optional<double> step_s,
                                 std::optional<double> stop_s, Findings& findings) {
  auto const fault = [&](std::string found, std::string expected, std::string nearest = "") {
    findings.push_back({{"", 0, 0}, "--rate", std::move(found), std::move(expected), std::move(nearest)});
  };
  auto const items = items_of(rates);
  std::string unit;
  for (auto const& item : items) {
    unit = unit_in(item.flow).empty() ? unit : unit_in(item.flow);
  }
  std::vector<RateStep> steps;
  bool sound = true;
  for (std::size_t i = 0; i < items.size(); ++i) {
    auto const& item = items[i];
    RateStep step;
    auto const flow = read_quantity(unit_in(item.flow).empty() ? item.flow + " " + unit : item.flow, Dimension::flow);
    if (!flow) {
      fault("\"" + item.flow + "\"", flow.error().expected.empty() ? "a flow as 20 gpm" : flow.error().expected,
            flow.error().nearest);
      sound = false;
    } else if (*flow < 0 || *flow > most_flow_m3_s) {
      fault("\"" + item.flow + "\"", *flow < 0 ? "a rate of 0 or more" : "a rate of at most 10 m3/s");
      sound = false;
    } else {
      step.flow_m3_s = *flow;
    }
    if (item.has_from) {
      auto const from = read_quantity(item.from, Dimension::time);
      if (from && *from >= 0) {
        step.from_s = *from;
      } else {
        fault("\"" + item.from + "\"", "when this rate began, as in: 35 gpm @ 60 min");
        sound = false;
      }
    } else if (i > 0 && step_s) {
      step.from_s = static_cast<double>(i) * *step_s;
    } else if (i > 0) {
      fault("\"" + item.flow + "\" without its beginning",
            "a rate with its beginning, as in: 35 gpm @ 60 min; or --step with how long each held");
      sound = false;
    }
    if (sound && !steps.empty() && step.from_s <= steps.back().from_s) {
      fault("\"" + item.flow + " @ " + item.from + "\"", "rates in the order of time");
      sound = false;
    }
    steps.push_back(step);
  }
  if (!sound) {
    return {};
  }
  if (stop_s && !steps.empty()) {
    if (*stop_s <= steps.back().from_s) {
      findings.push_back({{"", 0, 0}, "--stop", "a time before the last rate began", "a later time", ""});
      return {};
    }
    steps.push_back({*stop_s, 0});
  }
  bool const pumped = std::any_of(steps.begin(), steps.end(), [](RateStep const& step) { return step.flow_m3_s > 0; });
  if (!steps.empty() && !pumped) {
    fault(items.size() == 1 ? "a rate of zero" : "rates of zero only", "what was pumped, above zero");
    return {};
  }
  return steps;
}

}  // namespace wellproof
