import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { TemporaryRepository } from '../kit/temporary-repository';
import { coaster, repository } from './shop-files';

const read = (file: string): string => readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8');

/** A shop's repository in which npm has installed the command, with a change that takes the colour off again. */
function shopWithCommand(): TemporaryRepository {
    const repo = repository();
    const bin = path.join(repo.folder, 'node_modules', '.bin');
    mkdirSync(bin, { recursive: true });
    writeFileSync(path.join(bin, 'kerfbook'), `#!/bin/sh\nexec ${repo.command} "$@"\n`);
    chmodSync(path.join(bin, 'kerfbook'), 0o755);
    repo.write({ '.gitignore': 'node_modules\n' });
    repo.commit('the command');
    repo.git('switch', '--quiet', '--create', 'work');
    repo.write({ 'coaster.kerf': coaster.replace('then 0.1 mm', 'then 1.5 mm') });
    return repo;
}

interface Action {
    readonly inputs: Readonly<Record<string, { readonly description: string; readonly default: string }>>;
    readonly runs: {
        readonly using: string;
        readonly steps: readonly {
            readonly run: string;
            readonly if?: string;
            readonly env: Readonly<Record<string, string>>;
        }[];
    };
}

describe('the action for build servers', () => {
    const action = parse(read('.github/actions/check/action.yml'), { strict: true }) as Action;
    const [install, check] = action.runs.steps;

    /** Its last step, as the build server runs it. */
    function runCheck(repo: TemporaryRepository, given: Readonly<Record<string, string>>) {
        const env: Record<string, string> = {};
        for (const [name, value] of Object.entries(check!.env)) {
            const input = /^\$\{\{ inputs\.([a-z-]+) \}\}$/.exec(value)![1]!;
            env[name] = given[input] ?? action.inputs[input]!.default;
        }
        const { status, stdout } = spawnSync('bash', ['--noprofile', '--norc', '-eo', 'pipefail', '-c', check!.run], {
            cwd: repo.folder,
            env: { ...process.env, ...env },
            encoding: 'utf8',
        });
        return { status, stdout };
    }

    it('takes what a branch or a file may be called in variables only', () => {
        expect(action.runs.using).toBe('composite');
        for (const step of action.runs.steps) expect(step.run).not.toContain('${{');
        expect(install!.if).toBe("inputs.package != ''");
        for (const { description } of Object.values(action.inputs)) expect(description).not.toBe('');
    });

    it('is asked in the manual for what it knows', () => {
        const shown = /```yaml\n( +- uses: \.\/\.github\/actions\/check[\s\S]*?)```/.exec(read('extension/docs/review.md'))![1]!;
        const [asked] = parse(shown) as { readonly with: object }[];
        expect(Object.keys(action.inputs)).toEqual(expect.arrayContaining(Object.keys(asked!.with)));
    });

    it('puts what a branch brings beside its lines, writes the report, and fails', () => {
        const repo = shopWithCommand();
        repo.commit('sand on');
        const { status, stdout } = runCheck(repo, { since: 'main', sarif: 'made.sarif' });
        expect(status).toBe(1);
        expect(stdout).toMatch(/^::error file=coaster\.kerf,line=11,.*title=fill-sanded-away/m);
        const report = JSON.parse(readFileSync(path.join(repo.folder, 'made.sarif'), 'utf8'));
        const rules = report.runs[0].results.map(({ ruleId }: { ruleId: string }) => ruleId);
        expect(rules).toContain('fill-sanded-away');
    });

    it('looks at what is named, one a line, and no name is an option', () => {
        const repo = shopWithCommand();
        expect(runCheck(repo, { paths: 'plate.kerf\n\n' })).toMatchObject({
            status: 0,
            stdout: expect.not.stringContaining('::error'),
        });
        expect(runCheck(repo, { paths: 'plate.kerf\ncoaster.kerf' }).status).toBe(1);
        expect(runCheck(repo, { paths: '--strict' }).status).toBe(2);
    });
});

describe('the hook for the framework of hooks', () => {
    const [hook, ...more] = parse(read('.pre-commit-hooks.yaml'), { strict: true }) as Record<string, string | boolean>[];

    it('stands in the manual as it is', () => {
        const shown = /```yaml\n(repos:[\s\S]*?)```/.exec(read('extension/docs/review.md'))![1]!;
        const { description, minimum_pre_commit_version, ...same } = hook!;
        expect(parse(shown)).toEqual({ repos: [{ repo: 'local', hooks: [same] }] });
    });

    it('is one, which runs for recipes and art', () => {
        expect(more).toEqual([]);
        expect(hook).toMatchObject({ id: 'kerfbook', language: 'system', pass_filenames: false });
        const files = new RegExp(String(hook!.files));
        for (const name of ['a.kerf', 'art/bird.svg', 'b.PNG'.toLowerCase(), 'c.jpeg']) expect(name).toMatch(files);
        expect('kerf.md').not.toMatch(files);
    });

    it('stops a commit that brings an error, and lets one pass that does not', () => {
        const repo = shopWithCommand();
        const [command, ...args] = String(hook!.entry).split(' ');
        const commit = () => {
            repo.git('add', '--all');
            return spawnSync(command!, args, { cwd: repo.folder, encoding: 'utf8' });
        };
        const { status, stdout } = commit();
        expect(stdout).toContain('fill-sanded-away');
        expect(status).toBe(1);
        repo.write({ 'coaster.kerf': coaster.replace('coats 2', 'coats 3') });
        expect(commit()).toMatchObject({ status: 0 });
    });

    it.runIf(hasFramework())('works in the framework itself', () => {
        const repo = shopWithCommand();
        const local = `repos:\n  - repo: local\n    hooks:\n${JSON.stringify([hook])}\n`;
        repo.write({ '.pre-commit-config.yaml': local.replace('hooks:\n', 'hooks: ') });
        repo.git('add', '--all');
        const { status, stdout } = spawnSync('pre-commit', ['run'], {
            cwd: repo.folder,
            env: { ...process.env, PRE_COMMIT_HOME: path.join(repo.folder, '.git', 'hooks-home') },
            encoding: 'utf8',
        });
        expect(stdout).toContain('fill-sanded-away');
        expect(status).toBe(1);
    });
});

function hasFramework(): boolean {
    try {
        execFileSync('pre-commit', ['--version'], { stdio: 'ignore' });
        return true;
    } catch {
        return false;
    }
}
