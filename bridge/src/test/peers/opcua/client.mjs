// An OPC UA client that is told what to do: one JSON object a line on standard input, one JSON
// object a line on standard output. Its certificates lie in the folder given as the first argument.
import { createInterface } from "node:readline";
import { join } from "node:path";
import { OPCUACertificateManager } from "node-opcua-certificate-manager";
import {
  and,
  AttributeIds,
  BrowseDirection,
  constructEventFilter,
  ContentFilterElement,
  DataChangeFilter,
  DataChangeTrigger,
  DataType,
  DeadbandType,
  EventFilter,
  FilterOperator,
  inList,
  installAlarmMonitoring,
  l,
  makeContentFilter,
  MessageSecurityMode,
  MonitoringMode,
  ofType,
  OPCUAClient,
  or,
  s,
  SecurityPolicy,
  SimpleAttributeOperand,
  TimestampsToReturn,
  Variant,
} from "node-opcua-client";

const folder = process.argv[2];
const state = { client: null, session: null, subscription: null, changes: [], alarms: null, items: new Map(), events: [] };

function plain(dataValue) {
  const value = dataValue.value?.value;
  return {
    value: value === undefined ? null : value,
    dataType: dataValue.value ? DataType[dataValue.value.dataType] : null,
    status: dataValue.statusCode.value,
    statusName: dataValue.statusCode.name,
    sourceTime: dataValue.sourceTimestamp ? dataValue.sourceTimestamp.toISOString() : null,
    serverTime: dataValue.serverTimestamp ? dataValue.serverTimestamp.toISOString() : null,
  };
}

async function connect({ url, policy, sessionTimeout }) {
  const certificates = new OPCUACertificateManager({
    rootFolder: join(folder, "pki"),
    automaticallyAcceptUnknownCertificate: true,
  });
  await certificates.initialize();
  const secured = policy !== "None";
  state.client = OPCUAClient.create({
    applicationName: "StraplinePeer",
    applicationUri: "urn:strapline:test:peer",
    clientCertificateManager: certificates,
    certificateFile: join(folder, "client.pem"),
    privateKeyFile: join(folder, "pki", "own", "private", "private_key.pem"),
    securityPolicy: SecurityPolicy[policy],
    securityMode: secured ? MessageSecurityMode.SignAndEncrypt : MessageSecurityMode.None,
    connectionStrategy: { maxRetry: 0, initialDelay: 100, maxDelay: 100 },
    endpointMustExist: false,
    requestedSessionTimeout: sessionTimeout ?? 20000,
  });
  await state.client.connect(url);
  state.session = await state.client.createSession();
  return { namespaces: await state.session.readNamespaceArray() };
}

async function read({ nodes }) {
  const values = await state.session.read(
    nodes.map((nodeId) => ({ nodeId, attributeId: AttributeIds.Value })),
  );
  return { values: values.map(plain) };
}

async function attribute({ node, name }) {
  const value = await state.session.read({ nodeId: node, attributeId: AttributeIds[name] });
  return plain({ ...value, value: { dataType: value.value.dataType, value: String(value.value.value?.text ?? value.value.value) } });
}

// All nodes below one, by hierarchical references, as the server tells them.
async function tree({ node }) {
  const found = [];
  const seen = new Set();
  const open = [node];
  while (open.length > 0) {
    const nodeId = open.pop();
    const result = await state.session.browse({
      nodeId,
      browseDirection: BrowseDirection.Forward,
      referenceTypeId: "HierarchicalReferences",
      includeSubtypes: true,
      resultMask: 63,
    });
    for (const reference of result.references ?? []) {
      const id = reference.nodeId.toString();
      if (!seen.has(id)) {
        seen.add(id);
        found.push({
          parent: nodeId.toString(),
          id,
          reference: reference.referenceTypeId.toString(),
          browseName: reference.browseName.toString(),
          displayName: reference.displayName.text,
          nodeClass: reference.nodeClass,
          type: reference.typeDefinition?.toString() ?? null,
        });
        open.push(id);
      }
    }
  }
  return { nodes: found };
}

