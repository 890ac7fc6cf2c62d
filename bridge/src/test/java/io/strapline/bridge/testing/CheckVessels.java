package io.strapline.bridge.testing;

import io.strapline.bridge.testing.CheckValues.Row;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The vessels of the library's geometry check files as they are written in a configuration. Each
 * row keeps the source of its volume in its file. Stateless.
 */
public final class CheckVessels {

  private static final Path FOLDER =
      Path.of("..", "lib-level", "src", "test", "resources", "io", "strapline", "level", "vessel");

  private CheckVessels() {}

  /**
   * A vessel and what a check file says of it.
   *
   * @param id of the row
   * @param vessel the keys below {@code vessel}, in YAML's flow style
   * @param heightMetres of the surface
   * @param cubicMetres expected volume
   * @param tolerance of the volume, in cubic metres
   */
  public record Known(
      String id, String vessel, double heightMetres, double cubicMetres, double tolerance) {

    /** Returns a plant with this vessel at the point LT-1, whose transmitter stands at 50 m. */
    public String plant() {
      return """
          plant: Check
          points:
            LT-1:
              mounting: { reference-height: 50 m }
              vessel: { %s }
              source: { modbus: { signal: level, device: { host: 192.0.2.1 },
                register: { address: 0, type: uint16, scale: 1 mm } } }
          """
          .formatted(vessel);
    }

    @Override
    public String toString() {
      return id;
    }
  }

  /** Returns every row of the check files whose shape a configuration knows. */
  public static List<Known> all() {
    List<Known> all = new ArrayList<>();
    rows("vertical_cylinder.csv").forEach(row -> all.add(known(row, upright(row))));
    rows("horizontal_cylinder.csv").forEach(row -> all.add(known(row, lying(row))));
    rows("conical_hopper.csv").forEach(row -> all.add(known(row, silo(row))));
    rows("sphere.csv").forEach(row -> all.add(known(row, sphere(row))));
    rows("stacked_profile.csv").forEach(row -> all.add(known(row, stack(row))));
    rows("rectangular_hopper.csv").forEach(row -> all.add(known(row, bin(row))));
    rows("transition_hopper.csv").forEach(row -> all.add(known(row, transition(row))));
    rows("stacked_profile.csv").forEach(row -> all.add(known(row, profile(row))));
    rows("tilted_cylinder.csv").forEach(row -> all.add(tilted(row)));
    return all;
  }

  private static List<Row> rows(String file) {
    return CheckValues.rows(FOLDER.resolve(file));
  }

  private static Known known(Row row, String vessel) {
    double volume = row.number("volume_m3");
    double tolerance = volume == 0 ? row.number("abs_tol_m3") : row.number("rel_tol") * volume;
    return new Known(row.get("id"), vessel, row.number("h_m"), volume, tolerance);
  }

  private static String upright(Row row) {
    return String.format(
        Locale.ROOT,
        "upright-cylinder: { diameter: %s m, height: %s m, bottom-head: %s, top-head: %s }",
        row.get("diameter_m"),
        row.get("shell_length_m"),
        head(row, "bottom"),
        head(row, "top"));
  }

  private static String lying(Row row) {
    return String.format(
        Locale.ROOT,
        "lying-cylinder: { diameter: %s m, length: %s m, left-head: %s, right-head: %s }",
        row.get("diameter_m"),
        row.get("shell_length_m"),
        head(row, "left"),
        head(row, "right"));
  }

  private static String head(Row row, String side) {
    String head = row.get(side + "_head");
    String depth = "depth: " + row.get(side + "_depth_m") + " m }";
    return switch (head) {
      case "flat", "hemispherical" -> "{ form: " + head + " }";
      case "cone", "conical" -> "{ form: cone, " + depth;
      case "guppy" -> "{ form: eccentric-cone, " + depth;
      case "ellipsoidal" -> "{ form: ellipsoidal, " + depth;
      case "spherical_dish" -> "{ form: dish, " + depth;
      case "torispherical" -> torispherical(row, side);
      default -> throw new IllegalArgumentException(head);
    };
  }

  private static String torispherical(Row row, String side) {
    double diameter = row.number("diameter_m");
    return "{ form: torispherical, crown-radius: "
        + row.number(side + "_f") * diameter
        + " m, knuckle-radius: "
        + row.number(side + "_k") * diameter
        + " m }";
  }

  private static String silo(Row row) {
    return String.format(
        Locale.ROOT,
        "upright-cylinder: { diameter: %s m, height: %s m,"
            + " bottom: { cone: { height: %s m, outlet-diameter: %s m } } }",
        row.get("diameter_m"),
        row.get("shell_length_m"),
        row.get("hopper_height_m"),
        row.get("outlet_diameter_m"));
  }

  private static String sphere(Row row) {
    return "sphere: { diameter: " + row.get("diameter_m") + " m }";
  }

  private static String bin(Row row) {
    String walls =
        String.format(
            Locale.ROOT,
            "rectangular-bin: { length: %s m, width: %s m, height: %s m, bottom: { %%s } }",
            row.get("bin_x_m"),
            row.get("bin_y_m"),
            row.get("bin_height_m"));
    return walls.formatted(
        row.get("hopper_type").equals("double_inclined_floor") ? floor(row) : hopper(row));
  }

