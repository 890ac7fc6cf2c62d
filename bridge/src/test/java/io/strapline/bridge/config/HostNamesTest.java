package io.strapline.bridge.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Addresses after RFC 1122 3.2.1.3 (127/8), RFC 4291 2.5.3 (::1); documentation ranges RFC 5737.
 */
class HostNamesTest {

  @ParameterizedTest
  @CsvSource({
    "127.0.0.1, true, true",
    "127.9.9.9, true, true",
    "'::1', true, true",
    "localhost, true, true",
    "0.0.0.0, true, false",
    "'::', true, false",
    "192.0.2.1, true, false",
    "bridge.kestrel-quay.example, true, false",
    "127.0.0.256, false, false",
    "127.1, false, false",
    "1:2, false, false",
    "-bad, false, false",
    "a b, false, false",
    "'', false, false",
  })
  void judgesAnAddressByItsText(String host, boolean valid, boolean loopback) {
    assertEquals(valid, HostNames.isValid(host), host);
    assertEquals(loopback, HostNames.isLoopback(host), host);
  }

  @Test
  void twoServersMeetWhereOneListensEverywhere() {
    assertTrue(HostNames.overlap("0.0.0.0", "192.0.2.1"));
    assertTrue(HostNames.overlap("localhost", "127.0.0.1"));
    assertFalse(HostNames.overlap("192.0.2.1", "192.0.2.2"));
  }
}
