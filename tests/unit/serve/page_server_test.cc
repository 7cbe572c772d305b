// The server as a browser, and as somebody else's page, would ask it.
#include "serve/page_server.h"

#include <gtest/gtest.h>
#include <httplib.h>

#include <nlohmann/json.hpp>
#include <string>
#include <thread>

namespace wellproof {
namespace {

class Served : public testing::Test {
 protected:
  Served() : server_(assets_, [this](std::string_view bytes) { return book(bytes); }) {
    port_ = *server_.bind(0);
    work_ = std::thread([this] { server_.listen(); });
    client_ = std::make_unique<httplib::Client>("127.0.0.1", port_);
    for (int i = 0; i < 100 && !client_->Get("/"); ++i) {
      std::this_thread::sleep_for(std::chrono::milliseconds(10));
    }
  }
  ~Served() override {
    server_.stop();
    work_.join();
  }

  Answer book(std::string_view bytes) {
    asked_ = bytes;
    return {exit_code::fine, "written", "", {}};
  }

  std::vector<Asset> assets_{{"index.html", "<head></head><p>page</p>"}, {"core.wasm", std::string_view("\0asm", 4)}};
  std::string asked_;
  PageServer server_;
  int port_ = 0;
  std::thread work_;
  std::unique_ptr<httplib::Client> client_;
};

TEST_F(Served, GivesThePageAndTheCoreAndSaysThatThereIsABook) {
  auto const page = client_->Get("/");
  ASSERT_TRUE(page);
  EXPECT_EQ(page->status, 200);
  EXPECT_NE(page->body.find("wellproof-book"), std::string::npos);
  EXPECT_NE(page->get_header_value("Content-Security-Policy").find("default-src 'none'"), std::string::npos);
  auto const core = client_->Get("/core.wasm");
  ASSERT_TRUE(core);
  EXPECT_EQ(core->get_header_value("Content-Type"), "application/wasm");
  EXPECT_EQ(core->body.size(), 4U);
}

TEST_F(Served, APathThatIsNotOnTheListIsNotThere) {
  for (char const* const path : {"/../etc/passwd", "/..%2f..%2fetc/passwd", "/%2e%2e/%2e%2e/etc/passwd", "//etc/passwd",
                                 "/index.html/..", "/core.js", "/book/", "/.", "/index.html%00"}) {
    auto const got = client_->Get(path);
    ASSERT_TRUE(got) << path;
    EXPECT_NE(got->status, 200) << path;
    EXPECT_EQ(got->body.find("root:"), std::string::npos);
  }
}

TEST_F(Served, AnotherHostOrOriginIsRefused) {
  for (auto const& headers :
       {httplib::Headers{{"Host", "wells.example"}}, httplib::Headers{{"Host", "127.0.0.1:1"}},
        httplib::Headers{{"Origin", "http://wells.example"}}, httplib::Headers{{"Origin", "null"}},
        httplib::Headers{{"Origin", "https://127.0.0.1:" + std::to_string(port_)}}}) {
    auto const got = client_->Get("/", headers);
    ASSERT_TRUE(got);
    EXPECT_EQ(got->status, 403);
    auto sent = headers;
    sent.emplace("X-Wellproof", "page");
    auto const posted = client_->Post("/book/", sent, "{}", "application/json");
    ASSERT_TRUE(posted);
    EXPECT_EQ(posted->status, 403);
  }
  EXPECT_TRUE(asked_.empty());
}

TEST_F(Served, TheBookIsAskedByThePageAlone) {
  httplib::Headers const page{{"X-Wellproof", "page"}, {"Origin", "http://127.0.0.1:" + std::to_string(port_)}};
  auto const good = client_->Post("/book/", page, R"({"command": "list"})", "application/json");
  ASSERT_TRUE(good);
  EXPECT_EQ(good->status, 200);
  EXPECT_EQ(asked_, R"({"command": "list"})");
  EXPECT_EQ(nlohmann::json::parse(good->body)["out"], "written");
  asked_.clear();
  auto const form = client_->Post("/book/", httplib::Headers{}, "command=list", "application/x-www-form-urlencoded");
  ASSERT_TRUE(form);
  EXPECT_EQ(form->status, 403);
  auto const plain = client_->Post("/book/", page, "{}", "text/plain");
  ASSERT_TRUE(plain);
  EXPECT_EQ(plain->status, 403);
  EXPECT_TRUE(asked_.empty());
}

TEST_F(Served, ABodyOverTheLimitIsRefused) {
  httplib::Headers const page{{"X-Wellproof", "page"}};
  auto const got = client_->Post("/book/", page, std::string(most_body_bytes + 1, 'x'), "application/json");
  if (got) {
    EXPECT_EQ(got->status, 413);
  }
  EXPECT_TRUE(asked_.empty());
  EXPECT_EQ(client_->Get("/")->status, 200) << "and it goes on";
}

TEST(BookRequestOfThePage, ReadsWhatAPageMayAskAndNothingElse) {
  auto const add = read_book_request(
      R"({"command": "add", "site": {"file": "a.toml", "text": "x", "beside": [{"name": "c.csv", "text": "1"}]},
          "files": [{"kind": "settings", "file": "s.toml", "text": "y"}], "why": "first start", "version": 2})");
  ASSERT_TRUE(add);
  EXPECT_EQ(add->site.text, "x");
  EXPECT_EQ(add->beside.at(0).name, "c.csv");
  EXPECT_EQ(add->files.at(0).first, EntryKind::settings);
  EXPECT_EQ(add->version, 2U);
  for (char const* const bytes :
       {"", "[]", "{}", R"({"command": "export"})", R"({"command": "lock"})", R"({"command": 3})",
        R"({"command": "add", "files": [{"kind": "lock"}]})", R"({"command": "show", "kind": "secrets"})"}) {
    EXPECT_FALSE(read_book_request(bytes)) << bytes;
  }
  EXPECT_EQ(pass_of(R"({"pass": "well kept"})"), "well kept");
  EXPECT_EQ(pass_of("["), "");
}

}  // namespace
}  // namespace wellproof
