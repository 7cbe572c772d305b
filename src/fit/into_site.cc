#include "fit/into_site.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdlib>
#include <iterator>
#include <utility>

#include <fmt/format.h>

#include "quantity/range.h"
#include "site/document.h"
#include "site/fields.h"

namespace wellproof {
namespace {

/// The estimate as a range between the limits of the site's field.
std::string range_text(Estimate const& estimate, std::string const& key, UnitSystem units) {
  double least = 0;
  double most = 1e300;
  Dimension dimension = Dimension::none;
  Site const none;
  each_field(none, [&](Field const& field, Range const&) {
    if (field.key == "well." + key) {
      least = field.least;
      most = field.most;
      dimension = field.dimension;
    }
  });
  double const low = std::clamp(estimate.low, least, most);
  double const value = std::clamp(estimate.value, least, most);
  double const high = std::clamp(estimate.high, least, most);
  bool const open = low < value && value < high && high > 1.001 * low;
  return write_range(open ? Range(Triangular{low, value, high}) : Range(Fixed{value}), dimension, units);
}

class Lines {
 public:
  explicit Lines(std::string_view text) {
    crlf_ = text.find("\r\n") != std::string_view::npos;
    std::size_t begin = 0;
    while (begin < text.size()) {
      std::size_t const end = std::min(text.find('\n', begin), text.size());
      std::size_t const next = std::min(end + 1, text.size());
      lines_.emplace_back(text.substr(begin, next - begin));
      begin = next;
    }
  }

  /// Lines count from 1.
  std::string& at(int line) { return lines_[static_cast<std::size_t>(line) - 1]; }
  bool has(int line) const { return line > 0 && static_cast<std::size_t>(line) <= lines_.size(); }
  int count() const { return static_cast<int>(lines_.size()); }

  void insert_after(int line, std::string const& text) {
    if (line > 0 && at(line).find('\n') == std::string::npos) {
      at(line) += ending();
    }
    lines_.insert(lines_.begin() + line, text + ending());
  }

  std::string all() const {
    std::string out;
    for (auto const& line : lines_) {
      out += line;
    }
    return out;
  }

 private:
  std::string ending() const { return crlf_ ? "\r\n" : "\n"; }
  std::vector<std::string> lines_;
  bool crlf_ = false;
};

/// The byte of a column that counts characters from 1.
std::size_t byte_of(std::string const& line, int column) {
  int seen = 0;
  for (std::size_t i = 0; i < line.size(); ++i) {
    bool const begins = (static_cast<unsigned char>(line[i]) & 0xC0U) != 0x80U;
    seen += begins ? 1 : 0;
    if (seen == column) {
      return i;
    }
  }
  return line.size();
}

/// Where the value that begins here ends on its line.
std::size_t end_of_value(std::string const& line, std::size_t begin) {
  char const first = line[begin];
  if (first != '"' && first != '\'') {
    return std::min(line.find_first_of(" \t\r\n#,}", begin), line.size());
  }
  for (std::size_t i = begin + 1; i < line.size(); ++i) {
    if (line[i] == '\\' && first == '"') {
      ++i;
    } else if (line[i] == first) {
      return i + 1;
    }
  }
  return line.size();
}

bool on_one_line(Node const& node) {
  return node.kind == Node::Kind::number || node.kind == Node::Kind::boolean ||
         (node.kind == Node::Kind::text && node.text_column > 0 && node.line == node.key_line);
}

/// What stands before the key's last part on its line: nothing, blanks, or "well.".
std::string before_key(std::string const& line, std::string const& table) {
  std::size_t const first = std::min(line.find_first_not_of(" \t"), line.size());
  std::string const blanks = line.substr(0, first);
  std::string const rest = line.substr(first);
  return rest.rfind(table + ".", 0) == 0 ? blanks + table + "." : blanks;
}

constexpr std::array<std::string_view, 2> own_remarks{"# from the pumping test", "# from readings"};

bool plain_remark(char c) {
  return static_cast<unsigned char>(c) >= 0x20 && c != 0x7F;
}

/// Where one of our remarks begins in the rest of a line.
std::size_t own_remark(std::string const& rest) {
  std::size_t first = std::string::npos;
  for (auto const own : own_remarks) {
    first = std::min(first, rest.find(own));
  }
  return first;
}

/// Puts keys into the lines of a site file. Lines are added only at the end, so that places stay what they were.
class SiteWriter {
 public:
  SiteWriter(Document const& document, std::string_view text, std::string file, std::string remark)
      : document_(document), lines_(text), file_(std::move(file)), remark_(std::move(remark)) {}

