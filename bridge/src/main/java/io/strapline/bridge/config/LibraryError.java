package io.strapline.bridge.config;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * An argument error of the library, {@code Type.field = value unit: rule; fix}, taken apart so that
 * it can be told at the key that caused it. Immutable.
 *
 * @param type type that refused
 * @param field field that it refused, empty when the message has another form
 * @param value what was refused
 * @param rule what it breaks
 * @param fix what to do, empty when the message has another form
 */
record LibraryError(String type, String field, String value, String rule, String fix) {

  private static final Pattern FORM =
      Pattern.compile(
          "(\\w+)\\.(?:\\w+\\.)*(\\w+) (?:= (.*?)|is (?:missing|empty)): (.+?)(?:; (.+))?");

  private static final String RATIO = " of the diameter";

  /** Form of a refused quantity; the text itself is told by the place. */
  private static final Pattern QUOTED = Pattern.compile("\"[^\"]*.*?\":? (.+?)(?:; (.+))?");

  /** Takes the message of an argument error apart. */
  static LibraryError of(IllegalArgumentException error) {
    String message = String.valueOf(error.getMessage());
    Matcher form = FORM.matcher(message);
    return form.matches() ? ofField(form) : ofText(message);
  }

  private static LibraryError ofText(String message) {
    Matcher quoted = QUOTED.matcher(message);
    return quoted.matches()
        ? new LibraryError("", "", "", quoted.group(1), orEmpty(quoted.group(2)))
        : new LibraryError("", "", "", message, "");
  }

  private static LibraryError ofField(Matcher form) {
    String value = orEmpty(form.group(3));
    // What is refused is not what stands in the file, so it is told.
    String rule =
        value.endsWith(RATIO) ? "is " + value + ", which " + form.group(4) : form.group(4);
    return new LibraryError(form.group(1), form.group(2), value, rule, orEmpty(form.group(5)));
  }

  /** Returns the fix, or this one when the message has none. */
  String fix(String otherwise) {
    return fix.isEmpty() ? otherwise : fix;
  }

  /**
   * Returns the key that the field is called by in a file, {@code beamAngle} is beam-angle; empty
   * when the section has no such key.
   */
  Optional<String> key(Keys section) {
    return Stream.of(alias(), kebab(field)).filter(section.names()::contains).findFirst();
  }

  private String alias() {
    return switch (type + "." + field) {
      case "LoopRange.lower", "RawCounts.countAt4" -> "at-4mA";
      case "LoopRange.upper", "RawCounts.countAt20" -> "at-20mA";
      case "ConeSection.bottomDiameter" -> "outlet-diameter";
      case "Head.crownRatio" -> "crown-radius";
      case "Head.knuckleRatio" -> "knuckle-radius";
      case "Shell.length" -> "height";
      case "TiltedTank.tilt" -> "angle";
      case "TiltedTank.gauge" -> "gauge-position";
      case "ConstantDensity.value" -> "density";
      case "SourceAges.lastUsable" -> "last-usable-after";
      case "SourceAges.bad" -> "bad-after";
      default -> "";
    };
  }

  /** Splits at capitals and drops the unit that ends a field's name. */
  private static String kebab(String field) {
    String words = field.replaceAll("([a-z])([A-Z])", "$1-$2").toLowerCase(Locale.ROOT);
    return words.replaceFirst("-(metres|seconds|degrees|milliamps|samples)$", "");
  }

  private static String orEmpty(@org.jspecify.annotations.Nullable String text) {
    return text == null ? "" : text;
  }
}
