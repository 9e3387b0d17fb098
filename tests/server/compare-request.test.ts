import { mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, describe, expect, it } from 'vitest';
import type { PageAnswer, RevisionPlaces, RevisionsAnswer } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import { LanguageClient, type Says } from '../kit/language-client';
import { shop } from '../kit/shop';
import { bolder, coaster, repository, shopFiles } from './shop-files';

const deeper = coaster.replace('depth 0.5 mm', 'depth 0.6 mm');
const clients: LanguageClient[] = [];
afterEach(() => {
    for (const client of clients.splice(0)) client.stop();
});

/** A server on a folder, with a file open in its editor; asks to compare that file. */
async function editorOn(folder: string, name: string, text: string, says: Says = {}) {
    const { client } = await LanguageClient.start(folder, pathToFileURL(folder).toString(), says);
    clients.push(client);
    const uri = pathToFileURL(path.join(folder, name)).toString();
    await client.open(uri, text);
    await client.diagnostics(uri, () => true);
    const ask = <Answer>(what: string, params: object = {}) => client.connection.sendRequest<Answer>(what, { uri, ...params });
    return {
        client,
        uri,
        ask,
        compare: (params: object = {}) => ask<PageAnswer | null>(requests.compare.method, params),
    };
}

function bodyOf(answer: PageAnswer | null): string {
    if (answer === null || 'problem' in answer) throw new Error(answer?.problem ?? 'given up');
    return answer.body;
}

