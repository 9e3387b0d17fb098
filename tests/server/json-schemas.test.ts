import { fileURLToPath } from 'node:url';
import { Ajv, type ValidateFunction } from 'ajv';
import { describe, expect, it } from 'vitest';
import { runIn } from '../kit/run-in';
import { bolder, coaster, repository } from './shop-files';

const { documents, schemasOf } = (await import(new URL('../../.config/schemas.mjs', import.meta.url).href)) as {
    readonly documents: readonly string[];
    schemasOf(how: { readonly closed: boolean }): ReadonlyMap<string, object>;
};
const samples = fileURLToPath(new URL('../../samples', import.meta.url));

/** With `closed`, whatever a schema does not name is refused: what is written and not described is seen too. */
const schemas = new Map<string, ValidateFunction>();
for (const [name, schema] of schemasOf({ closed: true }))
    schemas.set(name, new Ajv({ allErrors: true, strict: false }).compile(schema));

function expectToKeepTo(name: string, text: string): void {
    const keeps = schemas.get(name)!;
    const sound = keeps(JSON.parse(text));
    const wrong = keeps.errors
        ?.slice(0, 5)
        .map(({ instancePath, message, params }) => `${instancePath} ${message} ${JSON.stringify(params)}`);
    expect(sound, `${name}: ${wrong?.join('\n')}`).toBe(true);
}

describe('what the command line writes as JSON keeps to its schema', () => {
    it.each([
        ['check', ['check', '.', '--format', 'json']],
        ['plan', ['plan', '.', '--shapes', '--start', '2026-12-07']],
        ['plan', ['plan', 'heron-tray.kerf']],
        ['week', ['week', '.', '--start', '2026-12-07', '--format', 'json']],
        ['season', ['season', '.', '--format', 'json']],
        ['history', ['history', '.', '--format', 'json']],
        ['curve', ['curve', 'cherry-6', 'shed', '--format', 'json']],
        ['explain', ['explain', '--format', 'json']],
        ['vocabulary', ['vocabulary', '--format', 'json']],
        ['table', ['table', '--recipes', 'heron-tray,heron-tray-faulty', '--format', 'json']],
    ])('%s of the samples', async (name, args) => {
        const { out, err } = await runIn(samples, args);
        expect(err).toBe('');
        expectToKeepTo(name, out);
    });

    it('diff of a change in recipe, stock and art', async () => {
        const repo = repository();
        repo.write({
            'coaster.kerf': coaster.replace('then 0.1 mm', 'then 1.5 mm').replace('coats 2', 'coats 3'),
            'art/flag.svg': bolder,
        });
        const { out } = await repo.kerfbook(['diff', 'HEAD', '--format', 'json']);
        expectToKeepTo('diff', out);
        expect(JSON.parse(out).reviews).toHaveLength(1);
    });

    it('every command that writes JSON has one, and what is not as it should be is refused', async () => {
        expect([...schemas.keys()].sort()).toEqual([...documents].sort());
        const { out } = await runIn(samples, ['check', 'heron-tray-faulty.kerf', '--format', 'json']);
        const report = JSON.parse(out);
        const [first] = report.findings;
        expect(schemas.get('check')!({ ...report, findings: [{ ...first, severity: 'grave' }] })).toBe(false);
        expect(schemas.get('check')!({ ...report, more: 1 })).toBe(false);
        expect(schemas.get('check')!({ ...report, schema: 2 })).toBe(false);
        const { counts: _, ...less } = report;
        expect(schemas.get('check')!(less)).toBe(false);
    });
});
