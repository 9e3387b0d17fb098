import { readdirSync, readFileSync } from 'node:fs';
import { parseSync } from 'vite';
import { expect, test } from 'vitest';
import { root, sourceFiles } from './source-files';

/** Words that a reader stumbles over, and what is said in their place. */
const instead: readonly (readonly [RegExp, string])[] = [
    [/\breckon\w*/i, 'work out, count'],
    [/\bfore(told|tells?)\b/i, 'predict'],
    [/\banew\b/i, 'again'],
    [/\bnought\b/i, 'zero'],
    [/\bis none\b(?! of)/i, 'has no …, there is no …'],
    [/\bwants? (a|an|the|more|less|to be|no)\b/i, 'needs'],
    [/\b(is|are|was|were) told\b(?! apart)/i, 'reported, said, shown'],
    [/\bconsumables\b/i, 'supplies'],
    [/\b(alignment|registration) marks\b/i, 'marks'],
];

interface Text {
    readonly place: string;
    readonly words: string;
}

/** Every text that a program can say: string literals, the fixed parts of templates, and what stands between tags. */
function* textsOf(path: string, source: string): Generator<Text> {
    const waiting: unknown[] = [parseSync(path, source).program];
    while (waiting.length > 0) {
        const node = waiting.pop();
        if (Array.isArray(node)) waiting.push(...node);
        if (typeof node !== 'object' || node === null || !('type' in node)) continue;
        const { type, start, value } = node as { type: string; start: number; value?: unknown };
        if (/^(Import|Export(All|Named))/.test(type) && 'source' in node && node.source !== null) continue;
        const raw = (value as { raw?: string } | undefined)?.raw;
        const words = type === 'TemplateElement' ? raw : type === 'Literal' || type === 'JSXText' ? value : undefined;
        // A single word is a key or an id more often than a text.
        if (typeof words === 'string' && words.trim().includes(' '))
            yield { place: `${path}:${source.slice(0, start).split('\n').length}`, words };
        waiting.push(...Object.values(node));
    }
}

function faultsOf({ place, words }: Text): string[] {
    return instead.flatMap(([word, better]) => {
        const [found] = word.exec(words) ?? [];
        return found === undefined ? [] : [`${place}: “${found}”, rather ${better}`];
    });
}

test('what the program says is said in plain words', () => {
    const faults = sourceFiles('shared', 'language', 'server', 'extension').flatMap((file) =>
        [...textsOf(file.path, file.text)].flatMap(faultsOf),
    );
    expect(faults).toEqual([]);
});

test('the manual and the manifest are written in plain words', () => {
    const docs = readdirSync(`${root}extension/docs`).filter((name) => name.endsWith('.md'));
    const files = [
        ...docs.map((name) => `extension/docs/${name}`),
        'README.md',
        'samples/README.md',
        'extension/l10n/package.nls.json',
    ];
    const faults = files.flatMap((file) =>
        readFileSync(`${root}${file}`, 'utf8')
            .split('\n')
            .flatMap((words, line) => faultsOf({ place: `${file}:${line + 1}`, words })),
    );
    expect(faults).toEqual([]);
});