async function write({ node, value }) {
  const status = await state.session.write({
    nodeId: node,
    attributeId: AttributeIds.Value,
    value: { value: new Variant({ dataType: DataType.Double, value }) },
  });
  return { status: status.value, statusName: status.name };
}

async function subscribe({ nodes, publishing, sampling, percentDeadband }) {
  state.subscription ??= await state.session.createSubscription2({
    requestedPublishingInterval: publishing,
    requestedLifetimeCount: 100,
    requestedMaxKeepAliveCount: 10,
    maxNotificationsPerPublish: 0,
    publishingEnabled: true,
    priority: 1,
  });
  const filter =
    percentDeadband === undefined
      ? undefined
      : new DataChangeFilter({
          trigger: DataChangeTrigger.StatusValue,
          deadbandType: DeadbandType.Percent,
          deadbandValue: percentDeadband,
        });
  const items = [];
  for (const nodeId of nodes) {
    const item = await state.subscription.monitor(
      { nodeId, attributeId: AttributeIds.Value },
      { samplingInterval: sampling, queueSize: 60000, discardOldest: true, filter },
      TimestampsToReturn.Both,
    );
    item.on("changed", (dataValue) => state.changes.push({ node: nodeId, ...plain(dataValue) }));
    items.push({
      node: nodeId,
      statusName: item.statusCode.name,
      sampling: item.result?.revisedSamplingInterval ?? null,
      queue: item.result?.revisedQueueSize ?? null,
    });
  }
  return { publishing: state.subscription.publishingInterval, items };
}

// What has changed since the last time this was asked.
async function changes() {
  const taken = state.changes;
  state.changes = [];
  return { changes: taken };
}

// The client's own list of alarms, kept by its library.
async function alarms() {
  state.alarms ??= await installAlarmMonitoring(state.session);
  const found = state.alarms.alarms().map((alarm) => {
    const field = (name) => alarm.fields[name]?.value ?? null;
    return {
      condition: alarm.conditionId.toString(),
      eventId: alarm.eventId.toString("hex"),
      retain: alarm.getRetain(),
      source: field("sourceName"),
      message: field("message")?.text ?? null,
      severity: field("severity"),
      active: alarm.fields.activeState?.id?.value ?? null,
      acked: alarm.fields.ackedState?.id?.value ?? null,
      comment: alarm.fields.comment?.value?.text ?? alarm.fields.comment?.value?.value?.text ?? null,
      user: field("clientUserId"),
    };
  });
  return { alarms: found };
}

async function acknowledge({ condition, eventId, comment }) {
  const status = await state.session.acknowledgeCondition(condition, Buffer.from(eventId, "hex"), comment);
  return { statusName: status.name };
}

async function comment({ condition, eventId, comment: text }) {
  const status = await state.session.addCommentCondition(condition, Buffer.from(eventId, "hex"), text);
  return { statusName: status.name };
}

// Calls several methods in one request; the arguments are strings.
async function call({ methods }) {
  const results = await state.session.call(
    methods.map(({ object, method, inputs }) => ({
      objectId: object,
      methodId: method,
      inputArguments: (inputs ?? []).map(
        ({ type, value }) =>
          new Variant({
            dataType: DataType[type],
            value: type === "LocalizedText" ? { text: value } : type === "ByteString" ? Buffer.from(value, "hex") : value,
          }),
      ),
    })),
  );
  return {
    results: results.map((result) => ({
      statusName: result.statusCode.name,
      outputs: (result.outputArguments ?? []).map((output) => output.value),
    })),
  };
}

async function eventSubscription() {
  state.subscription ??= await state.session.createSubscription2({
    requestedPublishingInterval: 100,
    requestedLifetimeCount: 100,
    requestedMaxKeepAliveCount: 10,
    maxNotificationsPerPublish: 0,
    publishingEnabled: true,
    priority: 1,
  });
  return state.subscription;
}

