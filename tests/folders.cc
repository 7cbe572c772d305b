#include "folders.h"

#include <fstream>
#include <iterator>

namespace wellproof {

std::string source_folder() {
  return WP_SOURCE_DIR;
}

std::string reference_folder() {
  return WP_REFERENCE_DIR;
}

std::string source_text(std::string const& path) {
  std::ifstream file(source_folder() + '/' + path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

std::string example_text(std::string const& name) {
  return source_text("examples/" + name);
}

}  // namespace wellproof
