// Ends with 0 when the client library is there and can be loaded.
import "node-opcua-client";
process.exit(0);
