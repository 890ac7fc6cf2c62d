package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.model.Operations;
import io.strapline.level.alarm.AlarmKind;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** Keeps what operators asked for; always says that there was nothing to do. */
final class RecordedOperations implements Operations {

  private final List<String> asked = new CopyOnWriteArrayList<>();

  List<String> asked() {
    return List.copyOf(asked);
  }

  @Override
  public Outcome acknowledge(String tag, AlarmKind kind, Operator by) {
    asked.add("acknowledge " + tag + " " + kind + " " + by);
    return Outcome.NOTHING_TO_DO;
  }

  @Override
  public Outcome reset(String tag, AlarmKind kind, Operator by) {
    asked.add("reset " + tag + " " + kind + " " + by);
    return Outcome.NOTHING_TO_DO;
  }
}
