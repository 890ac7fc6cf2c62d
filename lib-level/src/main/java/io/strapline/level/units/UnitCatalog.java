package io.strapline.level.units;

import static java.util.stream.Collectors.joining;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** All units by symbol, and the words for a symbol that is not one. Stateless. */
final class UnitCatalog {

  private static final List<Unit> ALL =
      Stream.<Unit[]>of(
              LengthUnit.values(),
              VolumeUnit.values(),
              MassUnit.values(),
              DensityUnit.values(),
              TimeUnit.values(),
              SpeedUnit.values(),
              VolumeFlowUnit.values(),
              MassFlowUnit.values(),
              CurrentUnit.values(),
              VoltageUnit.values(),
              ResistanceUnit.values(),
              TemperatureUnit.values(),
              AngleUnit.values(),
              RatioUnit.values())
          .flatMap(Stream::of)
          .toList();

  private static final Map<String, Unit> BY_SYMBOL = bySymbol();

  /** Words that mean several units, and how each is told apart. */
  private static final Map<String, String> AMBIGUOUS =
      Map.of(
          "gal", "'US gal' (3.785 L) or 'imp gal' (4.546 L)",
          "bbl", "'oil bbl' (42 US gal); for any other barrel give L, m3 or US gal",
          "ton", "'t' (1000 kg), 'short ton' (2000 lb) or 'long ton' (2240 lb)");

  private static final Map<String, String> BARE_WORDS =
      Map.ofEntries(
          Map.entry("gallon", "gal"),
          Map.entry("gallons", "gal"),
          Map.entry("gals", "gal"),
          Map.entry("gpm", "gal"),
          Map.entry("gph", "gal"),
          Map.entry("barrel", "bbl"),
          Map.entry("barrels", "bbl"),
          Map.entry("bpd", "bbl"),
          Map.entry("tons", "ton"),
          Map.entry("tph", "ton"));

  private UnitCatalog() {}

  private static Map<String, Unit> bySymbol() {
    Map<String, Unit> map = new LinkedHashMap<>();
    for (Unit unit : ALL) {
      for (String symbol : unit.definition().symbols()) {
        if (map.put(symbol, unit) != null) {
          throw new IllegalStateException("two units share the symbol " + symbol);
        }
      }
    }
    return Map.copyOf(map);
  }

  static List<Unit> of(Dimension dimension) {
    return ALL.stream().filter(unit -> unit.dimension() == dimension).toList();
  }

  static Optional<Unit> find(String symbol) {
    return Optional.ofNullable(BY_SYMBOL.get(symbol));
  }

  /** Returns "a length is needed, in one of m, mm, ..." for the end of an error text. */
  static String needed(Dimension dimension) {
    String symbols = of(dimension).stream().map(Unit::asciiSymbol).collect(joining(", "));
    return dimension.phrase() + " is needed, in one of: " + symbols;
  }

  /** Returns why the symbol is no unit: ambiguous, in the wrong case, or not known. */
  static String whyUnknown(String symbol, Dimension dimension) {
    String head = symbol.split("/", -1)[0].strip();
    String bare = BARE_WORDS.getOrDefault(head, head);
    if (AMBIGUOUS.containsKey(bare)) {
      return "'" + symbol + "' may mean several units; write " + AMBIGUOUS.get(bare);
    }
    return otherCase(symbol, dimension)
        .map(right -> "unit symbols keep their case; write '" + right + "' for '" + symbol + "'")
        .orElse("'" + symbol + "' is no known unit; " + needed(dimension));
  }

  private static Optional<String> otherCase(String symbol, Dimension dimension) {
    return of(dimension).stream()
        .flatMap(unit -> unit.definition().symbols().stream())
        .filter(known -> known.equalsIgnoreCase(symbol))
        .findFirst();
  }
}
