package io.strapline.level.inventory;

import io.strapline.level.internal.Elapsed;
import io.strapline.level.reading.Quality;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Iterator;
import java.util.List;

/**
 * The usable levels of the last window of time, and one before it so that the window is always
 * covered. Times rise strictly. Stateful, one thread at a time.
 */
final class LevelWindow {

  // Samples closer together than this part of the window replace each other, which bounds memory.
  private static final int MOST_SAMPLES = 4096;

  private final Duration length;
  private final double seconds;
  private final ArrayDeque<Entry> entries = new ArrayDeque<>();

  /** One usable sample. */
  record Entry(Instant time, double heightMetres, double amount, Quality quality) {}

  LevelWindow(double seconds) {
    this.seconds = seconds;
    this.length = Elapsed.delay(seconds);
  }

  boolean isEmpty() {
    return entries.isEmpty();
  }

  void clear() {
    entries.clear();
  }

  Entry newest() {
    return entries.getLast();
  }

  List<Entry> entries() {
    return List.copyOf(entries);
  }

  /** Returns whether a time lies more than the window from the newest sample, either way. */
  boolean isFar(Instant time) {
    return isFar(time, length);
  }

  /** Returns whether a time lies more than a distance from the newest sample, either way. */
  boolean isFar(Instant time, Duration distance) {
    return !isEmpty() && Duration.between(newest().time(), time).abs().compareTo(distance) > 0;
  }

  /** Returns whether a time does not lie after the newest sample. */
  boolean isStale(Instant time) {
    return !isEmpty() && !time.isAfter(newest().time());
  }

  /** Adds a sample later than the newest and drops what the window no longer needs. */
  void add(Entry entry) {
    entries.addLast(entries.size() < 2 ? entry : thinned(entry));
    Instant start = entry.time().minus(length);
    while (entries.size() > 1 && !second().time().isAfter(start)) {
      entries.removeFirst();
    }
  }

  private Entry second() {
    Iterator<Entry> iterator = entries.iterator();
    iterator.next();
    return iterator.next();
  }

  private Entry thinned(Entry entry) {
    Entry last = entries.removeLast();
    if (Elapsed.seconds(newest().time(), last.time()) * MOST_SAMPLES >= seconds) {
      entries.addLast(last);
      return entry;
    }
    Quality worst = Quality.worst(last.quality(), entry.quality());
    return new Entry(entry.time(), entry.heightMetres(), entry.amount(), worst);
  }

  /** Returns whether the samples reach back over the whole window. */
  boolean isCovered() {
    return !isEmpty() && Elapsed.reached(entries.getFirst().time(), newest().time(), length);
  }

  /** Returns the worst quality in the window. */
  Quality quality() {
    Quality worst = Quality.GOOD;
    for (Entry entry : entries) {
      worst = Quality.worst(worst, entry.quality());
    }
    return worst;
  }

  /**
   * Returns the slope of the straight line nearest to the polyline through the samples over the
   * covered window, in amount per second: {@code 12 / W^3 x integral of u y(u) du}, u from the
   * window's middle.
   */
  double slope() {
    Iterator<Entry> iterator = entries.iterator();
    Entry before = iterator.next();
    double sum = 0;
    while (iterator.hasNext()) {
      Entry entry = iterator.next();
      sum += moment(before, entry);
      before = entry;
    }
    return 12 * sum / (seconds * seconds * seconds);
  }

  // Exact for a straight piece; the part before the window's start is cut off.
  private double moment(Entry from, Entry to) {
    double end = offset(to);
    double start = offset(from);
    double startAmount = from.amount() - newest().amount();
    double endAmount = to.amount() - newest().amount();
    double edge = -seconds / 2;
    if (start < edge) {
      startAmount += (endAmount - startAmount) * (edge - start) / (end - start);
      start = edge;
    }
    return (end - start) / 6 * (startAmount * (2 * start + end) + endAmount * (start + 2 * end));
  }

  private double offset(Entry entry) {
    return Elapsed.seconds(newest().time(), entry.time()) + seconds / 2;
  }
}
