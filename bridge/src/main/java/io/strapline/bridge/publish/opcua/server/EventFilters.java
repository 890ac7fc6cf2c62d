package io.strapline.bridge.publish.opcua.server;

import static org.eclipse.milo.opcua.sdk.server.servicesets.AbstractServiceSet.createResponseHeader;
import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.uint;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.milo.opcua.sdk.server.OpcUaServer;
import org.eclipse.milo.opcua.sdk.server.Session;
import org.eclipse.milo.opcua.sdk.server.items.BaseMonitoredItem;
import org.eclipse.milo.opcua.sdk.server.items.EventItem;
import org.eclipse.milo.opcua.sdk.server.servicesets.impl.DefaultMonitoredItemServiceSet;
import org.eclipse.milo.opcua.sdk.server.subscriptions.Subscription;
import org.eclipse.milo.opcua.stack.core.AttributeId;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.types.builtin.DiagnosticInfo;
import org.eclipse.milo.opcua.stack.core.types.builtin.ExtensionObject;
import org.eclipse.milo.opcua.stack.core.types.builtin.StatusCode;
import org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.UInteger;
import org.eclipse.milo.opcua.stack.core.types.structured.ContentFilter;
import org.eclipse.milo.opcua.stack.core.types.structured.ContentFilterElement;
import org.eclipse.milo.opcua.stack.core.types.structured.CreateMonitoredItemsRequest;
import org.eclipse.milo.opcua.stack.core.types.structured.CreateMonitoredItemsResponse;
import org.eclipse.milo.opcua.stack.core.types.structured.EventFilter;
import org.eclipse.milo.opcua.stack.core.types.structured.ModifyMonitoredItemsRequest;
import org.eclipse.milo.opcua.stack.core.types.structured.ModifyMonitoredItemsResponse;
import org.eclipse.milo.opcua.stack.core.types.structured.MonitoredItemCreateRequest;
import org.eclipse.milo.opcua.stack.core.types.structured.MonitoredItemCreateResult;
import org.eclipse.milo.opcua.stack.core.types.structured.MonitoredItemModifyRequest;
import org.eclipse.milo.opcua.stack.core.types.structured.MonitoredItemModifyResult;
import org.eclipse.milo.opcua.stack.core.types.structured.MonitoringParameters;
import org.eclipse.milo.opcua.stack.core.types.structured.SetMonitoringModeRequest;
import org.eclipse.milo.opcua.stack.core.types.structured.SetMonitoringModeResponse;
import org.eclipse.milo.opcua.stack.core.types.structured.SimpleAttributeOperand;
import org.eclipse.milo.opcua.stack.transport.server.ServiceRequestContext;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Repairs event filters before the library sees them: what it would answer with Good and then
 * silence either works or is refused with a reason (Milo issues 1779 and 1807). Also registers an
 * event item of the server object whose monitoring was off at first, which the library forgets.
 * Safe for any thread.
 */
final class EventFilters extends DefaultMonitoredItemServiceSet {

  private static final Logger LOG = LoggerFactory.getLogger(EventFilters.class);
  private static final ContentFilter EVERYTHING = new ContentFilter(new ContentFilterElement[0]);

  private final OpcUaServer server;
  private final Set<String> toldRefusals = ConcurrentHashMap.newKeySet();

  EventFilters(OpcUaServer server) {
    super(server);
    this.server = server;
  }

  /** A filter in two parts: for the library, and for us. */
  private record Repaired(ExtensionObject forLibrary, WhereClause where) {}

