import { execFileSync } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { statedRevisions } from '../../server/git/stated-revision';
import type { TemporaryRepository } from '../kit/temporary-repository';
import { coaster, otherRecipe, repository } from './shop-files';

const runLine = (date: string, revision: number, depth: string): string =>
    `run coaster ${date} { revision ${revision} hollow of walnut-12 80 % at 400 mm/s x 2 pitch 0.1 mm depth ${depth} }\n`;
const third = `${coaster.replace('revision 1', 'revision 3').replace('depth 0.5 mm', 'depth 0.8 mm')}${runLine('2026-01-05', 1, '0.49 mm')}${runLine('2026-02-05', 2, '0.6 mm')}${runLine('2026-03-05', 3, '0.79 mm')}`;

/** Revisions 1 and 3 are committed, 2 is not; another commit of revision 1 came after the first. */
function withRuns(): TemporaryRepository {
    const repo = repository();
    repo.write({ 'coaster.kerf': coaster.replace('depth 0.5 mm', 'depth 0.48 mm') });
    repo.commit('revision 1 put right');
    repo.write({ 'coaster.kerf': third });
    repo.commit('revision 3');
    return repo;
}

describe('kerfbook history', () => {
    it('holds each run against the revision that it followed, where git knows it', async () => {
        const repo = withRuns();
        const { code, out } = await repo.kerfbook(['history', 'coaster.kerf', '--format', 'json']);
        expect(code).toBe(0);
        const [history] = JSON.parse(out).histories;
        const right = repo.git('rev-parse', 'HEAD~1').slice(0, 8);
        expect(history.runs.map((run: { planned: object }) => run.planned)).toEqual([
            { by: 'its issue', revision: 1, commit: right },
            { by: 'the present plan', revision: 3 },
            { by: 'its issue', revision: 3 },
        ]);
        expect(history.runs[0].steps[0].rows[0].ratio).toBeCloseTo(0.49 / 0.48, 4);
        expect(history.met[0]).toMatchObject({ sheet: 'walnut-12', leftOut: 1 });
    });

    it('under every name that the file has had, to a name that is not committed yet', async () => {
        const repo = withRuns();
        const right = repo.git('rev-parse', 'HEAD~1').slice(0, 8);
        repo.git('mv', 'coaster.kerf', 'round-coaster.kerf');
        repo.commit('renamed');
        const fourth = third.replace('revision 3', 'revision 4').replace('depth 0.8 mm', 'depth 0.9 mm');
        repo.write({ 'round-coaster.kerf': fourth });
        repo.git('mv', 'round-coaster.kerf', 'tide coaster.kerf');
        repo.commit('renamed again, and revision 4');
        // Another file takes the first name: it is none of this one's past.
        repo.write({ 'coaster.kerf': `${otherRecipe}\nrecipe coaster { revision 2 laser shed }\n` });
        repo.commit('another file');
        repo.git('mv', 'tide coaster.kerf', 'bench.kerf');
        const { out } = await repo.kerfbook(['history', 'bench.kerf', '--format', 'json']);
        expect(JSON.parse(out).histories[0].runs.map((run: { planned: object }) => run.planned)).toEqual([
            { by: 'its issue', revision: 1, commit: right },
            { by: 'the present plan', revision: 4 },
            { by: 'its issue', revision: 3, commit: repo.git('rev-parse', 'HEAD~2').slice(0, 8) },
        ]);
    });

    it('on a branch that changed the file under the name which another had given up', async () => {
        const repo = withRuns();
        repo.git('switch', '--quiet', '--create', 'work', 'HEAD~1');
        const second = coaster.replace('revision 1', 'revision 2').replace('depth 0.5 mm', 'depth 0.6 mm');
        repo.write({ 'coaster.kerf': second });
        repo.commit('revision 2');
        const side = repo.git('rev-parse', 'HEAD').slice(0, 8);
        repo.git('switch', '--quiet', 'main');
        repo.git('mv', 'coaster.kerf', 'round-coaster.kerf');
        repo.commit('renamed');
        repo.git('merge', '--quiet', '--no-commit', '--strategy', 'ours', 'work');
        repo.write({
            'round-coaster.kerf': `${coaster.replace('revision 1', 'revision 3')}${runLine('2026-02-05', 2, '0.6 mm')}`,
        });
        repo.commit('merged');
        const { out } = await repo.kerfbook(['history', '--format', 'json']);
        expect(JSON.parse(out).histories[0].runs[0].planned).toEqual({ by: 'its issue', revision: 2, commit: side });
    });

    it('in a folder below, nothing that the file was outside of it is read', async () => {
        const repo = withRuns();
        repo.git('mv', 'coaster.kerf', 'art/coaster.kerf');
        repo.commit('moved below');
        const planned = async (below: string): Promise<string> =>
            (await repo.kerfbook(['history', below === '.' ? 'art/coaster.kerf' : 'coaster.kerf'], below)).out;
        expect(await planned('.')).toMatch(/issue 1, on shed; held against the plan of its issue/);
        expect(await planned('art')).toMatch(/issue 1; held against the present plan/);
    });

    it('all commits are looked through, and one git reads them all', async () => {
        const repo = withRuns();
        const right = repo.git('rev-parse', 'HEAD~1').slice(0, 8);
        // More than were looked through once; each is a version of the file.
        const commits = Array.from({ length: 600 }, (_, i) => {
            const text = `${third}// ${i}\n`;
            return `commit refs/heads/main\ncommitter A <a@shop.example> ${2_000_000_000 + i} +0000\ndata 1\nc\n${i === 0 ? `from ${repo.git('rev-parse', 'HEAD')}` : ''}M 100644 inline coaster.kerf\ndata ${Buffer.byteLength(text)}\n${text}\n`;
        });
        execFileSync('git', ['fast-import', '--quiet'], { cwd: repo.folder, input: commits.join('') });
        repo.git('reset', '--quiet', '--hard');
        const trace = path.join(repo.folder, 'trace');
        vi.stubEnv('GIT_TRACE', trace);
        onTestFinished(() => void vi.unstubAllEnvs());
        const { out } = await repo.kerfbook(['history', 'coaster.kerf', '--format', 'json']);
        expect(JSON.parse(out).histories[0].runs[0].planned).toEqual({ by: 'its issue', revision: 1, commit: right });
        expect(readFileSync(trace, 'utf8').match(/built-in: git/g)!.length).toBeLessThanOrEqual(12);
    });

    it('holds a run against the commit of its day, also where the issue has not changed since', async () => {
        const repo = repository();
        const commit = (day: string, text: string) => {
            repo.write({ 'coaster.kerf': text });
            repo.git('add', '--all');
            execFileSync(
                'git',
                ['-c', 'user.name=A', '-c', 'user.email=a@shop.example', 'commit', '--quiet', '--allow-empty', '-m', day],
                { cwd: repo.folder, env: { ...process.env, GIT_COMMITTER_DATE: `${day}T12:00:00Z` } },
            );
            return repo.git('rev-parse', 'HEAD').slice(0, 8);
        };
        const first = commit('2026-01-01', coaster.replace('depth 0.5 mm', 'depth 0.7 mm'));
        const deeper = coaster.replace('depth 0.5 mm', 'depth 0.6 mm');
        const second = commit('2026-02-01', deeper);
        commit('2026-03-10', `${deeper}${runLine('2026-01-20', 1, '0.49 mm')}${runLine('2026-02-05', 1, '0.6 mm')}`);
        const { out } = await repo.kerfbook(['history', 'coaster.kerf', '--format', 'json']);
        const { runs } = JSON.parse(out).histories[0];
        expect(runs.map(({ planned }: { planned: object }) => planned)).toEqual([
            { by: 'its day', revision: 1, commit: first },
            { by: 'its day', revision: 1, commit: second },
        ]);
        expect(runs[0].steps[0].rows[0].ratio).toBeCloseTo(0.7, 6);
        expect(runs[1].steps[0].rows[0].ratio).toBeCloseTo(1, 6);
    });

    it('says of one file what the whole folder says, as the editor has it: runs of other recipes count, wherever they stand', async () => {
        const repo = repository();
        const days = [1, 8, 15, 22].map((day) => `2026-03-${String(day).padStart(2, '0')}`);
        // A recipe without runs beside it, and its runs in a file that names neither recipe nor stock.
        repo.write({
            'bowl.kerf': coaster.replaceAll('coaster', 'bowl'),
            'runs/march.kerf': days.map((day) => runLine(day, 1, '0.49 mm').replace('run coaster', 'run bowl')).join(''),
            'coaster.kerf': `${coaster}${runLine('2026-03-29', 1, '0.48 mm')}`,
        });
        const boards = async (...files: string[]) => {
            const { out } = await repo.kerfbook(['history', ...files, '--format', 'json']);
            return JSON.parse(out).histories.find(({ recipe }: { recipe: string }) => recipe === 'coaster').boards;
        };
        const alone = await boards('coaster.kerf');
        expect(alone[0].drift.days.map(({ date }: { date: string }) => date)).toEqual([...days, '2026-03-29']);
        expect(alone).toEqual(await boards());
        const check = async (...files: string[]) => (await repo.kerfbook(['check', ...files])).out.match(/^coaster\.kerf.*$/gm);
        expect(await check('coaster.kerf')).toEqual(await check());
    });

    it('without git the present plan is taken, and it says so', async () => {
        const repo = withRuns();
        rmSync(path.join(repo.folder, '.git'), { recursive: true });
        const { code, out } = await repo.kerfbook(['history', 'coaster.kerf']);
        expect(out.match(/held against the present plan \(issue 3\)/g)).toHaveLength(2);
        expect(out).toContain('2 left out');
        expect(code).toBe(0);
    });

    it('the last ones only, in every format', async () => {
        const repo = withRuns();
        const { out } = await repo.kerfbook(['history', '--last', '1']);
        expect(out).toMatch(/^coaster: 3 runs, the last 1$/m);
        expect(out).not.toContain('2026-02-05');
        expect((await repo.kerfbook(['history', '--format', 'markdown'])).out).toContain('**2026-03-05, issue 3, on shed**');
        expect((await repo.kerfbook(['history', '--format', 'csv'])).out).toContain(
            'coaster,2026-03-05,3,shed,its issue,hollow,walnut-12,depth,',
        );
        expect((await repo.kerfbook(['history', '--format', 'html'])).out).toMatch(/^<!doctype html>/);
    });

    it('of a run that has a file of its own is told from that file, too', async () => {
        const repo = repository();
        repo.write({ 'runs/2026-03-06-coaster-k7f3q.kerf': runLine('2026-03-06', 1, '0.5 mm') });
        const own = await repo.kerfbook(['history', 'runs/2026-03-06-coaster-k7f3q.kerf']);
        expect(own.out).toContain('2026-03-06');
        expect(await repo.kerfbook(['history', 'coaster.kerf'])).toEqual(own);
    });

    it.each([
        [['history', '--format', 'pdf'], '--format is one of'],
        [['history', '--last', '0'], '--last is'],
        [['history', 'plate.kerf'], 'No run is written down'],
        [['history', '--recipe', 'nobody'], 'There is no recipe nobody.'],
    ])('%j is refused', async (args, message) => {
        const { code, err } = await withRuns().kerfbook(args);
        expect(err).toContain(message);
        expect(code).toBe(2);
    });
});

