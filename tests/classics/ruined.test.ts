import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { allFindings } from '../../server/cli/all-findings';
import { openFiles } from '../../server/cli/open-files';
import { readArt } from '../../server/engine/read-art';
import { makePlan } from '../../shared/plan/make-plan';
import { Memo } from '../../shared/plan/memo';
import type { Plan } from '../../shared/plan/plan';
import type { Finding, Related } from '../../shared/recipe/finding';
import type { Recipe } from '../../shared/recipe/recipe';

const folder = fileURLToPath(new URL('./ruined/', import.meta.url));
const names = readdirSync(folder).filter((file) => file.endsWith('.kerf'));
const toldOf = /^\/\/ Told: (.*)/;
const notedOf = /^\/\/ Noted: (.*)/;
const advisedOf = /^\/\/ Advised: (.*)/;

/**
 * Pieces that steps ruin for each other, each right by itself; written before there were rules for it, by somebody who knew the manual
 * only. The first line says by which rules it is told, under their cause too, or, where it is no more than a note, noted; or which words
 * of advice its steps bear, where the same is done in sound recipes with care; those of which nothing is told yet are counted, not hidden.
 */
describe('what steps do to each other is told', () => {
    const said = new Map<string, readonly (Finding | Related)[]>();
    const advised = new Map<string, string>();
    beforeAll(async () => {
        const { workshop, documents } = await openFiles([folder]);
        for (const document of documents) {
            const found = await allFindings(workshop, document);
            said.set(
                path.basename(document.uri.path),
                found.flatMap(({ finding }) => [finding, ...finding.related]),
            );
            const steps = workshop.recipes(document).flatMap((recipe) => planned(recipe).steps);
            advised.set(path.basename(document.uri.path), steps.flatMap(({ advice = [] }) => advice).join('\n'));
        }
    }, 120_000);

    for (const name of names) {
        const text = readFileSync(path.join(folder, name), 'utf8');
        const [, rules] = toldOf.exec(text) ?? [];
        const [, note] = notedOf.exec(text) ?? [];
        if (note !== undefined) {
            it(name, () => expect((said.get(name) ?? []).map(({ rule }) => rule)).toContain(note));
            continue;
        }
        const [, advice] = advisedOf.exec(text) ?? [];
        if (advice !== undefined) {
            it(name, () => expect(advised.get(name)).toContain(advice));
            continue;
        }
        if (rules === undefined) {
            it.todo(name);
            continue;
        }
        it(name, () => {
            const grave = (said.get(name) ?? []).filter(({ severity }) => severity === 'error' || severity === 'warning');
            expect(new Set(grave.map(({ rule }) => rule))).toEqual(new Set(rules.split(', ')));
        });
    }
});

function planned(recipe: Recipe): Plan {
    const arts = recipe.arts.map((source) => {
        const bytes = readFileSync(fileURLToPath(source.uri));
        return [source.name, readArt(source, { uri: source.uri, version: '1', bytes })] as const;
    });
    return makePlan(recipe, new Map(arts), new Memo());
}
