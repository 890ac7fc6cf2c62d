package io.strapline.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

class HeldLogTest {

  private static final Logger LOG = LoggerFactory.getLogger(HeldLogTest.class);

  @Test
  void keepsTheLinesAsTheyWouldBePrintedUntilTheyAreTaken() {
    try (HeldLog held = new HeldLog()) {
      LOG.info("LT-101 source up");
      LOG.warn("LT-102 source down");
      List<String> lines = held.take();
      assertEquals(2, lines.size());
      assertTrue(
          lines.get(0).matches("\\d{4}-\\d\\d-\\d\\dT[0-9:.]+Z INFO  LT-101 source up.*"),
          lines.get(0));
      assertEquals(List.of(), held.take());
    }
  }
}
