import type { FromWorker, Port, ToWorker } from './messages';

/** Name by which the server's script knows that it is the engine's worker. */
export const engineName = 'kerfbook-engine';

export function webPort(script: string, died: () => void): Port<FromWorker, ToWorker> {
    const worker = new Worker(script, { name: engineName });
    worker.addEventListener('error', () => {
        worker.terminate();
        died();
    });
    return {
        post: (message) => worker.postMessage(message),
        listen: (receive) => worker.addEventListener('message', (event: MessageEvent<FromWorker>) => receive(event.data)),
    };
}

/** What a worker's global scope has of interest here; the DOM's types only know the window. */
export interface WorkerSelf extends Worker {
    readonly name: string;
    readonly location: Location;
}

export function workerSelf(): WorkerSelf {
    return globalThis as unknown as WorkerSelf;
}