  /// @param keys all of one table
  void set(std::string const& table, std::vector<SiteKey> const& keys) {
    auto const dot = table.find('.');
    std::string const name = table.substr(0, dot);
    auto const* node = document_.root.item(name);
    if (dot != std::string::npos) {
      std::size_t const run = std::strtoul(table.c_str() + dot + 1, nullptr, 10);
      bool const there = node != nullptr && node->kind == Node::Kind::array && run > 0 && run <= node->items.size();
      node = there ? &node->items[run - 1] : nullptr;
      if (node == nullptr) {
        for (auto const& each : keys) {
          findings_.push_back({{file_, 0, 0}, each.key, "no such [[" + name + "]]", "one that the file holds", ""});
        }
        return;
      }
    }
    if (node == nullptr) {
      new_table(table, keys);
    } else {
      into_table(*node, table, name, keys);
    }
  }

  Result<std::string> written() {
    if (!findings_.empty()) {
      return tl::unexpected(findings_);
    }
    std::stable_sort(fresh_.begin(), fresh_.end(), [](Fresh const& a, Fresh const& b) { return a.after > b.after; });
    for (std::size_t i = 0; i < fresh_.size();) {
      // Lines that go to one place stay in their order.
      int line = fresh_[i].after;
      for (int const place = line; i < fresh_.size() && fresh_[i].after == place; ++i) {
        lines_.insert_after(line++, fresh_[i].text);
      }
    }
    return lines_.all();
  }

 private:
  struct Fresh {
    int after = 0;
    std::string text;
  };

  static std::string last_part(std::string const& key) { return key.substr(key.rfind('.') + 1); }

  void new_table(std::string const& table, std::vector<SiteKey> const& keys) {
    int const end = lines_.count();
    fresh_.push_back({end, ""});
    fresh_.push_back({end, "[" + table + "]"});
    for (auto const& each : keys) {
      fresh_.push_back({end, fmt::format("{} = \"{}\"  # {}", last_part(each.key), each.value, remark_)});
    }
  }

  void into_table(Node const& node, std::string const& table, std::string const& name,
                  std::vector<SiteKey> const& keys) {
    // The last line of the table that is a whole key and value: what is new goes below it.
    int last = 0;
    for (auto const& item : node.items) {
      last = on_one_line(item) ? std::max(last, item.key_line) : last;
    }
    bool const inside_braces = std::any_of(node.items.begin(), node.items.end(), [&](Node const& item) {
      return lines_.has(item.key_line) && lines_.at(item.key_line).find('{') != std::string::npos &&
             lines_.at(item.key_line).find('{') < byte_of(lines_.at(item.key_line), item.key_column);
    });
    if (last == 0 || inside_braces) {
      findings_.push_back({{file_, node.key_line, node.key_column},
                           table,
                           fmt::format("a {} written in one line or without a plain key", name),
                           fmt::format("a table [{}] with each key on its own line", name),
                           ""});
      return;
    }
    std::string const before = before_key(lines_.at(last), name);
    for (auto const& each : keys) {
      auto const* const there = node.item(last_part(each.key));
      if (there == nullptr) {
        fresh_.push_back({last, fmt::format("{}{} = \"{}\"  # {}", before, last_part(each.key), each.value, remark_)});
      } else if (!on_one_line(*there)) {
        findings_.push_back({{file_, there->line, there->column},
                             each.key,
                             in_words(*there),
                             "a value on one line, to be replaced",
                             ""});
      } else {
        replace(*there, each.value);
      }
    }
  }

