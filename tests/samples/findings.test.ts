import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { allFindings } from '../../server/cli/all-findings';
import { openFiles } from '../../server/cli/open-files';
import type { PlacedFinding } from '../../server/report/placed-finding';
import type { Finding } from '../../shared/recipe/finding';

const isGrave = ({ severity }: Finding) => severity === 'error' || severity === 'warning';

const folder = fileURLToPath(new URL('../../samples/', import.meta.url));
const faulty = path.join(folder, 'heron-tray-faulty.kerf');

describe('what is said of the sample recipes', () => {
    const problems = new Map<string, PlacedFinding[]>();
    const notes = new Map<string, string[]>();

    beforeAll(async () => {
        const { workshop, documents } = await openFiles([folder]);
        for (const document of documents) {
            const findings = await allFindings(workshop, document);
            const file = fileURLToPath(document.uri.toString());
            notes.set(
                path.basename(file, '.kerf'),
                findings.filter(({ finding }) => !isGrave(finding)).map(({ finding }) => `${finding.severity} ${finding.rule}`),
            );
            const grave = findings.filter(({ finding }) => isGrave(finding));
            problems.set(file, grave);
        }
    }, 120_000);

    it.each([
        'workshop',
        'gate-sign',
        'tide-coaster',
        'heron-tray',
        'tray-variants',
        'seed-box',
        'slack-water',
        'crew-tags',
        'moonrise',
        'quay-trivet',
        'winter-token',
        'yard-tag',
    ])('%s has neither errors nor warnings', (name) => {
        const said = problems.get(path.join(folder, `${name}.kerf`));
        expect(said?.map(({ line, finding }) => `${line}: ${finding.message} [${finding.rule}]`)).toEqual([]);
    });

    it('what is worth knowing of the good ones, and no more', () => {
        expect(Object.fromEntries([...notes].filter(([name, said]) => said.length > 0 && name !== 'heron-tray-faulty'))).toEqual({
            // The class tray is burnt by the small diode, on a veneer of which no coupon has been burnt there.
            'tray-variants': ['info long-burn', 'info long-burn', 'info no-coupon'],
        });
    });

    it('the faulty tray shows each fault that its comments promise', () => {
        const rules = new Set(problems.get(faulty)?.map(({ finding }) => finding.rule));
        const promised = [
            'air-while-engraving',
            'art-missing',
            'deeper-than-blank',
            'fill-sanded-away',
            'mirrored-twice',
            'missing-unit',
            'no-backing',
            'not-inverse',
            'not-mirrored',
            'off-blank',
            'outline-of-bitmap',
            'scan-along-grain',
            'shallow-fill',
            'unknown-name',
            'unsealed-fill',
            'veneer-proud',
            'wrong-unit',
        ];
        expect(promised.filter((rule) => !rules.has(rule))).toEqual([]);
    });

    it('every line with a comment in the faulty tray has something to be said of it', () => {
        const lines = readFileSync(faulty, 'utf8').split('\n');
        const commented = lines.flatMap((line, at) => (/\S.*\/\/ /.test(line) && !line.startsWith('//') ? [at + 1] : []));
        const answered = new Set(
            problems.get(faulty)?.flatMap(({ line, finding }) => [
                line,
                // A finding may point from where it shows to the line that is at fault.
                ...finding.related
                    .filter(({ where }) => where.uri.endsWith('heron-tray-faulty.kerf'))
                    .map(({ where }) => readFileSync(faulty, 'utf8').slice(0, where.offset).split('\n').length),
            ]),
        );
        expect(commented.filter((line) => !answered.has(line)).map((line) => lines[line - 1])).toEqual([]);
    });
});
