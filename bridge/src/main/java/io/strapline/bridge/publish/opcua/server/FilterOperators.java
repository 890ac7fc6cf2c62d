package io.strapline.bridge.publish.opcua.server;

import java.util.EnumMap;
import java.util.Map;
import org.eclipse.milo.opcua.sdk.server.events.OperatorContext;
import org.eclipse.milo.opcua.sdk.server.events.operators.Operators;
import org.eclipse.milo.opcua.sdk.server.model.objects.BaseEventTypeNode;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.types.builtin.LocalizedText;
import org.eclipse.milo.opcua.stack.core.types.enumerated.FilterOperator;
import org.eclipse.milo.opcua.stack.core.types.structured.FilterOperand;
import org.jspecify.annotations.Nullable;

/**
 * The operators of event filters: the library's own and those that it lacks (Milo issue 1779),
 * which are made of its own where that is possible. Meanings: OPC 10000-4 tables 119 to 122.
 * Stateless.
 */
final class FilterOperators {

  /** Evaluates an operator; null stands for "not known". */
  interface Evaluation {
    @Nullable Object of(OperatorContext context, BaseEventTypeNode event, FilterOperand[] operands)
        throws UaException;
  }

  private record Entry(int leastOperands, Evaluation evaluation) {}

  private static final Map<FilterOperator, Entry> SUPPORTED = new EnumMap<>(FilterOperator.class);

  static {
    add(FilterOperator.Equals, 2, Operators.EQUALS::apply);
    add(FilterOperator.IsNull, 1, Operators.IS_NULL::apply);
    add(FilterOperator.GreaterThan, 2, Operators.GREATER_THAN::apply);
    add(FilterOperator.LessThan, 2, Operators.LESS_THAN::apply);
    add(FilterOperator.GreaterThanOrEqual, 2, Operators.GREATER_THAN_OR_EQUAL::apply);
    add(FilterOperator.LessThanOrEqual, 2, Operators.LESS_THAN_OR_EQUAL::apply);
    add(FilterOperator.Not, 1, Operators.NOT::apply);
    add(FilterOperator.Cast, 2, Operators.CAST::apply);
    add(FilterOperator.OfType, 1, Operators.OF_TYPE::apply);
    add(FilterOperator.And, 2, FilterOperators::and);
    add(FilterOperator.Or, 2, FilterOperators::or);
    add(FilterOperator.Between, 3, FilterOperators::between);
    add(FilterOperator.InList, 2, FilterOperators::inList);
    add(FilterOperator.Like, 2, FilterOperators::like);
  }

  private FilterOperators() {}

  private static void add(FilterOperator operator, int leastOperands, Evaluation evaluation) {
    SUPPORTED.put(operator, new Entry(leastOperands, evaluation));
  }

  static boolean isSupported(@Nullable FilterOperator operator) {
    return operator != null && SUPPORTED.containsKey(operator);
  }

  static int leastOperands(FilterOperator operator) {
    return entry(operator).leastOperands();
  }

  static Evaluation evaluation(FilterOperator operator) {
    return entry(operator).evaluation();
  }

  private static Entry entry(FilterOperator operator) {
    Entry entry = SUPPORTED.get(operator);
    if (entry == null) {
      throw new IllegalArgumentException("operator " + operator + " is not supported");
    }
    return entry;
  }

  private static @Nullable Object and(
      OperatorContext context, BaseEventTypeNode event, FilterOperand[] operands)
      throws UaException {
    return decided(false, context.resolve(operands[0], event), context.resolve(operands[1], event));
  }

  private static @Nullable Object or(
      OperatorContext context, BaseEventTypeNode event, FilterOperand[] operands)
      throws UaException {
    return decided(true, context.resolve(operands[0], event), context.resolve(operands[1], event));
  }

  /** Three-valued logic: one operand with the deciding value is enough. */
  private static @Nullable Boolean decided(
      boolean deciding, @Nullable Object first, @Nullable Object second) {
    if (Boolean.valueOf(deciding).equals(first) || Boolean.valueOf(deciding).equals(second)) {
      return deciding;
    }
    boolean known = first instanceof Boolean && second instanceof Boolean;
    return known ? Boolean.valueOf(!deciding) : null;
  }

  private static @Nullable Object between(
      OperatorContext context, BaseEventTypeNode event, FilterOperand[] operands)
      throws UaException {
    FilterOperand[] low = {operands[0], operands[1]};
    FilterOperand[] high = {operands[0], operands[2]};
    return decided(
        false,
        Operators.GREATER_THAN_OR_EQUAL.apply(context, event, low),
        Operators.LESS_THAN_OR_EQUAL.apply(context, event, high));
  }

  private static Object inList(
      OperatorContext context, BaseEventTypeNode event, FilterOperand[] operands)
      throws UaException {
    for (int i = 1; i < operands.length; i++) {
      FilterOperand[] pair = {operands[0], operands[i]};
      if (Boolean.TRUE.equals(Operators.EQUALS.apply(context, event, pair))) {
        return true;
      }
    }
    return false;
  }

  private static @Nullable Object like(
      OperatorContext context, BaseEventTypeNode event, FilterOperand[] operands)
      throws UaException {
    String text = text(context.resolve(operands[0], event));
    String pattern = text(context.resolve(operands[1], event));
    return (text == null || pattern == null) ? null : new LikePattern(pattern).matches(text);
  }

  private static @Nullable String text(@Nullable Object value) {
    if (value instanceof LocalizedText localized) {
      return localized.text();
    }
    return value instanceof String string ? string : null;
  }
}
