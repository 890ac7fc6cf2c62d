package io.strapline.bridge.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.bridge.config.ModbusSettings.BadValue;
import io.strapline.bridge.config.ModbusSettings.WordOrder;
import io.strapline.bridge.config.SourceSettings.Event;
import io.strapline.bridge.config.SourceSettings.LevelProcess;
import io.strapline.bridge.config.SourceSettings.Modbus;
import io.strapline.bridge.config.SourceSettings.ModbusDevice;
import io.strapline.bridge.config.SourceSettings.ModbusRegister;
import io.strapline.bridge.config.SourceSettings.Pace;
import io.strapline.bridge.config.SourceSettings.RegisterType;
import io.strapline.bridge.config.SourceSettings.Replay;
import io.strapline.bridge.config.SourceSettings.ShowsAs;
import io.strapline.bridge.config.SourceSettings.Signal;
import io.strapline.bridge.config.SourceSettings.Simulated;
import io.strapline.level.alarm.AlarmHandling;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmLimit;
import io.strapline.level.loop.LoopLimits;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.loop.RawCounts;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.SourceAges;
import io.strapline.level.signal.NoReturnPolicy;
import io.strapline.level.signal.SignalSettings;
import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.LyingCylinder;
import io.strapline.level.vessel.Sphere;
import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is written arrives in the settings, in SI units; what is not written has its default. */
class PlantReaderTest {

  private static final double EXACT = 1e-12;

  @TempDir private Path folder;

  private PlantFile everyKey;

  @BeforeEach
  void readEveryKey() throws Exception {
    everyKey = PlantReader.read(Samples.write(folder, Samples.text(Samples.EVERY_KEY)));
  }

  private PointConfig config(String tag) {
    return everyKey.plant().points().stream()
        .filter(point -> point.tag().equals(tag))
        .findFirst()
        .orElseThrow();
  }

  private PointSettings point(String tag) {
    return config(tag).point();
  }

  @Test
  void theFileWithEveryKeyHasNeitherProblemNorWarning() {
    assertEquals(List.of(), everyKey.warnings());
  }

  @Test
  void theServersListenAsWritten() {
    PlantSettings plant = everyKey.plant();
    assertEquals("Every Key", plant.name());
    assertEquals(folder.resolve("state"), plant.dataFolder());
    assertEquals(
        new OpcUaSettings(
            true, "127.0.0.1", 4840, true, List.of("bridge.kestrel-quay.example", "192.0.2.10")),
        plant.opcUa());
    assertEquals(
        new ModbusSettings(true, "127.0.0.1", 5020, Set.of(1, 2), WordOrder.CDAB, BadValue.HOLD)
            .with(plant.modbus().access())
            .over(
                new ModbusLines(
                    ModbusLines.Framing.RTU,
                    Optional.of(
                        new ModbusLines.Served(
                            new SerialLine(
                                "/dev/ttyS0",
                                9600,
                                SerialLine.Parity.NONE,
                                2,
                                OptionalDouble.of(0.005)),
                            7,
                            true)))),
        plant.modbus());
  }

  @Test
  void modbusClientsAndWritersAreThoseOfTheFile() throws Exception {
    ModbusAccess access = everyKey.plant().modbus().access();
    assertEquals("[127.0.0.1, 192.0.2.0/24, 0:0:0:0:0:0:0:1]", access.clients().toString());
    ModbusAccess.Writes writes = access.writes().orElseThrow();
    assertEquals("[192.0.2.10]", writes.from().toString());
    assertEquals(Set.of("LT-1"), writes.acknowledge());
    assertEquals(Set.of("LT-1"), writes.reset());
    assertTrue(access.mayConnect(InetAddress.getByName("192.0.2.99")));
    assertFalse(access.mayWrite(InetAddress.getByName("192.0.2.99")));
    assertTrue(access.mayWrite(InetAddress.getByName("192.0.2.10")));
    assertFalse(access.mayConnect(InetAddress.getByName("192.0.3.1")));
  }

  @Test
  void pointsKeepTheOrderOfTheFile() {
    assertEquals(
        List.of("LT-1", "LT-2", "LT-3", "LT-4", "LT-5", "ZT-6"),
        everyKey.plant().points().stream().map(PointConfig::tag).limit(6).toList());
    assertEquals("Silo on a cone", config("LT-1").title());
    assertEquals("Store", config("LT-1").area());
    assertEquals(OptionalInt.of(1), config("LT-1").modbusBlock());
    assertEquals(OptionalInt.empty(), config("LT-2").modbusBlock());
  }

