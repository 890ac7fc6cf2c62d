package io.strapline.bridge.publish.opcua.server;

import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.uint;

import org.eclipse.milo.opcua.sdk.server.OpcUaServer;
import org.eclipse.milo.opcua.sdk.server.servicesets.impl.DefaultSubscriptionServiceSet;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.UInteger;
import org.eclipse.milo.opcua.stack.core.types.structured.CreateSubscriptionRequest;
import org.eclipse.milo.opcua.stack.core.types.structured.CreateSubscriptionResponse;
import org.eclipse.milo.opcua.stack.core.types.structured.ModifySubscriptionRequest;
import org.eclipse.milo.opcua.stack.core.types.structured.ModifySubscriptionResponse;
import org.eclipse.milo.opcua.stack.transport.server.ServiceRequestContext;

/**
 * Limits how many values go into one publish answer. The library counts up to 65,535 whatever their
 * size; about 61,000 values with a status and both times pass 2 MiB, which clients refuse. Safe for
 * any thread.
 */
final class ClampedSubscriptions extends DefaultSubscriptionServiceSet {

  /** About 340 kB with a status and both times. */
  static final UInteger MOST_PER_PUBLISH = uint(10_000);

  ClampedSubscriptions(OpcUaServer server) {
    super(server);
  }

  @Override
  public CreateSubscriptionResponse onCreateSubscription(
      ServiceRequestContext context, CreateSubscriptionRequest request) throws UaException {
    return super.onCreateSubscription(context, clamped(request));
  }

  @Override
  public ModifySubscriptionResponse onModifySubscription(
      ServiceRequestContext context, ModifySubscriptionRequest request) throws UaException {
    return super.onModifySubscription(context, clamped(request));
  }

  static CreateSubscriptionRequest clamped(CreateSubscriptionRequest request) {
    return new CreateSubscriptionRequest(
        request.getRequestHeader(),
        request.getRequestedPublishingInterval(),
        request.getRequestedLifetimeCount(),
        request.getRequestedMaxKeepAliveCount(),
        clamped(request.getMaxNotificationsPerPublish()),
        request.getPublishingEnabled(),
        request.getPriority());
  }

  static ModifySubscriptionRequest clamped(ModifySubscriptionRequest request) {
    return new ModifySubscriptionRequest(
        request.getRequestHeader(),
        request.getSubscriptionId(),
        request.getRequestedPublishingInterval(),
        request.getRequestedLifetimeCount(),
        request.getRequestedMaxKeepAliveCount(),
        clamped(request.getMaxNotificationsPerPublish()),
        request.getPriority());
  }

  /** Returns the wish of the client within the limit; zero means that it has none. */
  private static UInteger clamped(UInteger wish) {
    boolean within = wish.longValue() > 0 && wish.compareTo(MOST_PER_PUBLISH) <= 0;
    return within ? wish : MOST_PER_PUBLISH;
  }
}
