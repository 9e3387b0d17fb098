import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import { Session } from '../harness/session.ts';
import type { Workbench } from '../harness/workbench.ts';

/** A number that somebody types at: its line, and what stands before the place where digits come and go. */
const places = [
    { file: 'gate-sign.kerf', number: /take 0\.1/ },
    { file: 'tide-coaster.kerf', number: /depth 0\.95/ },
    { file: 'seed-box.kerf', number: /wait 12/ },
    { file: 'heron-tray.kerf', number: /depth 0\.54/ },
    { file: 'heron-tray-faulty.kerf', number: /depth 3\.8/ },
];
const keystrokes = 40;

/**
 * From a key going down in the text to the picture being painted, in a real editor, in ms. The
 * clock is the browser's own in both pages, so nothing of the harness is counted.
 */
export async function runSpeed(workshop: string, text: (file: string) => string): Promise<void> {
    const home = mkdtempSync(join(tmpdir(), 'kerfbook-speed-'));
    const session = new Session(home, workshop);
    try {
        const workbench = await session.open();
        await watchKeys(workbench.page);
        for (const { file, number } of places) {
            const before = text(file);
            const found = number.exec(before);
            if (found === null) throw new Error(`${file} has no such number`);
            await workbench.openFile(file);
            await workbench.command('Kerfbook: Open Bench View to the Side');
            await workbench.bench.getByRole('tablist', { name: /Film strip/ }).waitFor();
            const until = before.slice(0, found.index + found[0].length).split('\n');
            await workbench.goTo(file, until.length, until.at(-1)!.length + 1);
            await sleep(3000);
            report(file, await typeThere(workbench));
            await workbench.command('View: Close Other Editors in Group').catch(() => undefined);
            await workbench.command('File: Revert File').catch(() => undefined);
            await workbench.page.keyboard.press('Control+k');
            await workbench.page.keyboard.press('Control+w');
            await sleep(1000);
        }
    } finally {
        await session.close();
        rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
    }
}

async function typeThere({ bench, page }: Workbench): Promise<number[]> {
    await bench.locator('body').evaluate(() => {
        const pictures: { textVersion: number; at: number }[] = [];
        Object.assign(globalThis, { pictures });
        addEventListener('message', ({ data }) => {
            if (data?.type !== 'picture') return;
            // The page has taken the picture by now; behind the next frame it has been painted.
            requestAnimationFrame(() => {
                const channel = new MessageChannel();
                channel.port1.onmessage = () => {
                    const { textVersion } = data.view;
                    // A second picture of the same text brings only the fixes.
                    if (pictures.at(-1)?.textVersion !== textVersion)
                        pictures.push({ textVersion, at: performance.timeOrigin + performance.now() });
                };
                channel.port2.postMessage(0);
            });
        });
    });
    const times: number[] = [];
    for (let i = 0; i < keystrokes; i += 1) {
        const had = await painted(bench);
        await page.keyboard.press(i % 2 === 0 ? String(1 + ((i / 2) % 9)) : 'Backspace');
        const key = await page.evaluate(() => (globalThis as unknown as { lastKey: number }).lastKey);
        const end = Date.now() + 20_000;
        let now = had;
        while (now.length === had.length && Date.now() < end) {
            await sleep(20);
            now = await painted(bench);
        }
        times.push((now[had.length]?.at ?? Number.NaN) - key);
        // As fast as a person types, and not so fast that one key would wait for another.
        await sleep(350);
    }
    return times.slice(4);
}

interface Painted {
    readonly textVersion: number;
    /** Milliseconds since 1970. */
    readonly at: number;
}

function painted(bench: Workbench['bench']): Promise<Painted[]> {
    return bench.locator('body').evaluate(() => [...(globalThis as unknown as { pictures: Painted[] }).pictures]);
}

function watchKeys(page: Page): Promise<void> {
    return page.evaluate(() => {
        addEventListener(
            'keydown',
            ({ timeStamp }) => Object.assign(globalThis, { lastKey: performance.timeOrigin + timeStamp }),
            true,
        );
    });
}

function report(file: string, times: readonly number[]): void {
    const sorted = times.filter(Number.isFinite).sort((a, b) => a - b);
    const at = (part: number) => (sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))] ?? Number.NaN).toFixed(0);
    const lost = times.length - sorted.length;
    process.stdout.write(
        `${file.padEnd(26)} keystroke to paint: median ${at(0.5)} ms, p95 ${at(0.95)} ms, least ${at(0)} ms over ${sorted.length} keys${lost > 0 ? `, ${lost} never painted` : ''}\n`,
    );
}
