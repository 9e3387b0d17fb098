import { expect, it } from 'vitest';
import { CancellationTokenSource, type Connection } from 'vscode-languageserver';
import { PlanProgress } from '../../server/workshop/plan-progress';

/** An editor that writes down what it is told. */
function editor() {
    const told: string[] = [];
    const source = new CancellationTokenSource();
    const bar = {
        token: source.token,
        begin: (title: string) => told.push(title),
        report: (share: number, message: string) => told.push(`${Math.round(share)} % ${message}`),
        done: () => told.push('done'),
    };
    const connection = { window: { createWorkDoneProgress: async () => bar } } as unknown as Connection;
    return { told, source, progress: new PlanProgress(connection) };
}

it('tells how far many recipes are, and nothing of a few', async () => {
    const { told, progress } = editor();
    await Promise.all(Array.from({ length: 3 }, () => progress.during(async () => {})));
    expect(told).toEqual([]);
    const work = Array.from({ length: 8 }, (_, index) =>
        progress.during(() => new Promise((done) => setTimeout(done, 5 * index))),
    );
    await Promise.all(work);
    await new Promise((resolve) => setTimeout(resolve));
    expect(told[0]).toBe('Working out recipes');
    expect(told).toContain('50 % 4 of 8');
    expect(told.at(-1)).toBe('done');
});

it('stops when it is told to, until the next time', async () => {
    const { source, progress } = editor();
    const waiting = Array.from({ length: 8 }, () => progress.during(() => new Promise((done) => setTimeout(done, 20))));
    await new Promise((resolve) => setTimeout(resolve));
    source.cancel();
    expect(progress.isStopped).toBe(true);
    await Promise.all(waiting);
    expect(progress.isStopped).toBe(false);
});
