package io.strapline.bridge.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.InetAddress;
import java.net.UnknownHostException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AddressRangeTest {

  private static AddressRange range(String text) {
    return AddressRange.parse(text).orElseThrow();
  }

  @ParameterizedTest
  @CsvSource({
    // RFC 4632, section 3.1: the number behind the slash counts the leading bits that are equal.
    "192.0.2.0/24, 192.0.2.0, true",
    "192.0.2.0/24, 192.0.2.255, true",
    "192.0.2.0/24, 192.0.3.0, false",
    "172.16.0.0/12, 172.31.255.255, true",
    "172.16.0.0/12, 172.32.0.0, false",
    "192.0.2.7, 192.0.2.7, true",
    "192.0.2.7, 192.0.2.6, false",
    "0.0.0.0/0, 203.0.113.9, true",
    "0.0.0.0/0, ::1, false",
    "128.0.0.0/1, 127.255.255.255, false",
    "128.0.0.0/1, 128.0.0.0, true",
    "2001:db8::/32, 2001:db8:ffff::1, true",
    "2001:db8::/32, 2001:db9::1, false",
    "'::1', '::1', true",
    // An IPv4 address in its IPv6 form is the IPv4 address.
    "192.0.2.0/24, ::ffff:192.0.2.9, true"
  })
  void aRangeHoldsTheAddressesThatShareItsLeadingBits(String range, String address, boolean in)
      throws UnknownHostException {
    assertEquals(in, range(range).contains(InetAddress.getByName(address)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "/",
        "silo",
        "192.0.2",
        "192.0.2.256",
        "192.0.2.0/",
        "192.0.2.0/33",
        "192.0.2.0/-1",
        "192.0.2.0/024",
        "192.0.2.0/24/8",
        "2001:db8::/129",
        "*",
        "192.0.2.0-9"
      })
  void otherTextIsNoRange(String text) {
    assertTrue(AddressRange.parse(text).isEmpty());
  }

  @Test
  void bitsBehindThePrefixAreSeen() {
    assertTrue(range("192.0.2.0/24").isPlain());
    assertTrue(range("192.0.2.1/32").isPlain());
    assertFalse(range("192.0.2.1/24").isPlain());
    assertFalse(range("192.0.2.128/24").isPlain());
  }

  @Test
  void aRangeHoldsNarrowerRangesOnly() {
    assertTrue(range("192.0.2.0/24").contains(range("192.0.2.128/25")));
    assertTrue(range("192.0.2.0/24").contains(range("192.0.2.0/24")));
    assertFalse(range("192.0.2.0/25").contains(range("192.0.2.0/24")));
  }

  @ParameterizedTest
  @ValueSource(strings = {"192.0.2.0/24", "192.0.2.7", "10.0.0.0/8"})
  void theTextIsTheOneThatWasRead(String text) {
    assertEquals(text, range(text).toString());
  }
}
