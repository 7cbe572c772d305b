#pragma once
// Text in columns for a terminal or a printer of fixed width: wrapping, tables, and the few colours. Widths count what
// is seen, not bytes. What a person wrote may hold control characters; none gets through.
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace wellproof {

inline constexpr std::size_t sheet_columns = 80;

/// Columns that a text takes on a terminal.
std::size_t columns(std::string_view text);

/// The text with every control character as a blank.
std::string visible(std::string_view text);

/// Lines of at most so many columns, broken at blanks; a longer word is cut.
std::vector<std::string> wrapped(std::string_view text, std::size_t width);

/// The same as one block: the first line after `first`, the others after `rest`, each line ended.
std::string block(std::string_view text, std::string_view first, std::string_view rest,
                  std::size_t width = sheet_columns);

/// Filled with blanks up to a width. Too long a text stays as it is.
std::string left(std::string_view text, std::size_t width);
std::string right(std::string_view text, std::size_t width);

/// Colour on a terminal, or none. Colour never says what the words do not.
class Paint {
 public:
  explicit Paint(bool colour) : colour_(colour) {}
  std::string strong(std::string_view text) const { return wrapped_in("1", text); }
  std::string good(std::string_view text) const { return wrapped_in("1;32", text); }
  std::string bad(std::string_view text) const { return wrapped_in("1;31", text); }
  std::string warning(std::string_view text) const { return wrapped_in("33", text); }
  std::string quiet(std::string_view text) const { return wrapped_in("2", text); }

 private:
  std::string wrapped_in(std::string_view code, std::string_view text) const;
  bool colour_;
};

/// A heading with a rule under it.
std::string heading(std::string_view text, Paint const& paint);

/// A table with a head. Columns are as wide as they must be; what stays of the width goes to the last one, which wraps.
struct Table {
  struct Column {
    std::string head;
    bool to_the_right = false;
  };
  std::vector<Column> head;
  std::vector<std::vector<std::string>> rows;
};
std::string text(Table const& table, Paint const& paint, std::size_t width = sheet_columns);

}  // namespace wellproof
