import { chmodSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { TemporaryRepository, temporaryRepository } from '../kit/temporary-repository';

const recipe = (depth: string, note = 'Thin.') => `// Of the ferry house.
recipe tray "Tray" {
  issue 3
  blank tray { of walnut-12  size 300 x 200 mm  grain along width }
  engrave pocket on tray {
    circle 80 mm
    depth ${depth}
  }
  seal tray with shellac { coats 2 }
}

run tray 2026-11-20 {
  issue 3
  note "${note}"
}
`;
const base = recipe('0.54 mm');
const run = (day: string, note: string) => `\nrun tray ${day} {\n  issue 3\n  note "${note}"\n}\n`;
const wide = (text: string) => text.replaceAll('\n', '\r\n');
const latin = (text: string) => Buffer.from(text, 'latin1');

interface Scenario {
    readonly base: string | Buffer;
    /** Absent where the branch takes the file away. */
    readonly ours?: string | Buffer;
    readonly theirs?: string | Buffer;
    /** What comes out where git says that it is merged. */
    readonly merged?: string | Buffer;
    /** What stands in a file that git says is not. */
    readonly holds?: readonly string[];
}

const many = `${base}\nboard walnut-12 { wood black-walnut  thickness 12 mm }\n`;

const scenarios: Readonly<Record<string, Scenario>> = {
    'both add a run': {
        base,
        ours: base + run('2026-11-27', 'ours'),
        theirs: base + run('2026-11-28', 'theirs'),
        merged: base + run('2026-11-27', 'ours') + run('2026-11-28', 'theirs'),
    },
    'both add a run of one day': {
        base,
        ours: base + run('2026-11-27', 'ours'),
        theirs: base + run('2026-11-27', 'theirs'),
        merged: base + run('2026-11-27', 'ours') + run('2026-11-27', 'theirs'),
    },
    'both add the same run': {
        base,
        ours: base + run('2026-11-27', 'both'),
        theirs: base + run('2026-11-27', 'both'),
        merged: base + run('2026-11-27', 'both'),
    },
    'lines beside each other': {
        base,
        ours: base.replace('circle 80 mm', 'circle 70 mm'),
        theirs: base.replace('0.54 mm', '0.56 mm'),
        merged: base.replace('circle 80 mm', 'circle 70 mm').replace('0.54 mm', '0.56 mm'),
    },
    'two properties on one line': {
        base,
        ours: base.replace('of walnut-12 ', 'of ash-10 '),
        theirs: base.replace('300 x 200', '280 x 200'),
        merged: base.replace('of walnut-12 ', 'of ash-10 ').replace('300 x 200', '280 x 200'),
    },
    'unlike steps': {
        base,
        ours: base.replace('coats 2', 'coats 3'),
        theirs: base.replace('0.54 mm', '0.56 mm'),
        merged: base.replace('coats 2', 'coats 3').replace('0.54 mm', '0.56 mm'),
    },
    'the same figure': { base, ours: recipe('0.56 mm'), theirs: recipe('0.50 mm'), holds: ['depth 0.56 mm', 'depth 0.50 mm'] },
    'the same figure alike': {
        base,
        ours: recipe('0.56 mm'),
        theirs: recipe('0.56 mm', 'Thick.'),
        merged: recipe('0.56 mm', 'Thick.'),
    },
    'a step renamed': {
        base,
        ours: base.replace('engrave pocket on tray {\n', 'engrave hollow on tray {\n    was pocket\n'),
        theirs: recipe('0.56 mm'),
        merged: recipe('0.56 mm').replace('engrave pocket on tray {\n', 'engrave hollow on tray {\n    was pocket\n'),
    },
    'a recipe renamed, a step edited': {
        base,
        ours: base.replace('recipe tray', 'recipe platter'),
        theirs: recipe('0.56 mm'),
        merged: recipe('0.56 mm').replace('recipe tray', 'recipe platter'),
    },
    'a board renamed': {
        base: many,
        ours: many.replace('board walnut-12', 'board walnut-old'),
        theirs: many.replace('thickness 12', 'thickness 11.8'),
        merged: many.replace('board walnut-12', 'board walnut-old').replace('thickness 12', 'thickness 11.8'),
    },
    'a step taken away and edited': {
        base,
        ours: base.replace('  seal tray with shellac { coats 2 }\n', ''),
        theirs: base.replace('coats 2', 'coats 3'),
        holds: ['<<<<<<< ours\n=======\n  seal tray with shellac { coats 3 }\n>>>>>>> theirs\n'],
    },
    'a run taken away, a step edited': {
        base,
        ours: base.slice(0, base.indexOf('\nrun ')),
        theirs: recipe('0.56 mm'),
        merged: recipe('0.56 mm').slice(0, recipe('0.56 mm').indexOf('\nrun ')),
    },
    'another order': {
        base: many,
        ours: `board walnut-12 { wood black-walnut  thickness 12 mm }\n\n${base}`,
        theirs: many.replace('0.54 mm', '0.56 mm'),
        merged: `board walnut-12 { wood black-walnut  thickness 12 mm }\n\n${recipe('0.56 mm')}`,
    },
    'both add a step': {
        base,
        ours: base.replace('  seal', '  mask tray\n  seal'),
        theirs: base.replace('  seal', '  peel tray\n  seal'),
        holds: ['<<<<<<< ours\n  mask tray\n=======\n  peel tray\n>>>>>>> theirs\n  seal tray'],
    },
    'wide line ends': {
        base: wide(base),
        ours: wide(recipe('0.56 mm')),
        theirs: wide(base + run('2026-11-28', 'theirs')),
        merged: wide(recipe('0.56 mm') + run('2026-11-28', 'theirs')),
    },
    'wide line ends on one side': {
        base,
        ours: recipe('0.56 mm'),
        theirs: wide(base + run('2026-11-28', 'theirs')),
        merged: wide(recipe('0.56 mm') + run('2026-11-28', 'theirs')),
    },
    'a byte order mark': {
        base: `\uFEFF${base}`,
        ours: `\uFEFF${recipe('0.56 mm')}`,
        theirs: `\uFEFF${base.replace('coats 2', 'coats 3')}`,
        merged: `\uFEFF${recipe('0.56 mm').replace('coats 2', 'coats 3')}`,
    },
    'broken text, lines far apart': {
        base,
        ours: recipe('0.54 mm {'),
        theirs: recipe('0.54 mm', 'Thick.'),
        merged: recipe('0.54 mm {', 'Thick.'),
    },
    'broken text, one line': {
        base,
        ours: recipe('0.56 mm {'),
        theirs: recipe('0.50 mm'),
        holds: ['<<<<<<< ours', 'depth 0.56 mm {', 'depth 0.50 mm', '>>>>>>> theirs'],
    },
    'not UTF-8': {
        base: latin(recipe('0.54 mm', 'Ä')),
        ours: latin(recipe('0.56 mm', 'Ä')),
        theirs: latin(recipe('0.54 mm', 'Ö')),
        merged: latin(recipe('0.56 mm', 'Ö')),
    },
    'no text at all': {
        base: Buffer.from([0, 1, 2, 3]),
        ours: Buffer.from([0, 1, 2, 4]),
        theirs: Buffer.from([0, 1, 2, 5]),
        holds: ['\u0000\u0001\u0002\u0004'],
    },
    'a file taken away and edited': { base, theirs: recipe('0.56 mm'), holds: ['0.56 mm'] },
    'an empty file': {
        base: '',
        ours: run('2026-11-27', 'ours').trimStart(),
        theirs: run('2026-11-28', 'theirs').trimStart(),
        merged: `${run('2026-11-27', 'ours')}${run('2026-11-28', 'theirs')}`.trimStart(),
    },
};

const fileOf = (name: string) => `${name.replaceAll(/[ ,]+/g, '-')}.kerf`;

/** What git does itself, or only a driver that it starts can show: the rest is seen without a process for each file. */
const throughGit = ['both add a run', 'the same figure', 'broken text, one line', 'not UTF-8', 'a file taken away and edited'];

function expectMerge({ merged, holds }: Scenario, bytes: Buffer, conflicts: boolean): void {
    if (merged !== undefined) expect(bytes.toString('latin1')).toBe(Buffer.from(merged as string).toString('latin1'));
    expect(conflicts).toBe(merged === undefined);
    for (const words of holds ?? []) expect(bytes.toString('utf8')).toContain(words);
}

describe('git merges recipes', () => {
    let repo: TemporaryRepository;
    let left: Set<string>;

    /** One merge of all: each file is merged by a driver of its own. */
    beforeAll(() => {
        repo = new TemporaryRepository({ '.gitattributes': '*.kerf merge=kerfbook -text\n' });
        repo.git('config', 'merge.kerfbook.driver', `${repo.command} merge %O %A %B --marker-size %L --path %P`);
        const write = (side: 'base' | 'ours' | 'theirs') => {
            for (const name of throughGit) {
                const bytes = scenarios[name]![side];
                if (bytes === undefined) repo.git('rm', '--quiet', fileOf(name));
                else writeFileSync(path.join(repo.folder, fileOf(name)), bytes);
            }
        };
        write('base');
        repo.commit('base');
        repo.git('checkout', '--quiet', '-b', 'theirs');
        write('theirs');
        repo.commit('theirs');
        repo.git('checkout', '--quiet', 'main');
        write('ours');
        repo.commit('ours');
        expect(() => repo.git('merge', '--quiet', 'theirs')).toThrow();
        left = new Set(repo.git('diff', '--name-only', '--diff-filter=U').trim().split('\n'));
    }, 300_000);
    afterAll(() => repo.remove());

    it.each(throughGit)('%s', (name) => {
        expectMerge(scenarios[name]!, readFileSync(path.join(repo.folder, fileOf(name))), left.has(fileOf(name)));
    });

    it('and leaves nothing else behind', () => {
        const names = readdirSync(repo.folder).filter((name) => name !== '.git' && name !== '.gitattributes');
        expect(names.toSorted()).toEqual(throughGit.map(fileOf).toSorted());
    });
});

describe('the driver merges', () => {
    const both = Object.entries(scenarios).filter(([, { ours, theirs }]) => ours !== undefined && theirs !== undefined);

    it.each(both)('%s', async (name, scenario) => {
        const repo = temporaryRepository();
        const sides = ['base', 'ours', 'theirs'] as const;
        for (const side of sides) writeFileSync(path.join(repo.folder, side), scenario[side]!);
        const { code } = await repo.kerfbook(['merge', ...sides, '--marker-size', '7', '--path', fileOf(name)]);
        expect(code).toBeLessThan(128);
        expectMerge(scenario, readFileSync(path.join(repo.folder, 'ours')), code > 0);
    });
});

describe('kerfbook merge', () => {
    const files = (ours: string, theirs: string) => ({ 'base.kerf': base, 'ours.kerf': ours, 'theirs.kerf': theirs });
    const all = ['merge', 'base.kerf', 'ours.kerf', 'theirs.kerf'];
    const ours = (repo: TemporaryRepository) => readFileSync(path.join(repo.folder, 'ours.kerf'), 'utf8');

    it('ends with the number of conflicts, and 0 where there is none', async () => {
        const two = temporaryRepository(files(recipe('0.56 mm', 'ours'), recipe('0.50 mm', 'theirs')));
        expect((await two.kerfbook(all)).code).toBe(2);
        expect(ours(two).match(/^<{7} ours$/gm)).toHaveLength(2);
        const none = temporaryRepository(files(recipe('0.56 mm'), recipe('0.54 mm', 'theirs')));
        chmodSync(path.join(none.folder, 'ours.kerf'), 0o640);
        expect(await none.kerfbook(all)).toEqual({ code: 0, out: '', err: '' });
        expect(ours(none)).toBe(recipe('0.56 mm', 'theirs'));
        expect(statSync(path.join(none.folder, 'ours.kerf')).mode & 0o777).toBe(0o640);
    });

    it.each([
        ['a file that is not there', ['merge', 'base.kerf', 'ours.kerf', 'gone.kerf']],
        ['a file too few', ['merge', 'base.kerf', 'ours.kerf']],
        ['no number', [...all, '--marker-size', 'x']],
        ['an option that there is not', [...all, '--fast']],
    ])('stops git’s merge, and nothing is lost, for %s', async (_, args) => {
        const repo = temporaryRepository(files(recipe('0.56 mm'), recipe('0.50 mm')));
        const { code, err } = await repo.kerfbook(args);
        expect(code).toBe(129);
        expect(err).toContain('The recipes were not merged: ');
        expect(ours(repo)).toBe(recipe('0.56 mm'));
    });

    it('stops git’s merge where ours cannot be written', async () => {
        const repo = temporaryRepository(files(recipe('0.56 mm'), recipe('0.50 mm')));
        chmodSync(path.join(repo.folder, 'ours.kerf'), 0o440);
        expect((await repo.kerfbook(all)).code).toBe(129);
        expect(ours(repo)).toBe(recipe('0.56 mm'));
    });
});
