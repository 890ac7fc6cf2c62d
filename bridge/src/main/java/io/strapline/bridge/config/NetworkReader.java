package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.bridge.config.ModbusSettings.BadValue;
import io.strapline.bridge.config.ModbusSettings.WordOrder;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Reads where and how the bridge listens. Stateless. */
final class NetworkReader {

  static final int OPC_UA_PORT = 4840;
  static final int LARGEST_PORT = 65535;
  private static final int LARGEST_UNIT_ID = 255;
  private static final String LOOPBACK = "127.0.0.1";
  private static final OpcUaSettings OPC_UA_DEFAULT =
      new OpcUaSettings(true, LOOPBACK, OPC_UA_PORT, false, List.of());
  private static final ModbusSettings MODBUS_DEFAULT =
      new ModbusSettings(true, LOOPBACK, 0, Set.of(1), WordOrder.ABCD, BadValue.NAN);

  private NetworkReader() {}

  /** Reads the OPC UA server; its defaults when it is not given, empty after a problem. */
  static Optional<OpcUaSettings> opcUa(Section plant) {
    return plant.has("opc-ua")
        ? plant.section("opc-ua", Keys.OPC_UA).flatMap(NetworkReader::opcUaOf)
        : Optional.of(OPC_UA_DEFAULT);
  }

  private static Optional<OpcUaSettings> opcUaOf(Section section) {
    boolean enabled = section.flagOr("enabled", true);
    String host = host(section);
    int port = section.optionalInteger("port", 0, LARGEST_PORT).orElse(OPC_UA_PORT);
    boolean anonymous = section.flagOr("anonymous-read", false);
    if (anonymous && !HostNames.isLoopback(host)) {
      section.error(
          "anonymous-read",
          Reason.CONFLICT,
          "is allowed on a loopback address only, and the server listens on " + host,
          "listen on 127.0.0.1, or write anonymous-read: false");
    }
    List<String> advertised = section.list("advertised-hosts").stream().map(Scalar::text).toList();
    section.list("advertised-hosts").forEach(NetworkReader::refuseBadHost);
    return section.build(() -> new OpcUaSettings(enabled, host, port, anonymous, advertised));
  }

  /** Reads the Modbus server; its defaults when it is not given, empty after a problem. */
  static Optional<ModbusSettings> modbus(Section plant) {
    return plant.has("modbus")
        ? plant.section("modbus", Keys.MODBUS).flatMap(NetworkReader::modbusOf)
        : Optional.of(MODBUS_DEFAULT);
  }

  private static Optional<ModbusSettings> modbusOf(Section section) {
    boolean enabled = section.flagOr("enabled", true);
    String host = host(section);
    if (!HostNames.isLoopback(host) && !section.has("clients")) {
      section.warn(
          "listen",
          Reason.CONFLICT,
          "Modbus TCP knows no users: everyone who reaches this address can read",
          "keep it inside a protected network, and list the clients");
    }
    int port = section.optionalInteger("port", 0, LARGEST_PORT).orElse(0);
    Set<Integer> unitIds = unitIds(section);
    WordOrder order = section.choiceOr("word-order", Labels.all(WordOrder.class), WordOrder.ABCD);
    BadValue badValue = section.choiceOr("bad-value", Labels.all(BadValue.class), BadValue.NAN);
    ModbusAccess access = ModbusAccessReader.read(section);
    ModbusLines lines = lines(section);
    return section.build(
        () -> new ModbusSettings(enabled, host, port, unitIds, order, badValue, access, lines));
  }

  private static ModbusLines lines(Section section) {
    ModbusLines.Framing framing =
        section.choiceOr("framing", Labels.all(ModbusLines.Framing.class), ModbusLines.Framing.TCP);
    return new ModbusLines(
        framing,
        section
            .section("serial", Keys.MODBUS_SERIAL)
            .flatMap(serial -> SerialReader.served(serial, section.has("writes"))));
  }

  private static Set<Integer> unitIds(Section section) {
    Set<Integer> ids = new LinkedHashSet<>();
    section.list("unit-ids").forEach(id -> ids.add(id.integer(0, LARGEST_UNIT_ID)));
    return ids.isEmpty() ? MODBUS_DEFAULT.unitIds() : ids;
  }

  private static String host(Section section) {
    section.scalar("listen").ifPresent(NetworkReader::refuseBadHost);
    return section.textOr("listen", LOOPBACK);
  }

  /** Notes an error unless the text is an address or a host name. */
  static void refuseBadHost(Scalar host) {
    if (!HostNames.isValid(host.text())) {
      host.error(
          Reason.MALFORMED,
          "is no IP address and no host name",
          "write an address such as 127.0.0.1, or a name such as bridge.kestrel-quay.example");
    }
  }

  /** Notes an error when both servers want the same port. */
  static void refuseEqualPorts(
      Section plant, Optional<OpcUaSettings> opcUa, Optional<ModbusSettings> modbus) {
    if (opcUa.isEmpty() || modbus.isEmpty() || !plant.has("modbus")) {
      return;
    }
    boolean both = opcUa.get().enabled() && modbus.get().enabled();
    int port = modbus.get().port();
    if (both
        && port != 0
        && port == opcUa.get().port()
        && HostNames.overlap(opcUa.get().host(), modbus.get().host())) {
      plant
          .section("modbus", Keys.MODBUS)
          .ifPresent(
              section ->
                  section.error(
                      "port",
                      Reason.CONFLICT,
                      "is the port of the OPC UA server too",
                      "give each server a port of its own"));
    }
  }
}