  void replace(Node const& there, std::string const& value) {
    std::string& line = lines_.at(there.line);
    std::size_t const begin = byte_of(line, there.column);
    std::string rest = line.substr(end_of_value(line, begin));
    auto const own = own_remark(rest);
    if (own != std::string::npos) {
      // Our own remark of the time before goes with its value.
      auto const line_end = std::min(rest.find_last_not_of("\r\n") + 1, rest.size());
      rest = fmt::format("{}# {}{}", rest.substr(0, own), remark_, rest.substr(line_end));
    }
    line = fmt::format("{}\"{}\"{}", line.substr(0, begin), value, rest);
  }

  Document const& document_;
  Lines lines_;
  std::string file_;
  std::string remark_;
  std::vector<Fresh> fresh_;
  Findings findings_;
};

}  // namespace

std::vector<WellKey> well_keys(PumpingTestFit const& fit, UnitSystem units) {
  std::vector<WellKey> keys;
  keys.push_back({"transmissivity", range_text(fit.transmissivity_m2_s, "transmissivity", units)});
  Estimate storativity = fit.storativity;
  if (storativity.standing == Estimate::Standing::assumed) {
    // The losses hold for the value assumed. A site's bore is as wide as it is: a well that draws as if wider is one of
    // more storativity.
    double const wider = fit.stated_radius_m > 0 ? fit.well.well_radius_m / fit.stated_radius_m : 1;
    storativity.value *= wider * wider;
    storativity.low = storativity.value;
    storativity.high = storativity.value;
  }
  keys.push_back({"storativity", range_text(storativity, "storativity", units)});
  bool const in_well = std::any_of(fit.records.begin(), fit.records.end(),
                                   [](RecordFit const& record) { return record.distance_m == 0; });
  if (in_well) {
    keys.push_back({"linear_loss", range_text(fit.linear_loss_s_m2, "linear_loss", units)});
  }
  if (fit.quadratic_loss_s2_m5.standing == Estimate::Standing::fitted) {
    keys.push_back({"quadratic_loss", range_text(fit.quadratic_loss_s2_m5, "quadratic_loss", units)});
  }
  return keys;
}

Result<std::string> with_site_keys(std::string_view site_text, std::string const& file,
                                   std::vector<SiteKey> const& keys, std::string const& remark) {
  Document const document = read_document(site_text, file);
  if (!document.findings.empty()) {
    return tl::unexpected(document.findings);
  }
  std::string clean;
  std::copy_if(remark.begin(), remark.end(), std::back_inserter(clean), plain_remark);
  SiteWriter writer(document, site_text, file, clean);
  std::vector<std::string> tables;
  for (auto const& each : keys) {
    auto const table = each.key.substr(0, each.key.rfind('.'));
    if (std::find(tables.begin(), tables.end(), table) == tables.end()) {
      tables.push_back(table);
    }
  }
  for (auto const& table : tables) {
    std::vector<SiteKey> of_table;
    std::copy_if(keys.begin(), keys.end(), std::back_inserter(of_table),
                 [&](SiteKey const& each) { return each.key.substr(0, each.key.rfind('.')) == table; });
    writer.set(table, of_table);
  }
  return writer.written();
}

Result<std::string> with_well_keys(std::string_view site_text, std::string const& file,
                                   std::vector<WellKey> const& keys, std::string const& remark) {
  std::vector<SiteKey> all;
  all.reserve(keys.size());
  for (auto const& each : keys) {
    all.push_back({"well." + each.key, each.value});
  }
  return with_site_keys(site_text, file, all, remark);
}

}  // namespace wellproof
