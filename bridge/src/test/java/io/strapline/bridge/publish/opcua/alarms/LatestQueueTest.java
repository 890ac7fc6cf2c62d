package io.strapline.bridge.publish.opcua.alarms;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class LatestQueueTest {

  private final List<String> done = new ArrayList<>();
  private final LatestQueue queue = new LatestQueue(2, () -> done.add("loss"));

  private void offer(String point, String work) {
    queue.offerLatest(point, () -> done.add(work));
  }

  private void perform(int count) throws InterruptedException {
    for (int i = 0; i < count; i++) {
      queue.take().run();
    }
  }

  @Test
  void keepsTheOrderWhileThereIsRoom() throws Exception {
    offer("A", "A1");
    offer("A", "A2");
    perform(2);
    assertEquals(List.of("A1", "A2"), done);
  }

  @Test
  void keepsOnlyTheLatestOfEachPointWhenFullAndTellsTheLoss() throws Exception {
    offer("A", "A1");
    offer("B", "B1");
    offer("A", "A2");
    offer("B", "B2");
    offer("A", "A3");
    perform(5);
    assertEquals(List.of("A1", "B1", "B2", "A3", "loss"), done);
  }

  @Test
  void newerWorkNeverOvertakesWhatIsKept() throws Exception {
    offer("A", "A1");
    offer("A", "A2");
    offer("A", "A3"); // kept
    perform(1); // room again
    offer("A", "A4");
    perform(3);
    assertEquals(List.of("A1", "A2", "A4", "loss"), done);
  }

  @Test
  void refusesRequestsWhenFull() {
    assertTrue(queue.offer(() -> {}));
    assertTrue(queue.offer(() -> {}));
    assertFalse(queue.offer(() -> {}));
  }

  @Test
  void isAsBeforeOnceTheLossIsTold() throws Exception {
    offer("A", "A1");
    offer("A", "A2");
    offer("A", "A3");
    perform(4);
    offer("A", "A4");
    perform(1);
    assertEquals(List.of("A1", "A2", "A3", "loss", "A4"), done);
  }
}