describe('comparing with what was committed', () => {
    it('what is typed and not saved counts, art and stock of the commit on the other side', async () => {
        const repo = repository();
        repo.write({ 'art/flag.svg': bolder });
        const { compare } = await editorOn(repo.folder, 'coaster.kerf', deeper);
        const body = bodyOf(await compare());
        expect(body).toContain('coaster: coaster.kerf at HEAD → coaster.kerf in the editor');
        expect(body).toContain('<del>0.5 mm</del>');
        expect(body).toContain('<ins>0.6 mm</ins>');
        expect(body).toContain('20 mm² changed');
        expect(body).toContain('<svg');
    });

    it('leads from a change to its line in the text, and from a finding to its rule', async () => {
        const repo = repository();
        const tooDeep = coaster.replace('depth 0.5 mm', 'depth 13 mm');
        const { compare, uri } = await editorOn(repo.folder, 'coaster.kerf', tooDeep);
        const body = bodyOf(await compare());
        const places = [...body.matchAll(/href="command:kerfbook\.goToPlace\?([^"]+)"[^>]*>([^<]+)</g)].map(
            ([, argument, words]) => [words, JSON.parse(decodeURIComponent(argument!))[0]] as const,
        );
        const depth = places.find(([words]) => words === 'depth')?.[1];
        expect(depth?.uri).toBe(uri);
        expect(tooDeep.slice(depth.offset, depth.offset + depth.length)).toBe('13 mm');
        const title = places.find(([words]) => words === 'Engrave hollow')?.[1];
        expect(tooDeep.slice(title.offset)).toMatch(/^engrave|^hollow/);
        expect(body).toContain(`command:kerfbook.explainFinding?${encodeURIComponent('["deeper-than-blank"]')}`);
    });

    it('nothing that differs is said too, and every recipe of the file has its part', async () => {
        const two = coaster + coaster.replace(/use .*\n/, '').replace('recipe coaster', 'recipe saucer');
        const repo = repository({ ...shopFiles, 'coaster.kerf': two });
        const { compare } = await editorOn(repo.folder, 'coaster.kerf', two.replace('sand disc { flush', 'sand disc { flush'));
        const body = bodyOf(await compare());
        expect(body.match(/Nothing that matters differs/g)).toHaveLength(2);
    });

    it('another revision, by its name or its id, and the file under the name that it had', async () => {
        const repo = repository();
        repo.git('tag', 'v1');
        repo.git('mv', 'coaster.kerf', 'round coaster.kerf');
        repo.write({ 'round coaster.kerf': deeper });
        repo.commit('renamed and deeper');
        const { compare, ask } = await editorOn(repo.folder, 'round coaster.kerf', deeper);
        expect(bodyOf(await compare())).toContain('Nothing that matters differs');
        const body = bodyOf(await compare({ revision: 'v1' }));
        expect(body).toContain('coaster.kerf at v1 → round coaster.kerf');
        expect(body).toContain('<ins>0.6 mm</ins>');
        const answer = await ask<RevisionsAnswer>(requests.revisions.method);
        if ('problem' in answer) throw new Error(answer.problem);
        expect(answer.revisions.map(({ kind, name, subject }) => `${kind} ${kind === 'commit' ? '' : name} ${subject}`)).toEqual([
            'commit  renamed and deeper',
            'commit  first',
            'branch main renamed and deeper',
            'tag v1 first',
        ]);
        expect(bodyOf(await compare({ revision: answer.revisions[0]!.revision }))).toContain('Nothing that matters');
        expect(bodyOf(await compare({ revision: answer.revisions[1]!.revision }))).toContain('<ins>0.6 mm</ins>');
    });

    it('a file that was moved in the explorer, of which git has not been told, and then changed', async () => {
        const repo = repository();
        rmSync(path.join(repo.folder, 'coaster.kerf'));
        repo.write({ 'bar/coaster.kerf': deeper.replace('use "', 'use "../') });
        const { compare } = await editorOn(repo.folder, 'bar/coaster.kerf', deeper.replace('use "', 'use "../'));
        const body = bodyOf(await compare());
        expect(body).toContain('coaster.kerf');
        expect(body).toContain('<ins>0.6 mm</ins>');
    });

    it('a file is known again step by step where then and now have little in common', async () => {
        const repo = repository();
        repo.git('tag', 'v1');
        repo.git('mv', 'coaster.kerf', 'round.kerf');
        repo.commit('renamed');
        const grown = `${coaster}${Array.from({ length: 60 }, (_, n) => `// tried on ${n + 1} boards of another kind\n`).join('')}`;
        repo.write({ 'round.kerf': grown });
        repo.commit('notes');
        const { compare } = await editorOn(repo.folder, 'round.kerf', grown);
        expect(bodyOf(await compare({ revision: 'v1' }))).toContain('coaster.kerf at v1 → round.kerf');
    });

    it('says where a new commit shows', async () => {
        const repo = repository();
        const { ask } = await editorOn(repo.folder, 'coaster.kerf', coaster);
        const store = pathToFileURL(path.join(repo.folder, '.git')).toString();
        const first = (await ask(requests.revisionPlaces.method)) as RevisionPlaces;
        expect(first.places).toEqual([
            { folder: store, pattern: '{HEAD,packed-refs}' },
            { folder: `${store}/refs`, pattern: '**' },
        ]);
        expect(await ask(requests.revisionPlaces.method)).toEqual(first);
        repo.git('tag', 'v1');
        expect(((await ask(requests.revisionPlaces.method)) as RevisionPlaces).now).not.toBe(first.now);
        const web = await editorOn(repo.folder, 'coaster.kerf', coaster, { browser: true });
        expect(await web.ask(requests.revisionPlaces.method)).toEqual({
            problem: expect.stringContaining('only a browser'),
            final: true,
        });
    });

    it('a text that cannot be read at present says so', async () => {
        const { compare } = await editorOn(
            repository().folder,
            'coaster.kerf',
            coaster.replace('depth 0.5 mm', 'depth 0.5 mm }'),
        );
        expect(await compare()).toMatchObject({ broken: expect.stringMatching(/./) });
    });

    it('two files of the workspace', async () => {
        const repo = repository({ ...shopFiles, 'deeper.kerf': deeper.replace('recipe coaster', 'recipe well') });
        const { compare } = await editorOn(repo.folder, 'coaster.kerf', coaster);
        const before = pathToFileURL(path.join(repo.folder, 'deeper.kerf')).toString();
        const body = bodyOf(await compare({ before }));
        expect(body).toContain('well → coaster: deeper.kerf → coaster.kerf');
        expect(body).toContain('<ins>0.5 mm</ins>');
    });

    it('a folder below a repository: only the folder is read, on either side', async () => {
        const inner = Object.fromEntries(Object.entries(shopFiles).map(([name, text]) => [`bench/${name}`, text]));
        const outward = coaster.replace('stock/shop.kerf', '../secret.kerf');
        const repo = repository({ ...inner, 'bench/coaster.kerf': outward, 'secret.kerf': shop });
        const { compare } = await editorOn(path.join(repo.folder, 'bench'), 'coaster.kerf', outward);
        const body = bodyOf(await compare());
        expect(body).toContain('Nothing that matters differs');
    });

    it('a revision does not change while its text is typed on', async () => {
        const repo = repository();
        const { compare, client, uri } = await editorOn(repo.folder, 'coaster.kerf', coaster);
        expect(bodyOf(await compare())).toContain('Nothing that matters');
        await client.change(uri, 2, deeper);
        expect(bodyOf(await compare())).toContain('<ins>0.6 mm</ins>');
        repo.write({ 'coaster.kerf': deeper });
        repo.commit('deeper');
        expect(bodyOf(await compare())).toContain('Nothing that matters');
    });
});

