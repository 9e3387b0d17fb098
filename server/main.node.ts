import path from 'node:path';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { inOrder } from './protocol/message-order';
import { serveNode } from './serve-node';

// Entry of the language server in Node: speaks over what the command line says (--node-ipc, --stdio, --socket=N).
serveNode(createConnection(ProposedFeatures.all, inOrder()), path.join(__dirname, 'worker.cjs'));
