package io.strapline.bridge.publish.opcua.security;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.net.UnknownHostException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AccessRuleTest {

  @ParameterizedTest
  @CsvSource({
    "true, 127.0.0.1, true",
    "true, localhost, true",
    "true, ::1, true",
    "true, 0.0.0.0, false",
    "true, 192.0.2.7, false",
    "false, 127.0.0.1, false",
  })
  void waivesSecurityOnLoopbackOnlyAndOnlyWhenAsked(
      boolean anonymousRead, String host, boolean open) throws Exception {
    assertEquals(open, AccessRule.of(anonymousRead, host).isOpenLocally());
  }

  @Test
  void refusesAHostWithoutAnAddress() {
    assertThrows(UnknownHostException.class, () -> AccessRule.of(true, "no.such.host.invalid"));
  }
}