describe('the revision of a recipe in an old text', () => {
    it.each([
        ['recipe a { revision 2 }', [2]],
        ['recipe a "recipe a { revision 9 }" { make 2 }', [1]],
        ['recipe b { revision 3 } recipe a { /* revision 4 */ do "x" { revision 5 } // revision 6\n revision 7 }', [7]],
        ['recipe b { revision 3 } recipe a based on b { make 1 }', [3]],
        ['recipe b { revision 3 } recipe a based on b { revision 4 }', [4]],
        ['recipe a based on a { make 1 }', [1]],
        ['recipe b { }', []],
        ['run a 2026-01-01 { revision 2 }', []],
    ])('%s', (text, revisions) => {
        expect([...statedRevisions(text, 'a')!]).toEqual(revisions);
    });

    it('is not known where the base stands elsewhere', () => {
        expect(statedRevisions('recipe a based on b { make 1 }', 'a')).toBeUndefined();
    });
});

describe('runs in files of their own', () => {
    const run = runLine('2026-03-05', 1, '0.47 mm');

    it('are in the history of a recipe that is named alone, and in its fit', async () => {
        const repo = repository();
        const plain = (await repo.kerfbook(['plan', 'coaster.kerf'])).out;
        repo.write({ 'runs/2026/coaster-2026-03-05.kerf': run });
        const { code, out } = await repo.kerfbook(['history', 'coaster.kerf', '--format', 'json']);
        expect(code).toBe(0);
        expect(JSON.parse(out).histories[0].runs).toMatchObject([{ date: '2026-03-05' }]);
        expect((await repo.kerfbook(['plan', 'coaster.kerf'])).out).not.toBe(plain);
        expect((await repo.kerfbook(['check', 'runs/2026/coaster-2026-03-05.kerf', '--strict'])).out).not.toContain(
            'unknown-name',
        );
    });

    it('are compared, of a revision and of the work tree', async () => {
        const repo = repository();
        repo.write({ 'runs/a.kerf': run });
        repo.commit('a run');
        repo.write({ 'runs/b.kerf': runLine('2026-03-06', 1, '0.52 mm') });
        const review = async (...revisions: string[]) =>
            JSON.parse((await repo.kerfbook(['diff', ...revisions, 'coaster.kerf', '--format', 'json'])).out).reviews[0].runs;
        expect(JSON.stringify(await review('HEAD~1', 'HEAD'))).toContain('2026-03-05');
        const now = JSON.stringify(await review('HEAD'));
        expect(now).toContain('2026-03-06');
        expect(now).not.toContain('2026-03-05');
    });
});
