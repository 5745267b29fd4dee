#include "envelope/field_key.hpp"

namespace slabwright::envelope {
namespace {

/// Structured bindings name every member, so that none can be forgotten. Lists begin with their length.
class FieldKey {
 public:
  std::vector<double> numbers;

  void add(double number) { numbers.push_back(number); }
  void add(const FieldDriverId& driver) { add(static_cast<double>(driver.at)); }

  void add(const FieldPoint& point) {
    const auto& [x_m, y_m] = point;
    add(x_m);
    add(y_m);
  }

  void add(const FieldSegment& segment) {
    const auto& [from, to] = segment;
    add(from);
    add(to);
  }

  void add(const MaterialRectangle& material) {
    const auto& [x0_m, x1_m, y0_m, y1_m, conductivity, capacity] = material;
    numbers.insert(numbers.end(), {x0_m, x1_m, y0_m, y1_m, conductivity, capacity});
  }

  void add(const SurfaceFilm& film) {
    const auto& [coefficient, driver] = film;
    add(coefficient);
    add(driver);
  }

  void add(const FixedTemperature& fixed) {
    const auto& [at_from, at_to] = fixed;
    add(at_from);
    add(at_to);
  }

  void add(const BoundaryStretch& stretch) {
    const auto& [where, condition] = stretch;
    add(where);
    add(static_cast<double>(condition.index()));
    std::visit([this](const auto& each) { add(each); }, condition);
  }

  void add(const HeatPlane& plane) {
    const auto& [where, driver] = plane;
    add(where);
    add(driver);
  }

  void add(const HeatLine& line) {
    const auto& [where, driver] = line;
    add(where);
    add(driver);
  }

  void add(const FieldDriver& driver) {
    const auto& [name, kind] = driver;
    static_cast<void>(name);
    add(static_cast<double>(kind));
  }

  template <class Each>
  void add(const std::vector<Each>& list) {
    add(static_cast<double>(list.size()));
    for (const Each& each : list) add(each);
  }

  void add(const FieldSection& section) {
    const auto& [materials, boundaries, planes, lines, drivers] = section;
    add(materials);
    add(boundaries);
    add(planes);
    add(lines);
    add(drivers);
  }

  void add(const FieldOptions& options) {
    const auto& [first_cell_m, growth, largest_cell_m, with_error_estimate] = options;
    numbers.insert(numbers.end(), {first_cell_m, growth, largest_cell_m, with_error_estimate ? 1.0 : 0.0});
  }
};

}  // namespace

std::vector<double> key_of(const FieldSection& section, const std::vector<FieldPoint>& watched,
                           const FieldOptions& options) {
  FieldKey key;
  key.add(section);
  key.add(watched);
  key.add(options);
  return std::move(key.numbers);
}

}  // namespace slabwright::envelope
