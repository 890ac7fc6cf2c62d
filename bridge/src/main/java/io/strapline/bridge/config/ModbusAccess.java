package io.strapline.bridge.config;

import java.net.InetAddress;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Who may do what over Modbus. Immutable.
 *
 * @param clients who may connect; empty for everyone who reaches the server
 * @param writes what may be written; empty for nothing, the default
 */
public record ModbusAccess(List<AddressRange> clients, Optional<Writes> writes) {

  /** Everyone reads, nobody writes. */
  public static final ModbusAccess READ_ONLY = new ModbusAccess(List.of(), Optional.empty());

  /** Copies the list. */
  public ModbusAccess {
    clients = List.copyOf(clients);
  }

  /**
   * What may be written, and by whom.
   *
   * @param from addresses that may write
   * @param acknowledge tags of the points whose alarms may be acknowledged
   * @param reset tags of the points whose latched alarms may be reset
   */
  public record Writes(List<AddressRange> from, Set<String> acknowledge, Set<String> reset) {

    /** Copies the lists. */
    public Writes {
      from = List.copyOf(from);
      acknowledge = Set.copyOf(acknowledge);
      reset = Set.copyOf(reset);
    }
  }

  /** Returns whether a client of this address may connect and read. */
  public boolean mayConnect(InetAddress address) {
    return clients.isEmpty() || isIn(clients, address);
  }

  /** Returns whether a client of this address may write at all. */
  public boolean mayWrite(InetAddress address) {
    return writes.filter(allowed -> isIn(allowed.from(), address)).isPresent();
  }

  private static boolean isIn(List<AddressRange> ranges, InetAddress address) {
    return ranges.stream().anyMatch(range -> range.contains(address));
  }
}
