package io.strapline.bridge.publish.opcua.server;

import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.ubyte;
import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.uint;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Field;
import java.util.concurrent.atomic.AtomicInteger;
import org.eclipse.milo.opcua.sdk.server.EventListener;
import org.eclipse.milo.opcua.sdk.server.EventNotifier;
import org.eclipse.milo.opcua.sdk.server.OpcUaServerConfigLimits;
import org.eclipse.milo.opcua.sdk.server.model.objects.BaseEventTypeNode;
import org.eclipse.milo.opcua.sdk.server.subscriptions.Subscription;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.types.builtin.ByteString;
import org.eclipse.milo.opcua.stack.core.types.builtin.DateTime;
import org.eclipse.milo.opcua.stack.core.types.builtin.LocalizedText;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.UInteger;
import org.eclipse.milo.opcua.stack.core.types.enumerated.ApplicationType;
import org.eclipse.milo.opcua.stack.core.types.structured.ApplicationDescription;
import org.eclipse.milo.opcua.stack.core.types.structured.CreateSessionRequest;
import org.eclipse.milo.opcua.stack.core.types.structured.CreateSubscriptionRequest;
import org.eclipse.milo.opcua.stack.core.types.structured.ModifySubscriptionRequest;
import org.eclipse.milo.opcua.stack.core.types.structured.RequestHeader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The fixes that need no connection, each beside what the library does by itself. */
class SmallFixesTest {

  private static final RequestHeader HEADER =
      new RequestHeader(NodeId.NULL_VALUE, DateTime.now(), uint(1), uint(0), null, uint(0), null);

  @ParameterizedTest
  @CsvSource({"0, 10000", "1, 1", "9999, 9999", "10000, 10000", "10001, 10000", "65535, 10000"})
  void clampsTheValuesOfOnePublishAnswer(long asked, int given) {
    CreateSubscriptionRequest create =
        new CreateSubscriptionRequest(
            HEADER, 500.0, uint(100), uint(10), uint(asked), true, ubyte(3));
    ModifySubscriptionRequest modify =
        new ModifySubscriptionRequest(
            HEADER, uint(7), 500.0, uint(100), uint(10), uint(asked), ubyte(3));
    UInteger most = uint(given);
    assertEquals(most, ClampedSubscriptions.clamped(create).getMaxNotificationsPerPublish());
    assertEquals(most, ClampedSubscriptions.clamped(modify).getMaxNotificationsPerPublish());
    assertEquals(uint(7), ClampedSubscriptions.clamped(modify).getSubscriptionId());
    assertEquals(ubyte(3), ClampedSubscriptions.clamped(create).getPriority());
  }

  @Test
  void libraryAllowsMoreThanClientsTakeInOnePublishAnswer() throws Exception {
    Field most = Subscription.class.getDeclaredField("MAX_NOTIFICATIONS_PER_PUBLISH");
    most.setAccessible(true);
    assertTrue(most.getInt(null) > ClampedSubscriptions.MOST_PER_PUBLISH.intValue());
  }

  @Test
  void librarySamplesAsFastAsAClientAsks() {
    assertEquals(0.0, new OpcUaServerConfigLimits() {}.getMinSupportedSampleRate());
    assertEquals(100.0, new ServerLimits().getMinSupportedSampleRate());
  }

  @Test
  void shortensLongSessionNames() {
    assertEquals(128, sessionName("x".repeat(10_000)).length());
    assertEquals("viewer", sessionName("viewer"));
  }

  private static String sessionName(String asked) {
    ApplicationDescription client =
        new ApplicationDescription(
            "urn:a", "urn:b", LocalizedText.NULL_VALUE, ApplicationType.Client, null, null, null);
    CreateSessionRequest request =
        new CreateSessionRequest(
            HEADER,
            client,
            null,
            "opc.tcp://localhost",
            asked,
            ByteString.NULL_VALUE,
            ByteString.NULL_VALUE,
            1.0,
            uint(0));
    return String.valueOf(ShortSessionNames.shortened(request).getSessionName());
  }

  @Test
  void tellsAnEventOnceToAListenerThatRegisteredTwice() throws Exception {
    try (ServerPair pair = ServerPair.fixed()) {
      assertEquals(1, timesTold(pair));
    }
  }

  @Test
  void libraryTellsAnEventTwiceToAListenerThatRegisteredTwice() throws Exception {
    try (ServerPair pair = ServerPair.plain()) {
      assertEquals(2, timesTold(pair));
    }
  }

  private static int timesTold(ServerPair pair) throws Exception {
    AtomicInteger told = new AtomicInteger();
    EventListener listener = event -> told.incrementAndGet();
    EventNotifier notifier = pair.server().getEventNotifier();
    notifier.register(listener);
    notifier.register(listener);
    pair.start();
    BaseEventTypeNode event =
        pair.server().getEventFactory().createEvent(new NodeId(1, "event"), NodeIds.BaseEventType);
    notifier.fire(event);
    event.delete();
    return told.get();
  }
}