  private static String floor(Row row) {
    return String.format(
        Locale.ROOT,
        "sloped-floor: { rise-along-length: %s m, rise-along-width: %s m }",
        row.get("rise_x_m"),
        row.get("rise_y_m"));
  }

  private static String hopper(Row row) {
    return String.format(
        Locale.ROOT,
        "hopper: { height: %s m, outlet-length: %s m, outlet-width: %s m }",
        row.get("hopper_height_m"),
        row.get("outlet_x_m"),
        row.get("outlet_y_m"));
  }

  private static String transition(Row row) {
    String bottom =
        String.format(
            Locale.ROOT,
            "height: %s m, bottom: { transition: { height: %s m, %s } } }",
            row.get("bin_height_m"),
            row.get("hopper_height_m"),
            outlet(row));
    return row.get("top_shape").equals("circle")
        ? "upright-cylinder: { diameter: " + row.get("top_diameter_m") + " m, " + bottom
        : "rectangular-bin: { length: "
            + row.get("top_x_m")
            + " m, width: "
            + row.get("top_y_m")
            + " m, "
            + bottom;
  }

  /** A stadium is a slot whose ends are half circles. */
  private static String outlet(Row row) {
    if (row.get("outlet_shape").equals("circle")) {
      return "outlet-diameter: " + row.get("outlet_diameter_m") + " m";
    }
    double corner = row.get("outlet_shape").equals("stadium") ? row.number("outlet_y_m") / 2 : 0;
    return String.format(
        Locale.ROOT,
        "outlet-length: %s m, outlet-width: %s m, outlet-corner-radius: %s m",
        row.get("outlet_x_m"),
        row.get("outlet_y_m"),
        corner);
  }

  private static String profile(Row row) {
    List<String> rows = new ArrayList<>();
    for (String corner : row.get("profile").split("\\|", -1)) {
      double[] size = numbers(corner);
      rows.add(
          size.length == 2
              ? "{ height: " + size[0] + " m, diameter: " + 2 * size[1] + " m }"
              : String.format(
                  Locale.ROOT,
                  "{ height: %s m, length: %s m, width: %s m }",
                  size[0],
                  size[1],
                  size[2]));
    }
    return "profile: [ " + String.join(", ", rows) + " ]";
  }

  /**
   * The file gives the plumb depth at the gauge; the level of a point counts from the lowest inside
   * point of the tank. Derived here: the bottom line at the gauge lies x sin(tilt) above the low
   * end's tangent line, and half a spheroid of depth a on a circle of radius R reaches (root(R^2
   * cos^2 + a^2 sin^2) - R cos) below that.
   */
  private static Known tilted(Row row) {
    double tilt = Math.toRadians(row.number("tilt_deg"));
    double radius = row.number("diameter_m") / 2;
    boolean ball = row.get("heads").equals("hemispherical");
    double depth = ball ? radius : row.number("head_depth_m");
    double upright = radius * Math.cos(tilt);
    double below = Math.hypot(upright, depth * Math.sin(tilt)) - upright;
    double level =
        row.number("vertical_depth_m") + row.number("gauge_x_m") * Math.sin(tilt) + below;
    String head =
        row.get("heads").equals("ellipsoidal")
            ? "{ form: ellipsoidal, depth: " + depth + " m }"
            : "{ form: " + row.get("heads") + " }";
    String vessel =
        String.format(
            Locale.ROOT,
            "lying-cylinder: { diameter: %s m, length: %s m, heads: %s,"
                + " tilt: { angle: %s deg, low-end: left, gauge-position: %s m } }",
            row.get("diameter_m"),
            row.get("shell_length_m"),
            head,
            row.get("tilt_deg"),
            row.get("gauge_x_m"));
    double volume = row.number("volume_m3");
    return new Known(row.get("id"), vessel, level, volume, 1e-9 * volume);
  }

  private static String stack(Row row) {
    String[] profile = row.get("profile").split("\\|", -1);
    List<String> sections = new ArrayList<>();
    for (int i = 1; i < profile.length; i++) {
      double[] low = numbers(profile[i - 1]);
      double[] high = numbers(profile[i]);
      if (high[0] > low[0]) {
        sections.add(low.length == 2 ? cone(low, high) : taper(low, high));
      }
    }
    return "stack: [ " + String.join(", ", sections) + " ]";
  }

  private static double[] numbers(String corner) {
    return java.util.Arrays.stream(corner.split(":", -1))
        .mapToDouble(Double::parseDouble)
        .toArray();
  }

  /** The file gives radii. */
  private static String cone(double[] low, double[] high) {
    double height = high[0] - low[0];
    return low[1] == high[1]
        ? "{ cylinder: { diameter: " + 2 * low[1] + " m, height: " + height + " m } }"
        : "{ cone: { bottom-diameter: "
            + 2 * low[1]
            + " m, top-diameter: "
            + 2 * high[1]
            + " m, height: "
            + height
            + " m } }";
  }

  private static String taper(double[] low, double[] high) {
    return String.format(
        Locale.ROOT,
        "{ taper: { bottom-length: %s m, bottom-width: %s m, top-length: %s m, top-width: %s m,"
            + " height: %s m } }",
        low[1],
        low[2],
        high[1],
        high[2],
        high[0] - low[0]);
  }
}
