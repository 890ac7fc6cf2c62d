package io.strapline.bridge.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.point.Quantity;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import io.strapline.level.uncertainty.UncertaintyBudget;
import java.io.IOException;
import java.io.StringWriter;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Writes a snapshot as one JSON object with stable keys. Stateless. */
final class EvalJson {

  private static final Map<String, Quantity> NUMBERS = numbers();

  private EvalJson() {}

  private static Map<String, Quantity> numbers() {
    Map<String, Quantity> numbers = new LinkedHashMap<>();
    numbers.put("distance_m", Quantity.DISTANCE);
    numbers.put("ullage_m", Quantity.ULLAGE);
    numbers.put("level_m", Quantity.LEVEL);
    numbers.put("percent", Quantity.PERCENT);
    numbers.put("volume_m3", Quantity.VOLUME);
    numbers.put("free_volume_m3", Quantity.FREE_VOLUME);
    numbers.put("mass_kg", Quantity.MASS);
    numbers.put("current_mA", Quantity.LOOP_CURRENT);
    return numbers;
  }

  /** Returns the object; a number that is not configured, or BAD, is null. */
  static String of(PointSnapshot snapshot, Optional<EvalUncertainty> uncertainty)
      throws IOException {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
      json.writeStartObject();
      json.writeStringField("point", snapshot.tag());
      for (Map.Entry<String, Quantity> number : NUMBERS.entrySet()) {
        Optional<Reading> reading = snapshot.reading(number.getValue());
        write(json, number.getKey(), usable(reading));
      }
      writeVerdict(json, snapshot);
      writeUncertainty(json, uncertainty);
      json.writeEndObject();
    }
    return text.toString();
  }

  private static OptionalDouble usable(Optional<Reading> reading) {
    return reading.map(Reading::usable).orElse(OptionalDouble.empty());
  }

  private static void write(JsonGenerator json, String key, OptionalDouble value)
      throws IOException {
    json.writeFieldName(key);
    if (value.isPresent()) {
      json.writeNumber(value.getAsDouble());
    } else {
      json.writeNull();
    }
  }

  private static void writeUncertainty(JsonGenerator json, Optional<EvalUncertainty> known)
      throws IOException {
    write(json, "level_u_m", expanded(known.map(EvalUncertainty::level)));
    write(json, "volume_u_m3", expanded(known.flatMap(EvalUncertainty::volume)));
    write(json, "mass_u_kg", expanded(known.flatMap(EvalUncertainty::mass)));
    OptionalDouble factor =
        known.isPresent()
            ? OptionalDouble.of(known.get().coverageFactor())
            : OptionalDouble.empty();
    write(json, "coverage_factor", factor);
  }

  private static OptionalDouble expanded(Optional<UncertaintyBudget> budget) {
    return budget.isPresent() ? OptionalDouble.of(budget.get().expanded()) : OptionalDouble.empty();
  }

  private static void writeVerdict(JsonGenerator json, PointSnapshot snapshot) throws IOException {
    Quality quality = snapshot.level().quality();
    json.writeFieldName("band");
    if (snapshot.band().isPresent()) {
      json.writeString(snapshot.band().get().name());
    } else {
      json.writeNull();
    }
    json.writeStringField("quality", quality.level().name());
    json.writeStringField("cause", quality.cause().name());
    json.writeStringField("status", snapshot.status().name());
  }
}
