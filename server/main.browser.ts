import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { LocalAsker } from './engine/asker';
import { clientFileSystem, clientReader } from './files/client-files';
import { ClientStore } from './files/client-store';
import { wasmBinary } from './geometry-binary';
import { serveLanguage } from './language-server';
import { inOrder } from './protocol/message-order';
import { PlanQueue } from './worker/plan-queue';
import { serveEngine } from './worker/serve-engine';
import { engineName, webPort, workerSelf } from './worker/web-port';

// Entry of the language server in a browser's worker. The same file serves as its engine's worker, told apart by name.
const here = workerSelf();
if (here.name === engineName) {
    serveEngine(
        {
            post: (message) => here.postMessage(message),
            listen: (receive) => here.addEventListener('message', (event) => receive(event.data)),
        },
        wasmBinary(),
    );
} else {
    const connection = createConnection(new BrowserMessageReader(here), new BrowserMessageWriter(here), inOrder());
    const asker = canNest() ? new PlanQueue((died) => webPort(here.location.href, died)) : new LocalAsker();
    serveLanguage({
        connection,
        fileSystem: clientFileSystem(connection),
        read: clientReader(connection),
        asker,
        openStore: (folder) => new ClientStore(connection, folder),
    });
}

/** Whether a worker can start a worker here; where it cannot, plans are made between two messages. */
function canNest(): boolean {
    return typeof Worker === 'function' && /^(https?|blob):/.test(here.location.href);
}
