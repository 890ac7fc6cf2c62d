package io.strapline.bridge.config;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * Every key that a configuration file may hold, by section: the one list that the reader, the JSON
 * Schema and the documentation are held against.
 */
enum Keys {
  PLANT("plant", "data-folder", "opc-ua", "modbus", "points"),
  OPC_UA("enabled", "listen", "port", "anonymous-read", "advertised-hosts"),
  MODBUS(
      "enabled",
      "listen",
      "port",
      "unit-ids",
      "word-order",
      "bad-value",
      "clients",
      "writes",
      "framing",
      "serial"),
  MODBUS_SERIAL("port", "baud", "parity", "stop-bits", "silence", "unit-id", "writes"),
  MODBUS_WRITES("from", "acknowledge", "reset"),
  POINT(
      "title",
      "area",
      "modbus-block",
      "mounting",
      "vessel",
      "material",
      "range",
      "loop",
      "raw-counts",
      "signal",
      "alarms",
      "silence",
      "accuracy",
      "source"),
  MOUNTING("reference-height", "beam-angle"),
  VESSEL(
      "upright-cylinder",
      "rectangular-bin",
      "lying-cylinder",
      "sphere",
      "stack",
      "profile",
      "capacity-table",
      "deadwood"),
  UPRIGHT_CYLINDER(
      "diameter",
      "outside-diameter",
      "wall-thickness",
      "height",
      "bottom",
      "bottom-head",
      "top-head"),
  CYLINDER_BOTTOM("cone", "transition"),
  CONE("height", "half-angle-to-vertical", "wall-angle-to-horizontal", "outlet-diameter"),
  HEAD("form", "depth", "crown-radius", "knuckle-radius", "straight-flange"),
  RECTANGULAR_BIN("length", "width", "height", "bottom"),
  BIN_BOTTOM("hopper", "sloped-floor", "transition"),
  HOPPER("height", "outlet-length", "outlet-width"),
  SLOPED_FLOOR("rise-along-length", "rise-along-width"),
  TRANSITION("height", "outlet-diameter", "outlet-length", "outlet-width", "outlet-corner-radius"),
  LYING_CYLINDER(
      "diameter",
      "outside-diameter",
      "wall-thickness",
      "length",
      "heads",
      "left-head",
      "right-head",
      "tilt"),
  TILT("angle", "low-end", "gauge-position"),
  SPHERE("diameter", "outside-diameter", "wall-thickness"),
  STACK("cylinder", "cone", "straight-walls", "taper", "transition", "bottom-head", "top-head"),
  CYLINDER_SECTION("diameter", "height"),
  CONE_SECTION(
      "bottom-diameter",
      "top-diameter",
      "height",
      "half-angle-to-vertical",
      "wall-angle-to-horizontal"),
  STRAIGHT_WALLS("length", "width", "height"),
  TAPER("bottom-length", "bottom-width", "top-length", "top-width", "height"),
  TRANSITION_SECTION(
      "bottom-diameter",
      "bottom-length",
      "bottom-width",
      "bottom-corner-radius",
      "top-diameter",
      "top-length",
      "top-width",
      "top-corner-radius",
      "height"),
  HEAD_SECTION(
      "form",
      "diameter",
      "outside-diameter",
      "wall-thickness",
      "depth",
      "crown-radius",
      "knuckle-radius"),
  PROFILE("height", "diameter", "length", "width"),
  CAPACITY_TABLE(
      "file",
      "table",
      "interpolation",
      "reference-height",
      "datum-offset",
      "heel",
      "separator",
      "decimal",
      "grouping"),
  DEADWOOD("name", "bottom", "top", "displaces", "adds"),
  MATERIAL("density", "packing", "density-by-depth"),
  PACKING("surface", "deep", "depth-constant"),
  DENSITY_BY_DEPTH("depth", "density"),
  RANGE("measures", "at-4mA", "at-20mA"),
  LOOP("failure-low", "under-range", "over-range", "failure-high", "confirmation", "recovery"),
  RECOVERY("hysteresis", "time"),
  RAW_COUNTS("encoding", "at-4mA", "at-20mA"),
  SIGNAL(
      "dead-zone",
      "far-limit",
      "least-strength",
      "invalid-codes",
      "no-return",
      "median",
      "average",
      "lag"),
  NO_RETURN("hold", "substitute"),
  SUBSTITUTE("after", "distance"),
  ALARMS("high-high", "high", "low", "low-low", "bad-signal"),
  ALARM_LIMIT("at", "deadband", "on-delay", "off-delay", "priority", "latching"),
  BAD_SIGNAL("on-delay", "priority", "latching"),
  SILENCE("last-usable-after", "bad-after"),
  ACCURACY(
      "transmitter",
      "loop",
      "loop-counts",
      "reference-height",
      "beam-angle",
      "surface",
      "vessel",
      "density",
      "coverage-factor"),
  SOURCE("simulated", "replay", "modbus"),
  SIMULATED("signal", "shows-as", "seed", "interval", "noise", "process", "faults"),
  PROCESS("start", "draw-to", "fill-to", "fill-rate", "draw-rate"),
  FAULT("fault", "at", "lasts", "every"),
  REPLAY("signal", "file", "separator", "decimal", "time", "value", "pace"),
  TIME_COLUMN("column", "pattern", "zone"),
  VALUE_COLUMN("column", "unit"),
  MODBUS_DEVICE_SOURCE("signal", "device", "register"),
  DEVICE("host", "port", "framing", "serial", "unit-id", "poll", "timeout", "longest-pause"),
  DEVICE_SERIAL("port", "baud", "parity", "stop-bits", "silence"),
  REGISTER("table", "address", "type", "word-order", "scale");

  // List.of makes the list immutable, which its type does not tell.
  @SuppressWarnings("ImmutableEnumChecker")
  private final List<String> names;

  Keys(String... names) {
    this.names = List.of(names);
  }

  /** Returns the keys of the section in the order of the documentation. */
  List<String> names() {
    return names;
  }

  /** Returns the name of the section's definition in the JSON Schema. */
  String definition() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Returns the fix for an unknown key: the nearest valid key, or all of them. */
  String adviceFor(String unknown) {
    String nearest =
        names.stream().min(Comparator.comparingInt(name -> distance(unknown, name))).orElseThrow();
    boolean near = distance(unknown, nearest) <= Math.max(2, nearest.length() / 3);
    return near
        ? "did you mean " + nearest + "? Write it, or remove the key"
        : "remove it, or use one of " + String.join(", ", names);
  }

  /** Edit distance after Levenshtein, in one row, without regard to case. */
  private static int distance(String a, String b) {
    String from = a.toLowerCase(Locale.ROOT);
    String to = b.toLowerCase(Locale.ROOT);
    int[] row = new int[to.length() + 1];
    Arrays.setAll(row, i -> i);
    for (int i = 1; i <= from.length(); i++) {
      nextRow(row, i, from.charAt(i - 1), to);
    }
    return row[to.length()];
  }

  private static void nextRow(int[] row, int i, char letter, String to) {
    int diagonal = row[0];
    row[0] = i;
    for (int j = 1; j < row.length; j++) {
      int above = row[j];
      int replaced = diagonal + (letter == to.charAt(j - 1) ? 0 : 1);
      row[j] = Math.min(replaced, 1 + Math.min(above, row[j - 1]));
      diagonal = above;
    }
  }
}
