package io.strapline.bridge.publish.opcua.server;

import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.uint;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.testing.Eventually;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import org.eclipse.milo.opcua.sdk.client.OpcUaClient;
import org.eclipse.milo.opcua.sdk.client.subscriptions.MonitoredItemSynchronizationException;
import org.eclipse.milo.opcua.sdk.client.subscriptions.OpcUaMonitoredItem;
import org.eclipse.milo.opcua.sdk.client.subscriptions.OpcUaSubscription;
import org.eclipse.milo.opcua.sdk.server.model.objects.BaseEventTypeNode;
import org.eclipse.milo.opcua.stack.core.AttributeId;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.encoding.DefaultEncodingContext;
import org.eclipse.milo.opcua.stack.core.types.builtin.ExtensionObject;
import org.eclipse.milo.opcua.stack.core.types.builtin.LocalizedText;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.QualifiedName;
import org.eclipse.milo.opcua.stack.core.types.builtin.StatusCode;
import org.eclipse.milo.opcua.stack.core.types.builtin.Variant;
import org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned;
import org.eclipse.milo.opcua.stack.core.types.enumerated.FilterOperator;
import org.eclipse.milo.opcua.stack.core.types.structured.ContentFilter;
import org.eclipse.milo.opcua.stack.core.types.structured.ContentFilterElement;
import org.eclipse.milo.opcua.stack.core.types.structured.ElementOperand;
import org.eclipse.milo.opcua.stack.core.types.structured.EventFilter;
import org.eclipse.milo.opcua.stack.core.types.structured.FilterOperand;
import org.eclipse.milo.opcua.stack.core.types.structured.LiteralOperand;
import org.eclipse.milo.opcua.stack.core.types.structured.SimpleAttributeOperand;
import org.junit.jupiter.api.Test;

/** Event filters beside the library's own; where that one is right by now, the repair can go. */
class EventFiltersIT {

  private static final ContentFilter ALL = new ContentFilter(new ContentFilterElement[0]);

  /** Severity at least 100 and at most 500, as an And of two comparisons. */
  private static ContentFilter and() {
    return new ContentFilter(
        new ContentFilterElement[] {
          element(FilterOperator.And, new ElementOperand(uint(1)), new ElementOperand(uint(2))),
          element(FilterOperator.GreaterThanOrEqual, severity(), literal(100)),
          element(FilterOperator.LessThanOrEqual, severity(), literal(500)),
        });
  }

  private static ContentFilterElement element(FilterOperator operator, FilterOperand... operands) {
    ExtensionObject[] encoded = new ExtensionObject[operands.length];
    for (int i = 0; i < operands.length; i++) {
      encoded[i] = ExtensionObject.encode(DefaultEncodingContext.INSTANCE, operands[i]);
    }
    return new ContentFilterElement(operator, encoded);
  }

  private static SimpleAttributeOperand severity() {
    return field(NodeIds.BaseEventType, "Severity");
  }

  private static LiteralOperand literal(int severity) {
    return new LiteralOperand(new Variant(Unsigned.ushort(severity)));
  }

  private static SimpleAttributeOperand field(NodeId type, String name) {
    return new SimpleAttributeOperand(
        type, new QualifiedName[] {new QualifiedName(0, name)}, AttributeId.Value.uid(), null);
  }

  /** Watches the server object, fires one event of severity 300, then tells what arrived. */
  private static Told told(ServerPair pair, NodeId type, ContentFilter where) throws Exception {
    OpcUaClient client = pair.start().client();
    try {
      OpcUaSubscription subscription = new OpcUaSubscription(client, 100.0);
      subscription.create();
      EventFilter filter =
          new EventFilter(new SimpleAttributeOperand[] {field(type, "Message")}, where);
      List<String> asked = watch(subscription, filter);
      StatusCode status = subscription.getMonitoredItems().get(0).getCreateResult().orElseThrow();
      if (!status.isGood()) {
        return new Told(status.value(), asked);
      }
      // The second one has no filter: once it is told, the first has had its chance.
      EventFilter plain =
          new EventFilter(
              new SimpleAttributeOperand[] {field(NodeIds.BaseEventType, "Message")}, ALL);
      List<String> control = watch(subscription, plain);
      fire(pair, 300);
      Eventually.holds("the control is told", () -> !control.isEmpty());
      return new Told(status.value(), List.copyOf(asked));
    } finally {
      client.disconnect();
    }
  }

  private record Told(long status, List<String> messages) {}

  private static List<String> watch(OpcUaSubscription subscription, EventFilter filter)
      throws Exception {
    List<String> messages = new CopyOnWriteArrayList<>();
    OpcUaMonitoredItem item = OpcUaMonitoredItem.newEventItem(NodeIds.Server, filter);
    item.setEventValueListener(
        (source, values) ->
            messages.add(
                String.valueOf(
                    Optional.ofNullable((LocalizedText) values[0].value())
                        .map(LocalizedText::text)
                        .orElse(null))));
    subscription.addMonitoredItem(item);
    try {
      subscription.synchronizeMonitoredItems();
    } catch (MonitoredItemSynchronizationException refused) {
      assertTrue(item.getCreateResult().orElseThrow().isBad(), "the item tells why");
    }
    return messages;
  }

  private static final AtomicInteger NUMBER = new AtomicInteger();

  private static void fire(ServerPair pair, int severity) throws Exception {
    BaseEventTypeNode event =
        pair.server()
            .getEventFactory()
            .createEvent(
                new NodeId(1, "event-" + NUMBER.incrementAndGet()), NodeIds.SystemEventType);
    event.setMessage(LocalizedText.english("hello"));
    event.setSeverity(Unsigned.ushort(severity));
    pair.server().getEventNotifier().fire(event);
    event.delete();
  }

  @Test
  void evaluatesAnAnd() throws Exception {
    try (ServerPair pair = ServerPair.fixed()) {
      Told told = told(pair, NodeIds.BaseEventType, and());
      assertEquals(List.of("hello"), told.messages());
    }
  }

  @Test
  void libraryIsSilentUponAnAnd() throws Exception {
    try (ServerPair pair = ServerPair.plain()) {
      Told told = told(pair, NodeIds.BaseEventType, and());
      assertEquals(StatusCodes.Good, told.status());
      assertEquals(List.of(), told.messages());
    }
  }

  @Test
  void givesAnInheritedField() throws Exception {
    try (ServerPair pair = ServerPair.fixed()) {
      assertEquals(List.of("hello"), told(pair, NodeIds.SystemEventType, ALL).messages());
    }
  }

  @Test
  void libraryIsSilentUponAnInheritedField() throws Exception {
    try (ServerPair pair = ServerPair.plain()) {
      assertEquals(List.of(), told(pair, NodeIds.SystemEventType, ALL).messages());
    }
  }

  @Test
  void refusesAnElementThatRefersBack() throws Exception {
    ContentFilter loop =
        new ContentFilter(
            new ContentFilterElement[] {
              element(FilterOperator.Not, new ElementOperand(uint(0))),
            });
    try (ServerPair pair = ServerPair.fixed()) {
      Told told = told(pair, NodeIds.BaseEventType, loop);
      assertEquals(StatusCodes.Bad_MonitoredItemFilterUnsupported, told.status());
      assertEquals(List.of(), told.messages());
    }
  }
}
