package io.strapline.bridge.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.loop.RawCounts;
import io.strapline.level.table.Interpolation;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** The JSON Schema for editors and the reader know the same keys and words. */
class SchemaTest {

  private static final Path CONFIG = Path.of("..", "config");
  private static final ObjectMapper JSON = new ObjectMapper();

  private final JsonNode tree;
  private final Schema schema;

  SchemaTest() throws IOException {
    tree = JSON.readTree(CONFIG.resolve("strapline-plant.schema.json").toFile());
    schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(tree);
  }

  private List<Error> errors(String yaml) {
    LoadSettings settings = LoadSettings.builder().setAllowDuplicateKeys(true).build();
    return schema.validate(JSON.<JsonNode>valueToTree(new Load(settings).loadFromString(yaml)));
  }

  @Test
  void theDemonstrationPlantIsValid() throws IOException {
    assertEquals(List.of(), errors(Files.readString(CONFIG.resolve("kestrel-quay.yaml"))));
  }

  @Test
  void theFileWithEveryKeyIsValid() {
    assertEquals(List.of(), errors(Samples.text(Samples.EVERY_KEY)));
  }

  @ParameterizedTest
  @EnumSource(Keys.class)
  void everySectionHasTheKeysOfTheReader(Keys section) {
    JsonNode definition =
        section == Keys.PLANT ? tree : tree.path("$defs").path(section.definition());
    TreeSet<String> inSchema = new TreeSet<>();
    definition.path("properties").fieldNames().forEachRemaining(inSchema::add);
    assertEquals(new TreeSet<>(section.names()), inSchema);
    assertFalse(definition.path("additionalProperties").asBoolean(true), "unknown keys pass");
  }

  @Test
  void theSchemaDefinesNoSectionThatTheReaderDoesNotKnow() {
    TreeSet<String> defined = new TreeSet<>();
    tree.path("$defs").fieldNames().forEachRemaining(defined::add);
    defined.removeAll(List.of("quantity", "text"));
    TreeSet<String> known = new TreeSet<>();
    for (Keys section : Keys.values()) {
      known.add(section.definition());
    }
    known.remove("plant");
    assertEquals(known, defined);
  }

  @Test
  void theWordsOfTheSchemaAreThoseOfTheReader() {
    assertWords(ModbusSettings.WordOrder.class, "modbus", "word-order");
    assertWords(ModbusSettings.WordOrder.class, "register", "word-order");
    assertWords(ModbusSettings.BadValue.class, "modbus", "bad-value");
    assertWords(ModbusLines.Framing.class, "modbus", "framing");
    assertWords(ModbusLines.Framing.class, "device", "framing");
    assertWords(SerialLine.Parity.class, "modbus-serial", "parity");
    assertWords(SerialLine.Parity.class, "device-serial", "parity");
    assertWords(Interpolation.class, "capacity-table", "interpolation");
    assertWords(TableReader.Separator.class, "capacity-table", "separator");
    assertWords(TableReader.Decimal.class, "capacity-table", "decimal");
    assertWords(TableReader.Grouping.class, "capacity-table", "grouping");
    assertWords(HeadKind.class, "head", "form");
    assertWords(HeadKind.class, "head-section", "form");
    assertWords(TankReader.End.class, "tilt", "low-end");
    assertWords(LoopRange.Measure.class, "range", "measures");
    assertWords(RawCounts.Encoding.class, "raw-counts", "encoding");
    assertWords(SourceSettings.ShowsAs.class, "simulated", "shows-as");
    assertWords(SourceSettings.Event.Fault.class, "fault", "fault");
    assertWords(SourceSettings.Signal.class, "replay", "signal");
    assertWords(SourceSettings.Signal.class, "modbus-device-source", "signal");
    assertWords(SourceSettings.Pace.class, "replay", "pace");
    assertWords(SourceSettings.RegisterType.class, "register", "type");
  }

  private <E extends Enum<E>> void assertWords(Class<E> type, String section, String key) {
    List<String> words = new ArrayList<>();
    JsonNode property = tree.path("$defs").path(section).path("properties").path(key);
    property.path("enum").forEach(word -> words.add(word.asText()));
    assertEquals(new TreeSet<>(Labels.of(Labels.all(type))), new TreeSet<>(words), key);
  }

  static List<Samples.Broken> refusedBySchema() {
    return Samples.broken().stream().filter(Samples.Broken::refusedBySchema).toList();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("refusedBySchema")
  void theSchemaFindsWhatAnEditorShouldUnderline(Samples.Broken sample) {
    assertFalse(errors(sample.text()).isEmpty(), sample.name());
  }
}
