import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { root } from './source-files';

const manifest = JSON.parse(readFileSync(`${root}package.json`, 'utf8')) as Record<string, unknown>;
const texts = JSON.parse(readFileSync(`${root}extension/l10n/package.nls.json`, 'utf8')) as Readonly<Record<string, string>>;

/** What the editor shows of a manifest, wherever it stands in it. */
const shown = /^(displayName|description|title|category|label|altText|contents|contextualTitle|enumDescriptions)$/;

interface Said {
    readonly place: string;
    readonly key: string;
    readonly text: string;
}

function* saidIn(value: unknown, place = '', key = ''): Generator<Said> {
    if (typeof value === 'string') yield { place, key, text: value };
    else if (Array.isArray(value)) for (const [index, each] of value.entries()) yield* saidIn(each, `${place}[${index}]`, key);
    else if (typeof value === 'object' && value !== null)
        for (const [name, each] of Object.entries(value)) yield* saidIn(each, `${place}.${name}`, name);
}

const all = [...saidIn(manifest)];

test('every text of the manifest that the editor shows stands in its file of texts', () => {
    const asNamed = all.filter(({ place }) =>
        /^\.contributes\.(views\.\w+\[\d+\]\.name|languages\[\d+\]\.aliases\[0\])$/.test(place),
    );
    expect(asNamed.length).toBeGreaterThan(1);
    const bare = [...all.filter(({ key }) => shown.test(key)), ...asNamed].filter(({ text }) => !/^%[\w.]+%$/.test(text));
    expect(bare).toEqual([]);
});

test('every key of the manifest has a text, and every text a key', () => {
    const keys = all.flatMap(({ text }) => (/^%([\w.]+)%$/.exec(text) ?? []).slice(1));
    expect(keys.length).toBeGreaterThan(80);
    expect([...new Set(keys)].sort()).toEqual(Object.keys(texts).sort());
});

test('the editor and the package find the texts beside the manifest', () => {
    expect(JSON.parse(readFileSync(`${root}package.nls.json`, 'utf8'))).toEqual(texts);
    expect(readFileSync(`${root}.vscodeignore`, 'utf8')).toContain('\n!package.nls.json\n');
});
