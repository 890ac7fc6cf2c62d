package io.strapline.bridge.publish.opcua;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import io.strapline.bridge.testing.Eventually;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmState;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An independent client works with the alarms of a plant. */
class OpcUaAlarmsIT {

  private static final String SECURE = "Basic256Sha256";
  private static final String PEER = "StraplinePeer"; // begins the certificate's common name
  private static final String SERVER = "i=2253";
  private static final String CONDITION_TYPE = "i=2782";
  private static final String REFRESH = "i=3875";
  private static final String REFRESH_ITEM = "i=12912";

  @TempDir static Path folder;

  private static PeerClient peer;
  private static boolean trusted;

  private TestPlant plant;
  private OpcUaPublisher publisher;
  private int namespace;
  private final List<JsonNode> events = new ArrayList<>();

  @BeforeAll
  static void startThePeer() throws Exception {
    PeerClient.require();
    peer = PeerClient.start(folder.resolve("peer"));
  }

  @AfterAll
  static void endThePeer() throws Exception {
    if (peer != null) {
      peer.close();
    }
  }

  @BeforeEach
  void connect() throws Exception {
    plant = TestPlant.on(folder.resolve("data"), true);
    plant.distance(TestPlant.SILO, 5, 1);
    plant.distance(TestPlant.CARRIAGE, 50, 1);
    publisher = new OpcUaPublisher(plant.settings(), plant.access());
    publisher.start();
    connect("None");
  }

  @AfterEach
  void close() throws Exception {
    peer.done("disconnect", c -> {});
    publisher.close();
  }

  private void connect(String policy) throws Exception {
    JsonNode answer =
        peer.done("connect", c -> c.put("url", publisher.endpoint()).put("policy", policy));
    List<String> uris = new ArrayList<>();
    answer.path("namespaces").forEach(uri -> uris.add(uri.asText()));
    namespace = uris.indexOf(NodeList.NAMESPACE);
  }

  /** Connects anew as an operator: with a certificate that is trusted. */
  private void becomeOperator() throws Exception {
    peer.done("disconnect", c -> {});
    if (!trusted) {
      peer.ask("connect", c -> c.put("url", publisher.endpoint()).put("policy", SECURE));
      trustTheRejectedCertificate();
      trusted = true;
    }
    connect(SECURE);
  }

  private void trustTheRejectedCertificate() throws IOException {
    Path pki = plant.settings().dataFolder().resolve("opcua");
    try (Stream<Path> files = Files.list(pki.resolve("rejected/certs"))) {
      Path file = files.findFirst().orElseThrow();
      Files.move(file, pki.resolve("trusted/certs").resolve(file.getFileName()));
    }
  }

  private String id(String identifier) {
    return "ns=" + namespace + ";s=" + identifier;
  }

