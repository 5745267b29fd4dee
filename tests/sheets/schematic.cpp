// The piping schematic of an answer: every branch drawn, every element once, words apart and keyed.
#include "picture_keys.hpp"
#include "picture_labels.hpp"
#include "sheets/drawings.hpp"
#include "slabwright/sheets.hpp"
#include "support/layouts.hpp"

using namespace slabwright;

namespace {

/// The answer to `design` with the scheme that `sheets` adds.
Answer schemed(const DesignFile& file) {
  Wishes wishes;
  wishes.sensitivities = false;
  Answer one = answer(file, wishes);
  if (!one.loops) return one;
  const auto plant = pipe_up(one.file.design, *one.loops, one.floor ? &*one.floor : nullptr);
  if (!plant) return one;
  one.scheme = piping_scheme(*plant.value, one.point ? &*one.point : nullptr, one.sizes ? &*one.sizes : nullptr);
  return one;
}

const Layer& layer_of(const Picture& picture, const std::string& name) {
  for (const Layer& layer : picture.layer) {
    if (layer.name == name) return layer;
  }
  throw std::logic_error("no layer of that name");
}

std::size_t texts_with(const Picture& picture, const std::string& key) {
  std::size_t number = 0;
  for (const Layer& layer : picture.layer) {
    for (const SheetShape& shape : layer.shape) {
      const auto* text = std::get_if<Lettering>(&shape);
      number += text && (" " + text->key + " ").find(" " + key + " ") != std::string::npos;
    }
  }
  return number;
}

/// Each word of an element that is no pipe and no loop's stands on the drawing once, by its key.
void check_elements(const Picture& picture, const PipingScheme& scheme) {
  for (std::size_t i = 0; i < scheme.branch.size(); ++i) {
    const SchemeBranch& branch = scheme.branch[i];
    const std::string row = "scheme.branch[" + std::to_string(i) + "]";
    if (!branch.loop_name.empty()) {
      CHECK(texts_with(picture, row + ".loop_name") == 1);
      continue;
    }
    for (std::size_t e = 0; e < branch.element.size(); ++e) {
      if (branch.element[e].kind == SchemeKind::pipe || branch.element[e].kind == SchemeKind::bar) continue;
      CHECK(texts_with(picture, row + ".element[" + std::to_string(e) + "].word") >= 1);
    }
  }
  for (std::size_t i = 0; i < scheme.device.size(); ++i)
    CHECK(texts_with(picture, "scheme.device[" + std::to_string(i) + "].element.word") >= 1);
}

/// One line for each branch, from the level of the side where it begins to that where it ends.
void check_branches(const Picture& picture, const PipingScheme& scheme) {
  const auto& pipes = layer_of(picture, "pipes").shape;
  REQUIRE(pipes.size() == scheme.branch.size());
  double supply = -1.0, returns = -1.0;
  for (std::size_t i = 0; i < pipes.size(); ++i) {
    const Path& path = std::get<Trace>(pipes[i]).path;
    const bool from_supply = scheme.node[scheme.branch[i].from].side == SchemeSide::supply;
    const bool to_supply = scheme.node[scheme.branch[i].to].side == SchemeSide::supply;
    for (const auto& [end, at_supply] : {std::pair{path.front().from, from_supply}, {path.back().to, to_supply}}) {
      double& level = at_supply ? supply : returns;
      if (level < 0.0) level = end.y_m;
      CHECK(end.y_m == Approx(level));
    }
  }
  CHECK(supply > returns);
}

void check_all(const Answer& one) {
  REQUIRE(one.scheme);
  const auto drawn = sheets::drawn_scheme(one);
  REQUIRE(drawn);
  const SchematicSheet sheet = draw_schematic(*drawn);
  CHECK(sheet.left_out.empty());
  CHECK(sheet.pitch_m >= 0.006);
  test::check_label_faults(sheet.picture, {"pipes", "meetings", "device-pipes"});
  check_branches(sheet.picture, *one.scheme);
  check_elements(sheet.picture, *one.scheme);
  const test::KeyFaults keys = test::key_faults(sheet.picture, json_of(one));
  for (const std::string& fault : keys.fault) UNSCOPED_INFO(fault);
  CHECK(keys.fault.empty());
}

}  // namespace

TEST_CASE("the schematic of every layout shows each branch and each element, words apart and keyed") {
  for (const auto& one : test::layouts()) {
    INFO(one.name);
    check_all(schemed(one.file));
  }
}

TEST_CASE("every way of joining boiler and floor is drawn as its graph is") {
  for (const char* name : {"frame-shop", "potting-house"}) {
    for (const char* piping : {"direct", "closely spaced tees", "separator", "buffer", "mixing valve", "injection"}) {
      for (const char* pumps : {"1", "2"}) {
        INFO(name << ", " << piping << ", " << pumps);
        test::Keys keys{{"boiler.piping", piping}, {"pump.pumps", pumps}, {"boiler.check_valve", "true"}};
        if (std::string(pumps) == "2") keys.push_back({"pump.bypass_opening", "2 psi"});
        check_all(schemed(test::with_keys(test::layout(name).file, keys)));
      }
    }
  }
}

TEST_CASE("three manifolds hang on mains of all kinds, and the garage fits a letter page") {
  for (const char* way : {"each its own", "direct", "reverse"}) {
    INFO(way);
    const Answer garage = schemed(test::with_keys(test::layout("county-garage").file, {{"mains.return_way", way}}));
    check_all(garage);
    for (std::size_t m = 0; m < 3; ++m) {
      const auto picture = sheets::schematic_picture(garage);
      CHECK(texts_with(*picture, "design.manifold[" + std::to_string(m) + "].name") == 1);
    }
  }
  const auto picture = sheets::schematic_picture(schemed(test::layout("county-garage").file));
  CHECK(picture->width_m == Approx(0.2794));
}

TEST_CASE("sixty loops take larger paper, and none is lost") {
  const Answer hall = schemed(test::from_keys(
      {{"tube.size", "1/2 in"}, {"slab.area", "9000 sq ft"}, {"tube.spacing", "9 in"}, {"climate.outdoor", "0 F"}}));
  REQUIRE(hall.loops);
  CHECK(hall.loops->loop.size() > 30);
  check_all(hall);
}

TEST_CASE("only the sheets have a scheme, whatever is known of the plant") {
  Wishes wishes;
  wishes.sensitivities = wishes.bands = false;
  const DesignFile file = test::layout("ten-lines").file;
  CHECK_FALSE(answer(file, wishes).scheme);
  wishes.question = Question::sheets;
  const Answer sheets = answer(file, wishes);
  check_all(sheets);
  check_all(answer(test::from_keys({{"slab.size", "30 x 20 ft"}, {"tube.spacing", "12 in"}}), wishes));
}

TEST_CASE("a drawing's symbols are those of the scheme, kind for kind") {
  CHECK(static_cast<int>(SchematicSymbol::fill) == static_cast<int>(SchemeKind::fill));
  CHECK(static_cast<int>(SchematicSymbol::tube) == static_cast<int>(SchemeKind::tube));
  CHECK(static_cast<int>(SchematicSymbol::shared_piece) == static_cast<int>(SchemeKind::shared_piece));
  CHECK(static_cast<int>(SchematicSymbol::relief_valve) == static_cast<int>(SchemeKind::relief_valve));
}