  @Override
  public CreateMonitoredItemsResponse onCreateMonitoredItems(
      ServiceRequestContext context, CreateMonitoredItemsRequest request) throws UaException {
    MonitoredItemCreateRequest[] asked = request.getItemsToCreate();
    Merge<MonitoredItemCreateResult> merge = new Merge<>();
    List<MonitoredItemCreateRequest> passed = new ArrayList<>();
    for (MonitoredItemCreateRequest item : orNone(asked)) {
      try {
        passed.add(repaired(item));
        merge.pass();
      } catch (UaException refused) {
        merge.refuse(created(refused.getStatusCode()));
      }
    }
    if (merge.nothingRefused()) {
      return super.onCreateMonitoredItems(context, create(request, passed));
    }
    MonitoredItemCreateResult[] made = null;
    if (passed.isEmpty()) {
      checkOwn(context, request);
    } else {
      made = super.onCreateMonitoredItems(context, create(request, passed)).getResults();
    }
    return new CreateMonitoredItemsResponse(
        createResponseHeader(request),
        merge.with(made).toArray(MonitoredItemCreateResult[]::new),
        new DiagnosticInfo[0]);
  }

  private void checkOwn(ServiceRequestContext context, CreateMonitoredItemsRequest request)
      throws UaException {
    Session session = server.getSessionManager().getSession(context, request.getRequestHeader());
    if (subscription(session, request.getSubscriptionId()) == null) {
      throw new UaException(StatusCodes.Bad_SubscriptionIdInvalid);
    }
  }

  private static MonitoredItemCreateRequest[] orNone(
      MonitoredItemCreateRequest @Nullable [] items) {
    return items == null ? new MonitoredItemCreateRequest[0] : items;
  }

  private static CreateMonitoredItemsRequest create(
      CreateMonitoredItemsRequest request, List<MonitoredItemCreateRequest> items) {
    return new CreateMonitoredItemsRequest(
        request.getRequestHeader(),
        request.getSubscriptionId(),
        request.getTimestampsToReturn(),
        items.toArray(MonitoredItemCreateRequest[]::new));
  }

  private static MonitoredItemCreateResult created(StatusCode refused) {
    return new MonitoredItemCreateResult(refused, uint(0), 0.0, uint(0), null);
  }

  private MonitoredItemCreateRequest repaired(MonitoredItemCreateRequest item) throws UaException {
    if (!AttributeId.EventNotifier.uid().equals(item.getItemToMonitor().getAttributeId())) {
      return item;
    }
    MonitoringParameters asked = item.getRequestedParameters();
    Repaired filter = repaired(asked.getFilter());
    return new MonitoredItemCreateRequest(
        new WatchedEvents(item.getItemToMonitor(), filter.where()),
        item.getMonitoringMode(),
        parameters(asked, filter));
  }

  private static MonitoringParameters parameters(MonitoringParameters asked, Repaired filter) {
    return new MonitoringParameters(
        asked.getClientHandle(),
        asked.getSamplingInterval(),
        filter.forLibrary(),
        asked.getQueueSize(),
        asked.getDiscardOldest());
  }

  private Repaired repaired(@Nullable ExtensionObject given) throws UaException {
    try {
      EventFilter filter = decoded(given);
      SimpleAttributeOperand[] select = filter.getSelectClauses();
      if (select == null || select.length == 0) {
        throw new UaException(StatusCodes.Bad_EventFilterInvalid, "no select clause");
      }
      EventFilter taken = new EventFilter(SelectClauses.untyped(server, select), EVERYTHING);
      return new Repaired(
          ExtensionObject.encode(server.getStaticEncodingContext(), taken),
          WhereClause.of(server, filter.getWhereClause()));
    } catch (UaException refused) {
      tell(refused);
      throw refused;
    }
  }

  private EventFilter decoded(@Nullable ExtensionObject given) throws UaException {
    if (given == null || given.isNull()) {
      throw new UaException(StatusCodes.Bad_EventFilterInvalid, "no event filter");
    }
    Object filter;
    try {
      filter = given.decode(server.getStaticEncodingContext());
    } catch (RuntimeException undecodable) {
      throw new UaException(StatusCodes.Bad_MonitoredItemFilterInvalid, undecodable);
    }
    if (filter instanceof EventFilter events) {
      return events;
    }
    throw new UaException(StatusCodes.Bad_FilterNotAllowed, "no event filter");
  }

  private void tell(UaException refused) {
    String why = String.valueOf(refused.getMessage());
    if (toldRefusals.size() < 100 && toldRefusals.add(why)) {
      LOG.warn("OPC UA: an event subscription is refused: {}", why);
    }
  }

