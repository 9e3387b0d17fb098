import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { root } from './source-files';

/** What each room may not know, one expression a line: with each of them a file of the room must not compile. */
const foreign: Readonly<Record<string, readonly string[]>> = {
    trade: ['document.title', 'window.name', 'Buffer.from("")', 'process.exit()', 'setTimeout(() => 1)', 'fetch("x")'],
    pages: ['Buffer.from("")', 'process.exit()'],
    language: ['document.title', 'window.name', 'Buffer.from("")', 'process.exit()', 'fetch("x")'],
    extension: ['document.title', 'window.name'],
    webview: ['Buffer.from("")', 'process.exit()'],
};

mkdirSync(path.join(root, 'out'), { recursive: true });
const folder = mkdtempSync(path.join(root, 'out', 'walls-'));
afterAll(() => rmSync(folder, { recursive: true }));

function compile(room: string, lines: readonly string[]): string {
    const probe = path.join(folder, `${room}.ts`);
    writeFileSync(probe, `${lines.map((line) => `${line};`).join('\n')}\nexport {};\n`);
    const config = path.join(folder, `${room}.json`);
    // The room's declarations come along, since they could bring in what the room must not know.
    const settings = {
        extends: `../../.config/types/${room}.json`,
        include: [probe, path.join(root, 'shared/**/*.d.ts')],
        exclude: [],
    };
    writeFileSync(config, JSON.stringify(settings));
    const compiler = path.join(root, 'node_modules/typescript/bin/tsc');
    const { stdout } = spawnSync(process.execPath, [compiler, '-p', config, '--pretty', 'false'], {
        cwd: root,
        encoding: 'utf8',
    });
    return stdout;
}

describe('what a room must not know does not compile there', () => {
    for (const [room, lines] of Object.entries(foreign)) {
        it(`${room}: ${lines.join(', ')}`, () => {
            const said = compile(room, lines);
            const refused = new Set([...said.matchAll(/\((\d+),\d+\): error/g)].map(([, line]) => Number(line)));
            expect(lines.filter((_, i) => !refused.has(i + 1))).toEqual([]);
        });
    }

    it('and what it may know does', () => {
        expect(compile('trade', ['btoa("")', 'new Map()'])).toBe('');
        expect(compile('extension', ['Buffer.from("")'])).toBe('');
    });
});

describe('clock and chance', () => {
    const plugin = '.config/lint/no-clock-or-chance.grit';
    const lint = (text: string): string => {
        writeFileSync(path.join(folder, 'biome.json'), JSON.stringify({ root: true, plugins: [path.join(root, plugin)] }));
        writeFileSync(path.join(folder, 'probe.ts'), text);
        const biome = path.join(root, 'node_modules/@biomejs/biome/bin/biome');
        const { stdout, stderr } = spawnSync(process.execPath, [biome, 'lint', 'probe.ts'], { cwd: folder, encoding: 'utf8' });
        return stdout + stderr;
    };
    for (const call of ['Math.random()', 'Date.now()', 'new Date()']) {
        it(`${call} is refused`, () => {
            expect(lint(`export const probe = ${call};\n`)).toContain('no clock and no chance');
        });
    }
    it('in the trade and in the language', () => {
        const { overrides } = JSON.parse(readFileSync(path.join(root, 'biome.json'), 'utf8')) as {
            overrides: { includes: string[]; plugins?: string[] }[];
        };
        const held = overrides.filter(({ plugins }) => plugins?.includes(`./${plugin}`)).flatMap(({ includes }) => includes);
        expect(held).toEqual(['shared/**', 'language/**']);
    });
    it('a stated moment is not', () => {
        expect(lint('export const probe = new Date(0);\n')).not.toContain('no clock');
    });
});
