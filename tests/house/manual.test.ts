import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { runIn } from '../kit/run-in';

const root = fileURLToPath(new URL('../..', import.meta.url));
const docs = path.join(root, 'extension', 'docs');
const pages = [
    ...['README.md', 'DEVELOPERS.md', 'samples/README.md', '.github/CONTRIBUTING.md', '.github/SECURITY.md'],
    ...readdirSync(docs).flatMap((name) => (name.endsWith('.md') ? [`extension/docs/${name}`] : [])),
];
const read = (page: string): string => readFileSync(path.join(root, page), 'utf8');

/** Without what stands in fences or between back-ticks. */
const prose = (page: string): string =>
    read(page)
        .replaceAll(/^```.*?^```/gms, '')
        .replaceAll(/`[^`\n]*`/g, '');

/** The anchors of a page's headings, as GitHub and VS Code make them. */
function anchorsOf(text: string): string[] {
    return [...text.replaceAll(/^```.*?^```/gms, '').matchAll(/^#+ (.+)$/gm)].map(([, heading]) =>
        heading!
            .toLowerCase()
            .replaceAll(/[^\p{L}\p{N} _-]/gu, '')
            .trim()
            .replaceAll(' ', '-'),
    );
}

test('every link leads somewhere, and every picture says what is to be seen', () => {
    const faults: string[] = [];
    let links = 0;
    for (const page of pages) {
        for (const [, mark, words, target] of prose(page).matchAll(/(!?)\[([^\]]*)\]\(([^)\s]+)\)/g)) {
            if (mark === '!' && words!.length < 20) faults.push(`${page}: ${target} has no words for those who do not see it`);
            if (/^[a-z]+:/.test(target!)) continue;
            links += 1;
            const [file, anchor] = target!.split('#');
            const at = file === '' ? path.join(root, page) : path.resolve(root, path.dirname(page), file!);
            if (!existsSync(at)) faults.push(`${page}: there is no ${target}`);
            else if (anchor !== undefined && at.endsWith('.md') && !anchorsOf(readFileSync(at, 'utf8')).includes(anchor))
                faults.push(`${page}: ${target} has no such heading`);
        }
    }
    expect(faults).toEqual([]);
    expect(links).toBeGreaterThan(40);
});

test('every page of the manual is linked from its index, which the README names', () => {
    expect(prose('README.md')).toContain('(extension/docs/README.md)');
    const linked = prose('extension/docs/README.md');
    for (const page of pages.filter((each) => each.startsWith('extension/docs/') && !each.endsWith('README.md')))
        expect(linked).toContain(`(${path.basename(page)})`);
});

test('the README is one that somebody reads: the job in its first paragraph, at most 600 words', () => {
    const [heading, first] = read('README.md').split('\n\n');
    expect(heading).toBe('# Kerfbook');
    expect(first!.split(/\s+/).length).toBeGreaterThan(60);
    expect(read('README.md').split(/\s+/).filter(Boolean).length).toBeLessThanOrEqual(600);
});

test('what Getting Started says can be done as it stands there', async () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'kerfbook-manual-'));
    try {
        const text = read('extension/docs/getting-started.md');
        // The first command begins a recipe in a folder where there is nothing yet.
        const [begin, ...commands] = [...text.matchAll(/^kerfbook (.+)$/gm)].map(([, line]) => line!);
        mkdirSync(path.join(folder, 'new'));
        const begun = await runIn(path.join(folder, 'new'), words(begin!));
        expect(begun.code).toBe(0);
        expect(begun.out).toContain('door-plate.kerf');
        const blocks = [...text.matchAll(/^```(?:kerf|svg)\n(?:\/\/|<!--) (\S+)(?: -->)?\n(.*?)^```/gms)];
        expect(blocks.map(([, name]) => name)).toEqual(['workshop.kerf', 'coaster.kerf', 'art/tide.svg']);
        const there = path.join(folder, 'there');
        mkdirSync(path.join(there, 'art'), { recursive: true });
        for (const [, name, body] of blocks) writeFileSync(path.join(there, name!), body!);
        const checked = await runIn(there, ['check', '--strict']);
        expect(checked.out).toContain('2 files: 0 errors, 0 warnings');
        expect(commands.map((line) => words(line)[0])).toEqual(['check', 'coupon', 'build']);
        for (const line of commands) expect((await runIn(there, words(line))).code).toBe(0);
        expect(existsSync(path.join(there, 'made', 'coaster', 'job-sheet.html'))).toBe(true);
    } finally {
        rmSync(folder, { recursive: true, force: true });
    }
});

function words(line: string): string[] {
    return [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain!);
}
