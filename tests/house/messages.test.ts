import { parseSync } from 'vite';
import { expect, test } from 'vitest';
import { phrase } from '../../shared/recipe/phrase';
import { sourceFiles } from './source-files';

/** Lines with a `phrase` that is made while its file is read, not when somebody asks for it. */
function madeTooEarly(path: string, source: string): string[] {
    const found: string[] = [];
    const waiting: unknown[] = [parseSync(path, source).program];
    while (waiting.length > 0) {
        const node = waiting.pop();
        if (Array.isArray(node)) waiting.push(...node);
        if (typeof node !== 'object' || node === null || !('type' in node)) continue;
        const { type, start, tag } = node as { type: string; start: number; tag?: { name?: string } };
        if (/Function/.test(type)) continue;
        if (type === 'TaggedTemplateExpression' && tag?.name === 'phrase')
            found.push(`${path}:${source.slice(0, start).split('\n').length}`);
        waiting.push(...Object.values(node));
    }
    return found;
}

test('a message says what a template says', () => {
    const name: string | undefined = undefined;
    expect(phrase`\`${'pocket'}\` is ${0.5} mm deep${name ?? ''}; \\ stays.`).toBe('`pocket` is 0.5 mm deep; \\ stays.');
});

// That each message goes through `phrase` is held by the types: nothing else makes a Message.
test('a message is made when it is needed: while a file is read, nobody knows the reader’s language', () => {
    expect(madeTooEarly('own.ts', 'const early = phrase`a`;\nconst late = () => phrase`b`;')).toEqual(['own.ts:1']);
    const files = sourceFiles('shared', 'language', 'server');
    expect(files.filter(({ text }) => text.includes('phrase`')).length).toBeGreaterThan(200);
    expect(files.flatMap(({ path, text }) => madeTooEarly(path, text))).toEqual([]);
});
