import { readFileSync } from 'node:fs';
import type { LangiumDocument } from 'langium';
import { beforeAll, describe, expect, test } from 'vitest';
import { lowerFile } from '../../language/lowering/lower-file';
import { textFindings } from '../../language/text-findings';
import { mark } from './marked';
import { open, services } from './services';

/** A whole workshop and two recipes in one text, so that every kind of block is there to be broken. */
const whole = ['workshop', 'heron-tray', 'seed-box']
    .map((name) => readFileSync(`samples/${name}.kerf`, 'utf8').replaceAll(/^use .*$/gm, ''))
    .join('\n');
const lines = whole.split('\n');

/** Lines that are broken wherever they stand. */
const brokenLines = [
    ...[
        'mosture 8 %',
        'fil pocket with tide',
        '0.5 mm',
        '%',
        ', ,',
        '"text"',
        '§',
        'a b c',
        'passes three',
        '.5 mm',
        '= 5',
        '(x)',
    ],
    ...[
        'depth',
        'power',
        'engrave',
        'engrave new',
        'seal',
        'seal tray with',
        'blank',
        'art',
        'wait',
        'kind',
        'colour',
        'size 3',
        'pot',
    ],
    ...[
        'deepest',
        'inlay relief',
        'board',
        'recipe',
        'laser',
        'scan across',
        'grits',
        'allow',
        'burn 40 %',
        '"never closed',
        '{',
        '}',
        'x {',
        '{ }',
    ],
];

/** Always the same file: texts beside each other lie in one folder, and each would be looked through for runs. */
const openText = (text: string) => open(text, 'file:///shop/broken.kerf');

function meaningOf(document: LangiumDocument): string {
    const recipes = lowerFile(document, services);
    // settingsWhere only says which lines would be taken out, and a broken `power` is one of them; incomplete says that a line was broken.
    const apart = new Set(['settingsWhere', 'incomplete']);
    return JSON.stringify(recipes, (key, value) => (apart.has(key) || isPlace(value) ? undefined : value));
}

function isPlace(value: unknown): boolean {
    return typeof value === 'object' && value !== null && 'offset' in value && 'uri' in value;
}

let unbroken = '';
beforeAll(async () => {
    const document = await openText(whole);
    unbroken = meaningOf(document);
    expect(textFindings(document, services).filter(({ severity }) => severity === 'error')).toEqual([]);
});

/** Puts a broken line before line `at`, as far in as the lines around it. */
function breakAt(at: number, broken: string): string {
    const indent = [lines[at] ?? '', lines[at - 1] ?? '']
        .map((line) => /^ */.exec(line)?.[0] ?? '')
        .sort((a, b) => b.length - a.length)[0];
    return [...lines.slice(0, at), `${indent}${broken}`, ...lines.slice(at)].join('\n');
}

describe('a broken line breaks that line only', () => {
    const places = lines.flatMap((_line, at) => (at % 4 === 0 ? [at] : []));
    test.each(brokenLines.map((broken, index) => [broken, index]))('%s', async (broken, index) => {
        for (const at of places.filter((_place, number) => number % 9 === Number(index) % 9)) {
            // That is the block of the line before, and empty: nothing is wrong with it.
            if (broken === '{ }' && /^ *(wait|seal|fill|inlay|peel|sand|finish|mask|do) [^{}]*$/.test(lines[at - 1] ?? ''))
                continue;
            // A text for others goes with the line below it, which would be the broken one.
            if (/^ *\/\/\//.test(lines[at - 1] ?? '')) continue;
            const text = breakAt(at, String(broken));
            const document = await openText(text);
            const findings = textFindings(document, services).filter(({ severity }) => severity !== 'hint');
            const shown = mark(text, findings)
                .split('\n')
                .slice(Math.max(0, at - 5), at + 12)
                .join('\n');
            const start = [...lines.slice(0, at), ''].join('\n').length;
            const end = text.indexOf('\n', start);
            expect(findings.length, `line ${at}, nothing said:\n${shown}`).toBeGreaterThan(0);
            for (const { where } of findings)
                expect(where.offset >= start && where.offset <= end, `line ${at}:\n${mark(text, findings)}`).toBe(true);
            expect(meaningOf(document), `line ${at}, meaning changed:\n${shown}`).toBe(unbroken);
        }
    });
});

test('a brace that slipped into a line breaks that line only', async () => {
    const rows = '  burn 40 % at 400 mm/s gives 0.09 mm\n'.repeat(6);
    const text = `coupon walnut on shed {\n  burn 60 % at 300 mm/s}gives 0.2 mm\n${rows}}\n`;
    const found = textFindings(await open(text), services).filter(({ rule }) => rule === 'syntax');
    expect(found).toHaveLength(1);
});

test('a quote that slipped into the head of a block leaves its lines alone', async () => {
    const text = 'resin "foam {\n  kind slow-epoxy\n  pot life 40 min\n  cure 24 h\n}\n';
    const found = textFindings(await open(text), services).filter(({ rule }) => rule === 'syntax');
    expect(found).toHaveLength(1);
});

test('what stands below a time and is none of its own leaves the time as it is', async () => {
    const broken = whole.replace('  open 8 min\n', '  open 8 min\n  0.5 mm\n');
    expect(broken).not.toBe(whole);
    const document = await openText(broken);
    expect(textFindings(document, services).filter(({ severity }) => severity === 'error')).toHaveLength(1);
    expect(meaningOf(document) === unbroken).toBe(true);
});

test('a line of commas within a run leaves the step below it alone', async () => {
    const broken = whole.replace(/^ {2}relief of maple-06 80 %/m, '  , ,\n$&');
    expect(broken).not.toBe(whole);
    const document = await openText(broken);
    expect(textFindings(document, services).filter(({ severity }) => severity === 'error')).toHaveLength(1);
    expect(meaningOf(document) === unbroken).toBe(true);
});
