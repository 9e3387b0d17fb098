import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { coaster, repository } from './shop-files';

const doc = readFileSync(new URL('../../extension/docs/review.md', import.meta.url), 'utf8');

interface Workflow {
    readonly on: string;
    readonly permissions: object;
    readonly env: Readonly<Record<string, string>>;
    readonly jobs: { readonly check: { readonly steps: readonly { readonly run?: string; readonly uses?: string }[] } };
}

describe('the workflow that the page on reviewing gives', () => {
    const workflow = parse(/```yaml\n(name: [\s\S]*?)```/.exec(doc)![1]!, { strict: true }) as Workflow;
    const commands = workflow.jobs.check.steps.flatMap(({ run }) => (run?.startsWith('npx kerfbook') ? [run] : []));

    it('is YAML in which branches reach a command only by a variable', () => {
        expect(workflow.on).toBe('pull_request');
        expect(commands.length).toBeGreaterThan(3);
        for (const { run } of workflow.jobs.check.steps) expect(run ?? '').not.toContain('${{');
        expect(workflow.env.BASE).toContain('github.base_ref');
    });

    it.each(commands)('%s', async (command) => {
        const repo = repository();
        repo.git('switch', '--quiet', '--create', 'work');
        repo.write({ 'coaster.kerf': coaster.replace('depth 0.5 mm', 'depth 0.6 mm') });
        repo.commit('deeper');
        const [words] = command.replace('npx kerfbook ', '').split(/ >>? /);
        const args = words!.split(' ').map((word) => word.replaceAll('"', '').replace('$BASE', 'main'));
        const { code, out, err } = await repo.kerfbook(args);
        expect(err).toBe('');
        expect(code).toBe(0);
        expect(out).not.toBe('');
    });
});

it('the commands of the page and the help name the same options', async () => {
    const repo = repository();
    const lines = [...doc.matchAll(/^kerfbook (\w+)(.*)$/gm)];
    expect(lines.length).toBeGreaterThan(8);
    for (const [, name, rest] of lines) {
        const { out: help, code } = await repo.kerfbook(['help', name!]);
        expect(code).toBe(0);
        for (const [option] of rest!.matchAll(/--[a-z-]+/g)) expect(help).toContain(option);
    }
});