  @Test
  void mountingRangeAndLoopArriveInMetresMilliampsAndSeconds() {
    PointSettings point = point("LT-1");
    assertEquals(new Mounting(13, 5), point.mounting());
    assertEquals(Optional.of(LoopRange.ofDistance(13.1, 0.9)), point.range());
    assertEquals(
        new LoopLimits(3.6, 3.8, 20.5, 21, 3, new LoopLimits.Recovery(0.1, 2)), point.loopLimits());
    assertEquals(1350, point.densityKilogramsPerCubicMetre().orElseThrow(), 1e-9);
    assertEquals(new SourceAges(10, 30), point.ages());
    assertEquals(
        Optional.of(new RawCounts(RawCounts.Encoding.SIGNED_16, 0, 27648)),
        point("LT-2").rawCounts());
  }

  @Test
  void conditioningArrivesAsWritten() {
    SignalSettings signal = point("LT-1").signal();
    assertEquals(0.5, signal.gates().deadZoneMetres());
    assertEquals(14, signal.gates().farLimitMetres());
    assertEquals(OptionalDouble.of(12), signal.gates().leastStrength());
    assertEquals(List.of(8190.0, -1.0), signal.gates().invalidCodes());
    assertEquals(5, signal.medianSamples());
    assertEquals(4, signal.averageSamples());
    assertEquals(3, signal.lagSeconds());
    assertEquals(NoReturnPolicy.hold(20), signal.noReturn());
    assertEquals(NoReturnPolicy.substitute(5, 1), point("LT-2").signal().noReturn());
  }

  @Test
  void whatIsNotWrittenHasTheDefaultsOfTheLibrary() {
    PointSettings point = point("ZT-6");
    assertEquals(Optional.empty(), point.vessel());
    assertEquals(Optional.empty(), point.range());
    assertEquals(LoopLimits.NE43, point.loopLimits());
    assertEquals(SignalSettings.PLAIN, point.signal());
    assertEquals(List.of(), point.alarms().limits());
    assertEquals(SourceAges.DEFAULT, point.ages());
    assertEquals("ZT-6", config("ZT-6").title());
  }

  /** A cone's frustum: h/3 (A0 + sqrt(A0 A1) + A1); a prismatoid: h/6 (A0 + 4 Am + A1). */
  @Test
  void vesselsHaveTheVolumeOfTheirShape() {
    double outlet = Math.PI / 4 * 0.4 * 0.4;
    double shell = Math.PI / 4 * 4 * 4;
    double cone = 2.0 / 3 * (outlet + Math.sqrt(outlet * shell) + shell);
    assertVessel("LT-1", 12, cone + 10 * shell);
    double hopper = 2.0 / 6 * (0.5 * 0.4 + 4 * 2.25 * 1.7 + 4 * 3);
    assertVessel("LT-2", 7, hopper + 5 * 4 * 3);
    assertEquals(Optional.of(new LyingCylinder(2.5, 8)), point("LT-3").vessel());
    assertEquals(Optional.of(new Sphere(4)), point("LT-4").vessel());
    assertVessel("LT-5", 4, 30);
  }

  private void assertVessel(String tag, double height, double capacity) {
    assertEquals(height, point(tag).vessel().orElseThrow().maxHeightMetres(), EXACT * height);
    assertEquals(
        capacity, point(tag).vessel().orElseThrow().capacityCubicMetres(), EXACT * capacity);
  }

  /**
   * By hand: ullage 2 m below 3.1 m and 0.1 m of offset is 1.2 m, where the rows give 10 m3; with
   * 0.5 m3 of heel, less 0.6 of an agitator of 0.2 m3. At the top the manhole's part is added.
   */
  @Test
  void aDeliveredTableIsReadByUllageWithOffsetHeelAndDeadwood() {
    CapacityCurve tank = point("LT-20").vessel().orElseThrow();
    assertEquals(10.5 - 0.12, tank.volumeCubicMetres(1.2), 1e-9);
    assertEquals(3.2, tank.maxHeightMetres(), EXACT);
    assertEquals(30.5 - 0.2 + 0.1, tank.capacityCubicMetres(), 1e-9);
  }

  @Test
  void setPointsBecomeLevels() {
    List<AlarmLimit> limits = point("LT-1").alarms().limits();
    AlarmLimit highHigh = limit(limits, AlarmKind.HIGH_HIGH);
    assertEquals(
        new AlarmLimit(AlarmKind.HIGH_HIGH, 11, 0.2, 2, 5, new AlarmHandling(1, true)), highHigh);
    assertEquals(AlarmHandling.DEFAULT, limit(limits, AlarmKind.HIGH).handling());
    assertEquals(0.2, limit(limits, AlarmKind.LOW).deadbandMetres(), EXACT);
    assertEquals(5, point("LT-1").alarms().badSignalOnDelaySeconds());
  }

