package io.strapline.bridge.publish.opcua.server;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.milo.opcua.sdk.server.OpcUaServer;
import org.eclipse.milo.opcua.sdk.server.Session;
import org.eclipse.milo.opcua.sdk.server.events.EventContentFilter;
import org.eclipse.milo.opcua.sdk.server.events.OperatorContext;
import org.eclipse.milo.opcua.sdk.server.model.objects.BaseEventTypeNode;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.types.builtin.ExtensionObject;
import org.eclipse.milo.opcua.stack.core.types.enumerated.FilterOperator;
import org.eclipse.milo.opcua.stack.core.types.structured.ContentFilter;
import org.eclipse.milo.opcua.stack.core.types.structured.ContentFilterElement;
import org.eclipse.milo.opcua.stack.core.types.structured.ElementOperand;
import org.eclipse.milo.opcua.stack.core.types.structured.FilterOperand;
import org.eclipse.milo.opcua.stack.core.types.structured.LiteralOperand;
import org.eclipse.milo.opcua.stack.core.types.structured.SimpleAttributeOperand;
import org.jspecify.annotations.Nullable;

/**
 * The where clause of an event filter, checked when it is installed: what cannot be evaluated is
 * refused in words instead of letting nothing through for ever. Each element is evaluated once for
 * an event, the last first, since an element may only refer to later ones. Immutable.
 */
final class WhereClause {

  private static final int MOST_ELEMENTS = 100;

  private record Element(FilterOperator operator, List<FilterOperand> operands) {}

  private final OpcUaServer server;
  private final List<Element> elements;

  private WhereClause(OpcUaServer server, List<Element> elements) {
    this.server = server;
    this.elements = List.copyOf(elements);
  }

  /**
   * Returns the clause of a filter.
   *
   * @throws UaException with what is wrong with it
   */
  static WhereClause of(OpcUaServer server, @Nullable ContentFilter filter) throws UaException {
    ContentFilterElement[] given = filter == null ? null : filter.getElements();
    if (given == null) {
      return new WhereClause(server, List.of());
    }
    if (given.length > MOST_ELEMENTS) {
      throw refused("more than " + MOST_ELEMENTS + " elements in the where clause");
    }
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < given.length; i++) {
      elements.add(element(server, given, i));
    }
    return new WhereClause(server, elements);
  }

  private static Element element(OpcUaServer server, ContentFilterElement[] all, int index)
      throws UaException {
    FilterOperator operator = all[index].getFilterOperator();
    if (!FilterOperators.isSupported(operator)) {
      throw refused("operator " + operator + " is not supported in a where clause");
    }
    ExtensionObject[] given = all[index].getFilterOperands();
    int count = given == null ? 0 : given.length;
    if (count < FilterOperators.leastOperands(operator)) {
      throw refused("operator " + operator + " with " + count + " operands");
    }
    List<FilterOperand> operands = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      operands.add(operand(server, given[i], index, all.length));
    }
    return new Element(operator, operands);
  }

  private static FilterOperand operand(
      OpcUaServer server, ExtensionObject given, int index, int count) throws UaException {
    Object operand = decoded(server, given);
    if (operand instanceof SimpleAttributeOperand attribute) {
      return SelectClauses.untyped(server, attribute);
    }
    if (operand instanceof LiteralOperand literal) {
      return literal;
    }
    if (operand instanceof ElementOperand reference) {
      long to = reference.getIndex().longValue();
      if (to > index && to < count) {
        return reference;
      }
      throw refused("element " + index + " of the where clause refers to element " + to);
    }
    throw refused("element " + index + " of the where clause has an operand that is not supported");
  }

  private static @Nullable Object decoded(OpcUaServer server, ExtensionObject given) {
    try {
      return given.decode(server.getStaticEncodingContext());
    } catch (RuntimeException undecodable) {
      return null;
    }
  }

  private static UaException refused(String why) {
    return new UaException(StatusCodes.Bad_MonitoredItemFilterUnsupported, why);
  }

  /**
   * Returns whether an event passes; what is not known does not.
   *
   * @throws UaException if it cannot be evaluated for this event
   */
  boolean matches(BaseEventTypeNode event, @Nullable Session session) throws UaException {
    if (elements.isEmpty()) {
      return true;
    }
    @Nullable Object[] results = new @Nullable Object[elements.size()];
    Resolved context = new Resolved(server, Optional.ofNullable(session), results);
    for (int i = elements.size() - 1; i >= 0; i--) {
      Element element = elements.get(i);
      results[i] =
          FilterOperators.evaluation(element.operator())
              .of(context, event, element.operands().toArray(FilterOperand[]::new));
    }
    return Boolean.TRUE.equals(results[0]);
  }

  /** Gives the value of operands; those of later elements are there already. */
  @SuppressWarnings("ArrayRecordComponent") // filled in while it is used, by one thread
  private record Resolved(OpcUaServer server, Optional<Session> session, @Nullable Object[] results)
      implements OperatorContext {

    @Override
    public OpcUaServer getServer() {
      return server;
    }

    @Override
    public Optional<Session> getSession() {
      return session;
    }

    @Override
    public ContentFilterElement[] getElements() {
      return new ContentFilterElement[0];
    }

    @Override
    public @Nullable Object resolve(FilterOperand operand, BaseEventTypeNode event) {
      if (operand instanceof LiteralOperand literal) {
        return literal.getValue().value();
      }
      if (operand instanceof ElementOperand reference) {
        return results[reference.getIndex().intValue()];
      }
      SimpleAttributeOperand[] one = {(SimpleAttributeOperand) operand};
      return EventContentFilter.select(this, one, event)[0].value();
    }
  }
}
