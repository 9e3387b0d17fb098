import { parentPort } from 'node:worker_threads';
import { wasmBinary } from '../geometry-binary';
import type { FromWorker, ToWorker } from './messages';
import { serveEngine } from './serve-engine';

// The language server's worker thread in Node.
const port = parentPort;
if (port !== null) {
    serveEngine(
        {
            post: (message: FromWorker) => port.postMessage(message),
            listen: (receive) => port.on('message', (message: ToWorker) => receive(message)),
        },
        wasmBinary(),
    );
}