  /**
   * 80 % is 16.8 mA: a distance of 13.1 + 0.8 (0.9 - 13.1) = 3.34 m along a beam 5 deg off plumb.
   */
  @Test
  void aPercentIsALevelOfTheRange() {
    double expected = 13 - 3.34 * Math.cos(Math.toRadians(5));
    double level = limit(point("LT-1").alarms().limits(), AlarmKind.HIGH).setPointMetres();
    assertEquals(expected, level, 1e-9);
  }

  @Test
  void aVolumeIsTheLevelThatHoldsIt() {
    double level = limit(point("LT-1").alarms().limits(), AlarmKind.LOW).setPointMetres();
    assertEquals(20, point("LT-1").vessel().orElseThrow().volumeCubicMetres(level), 1e-9);
  }

  private static AlarmLimit limit(List<AlarmLimit> limits, AlarmKind kind) {
    return limits.stream().filter(limit -> limit.kind() == kind).findFirst().orElseThrow();
  }

  @Test
  void aSimulatedTransmitterArrivesInSiUnits() {
    Simulated source = (Simulated) config("LT-1").source();
    assertEquals(Signal.CURRENT, source.signal());
    assertEquals(ShowsAs.LIVE, source.showsAs());
    assertEquals(7, source.seed());
    assertEquals(0.5, source.intervalSeconds(), EXACT);
    assertEquals(0.005, source.noiseMetres(), EXACT);
    LevelProcess process = source.process();
    assertEquals(120 / 3600.0, process.fillPerSecond(), EXACT);
    assertEquals(60 / 3600.0, process.drawPerSecond(), EXACT);
    assertEquals(4, process.startLevelMetres());
    assertEquals(
        List.of(
            new Event(Event.Fault.NO_RETURN, 40, 25, OptionalDouble.of(180)),
            new Event(Event.Fault.FAULT_CURRENT_LOW, 80, 10, OptionalDouble.empty())),
        source.events());
  }

  @Test
  void aSimulatedValueIsMarkedUnlessTheFileSaysLive() {
    assertEquals(ShowsAs.SIMULATED, ((Simulated) config("LT-5").source()).showsAs());
  }

  @Test
  void withoutAVesselTheRatesAreSpeeds() {
    LevelProcess process = ((Simulated) config("ZT-6").source()).process();
    assertEquals(0.5, process.fillPerSecond(), EXACT);
    assertEquals(0.5, process.drawPerSecond(), EXACT);
    assertEquals(5, process.startLevelMetres());
  }

  @Test
  void aSeriesAndADeviceArriveAsWritten() {
    Replay replay = (Replay) config("LT-3").source();
    assertEquals(folder.resolve("recorded/series.csv"), replay.file());
    assertEquals(';', replay.format().separator());
    assertEquals(',', replay.format().decimal());
    assertEquals("Europe/Berlin", replay.format().timeZone());
    assertEquals(0.001, replay.format().value().toSi(), EXACT);
    assertEquals(Pace.FASTEST, replay.pace());
    assertEquals(
        new Modbus(
            Signal.RAW_COUNT,
            new ModbusDevice("192.0.2.7", 502, 3, 1, 0.5, 30),
            new ModbusRegister(4, 100, RegisterType.INT16, WordOrder.ABCD, 1)),
        config("LT-2").source());
    assertEquals(
        new Modbus(
            Signal.DISTANCE,
            new ModbusDevice(
                new DeviceLine.Tcp("gauge.kestrel-quay.example", 502, ModbusLines.Framing.RTU),
                1,
                1,
                1,
                30),
            new ModbusRegister(3, 0, RegisterType.UINT16, WordOrder.ABCD, 0.001)),
        config("LT-4").source());
  }

  @Test
  void aDeviceMayBeAUnitOnASerialLine() {
    SerialLine line =
        new SerialLine("/dev/ttyS1", 9600, SerialLine.Parity.ODD, 1, OptionalDouble.of(0.02));
    assertEquals(
        new Modbus(
            Signal.LEVEL,
            new ModbusDevice(new DeviceLine.Serial(line), 12, 1, 1, 30),
            new ModbusRegister(3, 3, RegisterType.INT16, WordOrder.ABCD, 0.01)),
        config("LT-30").source());
  }

  @Test
  void withoutTheirSectionsTheServersListenOnLoopback() throws Exception {
    PlantSettings plant = PlantReader.read(Samples.write(folder, smallest("60 m"))).plant();
    assertEquals(new OpcUaSettings(true, "127.0.0.1", 4840, false, List.of()), plant.opcUa());
    assertEquals(
        new ModbusSettings(true, "127.0.0.1", 0, Set.of(1), WordOrder.ABCD, BadValue.NAN),
        plant.modbus());
    assertEquals(folder.resolve("strapline-data"), plant.dataFolder());
  }

