import { prepareGeometry } from '../../shared/geometry/engine';
import { Cancelled } from '../engine/jobs';
import { PlanEngine } from '../engine/plan-engine';
import type { FromWorker, Port, ToWorker } from './messages';

/** Least time between two stages that are told, ms. */
const betweenStages = 200;
/** Smaller steps are not worth a message. */
const leastProgress = 0.02;

/**
 * The worker's side: works jobs off in the order they come, once the compiled geometry is there or is
 * known not to be. `wasm` are its bytes.
 */
export function serveEngine(port: Port<ToWorker, FromWorker>, wasm: Uint8Array): void {
    let current = 0;
    let cancelled: Int32Array | undefined;
    let told = 0;
    let toldPart = 0;
    const fresh = () =>
        new PlanEngine(
            (stage) => {
                if (cancelled !== undefined && Atomics.load(cancelled, 0) >= current) throw new Cancelled();
                const now = Date.now();
                if (now - told < betweenStages) return;
                told = now;
                port.post({ kind: 'stage', id: current, stage });
            },
            (part) => {
                if (part - toldPart < leastProgress) return;
                toldPart = part;
                port.post({ kind: 'progress', id: current, part });
            },
        );
    let engine = fresh();
    let ready: Promise<unknown> = prepareGeometry({ binary: wasm }).catch(() => undefined);
    port.listen((message) => {
        if (message.kind === 'start') {
            if (message.cancelled !== undefined) cancelled = new Int32Array(message.cancelled);
            return;
        }
        ready = ready.then(() => {
            if (message.kind === 'forget') {
                engine = fresh();
                return;
            }
            if (message.kind === 'art') {
                engine.setArt(message.file);
                return;
            }
            current = message.id;
            told = 0;
            toldPart = 0;
            port.post(answer(engine, message));
        });
    });
}

function answer(engine: PlanEngine, { id, job }: Extract<ToWorker, { kind: 'job' }>): FromWorker {
    try {
        return { kind: 'answer', id, answer: engine.run(job) };
    } catch (error) {
        if (error instanceof Cancelled) return { kind: 'cancelled', id };
        return { kind: 'failed', id, message: error instanceof Error ? (error.stack ?? error.message) : String(error) };
    }
}
