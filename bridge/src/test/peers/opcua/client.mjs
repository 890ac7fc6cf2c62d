// An OPC UA client that is told what to do: one JSON object a line on standard input, one JSON
// object a line on standard output. Its certificates lie in the folder given as the first argument.
import { createInterface } from "node:readline";
import { join } from "node:path";
import { OPCUACertificateManager } from "node-opcua-certificate-manager";
import {
  AttributeIds,
  BrowseDirection,
  DataChangeFilter,
  DataChangeTrigger,
  DataType,
  DeadbandType,
  MessageSecurityMode,
  OPCUAClient,
  SecurityPolicy,
  TimestampsToReturn,
  Variant,
} from "node-opcua-client";

const folder = process.argv[2];
const state = { client: null, session: null, subscription: null, changes: [] };

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

async function disconnect() {
  await state.session?.close();
  await state.client?.disconnect();
  state.session = null;
  state.client = null;
  state.subscription = null;
  return {};
}

const commands = { connect, read, attribute, tree, write, subscribe, changes, disconnect };

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
