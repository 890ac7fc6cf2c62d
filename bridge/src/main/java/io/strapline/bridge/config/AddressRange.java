package io.strapline.bridge.config;

import java.net.InetAddress;
import java.util.Locale;
import java.util.Optional;

/**
 * One IP address, or all that share a number of leading bits (CIDR, RFC 4632). Immutable.
 *
 * @param base first address
 * @param prefix how many leading bits count, 0 to 32 or 128
 */
public record AddressRange(InetAddress base, int prefix) {

  /** Returns the range that a text such as {@code 192.0.2.0/24} means; empty for anything else. */
  static Optional<AddressRange> parse(String text) {
    int slash = text.indexOf('/');
    String address = slash < 0 ? text : text.substring(0, slash);
    return HostNames.address(address)
        .flatMap(
            base ->
                slash < 0
                    ? Optional.of(new AddressRange(base, bits(base)))
                    : prefix(text.substring(slash + 1), bits(base))
                        .map(prefix -> new AddressRange(base, prefix)));
  }

  private static Optional<Integer> prefix(String text, int most) {
    if (!text.matches("0|[1-9]\\d{0,2}")) {
      return Optional.empty();
    }
    return Optional.of(Integer.parseInt(text)).filter(prefix -> prefix <= most);
  }

  private static int bits(InetAddress address) {
    return 8 * address.getAddress().length;
  }

  /** Returns whether no bit behind the prefix is set, as it must be. */
  boolean isPlain() {
    byte[] bytes = base.getAddress();
    for (int i = prefix; i < bits(base); i++) {
      if (bit(bytes, i) != 0) {
        return false;
      }
    }
    return true;
  }

  /** Returns whether an address lies in the range; one of the other IP version never does. */
  public boolean contains(InetAddress address) {
    byte[] own = base.getAddress();
    byte[] other = address.getAddress();
    if (own.length != other.length) {
      return false;
    }
    for (int i = 0; i < prefix; i++) {
      if (bit(own, i) != bit(other, i)) {
        return false;
      }
    }
    return true;
  }

  /** Returns whether another range lies in this one as a whole. */
  boolean contains(AddressRange other) {
    return other.prefix() >= prefix && contains(other.base());
  }

  private static int bit(byte[] bytes, int index) {
    return bytes[index / 8] >> (7 - index % 8) & 1;
  }

  /** Returns the text that it was read from, or its equal. */
  @Override
  public String toString() {
    String address = base.getHostAddress();
    return prefix == bits(base) ? address : String.format(Locale.ROOT, "%s/%d", address, prefix);
  }
}
