import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { allFindings } from '../../server/cli/all-findings';
import { openFiles } from '../../server/cli/open-files';
import type { Finding } from '../../shared/recipe/finding';

const folder = fileURLToPath(new URL('./ruined/', import.meta.url));
const names = readdirSync(folder).filter((file) => file.endsWith('.kerf'));
const toldOf = /^\/\/ Told: (.*)/;
const notedOf = /^\/\/ Noted: (.*)/;

/**
 * Pieces that steps ruin for each other, each right by itself; written before there were rules for it, by somebody who knew the manual
 * only. The first line says by which rules it is told or, where it is no more than a note, noted; those of which nothing is told yet are
 * counted, not hidden.
 */
describe('what steps do to each other is told', () => {
    const said = new Map<string, readonly Finding[]>();
    beforeAll(async () => {
        const { workshop, documents } = await openFiles([folder]);
        for (const document of documents) {
            const found = await allFindings(workshop, document);
            said.set(
                path.basename(document.uri.path),
                found.map(({ finding }) => finding),
            );
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
