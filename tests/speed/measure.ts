import { availableParallelism, loadavg } from 'node:os';

/** Median time (ms of processor, so that other work on the machine counts less) over some runs, after one to warm up. */
export function median(work: () => unknown, runs = 5): number {
    work();
    const times = Array.from({ length: runs }, () => {
        const start = process.cpuUsage();
        work();
        const { user, system } = process.cpuUsage(start);
        return (user + system) / 1000;
    });
    return times.sort((a, b) => a - b)[Math.floor(runs / 2)]!;
}

/** One line of a benchmark: what, how long, and how that compares. */
export function report(what: string, milliseconds: number, ...remarks: string[]): void {
    console.log(`${what.padEnd(46)} ${milliseconds.toFixed(1).padStart(9)} ms  ${remarks.join(', ')}`);
}

export interface Spread {
    readonly median: number;
    /** 19 of 20 runs take no longer. */
    readonly p95: number;
    /** Median of the processor's time (ms) in this process, which other work on the machine touches less. */
    readonly processor: number;
}

/**
 * Times (ms on the clock) over some runs of work that waits for others in between, after a tenth of them to warm up.
 * A function that the work gives back is done after it, off the clock.
 */
export async function spread(work: (run: number) => unknown, runs = 60): Promise<Spread> {
    const times: number[] = [];
    const worked: number[] = [];
    for (let run = -Math.ceil(runs / 10); run < runs; run++) {
        const before = process.cpuUsage();
        const start = performance.now();
        const afterwards = await work(run);
        const taken = performance.now() - start;
        const { user, system } = process.cpuUsage(before);
        if (run >= 0) {
            times.push(taken);
            worked.push((user + system) / 1000);
        }
        if (typeof afterwards === 'function') await afterwards();
    }
    const [clock, processor] = [times, worked].map((each) => each.sort((a, b) => a - b));
    const middle = Math.floor(runs / 2);
    return { median: clock![middle]!, p95: clock![Math.min(runs - 1, Math.floor(runs * 0.95))]!, processor: processor![middle]! };
}

/** How busy the machine is otherwise, so that times on the clock can be judged. */
export function reportLoad(): void {
    const [minute = 0] = loadavg();
    console.log(`${minute.toFixed(1)} jobs at work on ${availableParallelism()} processors before this`);
}
