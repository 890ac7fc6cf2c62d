package io.strapline.bridge.publish.opcua.conditions;

import io.strapline.bridge.publish.opcua.alarms.Conditions.Verdict;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.eclipse.milo.opcua.sdk.core.ValueRanks;
import org.eclipse.milo.opcua.sdk.server.Session;
import org.eclipse.milo.opcua.sdk.server.methods.AbstractMethodInvocationHandler;
import org.eclipse.milo.opcua.sdk.server.nodes.UaMethodNode;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.types.builtin.LocalizedText;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.Variant;
import org.eclipse.milo.opcua.stack.core.types.structured.Argument;

/** A method that only operators may call. Safe for any thread. */
final class OperatorMethod extends AbstractMethodInvocationHandler {

  private static final int LONGEST_TEXT = 500;

  /** What a method does. */
  interface Action {
    Variant[] call(String operator, Variant[] inputs) throws UaException;
  }

  /**
   * The arguments of a method. Immutable.
   *
   * @param inputs what it takes
   * @param outputs what it gives
   */
  record Signature(List<Argument> inputs, List<Argument> outputs) {}

  private final Signature signature;
  private final Function<Session, Optional<String>> operators;
  private final Action action;

  OperatorMethod(
      UaMethodNode node,
      Signature signature,
      Function<Session, Optional<String>> operators,
      Action action) {
    super(node);
    this.signature = signature;
    this.operators = operators;
    this.action = action;
  }

  static Argument argument(String name, NodeId dataType, String description) {
    return new Argument(
        name, dataType, ValueRanks.Scalar, null, LocalizedText.english(description));
  }

  @Override
  public Argument[] getInputArguments() {
    return signature.inputs().toArray(Argument[]::new);
  }

  @Override
  public Argument[] getOutputArguments() {
    return signature.outputs().toArray(Argument[]::new);
  }

  @Override
  protected Variant[] invoke(InvocationContext context, Variant[] inputs) throws UaException {
    String operator =
        context
            .getSession()
            .flatMap(operators)
            .orElseThrow(() -> new UaException(StatusCodes.Bad_UserAccessDenied));
    return action.call(plain(operator), inputs);
  }

  /** Returns the text of an argument, one line of bounded length, since it goes into the log. */
  static String text(Variant argument) {
    Object value = argument.value();
    if (value instanceof LocalizedText localized) {
      return plain(localized.text() == null ? "" : localized.text());
    }
    return value instanceof String string ? plain(string) : "";
  }

  private static String plain(String text) {
    String line = text.replaceAll("\\p{Cntrl}", " ");
    return line.length() > LONGEST_TEXT ? line.substring(0, LONGEST_TEXT) : line;
  }

  /**
   * Returns nothing for what is done.
   *
   * @throws UaException with the status of OPC 10000-9 for what is not
   */
  static Variant[] answer(Verdict verdict) throws UaException {
    if (verdict == Verdict.DONE) {
      return new Variant[0];
    }
    throw new UaException(status(verdict));
  }

  private static long status(Verdict verdict) {
    return switch (verdict) {
      case DONE -> StatusCodes.Good;
      case UNKNOWN -> StatusCodes.Bad_NodeIdUnknown;
      case EVENT_UNKNOWN -> StatusCodes.Bad_EventIdUnknown;
      case ALREADY_ACKNOWLEDGED -> StatusCodes.Bad_ConditionBranchAlreadyAcked;
      case DISABLED -> StatusCodes.Bad_ConditionDisabled;
      case ALREADY_ENABLED -> StatusCodes.Bad_ConditionAlreadyEnabled;
      case ALREADY_DISABLED -> StatusCodes.Bad_ConditionAlreadyDisabled;
      case NOT_RESETTABLE -> StatusCodes.Bad_InvalidState;
      case BUSY -> StatusCodes.Bad_Timeout;
    };
  }
}
