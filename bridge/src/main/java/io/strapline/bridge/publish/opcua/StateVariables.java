package io.strapline.bridge.publish.opcua;

import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.uint;

import io.strapline.bridge.publish.opcua.VariableSpec.Label;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.reading.Diagnostic;
import io.strapline.level.units.TimeUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.eclipse.milo.opcua.stack.core.types.builtin.DateTime;

/** What a point tells of itself beside its values. Stateless. */
final class StateVariables {

  /** Path of the age, which goes on growing between two snapshots. */
  static final String AGE = "Age";

  private static final long UINT32 = 0xFFFFFFFFL;

  private StateVariables() {}

  static List<VariableSpec> of(PointSettings settings) {
    List<VariableSpec> specs = new ArrayList<>(always());
    if (settings.range().isPresent()) {
      specs.add(
          text(
              "LoopBand",
              new Label("Loop band", "Band of the last loop current; empty without a current"),
              snapshot -> snapshot.band().map(Enum::name).orElse("")));
    }
    return specs;
  }

  /** Returns the variables that every point has. */
  static List<VariableSpec> always() {
    List<VariableSpec> specs = new ArrayList<>();
    addQuality(specs);
    addDiagnosis(specs);
    addTimes(specs);
    return specs;
  }

  private static void addQuality(List<VariableSpec> specs) {
    specs.add(
        text(
            "Quality",
            new Label("Quality", "Quality of the level: GOOD, UNCERTAIN or BAD"),
            snapshot -> snapshot.level().quality().level().name()));
    specs.add(
        text(
            "Cause",
            new Label("Cause", "Why the level is not GOOD; NONE when it is"),
            snapshot -> snapshot.level().quality().cause().name()));
    specs.add(
        text(
            "CauseText",
            new Label("Cause in words", "Why the level is not GOOD, as a sentence"),
            snapshot -> snapshot.level().quality().cause().text()));
  }

  private static void addDiagnosis(List<VariableSpec> specs) {
    specs.add(
        VariableSpec.plain(
            "DeviceHealth",
            ValueType.INT32,
            new Label(
                "Device health",
                "Prevailing NE 107 status, numbered as DeviceHealthEnumeration of OPC 10000-100:"
                    + " 0 normal, 1 failure, 2 function check, 3 out of specification,"
                    + " 4 maintenance required"),
            snapshot -> Values.good(snapshot.status().deviceHealth(), snapshot.evaluated())));
    specs.add(
        text(
            "DeviceHealthText",
            new Label("Device health in words", "Prevailing NE 107 status by name"),
            snapshot -> snapshot.status().name()));
    specs.add(
        VariableSpec.plain(
            "Diagnostics",
            ValueType.STRINGS,
            new Label(
                "Diagnostics",
                "Active diagnostics, the prevailing first: NE 107 letter, cause, since when"),
            snapshot -> Values.good(diagnostics(snapshot), snapshot.evaluated())));
  }

  private static String[] diagnostics(PointSnapshot snapshot) {
    return snapshot.diagnostics().stream().map(StateVariables::line).toArray(String[]::new);
  }

  private static String line(Diagnostic diagnostic) {
    return diagnostic.status().letter()
        + " "
        + diagnostic.cause()
        + ": "
        + diagnostic.cause().text()
        + ", since "
        + diagnostic.since();
  }

  private static void addTimes(List<VariableSpec> specs) {
    specs.add(
        VariableSpec.analog(
            AGE,
            Scale.of(TimeUnit.SECOND),
            new Label(
                "Age of the data",
                "Seconds since the last accepted sample; brought up to date each second"),
            snapshot -> Values.good(snapshot.ageSeconds(), snapshot.evaluated())));
    specs.add(
        VariableSpec.plain(
            "SourceTime",
            ValueType.DATE_TIME,
            new Label("Source time", "When the device measured the last accepted sample, UTC"),
            snapshot -> Values.good(new DateTime(snapshot.sourceTime()), snapshot.evaluated())));
    specs.add(
        VariableSpec.plain(
            "Sequence",
            ValueType.UINT32,
            new Label(
                "Sequence",
                "Number of the evaluation; rises by one at each and stands still when the point is"
                    + " no longer evaluated; starts at 0 again after 4294967295"),
            snapshot -> Values.good(uint(snapshot.sequence() & UINT32), snapshot.evaluated())));
  }

  private static VariableSpec text(
      String path, Label label, Function<PointSnapshot, String> value) {
    return VariableSpec.plain(
        path,
        ValueType.STRING,
        label,
        snapshot -> Values.good(value.apply(snapshot), snapshot.evaluated()));
  }
}