  @Test
  void aRightFileMayBeginWithAByteOrderMark() throws Exception {
    Path file = Samples.write(folder, "\uFEFF" + smallest("60 m"));
    assertEquals("Small", PlantReader.read(file).plant().name());
  }

  @Test
  void allProblemsAreToldAtOnceInTheOrderOfTheFile() throws IOException {
    String text = smallest("60").replace("Small", "").replace("draw-to: 5 m", "draw-to: 5 kg");
    List<ConfigProblem> problems = problems(Samples.write(folder, text));
    assertEquals(
        List.of(
            "plant",
            "points.ZT-1.mounting.reference-height",
            "points.ZT-1.source.simulated.process.draw-to"),
        problems.stream().map(ConfigProblem::key).toList());
    assertEquals(
        List.of(Reason.MISSING, Reason.MALFORMED, Reason.MALFORMED),
        problems.stream().map(ConfigProblem::reason).toList());
  }

  @Test
  void aFileThatIsNotThereIsToldByItsName() {
    Path nowhere = folder.resolve("nowhere.yaml");
    assertEquals(
        List.of(nowhere + ": does not exist; give the path of a configuration file"),
        texts(problems(nowhere)));
  }

  @Test
  void anEmptyFileAndAFolderAreRefused() throws IOException {
    Path empty = Files.writeString(folder.resolve("empty.yaml"), "# nothing\n");
    assertEquals(
        List.of(empty + ": is empty; write at least the keys plant and points"),
        texts(problems(empty)));
    assertTrue(texts(problems(folder)).get(0).startsWith(folder + ": "));
  }

  @Test
  void aListAndABareWordAreNoConfiguration() throws IOException {
    for (String text : List.of("- a\n- b\n", "hello\n")) {
      Path file = Files.writeString(folder.resolve("other.yaml"), text);
      String told = texts(problems(file)).get(0);
      assertTrue(told.contains("is no mapping of keys to values"), told);
    }
  }

  @Test
  void bytesThatAreNotUtf8AreRefused() throws IOException {
    Path file = Files.write(folder.resolve("latin.yaml"), new byte[] {'a', ':', ' ', (byte) 0xE9});
    assertEquals(
        List.of(file + ": is not UTF-8 text; save the file in UTF-8"), texts(problems(file)));
  }

  @Test
  void aControlCharacterIsRefusedWithoutAStackTrace() throws IOException {
    Path file = Files.writeString(folder.resolve("control.yaml"), "plant: a\u0007b\n");
    assertTrue(texts(problems(file)).get(0).contains("is not YAML"));
  }

  @Test
  void aFileBeyondTheLargestSizeIsNotRead() throws IOException {
    Path file =
        Files.writeString(folder.resolve("large.yaml"), "#".repeat(YamlFile.LARGEST_BYTES + 1));
    assertTrue(texts(problems(file)).get(0).contains("is larger than"));
  }

  @Test
  void nestingBeyondTheDeepestIsRefusedBeforeItIsBuilt() throws IOException {
    Path file = Files.writeString(folder.resolve("deep.yaml"), "a: " + "[".repeat(100_000));
    List<String> told = texts(problems(file));
    assertEquals(1, told.size());
    assertTrue(told.get(0).contains("deep.yaml:1:23: is nested deeper than 20"), told.get(0));
  }

  @Test
  void anAliasBombIsRefusedBeforeItIsBuilt() throws IOException {
    StringBuilder bomb = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x]\n");
    for (int i = 1; i < 30; i++) {
      String eight = ("*a" + (i - 1) + ", ").repeat(8);
      bomb.append("a" + i + ": &a" + i + " [" + eight + "x]\n");
    }
    Path file = Files.writeString(folder.resolve("bomb.yaml"), bomb);
    assertTrue(
        problems(file).stream()
            .allMatch(problem -> problem.rule().equals("anchors and aliases are not read")));
  }

  @Test
  void aLongValueIsShortenedInItsMessage() throws IOException {
    Path file = Samples.write(folder, smallest("9".repeat(5000) + " m"));
    ConfigProblem problem = problems(file).get(0);
    assertTrue(problem.value().length() < 80, problem.value());
  }

  private static String smallest(String referenceHeight) {
    return "plant: Small\npoints:\n  ZT-1:\n    mounting: { reference-height: "
        + referenceHeight
        + " }\n    source: { simulated: { signal: distance, process:"
        + " { draw-to: 5 m, fill-to: 55 m, fill-rate: 1 m/s, draw-rate: 1 m/s } } }\n";
  }

  private static List<ConfigProblem> problems(Path file) {
    return assertThrows(ConfigException.class, () -> PlantReader.read(file)).problems();
  }

  private static List<String> texts(List<ConfigProblem> problems) {
    return problems.stream().map(ConfigProblem::toString).toList();
  }
}
