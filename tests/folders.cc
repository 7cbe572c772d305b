#include "folders.h"

namespace wellproof {

std::string source_folder() {
  return WP_SOURCE_DIR;
}

std::string reference_folder() {
  return WP_REFERENCE_DIR;
}

}  // namespace wellproof
