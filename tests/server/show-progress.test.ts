import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Connection } from 'vscode-languageserver';
import { ShownProgress } from '../../server/show-progress';

beforeEach(() => {
    vi.useFakeTimers();
});
afterEach(() => {
    vi.useRealTimers();
});

/** A client that writes down what it is shown. */
function client() {
    const shown: string[] = [];
    let press = (): void => {};
    const reporter = {
        begin: (title: string, _share: unknown, message?: string) => shown.push(`begin ${title}: ${message}`),
        report: (message: string) => shown.push(message),
        done: () => shown.push('done'),
        token: {
            onCancellationRequested: (listen: () => void) => {
                press = listen;
            },
        },
    };
    const connection = { window: { createWorkDoneProgress: async () => reporter } } as unknown as Connection;
    return { connection, shown, press: () => press() };
}

describe('progress in the editor', () => {
    it('shows long work with its stages, and lets it be cancelled', async () => {
        const { connection, shown, press } = client();
        const progress = new ShownProgress(connection);
        progress.able = true;
        const cancel = vi.fn();
        const job = progress.begun('Working out tray', cancel);
        job.stage('art');
        await vi.advanceTimersByTimeAsync(1500);
        job.stage('settings');
        job.stage('hatch');
        job.stage('hatch');
        press();
        expect(cancel).toHaveBeenCalledOnce();
        job.ended();
        expect(shown).toEqual(['begin Working out tray: reading the art', 'laying out scan lines', 'done']);
    });
    it('says nothing of quick work, nor to a client that cannot show it', async () => {
        const { connection, shown } = client();
        const progress = new ShownProgress(connection);
        progress.begun('Working out tray', () => {});
        await vi.advanceTimersByTimeAsync(5000);
        progress.able = true;
        progress.begun('Working out tray', () => {}).ended();
        await vi.advanceTimersByTimeAsync(5000);
        expect(shown).toEqual([]);
    });
});
