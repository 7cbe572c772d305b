// The door for a browser, as a WebAssembly module that needs no generated JavaScript. Who loads it asks for room,
// writes the request's bytes there, asks, and reads the answer's bytes:
//
//   exports.memory                            grows: take a new view after each call
//   exports._initialize()                     once
//   exports.room(bytes)  -> address           where a request of so many bytes goes
//   exports.ask()        -> bytes of answer   carries it out
//   exports.answer()     -> address           where the answer stands, until the next ask
//   imports.page.progress(done, all)          called while a proof is computed
//
// There are no threads and no files behind it; a site comes with the texts beside it. What it remembers from one ask to
// the next: the site, and the run that somebody stands in (door/workshop.h).
#include <cstddef>
#include <string>

#include "door/workshop.h"

#define WP_EXPORT(name) __attribute__((export_name(#name)))

extern "C" __attribute__((import_module("page"), import_name("progress"))) void progress(std::size_t done,
                                                                                         std::size_t all);

namespace {

struct Exchange {
  std::string request;
  std::string answer;
  wellproof::Workshop workshop{progress};
};

Exchange& exchange() {
  static Exchange only;
  return only;
}

}  // namespace

extern "C" {

WP_EXPORT(room) char* room(std::size_t bytes) {
  exchange().request.assign(bytes, ' ');
  return exchange().request.data();
}

WP_EXPORT(ask) std::size_t ask() {
  auto& [request, answer, workshop] = exchange();
  answer = wellproof::answer_bytes(workshop.ask(request));
  return answer.size();
}

WP_EXPORT(answer) char const* answer() {
  return exchange().answer.data();
}

}  // extern "C"
