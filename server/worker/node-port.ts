import { Worker } from 'node:worker_threads';
import type { FromWorker, Port, ToWorker } from './messages';

/** Most memory one plan may take, MB; beyond it the worker dies and is started anew, and the server lives. */
const mostMemory = 2048;
/** What a plan leaves dies soon: with less room for it than the engine would take, the process stays some 40 MB smaller. */
const youngMemory = 24;

export function nodePort(file: string, died: () => void): Port<FromWorker, ToWorker> {
    const worker = new Worker(file, {
        resourceLimits: { maxOldGenerationSizeMb: mostMemory, maxYoungGenerationSizeMb: youngMemory },
    });
    // A server that has been told to go must not be held up by its worker.
    worker.unref();
    let gone = false;
    const once = (): void => {
        if (!gone) died();
        gone = true;
    };
    worker.on('error', once);
    worker.on('exit', (code) => (code === 0 ? undefined : once()));
    return {
        post: (message) => worker.postMessage(message),
        listen: (receive) => worker.on('message', receive),
        end: () => {
            gone = true;
            void worker.terminate();
        },
    };
}
