import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import vm from 'node:vm';
import MiniSearch from 'minisearch';
import { afterAll, beforeAll, expect, test } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
let site = '';
beforeAll(() => {
    site = mkdtempSync(path.join(tmpdir(), 'kerfbook-site-'));
    execFileSync(process.execPath, [path.join(root, '.config/docs.mjs'), site], { stdio: 'pipe' });
}, 60_000);
afterAll(() => rmSync(site, { recursive: true, force: true }));

test('each page of the manual is a page of the site, and every link and picture in it leads somewhere', () => {
    const sources = readdirSync(path.join(root, 'extension/docs')).filter((name) => name.endsWith('.md'));
    const pages = new Map(
        readdirSync(site)
            .filter((name) => name.endsWith('.html'))
            .map((name) => [name, readFileSync(path.join(site, name), 'utf8')]),
    );
    expect([...pages.keys()].toSorted()).toEqual(
        sources.map((name) => name.replace('README', 'index').replace('.md', '.html')).toSorted(),
    );
    const faults: string[] = [];
    for (const [page, text] of pages) {
        for (const [, kind, target] of text.matchAll(/\b(href|src)="([^"]+)"/g)) {
            if (/^https?:/.test(target!)) {
                if (kind === 'src') faults.push(`${page}: fetches ${target}`);
                continue;
            }
            const [file, anchor] = target!.split('#');
            const at = file === '' ? page : decodeURIComponent(file!);
            if (!existsSync(path.join(site, at))) faults.push(`${page}: there is no ${target}`);
            else if (anchor !== undefined && !pages.get(at)?.includes(`id="${decodeURIComponent(anchor)}"`))
                faults.push(`${page}: ${target} has no such heading`);
        }
    }
    expect(faults).toEqual([]);
});

test('the search finds a section by its words, and each section that it knows is there', () => {
    const context = vm.createContext({});
    vm.runInContext(readFileSync(path.join(site, 'sections.js'), 'utf8'), context);
    const { sections } = context as { sections: { id: string; title: string; text: string; page: string }[] };
    // Several pages have a section of this name: the result says of which.
    const faults = sections.filter(({ title }) => title === 'What goes wrong most often').map(({ page }) => page);
    expect(faults).toContain('Filled engraving');
    expect(new Set(faults).size).toBe(faults.length);
    const index = new MiniSearch({ fields: ['title', 'text'], storeFields: ['title'] });
    index.addAll(sections);
    const first = (words: string) => index.search(words, { prefix: true, combineWith: 'AND', boost: { title: 4 } })[0]?.id;
    expect(first('clearance')).toMatch(/^(inlay|language|rules|glossary)\.html#/);
    expect(first('origin extents')).toBe('machine.html#origin-and-extents');
    const lost = sections.filter(({ id }) => {
        const [file, anchor] = id.split('#');
        return !readFileSync(path.join(site, file!), 'utf8').includes(`id="${anchor}"`);
    });
    expect(lost).toEqual([]);
});