  private List<JsonNode> alarms() {
    try {
      List<JsonNode> found = new ArrayList<>();
      peer.done("alarms", c -> {}).path("alarms").forEach(found::add);
      return found;
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  private JsonNode awaitAlarm(String condition, Predicate<JsonNode> wanted) {
    Eventually.holds(condition + " as wanted", () -> alarm(condition).filter(wanted).isPresent());
    return alarm(condition).orElseThrow();
  }

  private Optional<JsonNode> alarm(String condition) {
    return alarms().stream()
        .filter(alarm -> alarm.path("condition").asText().equals(id(condition)))
        .findFirst();
  }

  private String acknowledge(String condition, String eventId, String comment) throws Exception {
    return act("acknowledge", condition, eventId, comment);
  }

  private String act(String command, String condition, String eventId, String comment)
      throws Exception {
    return peer.done(
            command,
            c -> c.put("condition", id(condition)).put("eventId", eventId).put("comment", comment))
        .path("statusName")
        .asText();
  }

  private JsonNode call(String object, String method) throws Exception {
    return peer.done(
            "call",
            c -> c.putArray("methods").addObject().put("object", object).put("method", method))
        .path("results")
        .get(0);
  }

  @Test
  void listsAlarmsThatStoodBeforeItCame() {
    plant.distance(TestPlant.SILO, 0.8, 2); // level 9.2 m, beyond 8 m and 9 m
    JsonNode level = awaitAlarm("LT-101.LevelAlarm", a -> a.path("active").asBoolean());
    assertFalse(level.path("acked").asBoolean(true));
    assertTrue(level.path("retain").asBoolean());
    assertEquals("LT-101", level.path("source").asText());
    assertEquals(700, level.path("severity").asInt()); // priority 2
    assertTrue(level.path("message").asText().contains("high-high"), level::toString);
    assertEquals(1, alarms().size(), "nothing else stands: " + alarms());
  }

  @Test
  void acknowledgesOnceAndTheLibraryKnows() throws Exception {
    becomeOperator();
    plant.distance(TestPlant.SILO, 0.8, 2);
    String event = awaitAlarm("LT-101.LevelAlarm", a -> true).path("eventId").asText();
    assertEquals("Good", acknowledge("LT-101.LevelAlarm", event, "on my way"));
    assertEquals(AlarmState.ACKNOWLEDGED, plant.state(TestPlant.SILO, AlarmKind.HIGH_HIGH));
    assertEquals(AlarmState.ACKNOWLEDGED, plant.state(TestPlant.SILO, AlarmKind.HIGH));
    assertEquals(
        "BadConditionBranchAlreadyAcked", acknowledge("LT-101.LevelAlarm", event, "again"));
    JsonNode told = awaitAlarm("LT-101.LevelAlarm", a -> a.path("acked").asBoolean());
    assertTrue(told.path("retain").asBoolean(), "it still stands");
    assertTrue(told.path("user").asText().startsWith(PEER), told::toString);
    assertTrue(plant.operators().get(0).name().startsWith(PEER));
    assertEquals("on my way", plant.operators().get(0).comment());
  }

  @Test
  void refusesAnEventThatItNeverTold() throws Exception {
    becomeOperator();
    plant.distance(TestPlant.SILO, 0.8, 2);
    awaitAlarm("LT-101.LevelAlarm", a -> true);
    String unknown = "00112233445566778899aabbccddeeff";
    assertEquals("BadEventIdUnknown", acknowledge("LT-101.LevelAlarm", unknown, ""));
    assertEquals("BadEventIdUnknown", act("comment", "LT-101.LevelAlarm", unknown, "x"));
    assertEquals(AlarmState.UNACKNOWLEDGED, plant.state(TestPlant.SILO, AlarmKind.HIGH_HIGH));
  }

  @Test
  void doesNotAcknowledgeWhatCameAfterTheEvent() throws Exception {
    becomeOperator();
    plant.distance(TestPlant.SILO, 1.5, 2); // level 8.5 m: high only
    String high = awaitAlarm("LT-101.LevelAlarm", a -> true).path("eventId").asText();
    plant.distance(TestPlant.SILO, 0.8, 3); // high-high by now
    assertEquals("Good", acknowledge("LT-101.LevelAlarm", high, ""));
    assertEquals(AlarmState.ACKNOWLEDGED, plant.state(TestPlant.SILO, AlarmKind.HIGH));
    assertEquals(AlarmState.UNACKNOWLEDGED, plant.state(TestPlant.SILO, AlarmKind.HIGH_HIGH));
    assertEquals("BadEventIdUnknown", acknowledge("LT-101.LevelAlarm", high, ""));
  }

  @Test
  void keepsAComment() throws Exception {
    becomeOperator();
    plant.distance(TestPlant.SILO, 0.8, 2);
    String event = awaitAlarm("LT-101.LevelAlarm", a -> true).path("eventId").asText();
    assertEquals("Good", act("comment", "LT-101.LevelAlarm", event, "truck is late"));
    awaitAlarm("LT-101.LevelAlarm", a -> !a.path("eventId").asText().equals(event));
    assertEquals(
        "truck is late", read("LT-101.LevelAlarm.Comment").path("value").path("text").asText());
    JsonNode user = read("LT-101.LevelAlarm.ClientUserId").path("value");
    assertTrue(user.asText().startsWith(PEER), user::toString);
  }

  private JsonNode read(String identifier) throws Exception {
    return peer.done("read", c -> c.putArray("nodes").add(id(identifier))).path("values").get(0);
  }

  @Test
  void letsNobodyOperateWithoutACertificate() throws Exception {
    plant.distance(TestPlant.SILO, 0.8, 2);
    String event = awaitAlarm("LT-101.LevelAlarm", a -> true).path("eventId").asText();
    assertEquals("BadUserAccessDenied", acknowledge("LT-101.LevelAlarm", event, ""));
    assertEquals("BadUserAccessDenied", act("comment", "LT-101.LevelAlarm", event, "x"));
    for (String method : List.of("Enable", "Disable")) {
      JsonNode answer = call(id("LT-101.LevelAlarm"), id("LT-101.LevelAlarm." + method));
      assertEquals("BadUserAccessDenied", answer.path("statusName").asText());
    }
    assertEquals(AlarmState.UNACKNOWLEDGED, plant.state(TestPlant.SILO, AlarmKind.HIGH_HIGH));
    assertTrue(plant.operators().isEmpty());
  }

  @Test
  void disablesAndEnables() throws Exception {
    becomeOperator();
    plant.distance(TestPlant.SILO, 0.8, 2);
    awaitAlarm("LT-101.LevelAlarm", a -> a.path("retain").asBoolean());
    String condition = id("LT-101.LevelAlarm");
    String disable = id("LT-101.LevelAlarm.Disable");
    assertEquals("Good", call(condition, disable).path("statusName").asText());
    assertEquals(
        "BadConditionAlreadyDisabled", call(condition, disable).path("statusName").asText());
    awaitAlarm("LT-101.LevelAlarm", a -> !a.path("retain").asBoolean(true));
    assertEquals(
        "BadConditionDisabled", read("LT-101.LevelAlarm.AckedState").path("statusName").asText());
    assertEquals(
        "Good", call(condition, id("LT-101.LevelAlarm.Enable")).path("statusName").asText());
    awaitAlarm("LT-101.LevelAlarm", a -> a.path("retain").asBoolean());
  }

  @Test
  void acknowledgesAllOfAPoint() throws Exception {
    becomeOperator();
    plant.distance(TestPlant.SILO, 0.8, 2);
    plant.tick(TestPlant.SILO, 4_000); // silent since
    JsonNode answer =
        peer.done(
                "call",
                c -> {
                  var method = c.putArray("methods").addObject();
                  method.put("object", id("LT-101")).put("method", id("LT-101.AcknowledgeAll"));
                  method.putArray("inputs").addObject().put("type", "String").put("value", "seen");
                })
            .path("results")
            .get(0);
    assertEquals("Good", answer.path("statusName").asText());
    assertEquals(3, answer.path("outputs").get(0).asInt(), "high-high, high and the signal");
    assertEquals(AlarmState.ACKNOWLEDGED, plant.state(TestPlant.SILO, AlarmKind.BAD_SIGNAL));
  }

  private JsonNode watch(String name, String node, String filter) throws Exception {
    return peer.done("watch", c -> c.put("name", name).put("node", node).put("filter", filter));
  }

  private List<JsonNode> seen(String item) {
    try {
      peer.done("events", c -> {}).path("events").forEach(events::add);
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
    return events.stream().filter(event -> event.path("item").asText().equals(item)).toList();
  }

  private void awaitEvents(String item, int count) {
    Eventually.holds(count + " events for " + item, () -> seen(item).size() >= count);
    assertEquals(count, seen(item).size(), () -> "events of " + item + ": " + seen(item));
  }

  @Test
  void tellsAnAreaItsOwnEventsOnly() throws Exception {
    watch("silos", id("Area.Silos"), "none");
    watch("stockyard", id("Area.Stockyard"), "none");
    watch("all", SERVER, "conditions");
    plant.distance(TestPlant.SILO, 0.8, 2);
    plant.tick(TestPlant.CARRIAGE, 4_000);
    awaitEvents("all", 2);
    awaitEvents("silos", 1);
    awaitEvents("stockyard", 1);
    assertEquals("LT-101", seen("silos").get(0).path("SourceName").asText());
    assertEquals("ZT-401", seen("stockyard").get(0).path("SourceName").asText());
  }

  @Test
  void tellsNothingTwiceAfterAChangeOfTheSubscription() throws Exception {
    watch("silos", id("Area.Silos"), "none");
    watch("all", SERVER, "none");
    for (String item : List.of("silos", "all")) {
      for (int i = 0; i < 3; i++) {
        assertEquals(
            "Good",
            peer.done("modify", c -> c.put("name", item).put("filter", "conditions"))
                .path("statusName")
                .asText());
      }
    }
    plant.distance(TestPlant.SILO, 1.5, 2); // high
    plant.distance(TestPlant.SILO, 5, 3); // gone
    awaitEvents("silos", 2);
    awaitEvents("all", 2);
  }

  @Test
  void tellsAfterMonitoringWasOffAtFirst() throws Exception {
    for (String node : List.of(SERVER, id("Area.Silos"))) {
      peer.done(
          "watch",
          c -> c.put("name", node).put("node", node).put("filter", "none").put("mode", "Disabled"));
    }
    plant.distance(TestPlant.SILO, 1.5, 2);
    for (String node : List.of(SERVER, id("Area.Silos"))) {
      peer.done("mode", c -> c.put("name", node).put("mode", "Reporting"));
    }
    plant.distance(TestPlant.SILO, 5, 3);
    awaitEvents(SERVER, 1);
    awaitEvents(id("Area.Silos"), 1);
  }

  @Test
  void evaluatesOperatorsThatItsLibraryLacks() throws Exception {
    assertEquals("Good", watch("severe", SERVER, "levelAndSevere").path("statusName").asText());
    assertEquals("Good", watch("carriage", SERVER, "likeOrList").path("statusName").asText());
    assertEquals("Good", watch("mild", SERVER, "between").path("statusName").asText());
    watch("all", SERVER, "none");
    plant.distance(TestPlant.SILO, 0.8, 2); // severity 700, as the next
    plant.tick(TestPlant.CARRIAGE, 4_000);
    awaitEvents("all", 2);
    awaitEvents("carriage", 1);
    awaitEvents("severe", 1); // both are severe, but only one is about a level
    assertEquals("LT-101", seen("severe").get(0).path("SourceName").asText());
    assertEquals(List.of(), seen("mild"));
  }

  @Test
  void refusesAnOperatorThatNobodyEvaluates() throws Exception {
    JsonNode answer =
        peer.ask("watch", c -> c.put("name", "bits").put("node", SERVER).put("filter", "bitwise"));
    assertTrue(answer.toString().contains("BadMonitoredItemFilterUnsupported"), answer::toString);
  }

  @Test
  void givesFieldsThatTheNamedTypeInherits() throws Exception {
    peer.done(
        "watch",
        c -> {
          c.put("name", "typed").put("node", id("Area.Silos")).put("filter", "none");
          ArrayNode fields = c.putArray("inherited");
          fields.add("Message").add("AckedState/Id").add("EnabledState/Id").add("NoSuchField");
        });
    plant.distance(TestPlant.SILO, 1.5, 2);
    awaitEvents("typed", 1);
    JsonNode event = seen("typed").get(0);
    assertFalse(event.path("AckedState/Id").asBoolean(true));
    assertTrue(event.path("EnabledState/Id").asBoolean());
    assertTrue(event.path("Message").asText().contains("LT-101"), event::toString);
    assertTrue(event.path("NoSuchField").isNull());
  }

  @Test
  void refreshesTheOneWhoAsksAndNobodyElse() throws Exception {
    plant.distance(TestPlant.SILO, 1.5, 2);
    JsonNode silos = watch("silos", id("Area.Silos"), "none");
    JsonNode yard = watch("stockyard", id("Area.Stockyard"), "none");
    int subscription = silos.path("subscription").asInt();
    assertEquals("Good", refresh(REFRESH_ITEM, subscription, silos.path("id").asInt()));
    awaitEvents("silos", 3); // begin, the one alarm, end
    assertEquals(List.of(), seen("stockyard"));
    assertEquals("Good", refresh(REFRESH, subscription));
    awaitEvents("silos", 6);
    awaitEvents("stockyard", 2); // begin and end, since nothing stands there
    assertEquals("BadSubscriptionIdInvalid", refresh(REFRESH, 987_654));
    assertEquals("BadMonitoredItemIdInvalid", refresh(REFRESH_ITEM, subscription, 987_654));
    assertTrue(yard.path("id").asInt() > 0);
  }

  private String refresh(String method, int... arguments) throws Exception {
    return peer.done(
            "call",
            c -> {
              var one = c.putArray("methods").addObject();
              one.put("object", CONDITION_TYPE).put("method", method);
              ArrayNode inputs = one.putArray("inputs");
              for (int argument : arguments) {
                inputs.addObject().put("type", "UInt32").put("value", argument);
              }
            })
        .path("results")
        .get(0)
        .path("statusName")
        .asText();
  }

  @Test
  void findsTheSameAlarmsAfterItComesBack() throws Exception {
    plant.distance(TestPlant.SILO, 0.8, 2);
    String before = awaitAlarm("LT-101.LevelAlarm", a -> true).path("eventId").asText();
    peer.done("disconnect", c -> {});
    plant.tick(TestPlant.CARRIAGE, 4_000);
    connect("None");
    JsonNode again = awaitAlarm("LT-101.LevelAlarm", a -> true);
    assertEquals(before, again.path("eventId").asText(), "a refresh makes no new event");
    awaitAlarm("ZT-401.SignalAlarm", a -> a.path("active").asBoolean());
  }

  @Test
  void tellsEachClientWhetherItMayCallAMethod() throws Exception {
    assertEquals("false", attribute("LT-101.LevelAlarm.Acknowledge", "UserExecutable"));
    becomeOperator();
    assertEquals("true", attribute("LT-101.LevelAlarm.Acknowledge", "UserExecutable"));
  }

  private String attribute(String identifier, String name) throws Exception {
    return peer.done("attribute", c -> c.put("node", id(identifier)).put("name", name))
        .path("value")
        .asText();
  }

  @Test
  void answersEachMethodOfOneCallByItself() throws Exception {
    JsonNode results =
        peer.done(
                "call",
                c -> {
                  ArrayNode methods = c.putArray("methods");
                  methods
                      .addObject()
                      .put("object", id("LT-101.LevelAlarm"))
                      .put("method", id("LT-101.LevelAlarm.Disable"));
                  var refresh = methods.addObject();
                  refresh.put("object", CONDITION_TYPE).put("method", REFRESH);
                  refresh.putArray("inputs").addObject().put("type", "UInt32").put("value", 99);
                })
            .path("results");
    assertEquals("BadUserAccessDenied", results.get(0).path("statusName").asText());
    assertEquals("BadSubscriptionIdInvalid", results.get(1).path("statusName").asText());
  }
}
