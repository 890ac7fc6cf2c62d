package io.strapline.bridge.publish.opcua.alarms;

import io.strapline.bridge.model.Operations;
import io.strapline.bridge.model.Operations.Operator;
import io.strapline.bridge.model.Operations.Outcome;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmSnapshot;
import io.strapline.level.alarm.AlarmState;
import io.strapline.level.point.PointSnapshot;
import java.time.Instant;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Runs the conditions on a thread of its own, so that neither a slow client nor a flood of alarms
 * ever holds up a measurement. An operator acknowledges the alarms of the library, and the
 * condition follows with the snapshot that comes of it. Safe for any thread.
 */
public final class ConditionEngine implements Conditions, AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(ConditionEngine.class);
  private static final int CAPACITY = 1_000;
  private static final long PATIENCE_SECONDS = 10;

  private final Surroundings plant;
  private final Listener listener;
  private final LatestQueue queue;
  private final Map<String, Condition> conditions = new LinkedHashMap<>();
  private final Map<String, ConditionState> shown = new ConcurrentHashMap<>();
  private final Map<String, Fingerprint> offered = new ConcurrentHashMap<>();
  private final Thread thread;

  /**
   * What the engine needs of the plant.
   *
   * @param latest gives the latest snapshot of a tag
   * @param operations acknowledges and resets
   * @param clock tells the time of what operators do
   */
  public record Surroundings(
      Function<String, PointSnapshot> latest, Operations operations, Supplier<Instant> clock) {}

  /** What of a snapshot matters to conditions. */
  private record Fingerprint(List<AlarmSnapshot> alarms, Object quality) {

    static Fingerprint of(PointSnapshot snapshot) {
      return new Fingerprint(snapshot.alarms(), snapshot.level().quality());
    }
  }

  /** Makes an engine whose conditions stand as the points do now. */
  public ConditionEngine(Collection<ConditionSpec> specs, Surroundings plant, Listener listener) {
    this(specs, plant, listener, CAPACITY);
  }

  ConditionEngine(
      Collection<ConditionSpec> specs, Surroundings plant, Listener listener, int capacity) {
    this.plant = plant;
    this.listener = listener;
    queue = new LatestQueue(capacity, listener::refreshRequired);
    for (ConditionSpec spec : specs) {
      Condition made = new Condition(spec, plant.latest().apply(spec.tag()), now());
      conditions.put(spec.id(), made);
      shown.put(spec.id(), made.state());
    }
    thread = new Thread(this::work, "opcua-alarms");
    thread.setDaemon(true);
  }

  private Instant now() {
    return plant.clock().get();
  }

  /** Starts the thread. */
  public void start() {
    thread.start();
  }

  private void work() {
    try {
      while (!Thread.currentThread().isInterrupted()) {
        perform(queue.take());
      }
    } catch (InterruptedException closed) {
      // The thread ends here by close.
      Thread.currentThread().interrupt();
    }
  }

  private static void perform(Runnable work) {
    try {
      work.run();
    } catch (RuntimeException unexpected) {
      LOG.error("OPC UA alarms: one change was not told", unexpected);
    }
  }

  /** Takes a snapshot when it matters to a condition; never waits. */
  public void offer(PointSnapshot snapshot) {
    Fingerprint fingerprint = Fingerprint.of(snapshot);
    if (!fingerprint.equals(offered.put(snapshot.tag(), fingerprint))) {
      queue.offerLatest(snapshot.tag(), () -> follow(snapshot));
    }
  }

  private void follow(PointSnapshot snapshot) {
    for (Condition condition : of(snapshot.tag())) {
      boolean announced = condition.follow(snapshot, now());
      show(condition, announced);
    }
  }

  private List<Condition> of(String tag) {
    return conditions.values().stream().filter(c -> c.spec().tag().equals(tag)).toList();
  }

  private void show(Condition condition, boolean announced) {
    shown.put(condition.spec().id(), condition.state());
    listener.changed(condition.state(), announced);
  }

  @Override
  public List<ConditionState> states() {
    return conditions.keySet().stream().map(id -> Objects.requireNonNull(shown.get(id))).toList();
  }

  @Override
  public Verdict acknowledge(String conditionId, String eventId, By by) {
    return ask(conditionId, condition -> acknowledgeNow(condition, eventId, by));
  }

  private Verdict acknowledgeNow(Condition condition, String eventId, By by) {
    if (!condition.state().enabled()) {
      return Verdict.DISABLED;
    }
    ConditionSpec spec = condition.spec();
    Map<AlarmKind, Long> waiting = waiting(spec);
    Set<AlarmKind> seen = condition.seen(eventId, waiting);
    if (seen == null) {
      return Verdict.EVENT_UNKNOWN;
    }
    if (waiting.isEmpty()) {
      return Verdict.ALREADY_ACKNOWLEDGED;
    }
    if (seen.isEmpty()) {
      return Verdict.EVENT_UNKNOWN;
    }
    return acknowledge(condition, seen, by) > 0 ? Verdict.DONE : Verdict.ALREADY_ACKNOWLEDGED;
  }

  /** Asks the latest snapshot, since the condition may not have followed it yet. */
  private Map<AlarmKind, Long> waiting(ConditionSpec spec) {
    return Standing.of(spec, plant.latest().apply(spec.tag()).alarms(), 1).waiting();
  }

  private int acknowledge(Condition condition, Set<AlarmKind> kinds, By by) {
    String tag = condition.spec().tag();
    Operator operator = operator(by);
    int done = 0;
    for (AlarmKind kind : kinds) {
      if (plant.operations().acknowledge(tag, kind, operator) == Outcome.DONE) {
        done++;
      }
    }
    if (done > 0) {
      // The snapshot that tells of it is in the queue by now, and takes the remark along.
      condition.remark(by.comment(), by.name(), now());
    }
    return done;
  }

  private static Operator operator(By by) {
    return new Operator(by.name(), "OPC UA", by.comment());
  }

  @Override
  public int acknowledgeAll(String tag, By by) {
    return ask(
        () -> of(tag).stream().mapToInt(c -> acknowledge(c, waiting(c.spec()).keySet(), by)).sum(),
        -1);
  }

  @Override
  public Verdict comment(String conditionId, String eventId, By by) {
    return ask(conditionId, condition -> commentNow(condition, eventId, by));
  }

  private Verdict commentNow(Condition condition, String eventId, By by) {
    if (!condition.state().enabled()) {
      return Verdict.DISABLED;
    }
    if (condition.seen(eventId, Map.of()) == null) {
      return Verdict.EVENT_UNKNOWN;
    }
    condition.remark(by.comment(), by.name(), now());
    condition.announce("comment by " + by.name(), now());
    show(condition, true);
    return Verdict.DONE;
  }

  @Override
  public Verdict enable(String conditionId, boolean enabled, By by) {
    return ask(conditionId, condition -> enableNow(condition, enabled, by));
  }

  private Verdict enableNow(Condition condition, boolean enabled, By by) {
    if (condition.state().enabled() == enabled) {
      return enabled ? Verdict.ALREADY_ENABLED : Verdict.ALREADY_DISABLED;
    }
    String what = enabled ? "enabled" : "disabled";
    LOG.warn("OPC UA alarms: {} is {} by {}", condition.spec().id(), what, by.name());
    condition.enable(enabled, now());
    condition.announce(what + " by " + by.name(), now());
    show(condition, true);
    return Verdict.DONE;
  }

  @Override
  public Verdict reset(String conditionId, By by) {
    return ask(conditionId, condition -> resetNow(condition, by));
  }

  private Verdict resetNow(Condition condition, By by) {
    if (!condition.state().enabled()) {
      return Verdict.DISABLED;
    }
    ConditionSpec spec = condition.spec();
    boolean done = false;
    for (AlarmSnapshot alarm : plant.latest().apply(spec.tag()).alarms()) {
      if (spec.alarms().containsKey(alarm.kind())
          && alarm.state() == AlarmState.LATCHED_ACKNOWLEDGED) {
        done |= plant.operations().reset(spec.tag(), alarm.kind(), operator(by)) == Outcome.DONE;
      }
    }
    return done ? Verdict.DONE : Verdict.NOT_RESETTABLE;
  }

  @Override
  public boolean refresh(Consumer<List<ConditionState>> to) {
    return queue.offer(() -> to.accept(states()));
  }

  private Verdict ask(String conditionId, Function<Condition, Verdict> request) {
    Optional<Condition> condition = Optional.ofNullable(conditions.get(conditionId));
    return condition.isEmpty()
        ? Verdict.UNKNOWN
        : ask(() -> request.apply(condition.get()), Verdict.BUSY);
  }

  private <T> T ask(Supplier<T> request, T busy) {
    CompletableFuture<T> answer = new CompletableFuture<>();
    boolean taken = queue.offer(() -> answer(answer, request));
    T given = taken ? await(answer) : null;
    return given == null ? busy : given;
  }

  private static <T> void answer(CompletableFuture<T> answer, Supplier<T> request) {
    try {
      answer.complete(request.get());
    } catch (RuntimeException unexpected) {
      answer.completeExceptionally(unexpected);
      throw unexpected;
    }
  }

  private static <T> @Nullable T await(CompletableFuture<T> answer) {
    try {
      return answer.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (ExecutionException | TimeoutException failed) {
      return null;
    } catch (InterruptedException stopping) {
      Thread.currentThread().interrupt();
      return null;
    }
  }

  /** Ends the thread; what has not been told by then is not. */
  @Override
  public void close() {
    thread.interrupt();
    try {
      thread.join(TimeUnit.SECONDS.toMillis(2));
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
