package io.strapline.bridge.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.point.Quantity;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
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
  static String of(PointSnapshot snapshot) throws IOException {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
      json.writeStartObject();
      json.writeStringField("point", snapshot.tag());
      for (Map.Entry<String, Quantity> number : NUMBERS.entrySet()) {
        write(json, number.getKey(), snapshot.reading(number.getValue()));
      }
      writeVerdict(json, snapshot);
      json.writeEndObject();
    }
    return text.toString();
  }

  private static void write(JsonGenerator json, String key, Optional<Reading> reading)
      throws IOException {
    OptionalDouble value = reading.map(Reading::usable).orElse(OptionalDouble.empty());
    json.writeFieldName(key);
    if (value.isPresent()) {
      json.writeNumber(value.getAsDouble());
    } else {
      json.writeNull();
    }
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