describe('variants side by side', () => {
    it('the family of the recipe under the cursor, with links into the text, as it is typed', async () => {
        const base = coaster.replace('use "stock', 'use "./stock');
        const variants = `use "coaster.kerf"\nrecipe deep based on coaster { engrave hollow { depth 0.7 mm } }\n`;
        const repo = repository({ ...shopFiles, 'coaster.kerf': base, 'variants.kerf': variants });
        const { ask, uri, client } = await editorOn(repo.folder, 'variants.kerf', variants);
        const body = bodyOf(await ask<PageAnswer>(requests.table.method));
        expect(body).toContain('<td>0.7 mm</td>');
        expect(body).not.toContain('>coats<');
        expect(bodyOf(await ask<PageAnswer>(requests.table.method, { all: true }))).toContain('>coats<');
        expect(body).toContain(encodeURIComponent(JSON.stringify([{ uri, offset: variants.indexOf('deep'), length: 4 }])));
        await client.change(uri, 2, variants.replace('0.7', '0.9'));
        const deep = await ask<PageAnswer>(requests.table.method, { offset: 40 });
        expect(bodyOf(deep)).toContain('<td>0.9 mm</td>');
        expect(deep).toMatchObject({ recipe: 'deep' });
        expect(await ask<PageAnswer>(requests.table.method, { recipe: 'deep' })).toEqual(deep);
        const plate = pathToFileURL(path.join(repo.folder, 'plate.kerf')).toString();
        expect(await ask<PageAnswer>(requests.table.method, { uri: plate })).toEqual({
            problem: expect.stringContaining('based on'),
        });
    });
});

describe('the history of runs', () => {
    it('of the recipe under the cursor, against the revision of then, with links to the runs', async () => {
        const repo = repository();
        const now = `${deeper.replace('revision 1', 'revision 2')}run coaster 2026-03-05 { revision 1 hollow of walnut-12 80 % at 400 mm/s depth 0.4 mm }\n`;
        const { ask, uri } = await editorOn(repo.folder, 'coaster.kerf', now);
        const answer = await ask<PageAnswer>(requests.history.method);
        expect(answer).toMatchObject({ recipe: 'coaster' });
        const body = bodyOf(answer);
        expect(body).toContain(`held against the plan of its issue (${repo.git('rev-parse', 'HEAD').slice(0, 8)})`);
        expect(body).toContain('<td>80 %</td>');
        expect(body).toContain(encodeURIComponent(JSON.stringify([{ uri, offset: now.indexOf('2026-03-05'), length: 10 }])));
        const plate = pathToFileURL(path.join(repo.folder, 'plate.kerf')).toString();
        expect(await ask<PageAnswer>(requests.history.method, { uri: plate })).toEqual({
            problem: expect.stringContaining('No run'),
        });
        expect(bodyOf(await ask<PageAnswer>(requests.history.method, { present: true }))).toContain(
            'held against the present plan (issue 2)',
        );
        const web = await editorOn(repo.folder, 'coaster.kerf', now, { browser: true });
        expect(bodyOf(await web.ask<PageAnswer>(requests.history.method))).toContain('held against the present plan (issue 2)');
    });
});

