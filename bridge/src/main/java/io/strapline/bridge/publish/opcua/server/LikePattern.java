package io.strapline.bridge.publish.opcua.server;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;

/**
 * A pattern of the operator Like, OPC 10000-4 table 119: {@code %} any text, {@code _} one
 * character, {@code [abc]} and {@code [^abc]} one of a list or none of it, {@code \} takes the next
 * character as it is. The whole text has to match. Needs no more steps than text length times
 * pattern length, whatever a client sends. Immutable.
 */
final class LikePattern {

  private record Step(boolean any, IntPredicate one) {}

  private final List<Step> steps = new ArrayList<>();

  LikePattern(String pattern) {
    int at = 0;
    while (at < pattern.length()) {
      at = parse(pattern, at);
    }
  }

  private int parse(String pattern, int at) {
    char symbol = pattern.charAt(at);
    if (symbol == '%') {
      steps.add(new Step(true, c -> true));
      return at + 1;
    }
    if (symbol == '_') {
      steps.add(new Step(false, c -> true));
      return at + 1;
    }
    int end = symbol == '[' ? pattern.indexOf(']', at + 1) : -1;
    if (end > 0) {
      steps.add(new Step(false, list(pattern.substring(at + 1, end))));
      return end + 1;
    }
    boolean escaped = symbol == '\\' && at + 1 < pattern.length();
    char literal = escaped ? pattern.charAt(at + 1) : symbol;
    steps.add(new Step(false, c -> c == literal));
    return escaped ? at + 2 : at + 1;
  }

  private static IntPredicate list(String content) {
    boolean not = content.startsWith("^");
    String members = not ? content.substring(1) : content;
    return c -> isMember(members, c) != not;
  }

  private static boolean isMember(String members, int c) {
    for (int i = 0; i < members.length(); i++) {
      boolean range = i + 2 < members.length() && members.charAt(i + 1) == '-';
      if (range && members.charAt(i) <= c && c <= members.charAt(i + 2)) {
        return true;
      }
      if (members.charAt(i) == c) {
        return true;
      }
      i += range ? 2 : 0;
    }
    return false;
  }

  /** Returns whether the whole text matches; goes back to the last {@code %} only. */
  boolean matches(String text) {
    int at = 0;
    int step = 0;
    int lastAny = -1;
    int resume = 0;
    while (at < text.length()) {
      if (step < steps.size() && steps.get(step).any()) {
        lastAny = step++;
        resume = at;
      } else if (step < steps.size() && steps.get(step).one().test(text.charAt(at))) {
        step++;
        at++;
      } else if (lastAny >= 0) {
        step = lastAny + 1;
        at = ++resume;
      } else {
        return false;
      }
    }
    return steps.subList(step, steps.size()).stream().allMatch(Step::any);
  }
}
