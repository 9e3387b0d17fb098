import { describe, expect, it } from 'vitest';
import { importsOf, sourceFiles } from './source-files';

/** The trade's rooms, each knowing only those before it. DEVELOPERS.md says what each holds. */
const rooms = [
    'quantity',
    'recipe',
    'geometry',
    'art',
    'burn',
    'toolpath',
    'bench',
    'piece',
    'plan',
    'rules',
    'sheets',
    'view',
    'review',
    'week',
    'tablet',
];

const roomOf = (file: string): string | undefined => /^shared\/([^/]+)\//.exec(file)?.[1];

describe('dependencies point one way', () => {
    // What every place has is declared beside the rooms, without code.
    const files = sourceFiles('shared').filter(({ path }) => !path.endsWith('.d.ts'));

    it('every room of the trade is known here', () => {
        expect([...new Set(files.map((file) => roomOf(file.path)))].filter((room) => !rooms.includes(room ?? ''))).toEqual([]);
    });

    it('each room of the trade imports only from the rooms before it', () => {
        const wrong: string[] = [];
        for (const file of files) {
            const from = roomOf(file.path);
            for (const name of importsOf(file)) {
                const to = roomOf(`${name}/`);
                if (from === undefined || to === undefined || from === to) continue;
                if (rooms.indexOf(to) > rooms.indexOf(from)) wrong.push(`${file.path} imports ${name}`);
            }
        }
        expect(wrong).toEqual([]);
    });

    it('the trade imports no editor, no files, no Langium and no Node', () => {
        const wrong = files.flatMap((file) =>
            importsOf(file)
                .filter((name) => /^(vscode|langium|node:|fs$|path$)/.test(name))
                .map((name) => `${file.path}: ${name}`),
        );
        expect(wrong).toEqual([]);
    });

    it('finds imports at all', () => {
        expect(files.flatMap(importsOf).length).toBeGreaterThan(200);
    });
});