describe('what cannot be compared is said', () => {
    const problem = async (asked: Promise<PageAnswer | null>): Promise<string> => {
        const answer = await asked;
        return answer !== null && 'problem' in answer ? answer.problem : JSON.stringify(answer).slice(0, 200);
    };

    it('a file that git does not know', async () => {
        const repo = repository();
        repo.write({ 'new.kerf': coaster });
        const { compare } = await editorOn(repo.folder, 'new.kerf', coaster);
        expect(await problem(compare())).toMatch(/^new\.kerf is not in HEAD: it is new/);
    });

    it('a file of stock, which shows in the recipes that use it', async () => {
        const { compare } = await editorOn(repository().folder, 'stock/shop.kerf', shop);
        expect(await problem(compare())).toMatch(/^There is no recipe in this file, now or then/);
    });

    it('a repository without a commit, a revision that is not there, a revision that is none', async () => {
        const empty = repository({});
        empty.write(shopFiles);
        const first = await editorOn(empty.folder, 'coaster.kerf', coaster);
        expect(await problem(first.compare())).toBe('Nothing has been committed in this repository yet.');
        const { compare } = await editorOn(repository().folder, 'coaster.kerf', coaster);
        expect(await problem(compare({ revision: 'nowhere' }))).toMatch(/^There is no revision nowhere/);
        expect(await problem(compare({ revision: '--output=owned' }))).toMatch(/is no revision/);
    });

    it('a folder without a repository, a text that is not saved, an editor without git', async () => {
        const folder = realpathSync(mkdtempSync(path.join(tmpdir(), 'kerfbook-plain-')));
        try {
            writeFileSync(path.join(folder, 'coaster.kerf'), coaster);
            const { compare, client } = await editorOn(folder, 'coaster.kerf', coaster);
            expect(await problem(compare())).toBe('coaster.kerf does not lie in a git repository.');
            await client.open('untitled:one.kerf', coaster);
            await client.diagnostics('untitled:one.kerf', () => true);
            expect(await problem(compare({ uri: 'untitled:one.kerf' }))).toMatch(/^Only files that are saved/);
            expect(await problem(compare({ before: 'file:///nowhere.kerf' }))).toMatch(/^The other file is not read/);
            expect(await problem(compare({ uri: 'file:///nowhere.kerf' }))).toMatch(/is not read as a recipe file/);
            const web = await editorOn(folder, 'coaster.kerf', coaster, { browser: true });
            expect(await problem(web.compare())).toMatch(/^Earlier versions are read by git/);
            expect(await problem(web.ask(requests.revisions.method))).toMatch(/^Earlier versions are read by git/);
        } finally {
            rmSync(folder, { recursive: true, force: true });
        }
    });
});

describe('the week', () => {
    const orders = 'order 2026-11-24 "the ferry office" { coaster 6 due 2026-12-02 }\n';
    it('plans what is ordered in the folder, as it is typed and not saved, without a script', async () => {
        const repo = repository({ ...shopFiles, 'orders.kerf': orders });
        const { ask } = await editorOn(repo.folder, 'orders.kerf', orders.replace('6 due', '9 due'));
        const params = { start: '2026-12-01T08:00', makers: 2, closed: [0, 6] };
        const body = bodyOf(await ask<PageAnswer | null>(requests.week.method, params));
        expect(body).toContain('<h1>The week</h1>');
        expect(body).toContain('1 order, 9 pieces. 2 pairs of hands');
        expect(body).toContain('closed on Sunday and Saturday');
        expect(body).toContain('the ferry office');
        expect(body).not.toMatch(/<script| on[a-z]+=/);
    });
    it('says what it cannot read, and what there is nothing of', async () => {
        const repo = repository({ ...shopFiles, 'orders.kerf': 'order 2026-11-24 { coaster 6 delivered 2026-11-30 }\n' });
        const { ask } = await editorOn(repo.folder, 'coaster.kerf', coaster);
        const asked = (start: string) => ask<PageAnswer | null>(requests.week.method, { start, closed: [] });
        expect(await asked('soon')).toMatchObject({ final: true, problem: expect.stringContaining('soon is no day') });
        expect(await asked('2026-12-01T08:00')).toMatchObject({ problem: expect.stringContaining('made or delivered') });
    });
});

describe('the season', () => {
    const made = 'run coaster 2026-11-20 { made 3 spoiled 1 took 2 h by "Ida" }\n';
    it('sums the runs of the folder, from one day to another, without a script', async () => {
        const repo = repository({ ...shopFiles, 'made.kerf': made });
        const { ask } = await editorOn(repo.folder, 'coaster.kerf', coaster);
        const asked = (more: object) => ask<PageAnswer | null>(requests.season.method, more);
        const body = bodyOf(await asked({}));
        expect(body).toContain('<h1>The season</h1>');
        expect(body).toContain('3 pieces made, 1 spoiled');
        expect(body).not.toMatch(/<script| on[a-z]+=/);
        expect(await asked({ from: '2026-11-21' })).toMatchObject({ problem: expect.stringContaining('No run') });
        expect(bodyOf(await asked({ from: '2026-11-20', to: '2026-11-20' }))).toContain('Ida');
    });
});
