import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import { places } from '../harness/places.ts';
import { Session } from '../harness/session.ts';
import type { Workbench } from '../harness/workbench.ts';
import { type Frame, writePicture } from './write-picture.ts';

const still = join(places.root, 'extension/docs/pictures');
/** Too long for the package: in the repository only. */
const moving = join(places.root, '.github/pictures');
const size = { width: 1400, height: 875 };
/** Text and bench view alone: what the window around them is called is nobody's concern. */
const clip = { x: 52, y: 31, width: 1348, height: 812 };

/** Takes the pictures of README and manual in a real editor, from the samples, so that they show what there is now. */
export async function takePictures(workshop: string, text: (file: string) => string): Promise<void> {
    for (const folder of [still, moving]) mkdirSync(folder, { recursive: true });
    const home = mkdtempSync(join(tmpdir(), 'kerfbook-pictures-'));
    const session = new Session(home, workshop);
    try {
        const workbench = await session.open();
        await openTray(workbench);
        await workbench.theme('Light 2026', 'vscode-light');
        await workbench.page.setViewportSize(size);
        await workbench.command('View: Close Primary Side Bar').catch(() => undefined);
        await pocketChosen(workbench);
        await take(workbench.page, 'bench-view');
        await steps(workbench);
        await typing(workbench, text('heron-tray.kerf'));
        await pressed(workbench);
        await finding(workbench, text('heron-tray-faulty.kerf'));
    } finally {
        await session.close();
        rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
    }
}

async function openTray(workbench: Workbench): Promise<void> {
    await workbench.openFile('heron-tray.kerf');
    await workbench.openBench();
    await workbench.bench.getByRole('heading', { name: 'Heron serving tray' }).waitFor();
}

async function pocketChosen({ bench }: Workbench): Promise<void> {
    await bench.getByRole('tab', { name: /Engrave pocket/ }).click();
    await bench.getByRole('slider', { name: /^Depth of/ }).waitFor();
    await sleep(1500);
}

/** The film strip from its first frame to its last. */
async function steps({ bench, page }: Workbench): Promise<void> {
    const tabs = bench.getByRole('tablist', { name: /Film strip/ }).getByRole('tab');
    const frames: Frame[] = [];
    for (let index = 0; index < (await tabs.count()); index += 1) {
        await tabs.nth(index).click();
        await sleep(700);
        frames.push({ png: await page.screenshot({ clip }), stands: 1300 });
    }
    say('steps', writePicture(join(moving, 'steps.png'), frames));
}

/** A depth is typed over, and the picture, the numbers and a finding follow. */
async function typing(workbench: Workbench, text: string): Promise<void> {
    const { bench, page } = workbench;
    await bench.getByRole('tab', { name: /Engrave pocket/ }).click();
    const found = /depth 0\.54/.exec(text);
    if (found === null) throw new Error('heron-tray.kerf has no depth of 0.54');
    const until = text.slice(0, found.index + found[0].length).split('\n');
    await workbench.goTo('heron-tray.kerf', until.length, until.at(-1)!.length + 1);
    const frames: Frame[] = [];
    const look = async (stands: number) => {
        await sleep(900);
        frames.push({ png: await page.screenshot({ clip }), stands });
    };
    await look(1500);
    for (const key of ['Backspace', 'Backspace', '3']) {
        await page.keyboard.press(key);
        await look(700);
    }
    await sleep(1500);
    await look(3500);
    for (const key of ['Backspace', '5', '4']) {
        await page.keyboard.press(key);
        await look(600);
    }
    await look(2000);
    say('typing', writePicture(join(moving, 'typing.png'), frames));
    await workbench.command('File: Revert File');
}

async function pressed(workbench: Workbench): Promise<void> {
    const press = workbench.bench.locator('.press');
    await press.getByRole('button', { name: /^Press the halves$/ }).click();
    await press.locator('.press-section').waitFor();
    await press.scrollIntoViewIfNeeded();
    await sleep(1000);
    await take(workbench.page, 'pressed-halves');
}

/** What the editor says of a line, below it. */
async function finding(workbench: Workbench, text: string): Promise<void> {
    const { page } = workbench;
    await workbench.command('View: Close All Editors');
    await workbench.openFile('heron-tray-faulty.kerf');
    await page.locator('.squiggly-error').first().waitFor();
    const line = text.split('\n').findIndex((each) => each.trimStart().startsWith('engrave relief')) + 1;
    await workbench.goTo('heron-tray-faulty.kerf', line);
    await workbench.command('Go to Next Problem');
    await page.locator('.peekview-widget, .marker-widget').first().waitFor();
    await sleep(1500);
    await take(page, 'finding');
}

async function take(page: Page, name: string): Promise<void> {
    const png = await page.screenshot({ clip });
    say(name, writePicture(join(still, `${name}.png`), [{ png, stands: 0 }]));
}

function say(name: string, bytes: number): void {
    process.stdout.write(`${name.padEnd(16)} ${Math.round(bytes / 1000)} kB\n`);
}