  @Override
  public ModifyMonitoredItemsResponse onModifyMonitoredItems(
      ServiceRequestContext context, ModifyMonitoredItemsRequest request) throws UaException {
    Session session = server.getSessionManager().getSession(context, request.getRequestHeader());
    Subscription subscription = subscription(session, request.getSubscriptionId());
    MonitoredItemModifyRequest[] asked = request.getItemsToModify();
    if (subscription == null || asked == null || !anyWatched(subscription, asked)) {
      return super.onModifyMonitoredItems(context, request);
    }
    return modify(context, request, subscription, asked);
  }

  private static boolean anyWatched(Subscription subscription, MonitoredItemModifyRequest[] items) {
    return Arrays.stream(items)
        .anyMatch(item -> watched(subscription, item.getMonitoredItemId()) != null);
  }

  private ModifyMonitoredItemsResponse modify(
      ServiceRequestContext context,
      ModifyMonitoredItemsRequest request,
      Subscription subscription,
      MonitoredItemModifyRequest[] asked)
      throws UaException {
    MonitoredItemModifyResult[] results = new MonitoredItemModifyResult[asked.length];
    for (int i = 0; i < asked.length; i++) {
      results[i] = modify(context, request, subscription, asked[i]);
    }
    return new ModifyMonitoredItemsResponse(
        createResponseHeader(request), results, new DiagnosticInfo[0]);
  }

  private MonitoredItemModifyResult modify(
      ServiceRequestContext context,
      ModifyMonitoredItemsRequest request,
      Subscription subscription,
      MonitoredItemModifyRequest asked)
      throws UaException {
    WatchedEvents watched = watched(subscription, asked.getMonitoredItemId());
    if (watched == null) {
      return passed(context, request, asked);
    }
    try {
      Repaired filter = repaired(asked.getRequestedParameters().getFilter());
      MonitoredItemModifyResult result =
          passed(
              context,
              request,
              new MonitoredItemModifyRequest(
                  asked.getMonitoredItemId(), parameters(asked.getRequestedParameters(), filter)));
      if (result.getStatusCode().isGood()) {
        watched.filterBy(filter.where());
      }
      return result;
    } catch (UaException refused) {
      return new MonitoredItemModifyResult(refused.getStatusCode(), 0.0, uint(0), null);
    }
  }

  private MonitoredItemModifyResult passed(
      ServiceRequestContext context,
      ModifyMonitoredItemsRequest request,
      MonitoredItemModifyRequest item)
      throws UaException {
    ModifyMonitoredItemsRequest one =
        new ModifyMonitoredItemsRequest(
            request.getRequestHeader(),
            request.getSubscriptionId(),
            request.getTimestampsToReturn(),
            new MonitoredItemModifyRequest[] {item});
    MonitoredItemModifyResult[] results = super.onModifyMonitoredItems(context, one).getResults();
    if (results == null || results.length != 1) {
      throw new UaException(StatusCodes.Bad_InternalError);
    }
    return results[0];
  }

  private static @Nullable WatchedEvents watched(Subscription subscription, UInteger itemId) {
    BaseMonitoredItem<?> item = subscription.getMonitoredItems().get(itemId);
    return item != null && item.getReadValueId() instanceof WatchedEvents watched ? watched : null;
  }

  @Override
  public SetMonitoringModeResponse onSetMonitoringMode(
      ServiceRequestContext context, SetMonitoringModeRequest request) throws UaException {
    SetMonitoringModeResponse response = super.onSetMonitoringMode(context, request);
    Session session = server.getSessionManager().getSession(context, request.getRequestHeader());
    Subscription subscription = subscription(session, request.getSubscriptionId());
    UInteger[] ids = request.getMonitoredItemIds();
    if (subscription != null && ids != null) {
      for (UInteger id : ids) {
        if (subscription.getMonitoredItems().get(id) instanceof EventItem item) {
          server.getEventNotifier().register(item);
        }
      }
    }
    return response;
  }

  private static @Nullable Subscription subscription(Session session, UInteger id) {
    return session.getSubscriptionManager().getSubscription(id);
  }
}
