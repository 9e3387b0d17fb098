import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { memoryWorkshop } from '../kit/memory-workshop';

const read = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');

interface Snippet {
    readonly prefix: string | readonly string[];
    readonly body: readonly string[];
}

const snippets = Object.entries(JSON.parse(read('extension/kerfbook.snippets.json')) as Record<string, Snippet>);

/** What stands in the text when every proposal is taken as it is. */
function taken({ body }: Snippet): string {
    return body
        .join('\n')
        .replace(/\$\{CURRENT_YEAR\}-\$\{CURRENT_MONTH\}-\$\{CURRENT_DATE\}/, '2026-11-27')
        .replace(/\$\{\d+:([^}]*)\}/g, '$1')
        .replace(/\$\{\d+\|([^,]*)[^}]*\}/g, '$1')
        .replace(/\$\d+/g, '');
}

/** A lopsided shape, as a heron is. */
const shape =
    '<svg xmlns="http://www.w3.org/2000/svg" width="80mm" height="80mm" viewBox="0 0 80 80"><path d="M10 10h40v20h20v40H10z"/></svg>';

describe('snippets', () => {
    test.each(snippets)('%s can be taken as it stands', async (name, snippet) => {
        const { open, findings } = await memoryWorkshop({
            'art/heron.svg': read('samples/art/heron.svg'),
            'art/wave.svg': shape,
            'art/picture.png': readFileSync(new URL('../../samples/art/slack-water.png', import.meta.url)),
        });
        await open(read('samples/workshop.kerf'), 'workshop.kerf');
        await open(read('samples/heron-tray.kerf'), 'heron-tray.kerf');
        const uses = { Shop: '', Variant: 'use "heron-tray.kerf"', Run: 'use "heron-tray.kerf"' }[name] ?? 'use "workshop.kerf"';
        const found = await findings(`${uses}\n\n${taken(snippet)}\n`);
        const serious = found.filter(({ severity }) => severity === 'error' || severity === 'warning');
        expect(serious.map(({ rule, message }) => `${rule}: ${message}`)).toEqual([]);
    });
});
