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