const filters = {
  none: () => null,
  conditions: () => ofType("ConditionType"),
  levelAndSevere: () =>
    and(ofType("ExclusiveLevelAlarmType"), element("GreaterThanOrEqual", s(AttributeIds.Value, "Severity"), l(DataType.UInt16, 600))),
  likeOrList: () =>
    or(
      element("Like", s(AttributeIds.Value, "SourceName"), l(DataType.String, "ZT%")),
      inList(s(AttributeIds.Value, "SourceName"), [l(DataType.String, "XX-1"), l(DataType.String, "ZT-401")]),
    ),
  between: () =>
    element("Between", s(AttributeIds.Value, "Severity"), l(DataType.UInt16, 1), l(DataType.UInt16, 10)),
  bitwise: () => element("BitwiseAnd", s(AttributeIds.Value, "Severity"), l(DataType.UInt16, 1)),
};

function element(operator, ...operands) {
  return new ContentFilterElement({ filterOperator: FilterOperator[operator], filterOperands: operands });
}

function where(filter) {
  const root = filters[filter]();
  return root === null ? undefined : makeContentFilter(root);
}

// A filter whose fields are named as those of a type that only inherits them.
function typed(fields, filter) {
  return new EventFilter({
    selectClauses: fields.map(
      (path) =>
        new SimpleAttributeOperand({
          typeDefinitionId: "i=2915", // AlarmConditionType
          attributeId: AttributeIds.Value,
          browsePath: path.split("/").map((name) => ({ name })),
        }),
    ),
    whereClause: where(filter),
  });
}

const plainFields = ["EventType", "SourceName", "Message", "Severity", "ActiveState.Id", "AckedState.Id", "Retain"];

async function watch({ name, node, filter, inherited, mode }) {
  const subscription = await eventSubscription();
  const fields = inherited ?? plainFields;
  const item = await subscription.monitor(
    { nodeId: node, attributeId: AttributeIds.EventNotifier },
    {
      samplingInterval: 0,
      queueSize: 50,
      discardOldest: true,
      filter: inherited ? typed(inherited, filter) : constructEventFilter(fields, where(filter)),
    },
    TimestampsToReturn.Both,
    MonitoringMode[mode ?? "Reporting"],
  );
  item.on("err", () => {});
  item.on("changed", (values) => {
    const event = {};
    fields.forEach((field, index) => {
      const value = values[index]?.value ?? null;
      event[field] = value?.text ?? (value !== null && typeof value === "object" ? value.toString() : value);
    });
    state.events.push({ item: name, ...event });
  });
  state.items.set(name, { item, fields });
  return { statusName: item.statusCode.name, id: item.monitoredItemId ?? null, subscription: subscription.subscriptionId };
}

async function modify({ name, filter }) {
  const { item, fields } = state.items.get(name);
  const result = await item.modify(
    { samplingInterval: 0, queueSize: 60, discardOldest: true, filter: constructEventFilter(fields, where(filter)) },
    TimestampsToReturn.Both,
  );
  return { statusName: result.statusCode.name };
}

async function mode({ name, mode: wanted }) {
  const status = await state.items.get(name).item.setMonitoringMode(MonitoringMode[wanted]);
  return { statusName: status.name };
}

// The events since the last time this was asked.
async function events() {
  const taken = state.events;
  state.events = [];
  return { events: taken };
}

async function disconnect() {
  await state.session?.close();
  await state.client?.disconnect();
  state.session = null;
  state.client = null;
  state.subscription = null;
  state.alarms = null;
  state.items.clear();
  return {};
}

const commands = {
  connect,
  read,
  attribute,
  tree,
  write,
  subscribe,
  changes,
  alarms,
  acknowledge,
  comment,
  call,
  watch,
  modify,
  mode,
  events,
  disconnect,
};

const lines = createInterface({ input: process.stdin });
for await (const line of lines) {
  const request = JSON.parse(line);
  let answer;
  try {
    answer = { ok: true, ...(await commands[request.command](request)) };
  } catch (error) {
    answer = { ok: false, error: String(error.message ?? error) };
  }
  process.stdout.write(JSON.stringify(answer) + "\n");
}
process.exit(0);
