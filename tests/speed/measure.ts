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
}

/**
 * Times (ms on the clock) over some runs of work that waits for others in between, after a tenth of them to warm up.
 * A function that the work gives back is done after it, off the clock.
 */
export async function spread(work: (run: number) => unknown, runs = 60): Promise<Spread> {
    const times: number[] = [];
    for (let run = -Math.ceil(runs / 10); run < runs; run++) {
        const start = performance.now();
        const afterwards = await work(run);
        if (run >= 0) times.push(performance.now() - start);
        if (typeof afterwards === 'function') await afterwards();
    }
    times.sort((a, b) => a - b);
    return { median: times[Math.floor(runs / 2)]!, p95: times[Math.min(runs - 1, Math.floor(runs * 0.95))]! };
}
