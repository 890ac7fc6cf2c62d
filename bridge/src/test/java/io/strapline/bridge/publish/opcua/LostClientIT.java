package io.strapline.bridge.publish.opcua;

import io.strapline.bridge.testing.Eventually;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A client that crashes: its process ends without a word to the server. */
class LostClientIT {

  @TempDir Path folder;

  @Test
  void leavesNoMonitoredItemBehind() throws Exception {
    PeerClient.require();
    TestPlant plant = TestPlant.on(folder.resolve("data"), true);
    try (OpcUaPublisher publisher = new OpcUaPublisher(plant.settings(), plant.access());
        PeerClient peer = PeerClient.start(folder.resolve("peer"))) {
      publisher.start();
      peer.done(
          "connect",
          c ->
              c.put("url", publisher.endpoint()).put("policy", "None").put("sessionTimeout", 5000));
      peer.done(
          "subscribe",
          c ->
              c.put("publishing", 100)
                  .put("sampling", 100)
                  .putArray("nodes")
                  .add("ns=3;s=LT-101.Level")
                  .add("ns=3;s=LT-101.Age"));
      Eventually.holds("both items are watched", () -> publisher.watchers() == 2);
      peer.kill();
      Eventually.holds("the items of the lost client are gone", () -> publisher.watchers() == 0);
    }
  }
}
